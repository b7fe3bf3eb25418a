#include "forecourse/lesson/questions/make/known.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "forecourse/site/places.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::lesson {

const studies::TankTold* read_tank(const Ground& ground, Chance& chance) {
  if (!ground.studied.tank) return nullptr;
  return pick(those(ground.studied.tank->tanks,
                    [](const studies::TankTold& tank) {
                      return tank.problem.empty() && tank.now && tank.diameter && tank.id == tank.tank;
                    }),
              chance);
}

const site::Tank* tank_of(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.tanks.begin(), site.tanks.end(), [&](const site::Tank& tank) { return tank.id.text == id; });
  return found == site.tanks.end() ? nullptr : &*found;
}

std::optional<studies::TankNow> tank_at(const site::Site& site, const std::string& tank, double depth,
                                        const std::optional<double>& along) {
  studies::TankOptions options;
  options.tank = tank;
  options.depth = depth;
  if (along) options.at = studies::DipAt{studies::DipAt::Kind::place, *along};
  const studies::TankResult told = studies::study_tank(site, options);
  if (told.tanks.empty() || !told.tanks.front().problem.empty()) return std::nullopt;
  return told.tanks.front().now;
}

const studies::TankRoom* room_at(const studies::TankTold& tank, double share) {
  const auto found = std::find_if(tank.rooms.begin(), tank.rooms.end(),
                                  [&](const studies::TankRoom& room) { return std::abs(room.share - share) < 1e-9; });
  return found == tank.rooms.end() ? nullptr : &*found;
}

Phrase described(const Ground& ground, const studies::TankTold& tank) {
  const site::Tank* site_tank = tank_of(ground.site, tank.tank);
  Phrase out{tank.id + " (" + tank.shape, {}};
  if (tank.diameter) {
    out.words += ", inside diameter {}";
    out.values.push_back({*tank.diameter, Quantity::bore});
  }
  if (site_tank != nullptr && site_tank->shape && site_tank->shape->length) {
    out.words += ", length {}";
    out.values.push_back({site_tank->shape->length->likely.si(), Quantity::length});
  }
  if (tank.pitched) {
    out.words += ", pitched {}";
    out.values.push_back({tank.pitch, Quantity::share});
  }
  out.words += ")";
  return out;
}

std::vector<KnownHose> plain_hoses(const site::Site& site) {
  std::vector<KnownHose> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (!hose.product.empty() && hose.blend.empty()) out.push_back({&dispenser, &hose, hose.product.text});
    }
  }
  return out;
}

std::vector<KnownHose> hoses_of(const site::Site& site, const std::string& product) {
  std::vector<KnownHose> out = plain_hoses(site);
  out.erase(std::remove_if(out.begin(), out.end(), [&](const KnownHose& one) { return one.product != product; }),
            out.end());
  return out;
}

bool is_inlet(const site::Site& site, const std::string& place) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == place) return true;
    }
  }
  return false;
}

studies::FlowResult flows(const site::Site& site, const std::vector<std::vector<std::string>>& sets) {
  studies::FlowOptions options;
  options.spans = false;
  options.lines_at_rest = false;
  options.ladders = false;
  options.open_sets.reserve(sets.size());
  for (const std::vector<std::string>& hoses : sets) options.open_sets.push_back({"asked", hoses});
  return studies::study_flow(site, options);
}

const studies::SystemFlow* system_of(const studies::FlowState& state, const std::string& hose) {
  for (const studies::SystemFlow& system : state.systems) {
    if (system.status != studies::FlowStatus::determined) continue;
    for (const studies::HoseFlow& one : system.hoses) {
      if (one.id == hose) return &system;
    }
  }
  return nullptr;
}

const studies::HoseFlow* hose_in(const studies::FlowState& state, const std::string& hose) {
  const studies::SystemFlow* system = system_of(state, hose);
  if (system == nullptr) return nullptr;
  return &*std::find_if(system->hoses.begin(), system->hoses.end(),
                        [&](const studies::HoseFlow& one) { return one.id == hose; });
}

std::optional<double> flow_at(const studies::FlowState& state, const std::string& hose) {
  const studies::HoseFlow* one = hose_in(state, hose);
  if (one == nullptr || !one->open || !(one->hose_flow > 0.0)) return std::nullopt;
  return one->hose_flow;
}

std::optional<HoseFlows> some_hose(const Ground& ground, Chance& chance, std::size_t least_hoses) {
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  for (const KnownHose& one : all) {
    const std::vector<KnownHose> same = hoses_of(ground.site, one.product);
    if (same.size() < least_hoses) continue;
    std::vector<std::string> ids;
    ids.reserve(same.size());
    for (const KnownHose& other : same) ids.push_back(other.hose->id.text);
    HoseFlows out{one, 0.0, 0.0, same.size(), flows(ground.site, {{one.hose->id.text}, ids})};
    const std::optional<double> alone = flow_at(out.result.states[0], one.hose->id.text);
    const std::optional<double> all_open = flow_at(out.result.states[1], one.hose->id.text);
    if (!alone || !all_open) continue;
    out.alone = *alone;
    out.all = *all_open;
    return out;
  }
  return std::nullopt;
}

std::vector<const site::Pump*> pumps_of(const site::Site& site, const std::string& product) {
  return those(site.pumps, [&](const site::Pump& pump) {
    const site::Tank* tank = tank_of(site, pump.tank.text);
    return pump.curve && pump.running.value_or(true) && tank != nullptr && tank->product.text == product;
  });
}

std::optional<double> shutoff_rise(const site::Pump& pump) {
  if (!pump.curve || !pump.curve->shutoff || pump.speed) return std::nullopt;
  return pump.curve->shutoff->likely.si();
}

std::optional<double> run_out(const site::Pump& pump) {
  if (!pump.curve || pump.speed) return std::nullopt;
  if (pump.curve->run_out) return pump.curve->run_out->likely.si();
  if (!pump.curve->shutoff || !pump.curve->per_flow_squared) return std::nullopt;
  return std::sqrt(pump.curve->shutoff->likely.si() / pump.curve->per_flow_squared->likely.si());
}

std::optional<double> density_of(const Ground& ground, const std::string& product) {
  if (!ground.studied.flow) return std::nullopt;
  for (const studies::SystemSummary& one : ground.studied.flow->systems) {
    if (one.product == product && one.density > 0.0) return one.density;
  }
  return std::nullopt;
}

studies::IncidentOptions brief(studies::IncidentKind kind, const std::string& at) {
  studies::IncidentOptions options;
  options.kind = kind;
  options.request.at = {at, {}};
  options.none_open = true;
  options.barrier_table = false;
  options.charts = false;
  options.runs = 1;  // else hundreds are drawn for a range that no question tells
  return options;
}

studies::IncidentResult struck(const site::Site& site, const std::string& dispenser, double stop_at,
                               const std::vector<studies::Barrier>& without) {
  studies::IncidentOptions options = brief(studies::IncidentKind::struck, dispenser);
  const Duration stop = Duration::from_si(stop_at);
  options.request.stop_at = site::Entered<Duration>{stop, stop, stop, {}};
  options.without = without;
  // Nothing else stops the pumps: the questions name the time of the stop.
  options.without.push_back(studies::Barrier::sump_sensor);
  options.without.push_back(studies::Barrier::leak_detector);
  return studies::study_incident(site, options);
}

bool is_federal(const site::Site& site) { return site.rules.empty() || site::is_under(site, "us-federal"); }

std::string illustrative_of(const std::vector<DefaultUsed>& defaults) {
  const auto found = std::find_if(defaults.begin(), defaults.end(), [](const DefaultUsed& one) {
    return one.status == DefaultStatus::illustrative && one.moves_flow;
  });
  return found == defaults.end() ? std::string() : found->what;
}

std::string illustrative_of(const std::vector<studies::InputUsed>& inputs) {
  // They move where fuel goes once it is out; no question asks that.
  static constexpr std::array<std::string_view, 3> afterward{"thickness of fuel on the slab", "distance to the drain",
                                                             "share that falls into the sump"};
  const auto found = std::find_if(inputs.begin(), inputs.end(), [](const studies::InputUsed& one) {
    const bool moves = std::find(afterward.begin(), afterward.end(), one.what) == afterward.end();
    return moves && !one.entered && one.status == DefaultStatus::illustrative;
  });
  return found == inputs.end() ? std::string() : found->what;
}

}  // namespace forecourse::lesson
