#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/gasoline.h"

// Parts of a station one by one, in the order of the site file, each with the id that a finding has.

namespace forecourse::checks {

/// The id of a part of a tank, or "T1 fill 1": no two parts of a station go by one name.
template <class Part>
[[nodiscard]] std::string name_in_tank(const site::Tank& tank, const std::vector<Part>& parts, const Part& part,
                                       const char* noun) {
  if (!part.id.empty()) return part.id.text;
  return tank.id.text + " " + noun + " " + std::to_string(&part - parts.data() + 1);
}
[[nodiscard]] inline std::string name_of(const site::Tank& tank, const site::Fill& fill) {
  return name_in_tank(tank, tank.fills, fill, "fill");
}

/// By which records may call a fill: the only one of a tank that has no id goes by its tank as well.
[[nodiscard]] inline std::vector<std::string> record_names_of(const site::Tank& tank, const site::Fill& fill) {
  if (fill.id.empty() && tank.fills.size() == 1) return {name_of(tank, fill), tank.id.text};
  return {name_of(tank, fill)};
}

// `tell` is called with each part of one kind.

/// `tell(hose, dispenser)`
template <class Tell>
void each_hose_of(const site::Site& site, Tell tell) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) tell(hose, dispenser);
  }
}

/// `tell(id of the place, inlet, dispenser)`
template <class Tell>
void each_inlet_of(const site::Site& site, Tell tell) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) tell(site::place_name(dispenser, inlet), inlet, dispenser);
  }
}

/// `tell(name, fill, tank)`
template <class Tell>
void each_fill_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    for (const site::Fill& fill : tank.fills) tell(name_of(tank, fill), fill, tank);
  }
}

/// `tell(names by which records may call it, device, its noun)`: of valves by their fill, of alarms by their tank.
template <class Tell>
void each_overfill_device_of(const site::Tank& tank, Tell tell) {
  for (const site::Fill& fill : tank.fills) {
    if (fill.overfill_valve) tell(record_names_of(tank, fill), *fill.overfill_valve, "overfill valve");
  }
  if (tank.overfill_alarm) tell(std::vector<std::string>{tank.id.text}, *tank.overfill_alarm, "overfill alarm");
}

/// `tell(name, vent, tank)`
template <class Tell>
void each_vent_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    for (const site::Vent& vent : tank.vents) tell(name_in_tank(tank, tank.vents, vent, "vent"), vent, tank);
  }
}

/// `tell(name, valve)`
template <class Tell>
void each_vent_valve_of(const site::Site& site, Tell tell) {
  each_vent_of(site, [&](std::string name, const site::Vent& vent, const site::Tank&) {
    if (vent.valve) tell(std::move(name), *vent.valve);
  });
}

/// `tell(id of the tank or dispenser, sump)`
template <class Tell>
void each_sump_of(const site::Site& site, Tell tell) {
  for (const site::Tank& tank : site.tanks) {
    if (tank.sump) tell(tank.id.text, *tank.sump);
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    if (dispenser.sump) tell(dispenser.id.text, *dispenser.sump);
  }
}

// A figure for each part of one kind. `read` gives a FigureAt.

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_dispenser(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) out.push_back(read(dispenser));
  return out;
}

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_tank(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) out.push_back(read(tank));
  return out;
}

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_line(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Line& line : facts.site.lines) out.push_back(read(line));
  return out;
}

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_emergency_stop(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::EmergencyStop& stop : facts.site.emergency_stops) out.push_back(read(stop));
  return out;
}

/// `read(dispenser, hose)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_hose(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site,
               [&](const site::Hose& hose, const site::Dispenser& dispenser) { out.push_back(read(dispenser, hose)); });
  return out;
}

/// `read(tank, fill, its name)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_fill(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](std::string name, const site::Fill& fill, const site::Tank& tank) {
    out.push_back(read(tank, fill, std::move(name)));
  });
  return out;
}

/// `read(tank, vent, its name)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_vent(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_vent_of(facts.site, [&](std::string name, const site::Vent& vent, const site::Tank& tank) {
    out.push_back(read(tank, vent, std::move(name)));
  });
  return out;
}

/// `read(id of the inlet, valve, dispenser)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_shear_valve(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_inlet_of(facts.site, [&](std::string id, const site::Inlet& inlet, const site::Dispenser& dispenser) {
    if (inlet.shear_valve) out.push_back(read(std::move(id), *inlet.shear_valve, dispenser));
  });
  return out;
}

/// A part whose figure is still to be told.
[[nodiscard]] FigureAt of_part(std::string subject, SourceSpan where);

// Tanks above and under the ground

inline constexpr const char* above_ground = "the tank stands above ground";

/// Whether it is stated that a tank stands above ground.
[[nodiscard]] inline bool is_above_ground(const site::Tank& tank) { return tank.above_ground.value_or(false); }

/// From the lowest to the highest inside point [m]; empty: not known.
[[nodiscard]] std::optional<double> inside_height(const site::Tank& tank);

/// Whether a tank lies in the ground: as stated, else by its elevation, which counts from grade; empty: not known.
[[nodiscard]] std::optional<bool> is_buried(const site::Tank& tank);

/// Why a tank needs neither spill nor overfill equipment by the federal rule; empty: it needs them.
[[nodiscard]] std::string spill_exemption(const site::Tank& tank);

/// A figure of a buried tank alone: exempt for one above ground, and unknown where that is not known.
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_buried_tank(const Facts& facts, Read read) {
  return each_tank(facts, [&](const site::Tank& tank) {
    const std::optional<bool> buried = is_buried(tank);
    if (buried && *buried) return read(tank);
    FigureAt out = of_part(tank.id.text, tank.where);
    if (buried)
      out.exempt = above_ground;
    else
      out.enter = "enter above_ground of the tank, or its bottom_elevation and shape";
    return out;
  });
}

/// A figure of each tank that is not stated to stand above ground; one that is has it exempt.
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_tank_not_above_ground(const Facts& facts, Read read) {
  return each_tank(facts, [&](const site::Tank& tank) {
    FigureAt out = read(tank);
    if (is_above_ground(tank)) out.exempt = above_ground;
    return out;
  });
}

// What several figures ask of a part

/// Length of whip and curb hose together [m]; empty: not known.
[[nodiscard]] std::optional<double> hose_reach(const site::Hose& hose);

/// Inside diameter [m], as entered, else that of its nominal size; empty: not known.
[[nodiscard]] std::optional<double> bore_of(const site::Pipe& pipe);

/// The nominal size of a pipe of this bore [m]; empty: smaller than any. No bore of Schedule 40 or 80 lies further than
/// 7.5 % below its nominal size.
/// \source [asme_b36_10m, inside diameters]
[[nodiscard]] std::optional<double> nominal_size(double bore);

// Vents

/// The nominal size of a vent's pipe [m]; empty: its bore is not known.
[[nodiscard]] std::optional<double> vent_nominal(const site::Vent& vent);

/// Of a vent's pipe, with the branch from the tank where it is shared [m]; empty: not known.
[[nodiscard]] std::optional<double> vent_length(const site::Vent& vent);

/// Whether a tank breathes through a vent, its own or one that it shares.
/// \param own the tank that the vent is entered with
[[nodiscard]] bool breathes_through(const site::Vent& vent, const site::Tank& own, const site::Tank& tank);

using studies::is_gasoline;
using studies::product_of;

/// Of several of which one is enough: empty where none is and one of them is not known.
template <class Parts, class Is>
[[nodiscard]] std::optional<bool> any_is(const Parts& parts, Is is) {
  std::optional<bool> out = false;
  for (const auto& part : parts) {
    const std::optional<bool> one = is(part);
    if (one.value_or(false)) return true;
    if (!one) out.reset();
  }
  return out;
}

// The making of a line of a table of figures.
template <class Q>
[[nodiscard]] Figure amount_figure(std::string_view id, std::string_view words, const char* unit,
                                   std::vector<FigureAt> (*read)(const Facts&)) {
  return {id, words, FigureKind::amount, &Q::kind(), unit, Measured::fuel, read};
}

}  // namespace forecourse::checks
