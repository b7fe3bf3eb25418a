#include <algorithm>
#include <limits>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/plan.h"

namespace forecourse::checks {
namespace {

/// What a distance is measured to.
struct Others {
  std::vector<std::optional<Outline>> outlines;
  std::string list;     ///< key under which they are listed
  std::string unknown;  ///< what to enter before it is known which of them count; empty: it is known
};

const site::Surroundings& around(const Facts& facts) {
  static const site::Surroundings none{};
  return facts.site.surroundings ? *facts.site.surroundings : none;
}

bool complete(const Facts& facts) { return around(facts).complete.value_or(false); }

/// Adds what counts, or says why that is not known.
template <class Part>
void add(Others& out, const Part& part, std::optional<bool> counts, const char* enter) {
  if (!counts) out.unknown = enter;
  if (counts.value_or(true)) out.outlines.push_back(outline(part));
}

Others lot_lines(const Facts& facts, bool buildable) {
  Others out{{}, "[[surroundings.lot_line]]", {}};
  for (const site::LotLine& line : around(facts).lot_lines) {
    add(out, line, buildable ? line.buildable : site::Fact(true), "enter buildable of the lot line");
  }
  return out;
}
Others all_lot_lines(const Facts& facts) { return lot_lines(facts, false); }
Others buildable_lot_lines(const Facts& facts) { return lot_lines(facts, true); }

Others openings(const Facts& facts) {
  Others out{{}, "[[surroundings.building.opening]]", {}};
  for (const site::Building& building : around(facts).buildings) {
    for (const site::Opening& opening : building.openings) out.outlines.push_back(outline(opening.position));
  }
  return out;
}

Others buildings(const Facts& facts) {
  Others out{{}, "[[surroundings.building]]", {}};
  for (const site::Building& building : around(facts).buildings) out.outlines.push_back(outline(building));
  return out;
}

/// Whether a building's walls burn, or do not withstand fire for an hour.
std::optional<bool> is_weak(const site::Building& building) {
  const double hour = to_si(1.0, "h");
  const std::optional<bool> short_of_hour =
      building.fire_rating ? std::optional<bool>(building.fire_rating->likely.si() < hour) : std::nullopt;
  if (building.combustible.value_or(false) || short_of_hour.value_or(false)) return true;
  if (!building.combustible || !short_of_hour) return std::nullopt;
  return false;
}

Others weak_buildings(const Facts& facts) {
  Others out{{}, "[[surroundings.building]]", {}};
  for (const site::Building& building : around(facts).buildings) {
    add(out, building, is_weak(building), "enter combustible and fire_rating of the building");
  }
  return out;
}

Others basements(const Facts& facts) {
  Others out{{}, "[[surroundings.building]]", {}};
  for (const site::Building& building : around(facts).buildings) {
    add(out, building, building.basement, "enter basement of the building");
  }
  return out;
}

Others ignitions(const Facts& facts) {
  Others out{{}, "[[surroundings.ignition]]", {}};
  for (const site::IgnitionSource& source : around(facts).ignitions) out.outlines.push_back(outline(source.position));
  return out;
}

/// Those that lie lower than vapor of a spill reaches. \source [ifc_2018, table 5703.1.1]
Others low_ignitions(const Facts& facts) {
  const double reach = to_si(18.0, "in");
  Others out{{}, "[[surroundings.ignition]]", {}};
  for (const site::IgnitionSource& source : around(facts).ignitions) {
    const std::optional<bool> low =
        source.elevation ? std::optional<bool>(source.elevation->likely.si() < reach) : std::nullopt;
    add(out, source.position, low, "enter elevation of the source of ignition");
  }
  return out;
}

/// The distance from a part to the nearest of others, less what is in reach of the part.
FigureAt nearest(const Facts& facts, FigureAt out, const std::optional<Outline>& from, const Others& others,
                 const char* enter, double reach = 0.0) {
  if (others.outlines.empty() && others.unknown.empty()) {
    if (complete(facts))
      out.exempt = "there is none: " + others.list + " lists no such thing, and all is listed";
    else
      out.enter = "enter " + others.list + ", or complete = true in [surroundings] where there is none";
    return out;
  }
  const bool all_known =
      std::all_of(others.outlines.begin(), others.outlines.end(), [](const auto& o) { return o.has_value(); });
  if (!others.unknown.empty() || !all_known || !from) {
    out.enter = !others.unknown.empty() ? others.unknown
                : !from                 ? enter
                                        : "enter where each of " + others.list + " lies";
    return out;
  }
  double least = std::numeric_limits<double>::infinity();
  for (const auto& other : others.outlines) least = std::min(least, distance(*from, *other));
  out.value = std::max(0.0, least - reach);
  if (!complete(facts)) {
    out.rests_on = "surroundings of which it is not said that all are listed";
    out.enter = "enter complete = true in [surroundings] once all are listed";
  }
  return out;
}

std::vector<FigureAt> from_dispensers(const Facts& facts, const Others& others) {
  return each_dispenser(facts, [&](const site::Dispenser& one) {
    return nearest(facts, of_part(one.id.text, one.where), outline(one.position), others,
                   "enter position of the dispenser");
  });
}
std::vector<FigureAt> dispenser_to_lot_line(const Facts& facts) { return from_dispensers(facts, all_lot_lines(facts)); }
std::vector<FigureAt> dispenser_to_building(const Facts& facts) {
  return from_dispensers(facts, weak_buildings(facts));
}
std::vector<FigureAt> dispenser_to_ignition(const Facts& facts) { return from_dispensers(facts, ignitions(facts)); }

std::vector<FigureAt> nozzle_to_opening(const Facts& facts) {
  const Others others = openings(facts);
  return each_hose(facts, [&](const site::Dispenser& dispenser, const site::Hose& hose) {
    const std::optional<double> reach = hose_reach(hose);
    return nearest(facts, of_part(hose.id.text, hose.where), reach ? outline(dispenser.position) : std::nullopt, others,
                   "enter position of the dispenser and the length of whip and curb of the hose", reach.value_or(0.0));
  });
}

std::vector<FigureAt> from_vents(const Facts& facts, const Others& others) {
  return each_vent(facts, [&](const site::Tank&, const site::Vent& vent, std::string name) {
    return nearest(facts, of_part(std::move(name), vent.where), outline(vent.position), others,
                   "enter position of the vent");
  });
}
std::vector<FigureAt> vent_to_opening(const Facts& facts) { return from_vents(facts, openings(facts)); }
std::vector<FigureAt> vent_to_lot_line(const Facts& facts) { return from_vents(facts, buildable_lot_lines(facts)); }
std::vector<FigureAt> vent_to_ignition(const Facts& facts) { return from_vents(facts, ignitions(facts)); }

std::vector<FigureAt> from_fills(const Facts& facts, const Others& others) {
  return each_fill(facts, [&](const site::Tank&, const site::Fill& fill, std::string name) {
    return nearest(facts, of_part(std::move(name), fill.where), outline(fill.position), others,
                   "enter position of the fill");
  });
}
std::vector<FigureAt> fill_to_opening(const Facts& facts) { return from_fills(facts, openings(facts)); }
std::vector<FigureAt> fill_to_lot_line(const Facts& facts) { return from_fills(facts, all_lot_lines(facts)); }

/// With its own limit: wider where the tanker's hose does not join tightly.
std::vector<FigureAt> fill_to_ignition(const Facts& facts) {
  const Others others = low_ignitions(facts);
  return each_fill(facts, [&](const site::Tank&, const site::Fill& fill, std::string name) {
    FigureAt out =
        nearest(facts, of_part(std::move(name), fill.where), fill.tight ? outline(fill.position) : std::nullopt, others,
                "enter position and tight of the fill");
    out.at_least = to_si(fill.tight.value_or(false) ? 5.0 : 10.0, "ft");
    return out;
  });
}

std::vector<FigureAt> from_tanks(const Facts& facts, const Others& others) {
  return each_buried_tank(facts, [&](const site::Tank& tank) {
    return nearest(facts, of_part(tank.id.text, tank.where), outline(tank), others,
                   "enter position and axis of the tank, and its shape with outside_diameter");
  });
}
std::vector<FigureAt> tank_to_basement(const Facts& facts) { return from_tanks(facts, basements(facts)); }
std::vector<FigureAt> tank_to_lot_line(const Facts& facts) { return from_tanks(facts, all_lot_lines(facts)); }
std::vector<FigureAt> tank_to_buildable(const Facts& facts) { return from_tanks(facts, buildable_lot_lines(facts)); }

/// Shell to shell. All tanks of a station are listed in its file.
std::vector<FigureAt> tank_to_tank(const Facts& facts) {
  return each_buried_tank(facts, [&](const site::Tank& tank) {
    FigureAt out = of_part(tank.id.text, tank.where);
    double least = std::numeric_limits<double>::infinity();
    bool known = true;
    const std::optional<Outline> own = outline(tank);
    for (const site::Tank& other : facts.site.tanks) {
      if (&other == &tank || !is_buried(other).value_or(true)) continue;
      const std::optional<Outline> its = outline(other);
      known = known && own && its;
      if (own && its) least = std::min(least, distance(*own, *its));
    }
    if (known && least == std::numeric_limits<double>::infinity())
      out.exempt = "no other tank lies in the ground";
    else if (known)
      out.value = least;
    else
      out.enter = "enter position and axis of the tanks, and their shape with outside_diameter";
    return out;
  });
}

std::vector<FigureAt> from_processors(const Facts& facts, const Others& others) {
  std::vector<FigureAt> out;
  int number = 0;
  for (const site::VaporProcessor& one : around(facts).vapor_processors) {
    ++number;
    std::string name = one.id.empty() ? "vapor processor " + std::to_string(number) : one.id.text;
    out.push_back(nearest(facts, of_part(std::move(name), one.where), outline(one.position), others,
                          "enter position of the vapor processor"));
  }
  return out;
}
std::vector<FigureAt> processor_to_building(const Facts& facts) { return from_processors(facts, buildings(facts)); }
std::vector<FigureAt> processor_to_lot_line(const Facts& facts) {
  return from_processors(facts, buildable_lot_lines(facts));
}
/// All dispensers of a station are listed in its file.
std::vector<FigureAt> processor_to_dispenser(const Facts& facts) {
  Others others{{}, "[[dispenser]]", {}};
  for (const site::Dispenser& one : facts.site.dispensers) others.outlines.push_back(outline(one.position));
  std::vector<FigureAt> out = from_processors(facts, others);
  for (FigureAt& one : out) one.rests_on.clear();
  return out;
}

Figure length(std::string_view id, std::string_view words, std::vector<FigureAt> (*read)(const Facts&)) {
  return amount_figure<Length>(id, words, "m", read);
}

}  // namespace

std::vector<Figure> ground_figures() {
  return {
      length("dispenser-to-lot-line", "distance from a dispenser to the nearest lot line", dispenser_to_lot_line),
      length("dispenser-to-building",
             "distance from a dispenser to the nearest wall that burns or withstands fire for less than an hour",
             dispenser_to_building),
      length("dispenser-to-ignition", "distance from a dispenser to the nearest fixed source of ignition",
             dispenser_to_ignition),
      length("nozzle-to-opening", "what is left between a nozzle at the end of its hose and the nearest opening",
             nozzle_to_opening),
      length("vent-to-opening", "distance from a vent to the nearest opening of a building", vent_to_opening),
      length("vent-to-lot-line", "distance from a vent to the nearest lot line that can be built on", vent_to_lot_line),
      length("vent-to-ignition", "distance from a vent to the nearest fixed source of ignition", vent_to_ignition),
      length("fill-to-opening", "distance from a fill to the nearest opening of a building", fill_to_opening),
      length("fill-to-lot-line", "distance from a fill to the nearest lot line", fill_to_lot_line),
      length("fill-to-ignition", "distance from a fill to the nearest source of ignition lower than 18 in",
             fill_to_ignition),
      length("tank-to-basement", "distance from a buried tank to the nearest building with a basement or pit",
             tank_to_basement),
      length("tank-to-lot-line", "distance from a buried tank to the nearest lot line", tank_to_lot_line),
      length("tank-to-buildable", "distance from a buried tank to the nearest lot line that can be built on",
             tank_to_buildable),
      length("tank-to-tank", "distance from a buried tank to the nearest other, shell to shell", tank_to_tank),
      length("processor-to-building", "distance from a vapor processor to the nearest building", processor_to_building),
      length("processor-to-lot-line", "distance from a vapor processor to the nearest lot line that can be built on",
             processor_to_lot_line),
      length("processor-to-dispenser", "distance from a vapor processor to the nearest dispenser",
             processor_to_dispenser),
  };
}

}  // namespace forecourse::checks
