#include "forecourse/decide/mend/taken_place.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/plan.h"
#include "forecourse/decide/mend/part_paths.h"

namespace forecourse::decide {
namespace {

using checks::Outline;

/// A part on plan.
struct Spot {
  PartOf of = PartOf::station;
  std::string words;  ///< "dispenser D2"
  std::optional<Outline> outline;
};

/// Of a tank whose axis is not entered what it covers whichever way it lies.
std::optional<Outline> covered_by(const site::Tank& tank) {
  std::optional<Outline> out = checks::outline(tank);
  if (out) return out;
  out = checks::outline(tank.position);
  if (out && tank.shape && tank.shape->outside_diameter) out->radius = tank.shape->outside_diameter->likely.si() / 2.0;
  return out;
}

/// In an order that a change of one place does not change.
std::vector<Spot> spots_of(const site::Site& site) {
  std::vector<Spot> out;
  for (const site::Dispenser& one : site.dispensers) {
    out.push_back({PartOf::dispenser, "dispenser " + one.id.text, checks::outline(one.position)});
  }
  for (const site::Pump& one : site.pumps) {
    out.push_back({PartOf::pump, "pump " + one.id.text, checks::outline(one.position)});
  }
  for (const site::Tank& tank : site.tanks) {
    out.push_back({PartOf::tank, "tank " + tank.id.text, covered_by(tank)});
    for (const site::Fill& one : tank.fills) {
      const std::string name = checks::name_in_tank(tank, tank.fills, one, "fill");
      out.push_back({PartOf::fill, "fill " + name, checks::outline(one.position)});
    }
    for (const site::Vent& one : tank.vents) {
      const std::string name = checks::name_in_tank(tank, tank.vents, one, "vent");
      out.push_back({PartOf::vent, "vent " + name, checks::outline(one.position)});
    }
  }
  if (!site.surroundings) return out;
  for (const site::VaporProcessor& one : site.surroundings->vapor_processors) {
    out.push_back({PartOf::processor, "vapor processor " + one.id.text, checks::outline(one.position)});
  }
  return out;
}

bool is_same(const std::optional<Outline>& a, const std::optional<Outline>& b) {
  if (!a || !b) return !a && !b;
  return std::equal(a->corners.begin(), a->corners.end(), b->corners.begin(), b->corners.end(),
                    [](const auto& p, const auto& q) { return p.x == q.x && p.y == q.y; });
}

bool stands_alone(PartOf part) { return part == PartOf::dispenser || part == PartOf::processor; }

/// What is kept between two parts [m]; negative: they may stand on one another.
double apart(PartOf a, PartOf b) {
  constexpr double own_size = 1.0;  // [m] of a dispenser
  if (stands_alone(a) || stands_alone(b)) return own_size;
  return a == PartOf::tank && b == PartOf::tank ? 0.0 : -1.0;
}

/// Where a part is moved from and to.
struct Move {
  const Outline& from;
  const Outline& to;
};

/// Nearer than is kept, and nearer than before.
bool is_on(const Move& move, const std::optional<Outline>& other, double kept) {
  if (!other || kept < 0.0) return false;
  const double now = checks::distance(move.to, *other);
  return now <= kept && now < checks::distance(move.from, *other);
}

std::string on_surroundings(const Move& move, PartOf part, const site::Site& site) {
  if (!site.surroundings) return {};
  if (part != PartOf::vent) {
    for (const site::Building& one : site.surroundings->buildings) {
      if (is_on(move, checks::outline(one), 0.0)) return one.id.empty() ? "a building" : "building " + one.id.text;
    }
  }
  const Outline way{{move.from.corners.front(), move.to.corners.front()}};
  for (const site::LotLine& one : site.surroundings->lot_lines) {
    const auto line = checks::outline(one);
    if (line && checks::distance(way, *line) <= 0.0) return "or beyond the lot line";
  }
  return {};
}

}  // namespace

std::string taken_by(const site::Site& before, const site::Site& after) {
  const std::vector<Spot> then = spots_of(before);
  const std::vector<Spot> now = spots_of(after);
  for (std::size_t i = 0; i < std::min(then.size(), now.size()); ++i) {
    if (is_same(then[i].outline, now[i].outline) || !then[i].outline || !now[i].outline) continue;
    const Move move{*then[i].outline, *now[i].outline};
    for (std::size_t other = 0; other < now.size(); ++other) {
      if (other != i && is_on(move, now[other].outline, apart(now[i].of, now[other].of))) return now[other].words;
    }
    return on_surroundings(move, now[i].of, after);
  }
  return {};
}

}  // namespace forecourse::decide
