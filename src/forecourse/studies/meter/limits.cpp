#include "forecourse/studies/meter/limits.h"

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::studies {
namespace {

/// Drafts that differ by less are the same. common practice, no source
constexpr double same_draft = 0.02;

double cubic_inches(double count) { return to_si(count, "in3"); }

/// A class of accuracy from memory: percentages, and a volume with more for each volume.
void add_from_memory(bool us, std::vector<MeterLimit>& out) {
  const double largest = cubic_meters_from_gallons(10.0);  // drafts that the formula is for
  const auto add = [&](const char* name, double share, double base, LimitFor of) {
    MeterLimit limit;
    limit.name = name;
    limit.share = share;
    limit.base = base;
    limit.of = of;
    limit.clause = "NIST Handbook 44, 3.30";
    limit.seen = LimitSeen::memory;
    limit.applies = us;
    if (base > 0.0) limit.most = largest;
    out.push_back(limit);
  };
  const double each = cubic_inches(1.0) / cubic_meters_from_gallons(1.0);
  add("Handbook 44, class 0.5, maintenance", 0.005, 0.0, LimitFor::maintenance);
  add("Handbook 44, class 0.5, acceptance", 0.003, 0.0, LimitFor::acceptance);
  add("1 in3 and 1 in3 per gal, maintenance", each, cubic_inches(1.0), LimitFor::maintenance);
  add("0.5 in3 and 0.5 in3 per gal, acceptance", 0.5 * each, cubic_inches(0.5), LimitFor::acceptance);
}

}  // namespace

const char* word(LimitFor of) {
  return of == LimitFor::maintenance ? "maintenance" : of == LimitFor::acceptance ? "acceptance" : "all";
}

const char* word(LimitSeen seen) {
  switch (seen) {
    case LimitSeen::verified:
      return "verified";
    case LimitSeen::derived:
      return "seen in derived texts";
    case LimitSeen::memory:
      return "from memory, not verified";
    case LimitSeen::entered:
      break;
  }
  return "entered";
}

std::optional<double> allowed(const MeterLimit& limit, double draft) {
  if (draft < limit.least || draft > limit.most) return std::nullopt;
  if (!limit.volume) return limit.base + limit.share.value_or(0.0) * draft;
  if (limit.in_proportion) return *limit.volume * draft / limit.draft;
  if (std::abs(draft / limit.draft - 1.0) > same_draft) return std::nullopt;
  return limit.volume;
}

std::vector<MeterLimit> published_limits(const site::Site& site) {
  const bool eu = site::is_under(site, "eu");
  std::vector<MeterLimit> out;
  const auto add_draft = [&](const char* name, double inches, LimitFor of) -> MeterLimit& {
    MeterLimit limit;
    limit.name = name;
    limit.volume = cubic_inches(inches);
    limit.draft = cubic_meters_from_gallons(5.0);
    limit.of = of;
    limit.applies = !eu;
    out.push_back(limit);
    return out.back();
  };
  MeterLimit& federal = add_draft("federal inventory control", 6.0, LimitFor::all);
  federal.in_proportion = true;
  federal.clause = "40 CFR 280.43(a)";
  federal.edition = "40 CFR 280 as read in a copy of the current text";
  federal.seen = LimitSeen::verified;
  federal.words = "where no local standard of calibration is met instead";
  for (const LimitFor of : {LimitFor::maintenance, LimitFor::acceptance}) {
    const bool in_use = of == LimitFor::maintenance;
    MeterLimit& limit = add_draft(in_use ? "Handbook 44, 5 gal, maintenance" : "Handbook 44, 5 gal, acceptance",
                                  in_use ? 6.0 : 3.0, of);
    limit.clause = "NIST Handbook 44, 3.30";
    limit.edition = in_use ? "as texts of two states print it" : "as a text of one state prints it";
    limit.seen = LimitSeen::derived;
  }
  add_from_memory(!eu, out);
  MeterLimit europe;
  europe.name = "European Union, class 0.5 measuring system";
  europe.share = 0.005;
  europe.least = 2e-3;
  europe.clause = "2014/32/EU, annex VII, table 2, line A";
  europe.edition = "as read in a copy of the annex";
  europe.seen = LimitSeen::memory;  // the annex was read, but not that dispensers are of this class
  europe.applies = eu;
  europe.words = "for placing on the market; that dispensers are of class 0.5 is from memory, not verified";
  out.push_back(europe);
  return out;
}

}  // namespace forecourse::studies
