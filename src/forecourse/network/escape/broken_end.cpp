#include "forecourse/network/escape/broken_end.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <variant>

#include "forecourse/base/index.h"
#include "forecourse/network/escape/changed_system.h"
#include "forecourse/network/part_laws.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/site/places.h"

namespace forecourse::network {
namespace {

double area_of(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

/// The lowest liquid surface of the tanks of a system [m]; 0 where only lifts are known.
double surface(const PipingSystem& system) {
  double lowest = std::numeric_limits<double>::infinity();
  for (const PumpPoint& pump : system.pumps) {
    const int node = system.runs[at(pump.run)].from;
    lowest = std::min(lowest, system.openings[at(node) - system.places.size()].elevation);
  }
  return std::isfinite(lowest) ? lowest : 0.0;
}

std::size_t place_of(const PipingSystem& system, const std::string& id) {
  const auto found =
      std::find_if(system.places.begin(), system.places.end(), [&](const Place& p) { return p.id == id; });
  return static_cast<std::size_t>(found - system.places.begin());
}

const Run* riser_run(const PipingSystem& system, const std::string& id) {
  const auto found = std::find_if(system.runs.begin(), system.runs.end(),
                                  [&](const Run& run) { return run.kind == RunKind::riser && run.id == id; });
  return found == system.runs.end() ? nullptr : &*found;
}

/// Height of the shear groove above the site datum, by the best that is known of it.
void set_groove_height(const PipingSystem& system, const site::Dispenser& dispenser, const site::Inlet& inlet,
                       BrokenEnd& end) {
  const auto& valve = inlet.shear_valve;
  const double liquid = surface(system);
  if (valve && valve->groove_lift) {
    end.elevation = liquid + valve->groove_lift->likely.si();
  } else if (system.elevations_known && valve && valve->groove_elevation) {
    end.elevation = valve->groove_elevation->likely.si();
  } else if (system.elevations_known && dispenser.elevation) {
    end.elevation = dispenser.elevation->likely.si();
    end.height_entered = false;
  } else if (system.elevations_known) {
    end.elevation = 0.0;
    end.height_entered = false;
  } else {
    end.problems.push_back({Severity::error,
                            "how high the shear groove of '" + site::place_name(dispenser, inlet) +
                                "' stands over the liquid is not known",
                            inlet.where,
                            "add shear_valve = { groove_lift = \"9 ft\" }",
                            {}});
  }
  end.height = end.elevation - liquid;
}

/// What a full bore loses into the open air: one velocity head, unless entered.
/// \source [tp410, exit loss] K = 1
void set_discharge(const PipingSystem& system, const std::string& owner,
                   const std::optional<site::EnteredLoss>& entered, std::vector<DefaultUsed>& defaults,
                   BrokenEnd& end) {
  if (entered) {
    std::vector<Element> made;
    PartLaws(system.fluid, defaults, end.problems)
        .add_loss(ElementKind::riser, owner, "discharge of " + owner, *entered, end.bore, made);
    constexpr double reference = 1e-3;  // [m3/s]; the loss goes with the square of the flow
    for (const Element& element : made)
      end.discharge += loss(element, reference).pressure_loss / (reference * reference);
    return;
  }
  if (!(end.bore > 0.0)) {
    end.problems.push_back({Severity::error,
                            "the bore of the broken end at '" + owner + "' is not known",
                            {},
                            "enter the riser's bore, or an open_area of the incident",
                            {}});
    return;
  }
  end.discharge = opening_loss(system.fluid.density, area_of(end.bore), 1.0);
  defaults.push_back({"discharge loss of " + owner + " (K on its bore)", 1.0, "", DefaultStatus::published,
                      "exit into the open: one velocity head", system.id, true});
}

void set_inertance(const PipingSystem& system, BrokenEnd& end) {
  for (const Element& element : end.path) {
    if (element.bore > 0.0 && element.length > 0.0) {
      end.inertance += system.fluid.density * element.length / area_of(element.bore);
    }
  }
}

/// The wall of a pipe, without its fittings.
Element wall_of(Element element) {
  if (auto* pipe = std::get_if<parts::PipeLaw>(&element.law)) pipe->fittings = {};
  return element;
}

double square_part(const Element& element) {
  constexpr double reference = 2e-3;  // [m3/s]
  return loss(element, reference).pressure_loss / (reference * reference);
}

/// Share of a straight stretch between two elevations that lies above a third.
double share_above(double one_end, double other_end, double elevation) {
  const double low = std::min(one_end, other_end), high = std::max(one_end, other_end);
  if (high > low) return std::clamp((high - elevation) / (high - low), 0.0, 1.0);
  return low > elevation ? 1.0 : 0.0;
}

/// [m3] What a line or a riser holds above an elevation; empty where it is not known.
std::optional<double> volume_above(const PipingSystem& system, const Run& run, double elevation) {
  const Place& from = system.places[at(run.from)];
  const Place& to = system.places[at(run.to)];
  if (!from.elevation_entered || (run.kind == RunKind::line && !to.elevation_entered)) return std::nullopt;
  double sum = 0.0;
  for (const Element& element : run.elements) {
    if (!(element.length > 0.0)) continue;
    const double end = to.elevation_entered ? to.elevation : from.elevation + element.length;
    const double share = share_above(from.elevation, end, elevation);
    if (share > 0.0 && !(element.bore > 0.0)) return std::nullopt;
    sum += share * element.length * area_of(element.bore);
  }
  return sum;
}

}  // namespace

double opening_loss(double density, double area, double discharge_coefficient) {
  const double effective = discharge_coefficient * area;
  return density / (2.0 * effective * effective);
}

BrokenEnd broken_riser(const site::Site& site, const PipingSystem& system, const site::Dispenser& dispenser,
                       const site::Inlet& inlet, bool torn_in_sump, std::vector<DefaultUsed>& defaults) {
  static_cast<void>(site);
  BrokenEnd end;
  const std::string id = site::place_name(dispenser, inlet);
  end.place = place_of(system, id);
  if (inlet.riser) end.bore = PartLaws::known_bore(*inlet.riser);
  set_groove_height(system, dispenser, inlet, end);
  if (torn_in_sump && inlet.riser && inlet.riser->length) end.elevation -= inlet.riser->length->likely.si();
  end.height = end.elevation - surface(system);
  const Run* run = riser_run(system, id);
  const bool lumped = inlet.loss_to_groove.has_value();
  if (lumped && !torn_in_sump) {
    PartLaws(system.fluid, defaults, end.problems)
        .add_loss(ElementKind::connection, id, "loss to the groove of " + id, *inlet.loss_to_groove, end.bore,
                  end.path);
  }
  for (const Element& element : run != nullptr ? run->elements : std::vector<Element>{}) {
    const bool connects = element.kind == ElementKind::connection;
    const bool is_riser = element.kind == ElementKind::riser && element.length > 0.0;
    if (element.kind == ElementKind::shear_valve && !lumped && !torn_in_sump) {
      end.valve = square_part(element);
      end.path.push_back(element);
    } else if (connects && !lumped) {
      end.path.push_back(element);
    } else if (is_riser && !torn_in_sump) {
      end.path.push_back(lumped ? wall_of(element) : element);
    }
  }
  set_inertance(system, end);
  set_discharge(system, id, inlet.discharge_loss, defaults, end);
  return end;
}

BrokenEnd open_hose(const site::Site& site, const PipingSystem& system, std::size_t hose, bool at_breakaway,
                    std::vector<DefaultUsed>& defaults) {
  static_cast<void>(site);
  BrokenEnd end;
  const HosePoint& point = system.hoses[hose];
  const Run& run = system.runs[at(point.run)];
  end.place = at(run.from);
  end.elevation = system.openings[at(run.to) - system.places.size()].elevation;
  end.height = end.elevation - surface(system);
  for (const Element& element : run.elements) {
    if (at_breakaway && element.kind == ElementKind::breakaway) break;
    end.path.push_back(element);
    if (element.bore > 0.0) end.bore = element.bore;
  }
  set_inertance(system, end);
  constexpr double nozzle_bore = 0.019;  // [m]
  if (!(end.bore > 0.0)) {
    end.bore = nozzle_bore;
    defaults.push_back({"bore of the open end of hose " + point.id, nozzle_bore, "m", DefaultStatus::illustrative,
                        "a 3/4-in hose; its velocity head only", system.id, true});
  }
  end.discharge = opening_loss(system.fluid.density, area_of(end.bore), 1.0);
  if (!at_breakaway) end.limit = point.limit * point.share;
  return end;
}

namespace {

/// What both ways of a cut have: where it is, and what a bore loses into the open.
void set_cut(const PipingSystem& system, const Run& run, double elevation, bool entered, double bores, BrokenEnd& end) {
  end.height_entered = system.elevations_known && entered;
  end.elevation = system.elevations_known ? elevation : surface(system);
  end.height = end.elevation - surface(system);
  for (const Element& element : run.elements) {
    if (element.bore > 0.0) end.bore = element.bore;
  }
  set_inertance(system, end);
  if (end.bore > 0.0) {
    end.discharge = opening_loss(system.fluid.density, bores * area_of(end.bore), 1.0);
  } else {
    end.problems.push_back(
        {Severity::error, "the bore of line '" + run.id + "' is not known", {}, "enter its bore", {}});
  }
}

}  // namespace

BrokenEnd cut_line(const PipingSystem& system, std::size_t run_index, double along, LineFed fed) {
  BrokenEnd end;
  const Run& run = system.runs[run_index];
  end.place = at(fed.from ? run.from : run.to);
  const double share = fed.from ? along : 1.0 - along;
  for (const Element& element : run.elements) {
    if (share > 0.0) end.path.push_back(shortened(element, share));
  }
  const Place& from = system.places[at(run.from)];
  const Place& to = system.places[at(run.to)];
  set_cut(system, run, from.elevation + along * (to.elevation - from.elevation),
          from.elevation_entered && to.elevation_entered, 1.0, end);
  return end;
}

BrokenEnd cut_loop(const PipingSystem& split, std::size_t run_index) {
  BrokenEnd end;
  end.place = split.places.size() - 1;
  const Place& cut = split.places.back();
  set_cut(split, split.runs[run_index], cut.elevation, cut.elevation_entered, 2.0, end);
  return end;
}

FlowTable path_table(const BrokenEnd& end, double last) {
  constexpr std::size_t samples = 97;
  if (!(last > 0.0)) return {};
  const double step = last / static_cast<double>(samples - 1);
  std::vector<double> values;
  for (std::size_t i = 0; i < samples; ++i) {
    double sum = 0.0;
    for (const Element& element : end.path) sum += loss(element, step * static_cast<double>(i)).pressure_loss;
    values.push_back(sum);
  }
  return {0.0, step, std::move(values)};
}

std::optional<double> volume_above(const PipingSystem& system, double elevation) {
  if (!system.elevations_known) return std::nullopt;
  double sum = 0.0;
  for (const Run& run : system.runs) {
    if (run.kind != RunKind::line && run.kind != RunKind::riser) continue;
    const std::optional<double> volume = volume_above(system, run, elevation);
    if (!volume) return std::nullopt;
    sum += *volume;
  }
  return sum;
}

Reached reached_without(const PipingSystem& system, std::size_t run) {
  std::vector<char> reached(system.places.size() + system.openings.size(), 0);
  for (const PumpPoint& pump : system.pumps) reached[at(system.runs[at(pump.run)].to)] = 1;
  bool moved = true;
  while (moved) {
    moved = false;
    for (std::size_t r = 0; r < system.runs.size(); ++r) {
      const Run& x = system.runs[r];
      if (r == run || x.kind == RunKind::pump) continue;
      char& from = reached[at(x.from)];
      char& to = reached[at(x.to)];
      if (from != 0 && to == 0) to = 1, moved = true;
      if (to != 0 && from == 0 && x.bounds.lowest < 0.0) from = 1, moved = true;
    }
  }
  Reached out;
  for (const HosePoint& hose : system.hoses) out.hoses.push_back(reached[at(system.runs[at(hose.run)].from)]);
  out.line = {reached[at(system.runs[run].from)] != 0, reached[at(system.runs[run].to)] != 0};
  return out;
}

}  // namespace forecourse::network
