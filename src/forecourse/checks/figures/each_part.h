#pragma once

#include <functional>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/site/places.h"

namespace forecourse::checks {

// A figure for each part of one kind, in the order of the site file. `read` gives a FigureAt.

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_dispenser(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) out.push_back(read(dispenser));
  return out;
}

/// `read(dispenser, hose)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_hose(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) out.push_back(read(dispenser, hose));
  }
  return out;
}

template <class Read>
[[nodiscard]] std::vector<FigureAt> each_tank(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) out.push_back(read(tank));
  return out;
}

template <class Part>
[[nodiscard]] std::string name_in_tank(const site::Tank& tank, const std::vector<Part>& parts, const Part& part,
                                       const char* noun) {
  if (!part.id.empty()) return part.id.text;
  return tank.id.text + " " + noun + " " + std::to_string(&part - parts.data() + 1);
}

/// `read(tank, fill, its name)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_fill(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    for (const site::Fill& fill : tank.fills)
      out.push_back(read(tank, fill, name_in_tank(tank, tank.fills, fill, "fill")));
  }
  return out;
}

/// `read(tank, vent, its name)`
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_vent(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    for (const site::Vent& vent : tank.vents)
      out.push_back(read(tank, vent, name_in_tank(tank, tank.vents, vent, "vent")));
  }
  return out;
}

/// A part whose figure is still to be told.
[[nodiscard]] FigureAt of_part(std::string subject, SourceSpan where);

/// Whether a tank lies in the ground: as stated, else by its elevation, which counts from grade; empty: not known.
[[nodiscard]] std::optional<bool> is_buried(const site::Tank& tank);

/// A figure of a buried tank alone: exempt for one above ground, and unknown where that is not known.
template <class Read>
[[nodiscard]] std::vector<FigureAt> each_buried_tank(const Facts& facts, Read read) {
  return each_tank(facts, [&](const site::Tank& tank) {
    const std::optional<bool> buried = is_buried(tank);
    if (buried && *buried) return read(tank);
    FigureAt out = of_part(tank.id.text, tank.where);
    if (buried)
      out.exempt = "the tank stands above ground";
    else
      out.enter = "enter above_ground of the tank, or its bottom_elevation and shape";
    return out;
  });
}

/// Length of whip and curb hose together [m]; empty: not known.
[[nodiscard]] std::optional<double> hose_reach(const site::Hose& hose);

// The making of a line of a table of figures.
template <class Q>
[[nodiscard]] Figure amount_figure(std::string_view id, std::string_view words, const char* unit,
                                   std::vector<FigureAt> (*read)(const Facts&)) {
  return {id, words, FigureKind::amount, &Q::kind(), unit, Measured::fuel, read};
}

}  // namespace forecourse::checks
