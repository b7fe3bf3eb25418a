#include "forecourse/checks/meter_checks.h"

#include <algorithm>
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

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& one : words) {
    if (!one.empty()) out += (out.empty() ? "" : "; ") + one;
  }
  return out;
}

void leave_open(Finding& out, std::string reason, std::string change) {
  out.state = FindingState::not_determined;
  out.reason = std::move(reason);
  out.change = std::move(change);
}

/// A meter that keeps its limit does not yet meet it where something of the proving is not known.
void ask_what_is_missing(const ProvingTold& last, const network::MeterDraw& draw, Finding& out) {
  if (last.lost) {
    leave_open(out, "a draw of this proving is not counted", "mend the rows of its draws");
  } else if (draw.fuel_by.empty()) {
    leave_open(out, "it is within its limit by the plain reading, temperatures left out",
               "enter measure_temperature and meter_temperature");
  }
}

Finding of_limit(const MeterTold& meter, const ProvingTold& last, const studies::WorstDraw& worst,
                 const MeterLimit& limit) {
  const MeterJudged& judged = worst.judged;
  const network::MeterDraw& draw = last.proving.draws[worst.draw];
  Finding out = begin(limit, meter.hose);
  out.where = draw.entered.hose.where;
  const bool as_share = out.unit == "share";
  out.value = std::abs(as_share ? judged.error : judged.error_volume);
  if (!limit.applies || !judged.allowed) {
    out.state = FindingState::does_not_apply;
    out.reason = limit.applies ? "it is for another draft" : "by the rules of the site file";
    return out;
  }
  out.limit = as_share ? *limit.share : *judged.allowed;
  out.margin = *out.limit - *out.value;
  if (limit.seen == LimitSeen::memory) {
    leave_open(out,
               joined({std::string("the limit is from memory, not verified; the value is ") +
                           (*judged.within ? "within it" : "beyond it"),
                       limit.words}),
               "hold it against the text of the rule");
    return out;
  }
  out.reason = joined({draw.fuel_by.empty() ? "by the plain reading, temperatures left out" : "", limit.words,
                       "proved on " + studies::text(last.day)});
  if (*judged.within) {
    out.state = state_of(std::max(*out.margin, 0.0), *out.limit);
    ask_what_is_missing(last, draw, out);
  } else if (limit.of == studies::LimitFor::acceptance && !last.state_told) {
    leave_open(out, "whether the meter was proved as found or as left is not told", "enter state of its draws");
  } else {
    out.state = FindingState::falls_short;
    out.change = prove;
  }
  return out;
}

void of_meter(const MeterTold& meter, const std::vector<MeterLimit>& limits, std::vector<Finding>& out) {
  const ProvingTold& last = meter.provings.back();
  for (const studies::WorstDraw& worst : last.against) {
    out.push_back(of_limit(meter, last, worst, limits[worst.judged.limit]));
  }
  if (last.worst) return;
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
