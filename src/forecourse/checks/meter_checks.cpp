#include "forecourse/checks/meter_checks.h"

#include <cmath>

namespace forecourse::checks {
namespace {

using studies::LimitSeen;
using studies::MeterJudged;
using studies::MeterLimit;
using studies::MeterTold;
using studies::ProvingTold;

constexpr const char* prove = "have it adjusted and proved again by whom the local authority registers for it";

Finding begin(const MeterLimit& limit, const std::string& hose) {
  Finding out;
  out.rule = "meter-error, " + limit.name;
  out.requirement = "a meter errs by no more than allowed: " + limit.name;
  out.subject = hose;
  out.clause = limit.clause;
  out.edition = limit.edition;
  out.clause_verified = limit.seen == LimitSeen::verified;
  const bool as_share = limit.share && limit.base == 0.0;
  out.unit = as_share ? "share" : "m3";
  out.of = Measured::draw;
  return out;
}

/// What was not corrected for stands beside every state that rests on the plain reading.
std::string plain_words(const network::MeterDraw& draw) {
  return draw.fuel_by.empty() ? "by the plain reading, temperatures left out" : "";
}

Finding of_limit(const MeterTold& meter, const ProvingTold& last, const MeterJudged& judged, const MeterLimit& limit) {
  const network::MeterDraw& draw = last.proving.draws[*last.worst];
  Finding out = begin(limit, meter.hose);
  out.where = draw.entered.hose.where;
  const bool as_share = out.unit == "share";
  out.value = std::abs(as_share ? judged.error : judged.error_volume);
  if (!limit.applies) {
    out.state = FindingState::does_not_apply;
    out.reason = "by the rules of the site file";
    return out;
  }
  if (!judged.allowed) {
    out.state = FindingState::does_not_apply;
    out.reason = "it is for another draft";
    return out;
  }
  out.limit = as_share ? *limit.share : *judged.allowed;
  out.margin = *out.limit - *out.value;
  out.reason = plain_words(draw);
  if (limit.seen == LimitSeen::memory) {
    out.reason = std::string("the limit is from memory, not verified; the value is ") +
                 (*judged.within ? "within it" : "beyond it");
    out.change = "hold it against the text of the handbook";
    return out;
  }
  out.state = *judged.within ? state_of(std::max(*out.margin, 0.0), *out.limit) : FindingState::falls_short;
  if (out.state == FindingState::falls_short) out.change = prove;
  return out;
}

void of_meter(const MeterTold& meter, const std::vector<MeterLimit>& limits, std::vector<Finding>& out) {
  const ProvingTold& last = meter.provings.back();
  if (last.worst) {
    for (const MeterJudged& judged : last.draws[*last.worst]) {
      out.push_back(of_limit(meter, last, judged, limits[judged.limit]));
    }
    return;
  }
  Finding f = begin(limits.front(), meter.hose);
  f.where = meter.where;
  f.reason = "no draw of its last proving has an error";
  f.change = "mend the rows of its draws";
  out.push_back(std::move(f));
}

}  // namespace

std::vector<Finding> check_meter(const studies::MeterResult& result) {
  std::vector<Finding> out;
  for (const MeterTold& meter : result.meters) of_meter(meter, result.limits, out);
  for (const std::string& hose : result.unproved) {
    Finding f = begin(result.limits.front(), hose);
    f.reason = "its meter was not proved, or that is not on record";
    f.change = "enter the draws of its proving in provings.csv";
    out.push_back(std::move(f));
  }
  return out;
}

}  // namespace forecourse::checks
