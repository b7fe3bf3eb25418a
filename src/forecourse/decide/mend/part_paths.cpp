#include "forecourse/decide/mend/part_paths.h"

#include <algorithm>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/site/places.h"

namespace forecourse::decide {
namespace {

/// An item of a list as a path has it: by its id, else by its number from 1.
template <class Part>
std::string in_list(const std::vector<Part>& parts, const Part& part) {
  return part.id.empty() ? std::to_string(&part - parts.data() + 1) : part.id.text;
}

template <class Part>
std::vector<PartPath> plain(const std::vector<Part>& parts, const std::string& key) {
  std::vector<PartPath> out;
  out.reserve(parts.size());
  for (const Part& part : parts) out.push_back({part.id.text, key + "." + in_list(parts, part), {}});
  return out;
}

std::vector<PartPath> of_tanks(const site::Site& site, bool fills) {
  std::vector<PartPath> out;
  for (const site::Tank& tank : site.tanks) {
    const std::string path = "tank." + in_list(site.tanks, tank);
    const auto add = [&](const auto& parts, const char* noun) {
      for (const auto& part : parts) {
        out.push_back({checks::name_in_tank(tank, parts, part, noun), path + "." + noun + "." + in_list(parts, part),
                       tank.id.text});
      }
    };
    fills ? add(tank.fills, "fill") : add(tank.vents, "vent");
  }
  return out;
}

std::string inlet_in_list(const site::Dispenser& dispenser, const site::Inlet& inlet) {
  if (!inlet.id.empty()) return inlet.id.text;
  if (!inlet.product.empty()) return inlet.product.text;
  return std::to_string(&inlet - dispenser.inlets.data() + 1);
}

std::vector<PartPath> of_dispensers(const site::Site& site, bool hoses) {
  std::vector<PartPath> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    const std::string path = "dispenser." + in_list(site.dispensers, dispenser);
    if (hoses) {
      for (const site::Hose& hose : dispenser.hoses)
        out.push_back({hose.id.text, path + ".hose." + in_list(dispenser.hoses, hose), dispenser.id.text});
      continue;
    }
    for (const site::Inlet& inlet : dispenser.inlets) {
      out.push_back(
          {site::place_name(dispenser, inlet), path + ".inlet." + inlet_in_list(dispenser, inlet), dispenser.id.text});
    }
  }
  return out;
}

std::vector<PartPath> processors(const site::Site& site) {
  std::vector<PartPath> out;
  if (!site.surroundings) return out;
  const auto& all = site.surroundings->vapor_processors;
  for (const site::VaporProcessor& one : all) {
    const std::string name = in_list(all, one);
    out.push_back(
        {one.id.empty() ? "vapor processor " + name : one.id.text, "surroundings.vapor_processor." + name, {}});
  }
  return out;
}

std::vector<PartPath> ignitions(const site::Site& site) {
  std::vector<PartPath> out;
  if (!site.surroundings) return out;
  const auto& all = site.surroundings->ignitions;
  out.reserve(all.size());
  for (const site::IgnitionSource& one : all) {
    const std::string name = in_list(all, one);
    out.push_back({name, "surroundings.ignition." + name, {}});
  }
  return out;
}

}  // namespace

std::vector<PartPath> part_paths(const site::Site& site, PartOf of) {
  switch (of) {
    case PartOf::station:
      return {{"station", {}, {}}};
    case PartOf::tank:
      return plain(site.tanks, "tank");
    case PartOf::fill:
      return of_tanks(site, true);
    case PartOf::vent:
      return of_tanks(site, false);
    case PartOf::pump:
      return plain(site.pumps, "pump");
    case PartOf::line:
      return plain(site.lines, "line");
    case PartOf::dispenser:
      return plain(site.dispensers, "dispenser");
    case PartOf::inlet:
      return of_dispensers(site, false);
    case PartOf::hose:
      return of_dispensers(site, true);
    case PartOf::stop:
      return plain(site.emergency_stops, "emergency_stop");
    case PartOf::delivery:
      return plain(site.deliveries, "delivery");
    case PartOf::processor:
      return processors(site);
    case PartOf::ignition:
      return ignitions(site);
  }
  return {};
}

std::string path_of(const site::Site& site, PartOf of, const std::string& subject) {
  for (const PartPath& one : part_paths(site, of)) {
    if (one.subject == subject) return one.path;
  }
  return {};
}

}  // namespace forecourse::decide
