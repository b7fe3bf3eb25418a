#include "forecourse/studies/flow/without_flow.h"

#include <cmath>
#include <optional>
#include <vector>

#include "forecourse/base/index.h"
#include "forecourse/base/unit_text.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::SystemState;

std::string listed(const std::vector<std::string>& ids, std::size_t most) {
  std::string out;
  for (std::size_t i = 0; i < ids.size() && i < most; ++i) out += (i == 0 ? "" : ", ") + ids[i];
  return ids.size() > most ? out + " and " + std::to_string(ids.size() - most) + " more" : out;
}

/// To a tenth of the unit that the station shows.
std::string pressure(double si, site::Display display) {
  const char* unit = display == site::Display::si ? "kPa" : "psi";
  return show_quantity(to_si(std::round(10.0 * from_si(si, unit)) / 10.0, unit), unit);
}

/// What the running pump that reaches highest can do without flow.
struct Reach {
  std::string pump;
  double surface = 0.0;  ///< [Pa] piezometric, of its tank
  double shutoff = 0.0;  ///< [Pa] it adds to that
};

std::optional<Reach> highest_reach(const PipingSystem& system, const SystemState& state) {
  std::optional<Reach> best;
  for (const network::PumpPoint& pump : system.pumps) {
    if (!state.runs(pump)) continue;
    const network::Run& run = system.runs[at(pump.run)];
    Reach reach{pump.id, state.pressure[at(run.from)], 0.0};
    const double speed = network::speed_of_run(system, state, at(pump.run));
    for (const network::Element& part : run.elements) reach.shutoff -= network::loss(part, 0.0, speed).pressure_loss;
    if (!best || reach.surface + reach.shutoff > best->surface + best->shutoff) best = reach;
  }
  return best;
}

std::string no_pump_runs(const PipingSystem& system) {
  std::vector<std::string> pumps;
  for (const network::PumpPoint& pump : system.pumps) pumps.push_back(pump.id);
  if (pumps.empty()) return "no pump feeds it";
  return "no pump of '" + system.product + "' runs: off is " + listed(pumps, 4);
}

}  // namespace

std::string what_gravity_feeds(const PipingSystem& system, const SystemState& state) {
  const network::Opening* highest = nullptr;  // of the tanks
  const auto opening = [&](int node) { return &system.openings[at(node) - system.places.size()]; };
  for (const network::PumpPoint& pump : system.pumps) {
    if (state.runs(pump)) return {};
    const network::Opening* tank = opening(system.runs[at(pump.run)].from);
    if (highest == nullptr || tank->elevation > highest->elevation) highest = tank;
  }
  if (highest == nullptr) return {};
  std::vector<std::string> hoses;
  for (const network::HosePoint& hose : system.hoses) {
    const bool below = opening(system.runs[at(hose.run)].to)->elevation < highest->elevation;
    if (state.open[at(hose.run)] != 0 && below) hoses.push_back(hose.id);
  }
  if (hoses.empty()) return {};
  return no_pump_runs(system) + "; the liquid in tank " + highest->id + " stands above hose" +
         (hoses.size() > 1 ? "s " : " ") + listed(hoses, 2) +
         ", and what runs by gravity through a pump that stands is not computed here";
}

std::string why_without_flow(const PipingSystem& system, const SystemState& state, site::Display display) {
  std::vector<std::string> hoses;
  std::optional<double> least_need;  // [Pa] above the tank's surface
  const std::optional<Reach> reach = highest_reach(system, state);
  bool any_open = false;
  for (const network::HosePoint& hose : system.hoses) {
    if (state.open[at(hose.run)] == 0) continue;
    any_open = true;
    const double outlet = state.pressure[at(system.runs[at(hose.run)].to)];
    if (!reach || outlet < reach->surface + reach->shutoff) continue;
    hoses.push_back(hose.id);
    const double need = outlet - reach->surface;
    if (!least_need || need < *least_need) least_need = need;
  }
  if (any_open && !reach) return no_pump_runs(system);
  if (hoses.empty()) return {};
  const bool many = hoses.size() > 1;
  return "pump " + reach->pump + " cannot lift the fuel to hose" + (many ? "s " : " ") + listed(hoses, 2) +
         ": its shut-off pressure, " + pressure(reach->shutoff, display) + ", is under the static need of " +
         pressure(*least_need, display) + (many ? " or more" : "");
}

}  // namespace forecourse::studies
