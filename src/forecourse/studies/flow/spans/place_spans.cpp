#include "forecourse/studies/flow/spans/place_spans.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/flow/spans/tank_levels.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::StationNetwork;
using site::Site;

// ---- levels -----------------------------------------------------------------------------------------------

std::vector<std::string> tanks_of(const PipingSystem& system) {
  std::vector<std::string> tanks;
  for (const network::PumpPoint& pump : system.pumps) {
    if (std::find(tanks.begin(), tanks.end(), pump.tank) == tanks.end()) tanks.push_back(pump.tank);
  }
  return tanks;
}

void set_surface(PipingSystem& system, int node, double elevation) {
  const std::size_t opening = at(node) - system.places.size();
  system.openings[opening].elevation = elevation;
  std::vector<double> fixed = system.graph->fixed_pressures();
  fixed[opening] = system.weight_of(elevation);
  system.graph =
      std::make_shared<solvers::SteadyGraph>(system.graph->unknowns(), std::move(fixed), system.graph->edges());
}

/// The network with every tank whose ends are known at its low or full; outlets stay where they are.
StationNetwork with_levels(const Site& site, const StationNetwork& network, std::optional<double> TankLevels::*end) {
  StationNetwork moved = network;
  for (PipingSystem& system : moved.systems) {
    if (!system.elevations_known || !system.graph) continue;
    for (const network::PumpPoint& pump : system.pumps) {
      const TankLevels levels = tank_levels(site, pump.tank);
      if (!levels.low || !levels.high) continue;
      set_surface(system, system.runs[at(pump.run)].from, *(levels.*end));
    }
  }
  return moved;
}

std::vector<SetFlows> solve_levels(const Site& site, const StationNetwork& network, const HoseSets& sets,
                                   std::optional<double> TankLevels::*end) {
  const StationNetwork moved = with_levels(site, network, end);
  network::StationSolver solver(moved);
  return solve_sets(moved, solver, sets);
}

FlowSpan level_row(const Site& site, const PipingSystem& system) {
  FlowSpan row{SpanKind::level, {}, system.id, &Length::kind(), {}, {}, {}, {}, {}, {}, {}, {}};
  for (const std::string& tank : tanks_of(system)) {
    row.subject += (row.subject.empty() ? "" : ", ") + tank;
    const TankLevels levels = tank_levels(site, tank);
    if (!levels.low || !levels.high) {
      row.reason = levels.reason;
      continue;
    }
    const double now = site::liquid_level(site, tank).value_or(*levels.low);
    row.low = row.low ? std::min(*row.low, *levels.low) : *levels.low;
    row.likely = row.likely ? std::min(*row.likely, now) : now;
    row.high = row.high ? std::max(*row.high, *levels.high) : *levels.high;
    const std::string means = "low: " + levels.low_means + ", full: " + levels.high_means;
    if (row.note.find(means) == std::string::npos) row.note += (row.note.empty() ? "" : "; ") + means;
  }
  if (!system.elevations_known) {
    row.reason =
        "heights are entered as lifts alone: enter bottom_elevation and reading in [[tank]], and "
        "outlet_elevation of the hoses";
  }
  return row;
}

// ---- filters ----------------------------------------------------------------------------------------------

/// Calls `meet` with every filter of a station, and the id of the inlet or hose that it belongs to.
template <class AnySite, class Meet>
void for_each_filter(AnySite& site, Meet meet) {
  for (auto& dispenser : site.dispensers) {
    for (auto& inlet : dispenser.inlets) {
      if (inlet.filter) meet(site::place_name(dispenser, inlet), *inlet.filter);
    }
    for (auto& hose : dispenser.hoses) {
      if (hose.filter && !hose.loss) meet(hose.id.text, *hose.filter);
    }
  }
}

Site with_loaded_filters(const Site& site) {
  Site moved = site;
  for_each_filter(moved, [](const std::string&, site::Part& filter) {
    if (filter.loaded) filter.loss = filter.loaded;
  });
  return moved;
}

struct FilterCount {
  int all = 0;
  int loaded = 0;  ///< that have a loss when loaded
};

FilterCount filters_of(const Site& site, const PipingSystem& system) {
  FilterCount count;
  for_each_filter(site, [&](const std::string& owner, const site::Part& filter) {
    const bool is_here =
        std::any_of(system.runs.begin(), system.runs.end(), [&](const network::Run& run) { return run.id == owner; });
    if (!is_here) return;
    ++count.all;
    if (filter.loaded) ++count.loaded;
  });
  return count;
}

bool has_loaded_filter(const Site& site) {
  bool any = false;
  for_each_filter(site, [&](const std::string&, const site::Part& filter) { any = any || filter.loaded; });
  return any;
}

FlowSpan filter_row(const FilterCount& count, const PipingSystem& system) {
  FlowSpan row{SpanKind::filter, "filters", system.id, nullptr, {}, {}, {}, {}, {}, {}, {}, {}};
  if (count.loaded == 0) {
    row.reason = "what a filter loses when it is due for a change is not known: enter loaded beside its loss";
  } else if (count.loaded < count.all) {
    row.note = std::to_string(count.loaded) + " of " + std::to_string(count.all) +
               " filters have a loss when loaded; the others stay clean";
  } else {
    row.note = "all " + std::to_string(count.all) + " loaded together";
    if (count.all == 1) row.note = "the one filter";
  }
  return row;
}

// ---- temperature without a span ---------------------------------------------------------------------------

bool has_temperature_span(const Site& site, const std::string& product) {
  for (const site::Product& p : site.products) {
    if (p.id.text == product && p.temperature) return p.temperature->is_uncertain();
  }
  return site.ground_temperature && site.ground_temperature->is_uncertain();
}

FlowSpan temperature_row(const PipingSystem& system) {
  return {SpanKind::temperature,
          system.product,
          system.id,
          &Temperature::kind(),
          {},
          {},
          {},
          {},
          {},
          {},
          {},
          "over which temperatures the fuel flows is not known: enter temperature = { low = ..., likely = ..., high = "
          "... } in [[product]], or ground_temperature so"};
}

}  // namespace

PlaceSpans solve_place_spans(const Site& site, const StationNetwork& network, const HoseSets& sets) {
  PlaceSpans out;
  out.low = solve_levels(site, network, sets, &TankLevels::low);
  out.full = solve_levels(site, network, sets, &TankLevels::high);
  if (has_loaded_filter(site)) out.loaded = solve_sets(with_loaded_filters(site), sets);
  return out;
}

std::vector<FlowSpan> place_spans(const Site& site, const StationNetwork& network, const SetFlows& likely,
                                  const PlaceSpans& solved, std::size_t set) {
  std::vector<FlowSpan> rows;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    const PipingSystem& system = network.systems[s];
    const std::optional<SpanFlows>& now = likely.systems[s].flows;
    if (!now) continue;
    if (!has_temperature_span(site, system.product)) rows.push_back(temperature_row(system));
    FlowSpan level = level_row(site, system);
    level.at_likely = now;
    if (level.reason.empty()) {
      level.at_low = solved.low[set].systems[s].flows;
      level.at_high = solved.full[set].systems[s].flows;
    }
    rows.push_back(std::move(level));
    const FilterCount filters = filters_of(site, system);
    if (filters.all == 0) continue;
    FlowSpan row = filter_row(filters, system);
    row.at_likely = now;
    if (filters.loaded > 0) row.at_high = solved.loaded[set].systems[s].flows;
    if (row.at_high && row.at_high->total > now->total * (1.0 + 1e-9)) {
      row.note += "; more flows with them loaded: check which of the two losses is which";
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace forecourse::studies
