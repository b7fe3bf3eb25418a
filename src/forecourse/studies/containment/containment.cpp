#include "forecourse/studies/containment/containment.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/network/containment/sump_room.h"
#include "forecourse/studies/containment/joints.h"

namespace forecourse::studies {
namespace {

constexpr std::size_t steps_to_brim = 10;

std::vector<double> usual_inflows() {
  const double gallon = cubic_meters_from_gallons(1.0);
  constexpr double hour = 3600.0, minute = 60.0;
  return {0.1 * gallon / hour, gallon / hour, 3.0 * gallon / hour, gallon / minute, 10.0 * gallon / minute};
}

void set_holds(const site::Sump& sump, ContainedSump& out) {
  if (!sump.tight) {
    out.reasons.emplace_back("whether it is tight is not entered");
  } else if (!*sump.tight) {
    out.reasons.emplace_back("it was found not tight");
  }
  if (!sump.tested) out.reasons.emplace_back("no test on record");
  for (const site::EntrySeal& seal : sump.seals) {
    if (seal.tight && !*seal.tight) out.reasons.push_back("entry seal " + seal.id.text + " was found not tight");
  }
  out.holds = out.reasons.empty() ? Holds::assured : Holds::not_assured;
}

SumpFill fill(const ContainedSump& sump, double inflow, double dead_for) {
  SumpFill out;
  out.inflow = inflow;
  const auto time = [&](const std::optional<double>& volume) {
    return volume ? std::optional(*volume / inflow) : std::nullopt;
  };
  out.to_sensor = time(sump.at_sensor);
  out.to_seal = time(sump.at_seal);
  out.to_brim = sump.brim / inflow;
  if (!out.to_sensor) return out;
  out.seen_at = std::max(*out.to_sensor, dead_for);
  out.over_before_seen = *out.seen_at > out.to_brim;
  out.volume_when_seen = inflow * *out.seen_at;
  return out;
}

ContainedSump contained(const std::string& owner, bool of_tank, const site::Sump& sump,
                        const ContainmentOptions& options) {
  ContainedSump out;
  out.owner = owner;
  out.of_tank = of_tank;
  out.where = sump.where;
  set_holds(sump, out);
  const auto room = network::sump_room(sump);
  if (!room) {
    out.problem = "its sizes are not entered: give kind, floor, top and depth, or diameter and depth, or volume";
    return out;
  }
  out.depth = parts::depth_of(*room);
  out.brim = parts::brim_volume(*room);
  out.sensor_height = network::sensor_height(sump);
  out.seal_height = network::lowest_seal(sump);
  if (out.sensor_height) out.at_sensor = parts::volume_at(*room, *out.sensor_height);
  if (out.seal_height) out.at_seal = parts::volume_at(*room, *out.seal_height);
  for (std::size_t i = 0; out.depth && i <= steps_to_brim; ++i) {
    const double height = *out.depth * static_cast<double>(i) / static_cast<double>(steps_to_brim);
    out.points.push_back({height, *parts::volume_at(*room, height)});
  }
  for (const double inflow : options.inflows)
    out.fills.push_back(fill(out, inflow, options.sensor_dead_for.value_or(0.0)));
  return out;
}

void warn_heights(const ContainedSump& sump, std::vector<Diagnostic>& warnings) {
  if (!sump.sensor_height || !sump.seal_height || *sump.sensor_height < *sump.seal_height) return;
  warnings.push_back({Severity::warning,
                      "the sensor in the sump of '" + sump.owner + "' trips no lower than the lowest entry seal",
                      sump.where,
                      "set it lower, so that it is wet before fuel stands at a seal",
                      {}});
}

}  // namespace

const char* word(Holds holds) {
  constexpr std::array<const char*, 3> words{"assured", "not assured", "not determined"};
  return words[static_cast<std::size_t>(holds)];
}

ContainmentResult study_containment(const site::Site& site, const ContainmentOptions& options, const Context& context) {
  static_cast<void>(context);
  ContainmentResult result;
  result.options = options;
  result.version = FORECOURSE_VERSION;
  if (result.options.inflows.empty()) result.options.inflows = usual_inflows();
  for (const site::Tank& tank : site.tanks) {
    if (tank.sump) result.sumps.push_back(contained(tank.id.text, true, *tank.sump, result.options));
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    if (dispenser.sump) result.sumps.push_back(contained(dispenser.id.text, false, *dispenser.sump, result.options));
  }
  for (const ContainedSump& sump : result.sumps) warn_heights(sump, result.warnings);
  result.joints = joints_of(site, result.sumps);
  result.lines = drain_backs(site, result.sumps);
  return result;
}

}  // namespace forecourse::studies
