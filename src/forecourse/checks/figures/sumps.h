#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {

/// A sump and the part that it belongs to.
struct SumpOf {
  std::string subject;  ///< id of the tank or the dispenser
  const site::Sump* sump = nullptr;
  std::vector<std::string> places;  ///< ids of the pumps or the dispenser that stand in it

  /// By which records may call it.
  [[nodiscard]] std::vector<std::string> names() const {
    std::vector<std::string> out = places;
    out.push_back(subject);
    return out;
  }
};

template <class Read>
std::vector<FigureAt> each_dispenser_sump(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    if (dispenser.sump) out.push_back(read(SumpOf{dispenser.id.text, &*dispenser.sump, {dispenser.id.text}}));
  }
  return out;
}

/// Of tanks, then of dispensers.
template <class Read>
std::vector<FigureAt> each_sump(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.sump) continue;
    SumpOf sump{tank.id.text, &*tank.sump, {}};
    for (const site::Pump& pump : facts.site.pumps) {
      if (pump.tank.text == tank.id.text) sump.places.push_back(pump.id.text);
    }
    FigureAt one = read(sump);
    if (is_above_ground(tank)) one.exempt = above_ground;
    out.push_back(std::move(one));
  }
  for (FigureAt& one : each_dispenser_sump(facts, read)) out.push_back(std::move(one));
  return out;
}

}  // namespace forecourse::checks
