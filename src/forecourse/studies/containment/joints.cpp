#include "forecourse/studies/containment/joints.h"

#include <algorithm>
#include <cmath>

#include "forecourse/site/places.h"

namespace forecourse::studies {
namespace {

/// What stands at a place of the piping.
struct PlaceFacts {
  std::string words;                ///< "pump P1", "dispenser D1"
  std::string owner;                ///< id of the tank or dispenser that may bear a sump
  std::optional<double> elevation;  ///< [m] of the line there
};

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

PlaceFacts facts_of(const site::Site& site, const std::string& place) {
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text == place) return {"pump " + place, pump.tank.text, si(pump.discharge_elevation)};
  }
  for (const site::Branch& branch : site.branches) {
    if (branch.id.text == place) return {"branch " + place, {}, si(branch.elevation)};
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) != place) continue;
      return {"dispenser " + dispenser.id.text, dispenser.id.text, si(inlet.line_elevation)};
    }
  }
  return {place, {}, {}};
}

const ContainedSump* sump_of(const std::vector<ContainedSump>& sumps, const std::string& owner) {
  const auto found =
      std::find_if(sumps.begin(), sumps.end(), [&](const ContainedSump& sump) { return sump.owner == owner; });
  return owner.empty() || found == sumps.end() ? nullptr : &*found;
}

void tell_holding(const ContainedSump* sump, Holds& holds, std::string& words, const std::string& before) {
  if (sump == nullptr) {
    holds = Holds::not_assured;
    words = before + "into the ground: no sump is listed there";
  } else if (sump->holds == Holds::assured) {
    holds = Holds::assured;
    words = before + "into the sump of " + sump->owner;
  } else {
    holds = Holds::not_assured;
    words = before + "into the sump of " + sump->owner + ", which is not assured: " + sump->reasons.front();
  }
}

Joint joint(const std::string& id, std::string what, const PlaceFacts& at, const std::vector<ContainedSump>& sumps) {
  Joint out;
  out.id = id;
  out.what = std::move(what);
  const ContainedSump* sump = sump_of(sumps, at.owner);
  if (sump != nullptr) out.sump = sump->owner;
  tell_holding(sump, out.holds, out.words, {});
  return out;
}

/// Toward which end a line falls, by what was entered: a fall is told toward the tank sump, elevations tell by
/// themselves.
void set_fall(const site::Line& line, const PlaceFacts& from, const PlaceFacts& to, DrainBack& out) {
  if (line.fall) {
    out.fall = line.fall->likely.si();
    out.to = *out.fall >= 0.0 ? line.from.text : line.to.text;
  } else if (from.elevation && to.elevation && *from.elevation != *to.elevation) {
    const double length = line.pipe.length ? line.pipe.length->likely.si() : 0.0;
    const bool to_start = *from.elevation < *to.elevation;
    if (length > 0.0) out.fall = std::abs(*from.elevation - *to.elevation) / length;
    out.to = to_start ? line.from.text : line.to.text;
  }
}

}  // namespace

std::vector<Joint> joints_of(const site::Site& site, const std::vector<ContainedSump>& sumps) {
  std::vector<Joint> joints;
  for (const site::Line& line : site.lines) {
    for (const std::string& place : {line.from.text, line.to.text}) {
      const PlaceFacts at = facts_of(site, place);
      joints.push_back(joint(place, "line " + line.id.text + " at " + at.words, at, sumps));
    }
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      const std::string place = site::place_name(dispenser, inlet);
      const PlaceFacts at = facts_of(site, place);
      if (inlet.riser) joints.push_back(joint(place, "riser of " + place, at, sumps));
      if (inlet.shear_valve) joints.push_back(joint(place, "shear valve of " + place, at, sumps));
    }
  }
  return joints;
}

std::vector<DrainBack> drain_backs(const site::Site& site, const std::vector<ContainedSump>& sumps) {
  std::vector<DrainBack> lines;
  for (const site::Line& line : site.lines) {
    DrainBack out;
    out.line = line.id.text;
    out.double_wall = line.double_wall.value_or(false);
    if (!out.double_wall) {
      out.holds = line.double_wall ? Holds::not_assured : Holds::not_determined;
      out.words =
          line.double_wall ? "one wall: what leaks goes into the ground" : "whether it has two walls is not entered";
      lines.push_back(std::move(out));
      continue;
    }
    set_fall(line, facts_of(site, line.from.text), facts_of(site, line.to.text), out);
    if (out.to.empty()) {
      out.words = "toward which end it falls is not known: enter fall, or the elevations of its ends";
    } else {
      const PlaceFacts at = facts_of(site, out.to);
      const ContainedSump* sump = sump_of(sumps, at.owner);
      if (sump != nullptr) out.sump = sump->owner;
      tell_holding(sump, out.holds, out.words, "between its walls to " + at.words + ", ");
    }
    lines.push_back(std::move(out));
  }
  return lines;
}

}  // namespace forecourse::studies
