#include "forecourse/network/sets/hose_group.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>
#include <variant>

#include "forecourse/base/index.h"

namespace forecourse::network {
namespace {

/// Whether it can be computed and a pump feeds it.
bool delivers(const PipingSystem& system) {
  return system.graph &&
         std::any_of(system.pumps.begin(), system.pumps.end(), [](const PumpPoint& pump) { return pump.running; });
}

/// A hose with all of its product's systems found, by its id.
struct Whole {
  std::vector<std::pair<std::size_t, std::size_t>> parts;  ///< system of the station, hose of it
  double share = 0.0;
};

std::map<std::string, Whole> whole_hoses(const StationNetwork& network) {
  std::map<std::string, Whole> found;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    if (!delivers(network.systems[s])) continue;
    for (std::size_t h = 0; h < network.systems[s].hoses.size(); ++h) {
      Whole& whole = found[network.systems[s].hoses[h].id];
      whole.parts.emplace_back(s, h);
      whole.share += network.systems[s].hoses[h].share;
    }
  }
  std::erase_if(found, [](const auto& one) { return std::abs(one.second.share - 1.0) > 1e-6; });
  return found;
}

/// For each system the first one that a chain of blended hoses ties it to.
std::vector<std::size_t> first_tied(const StationNetwork& network, const std::map<std::string, Whole>& hoses) {
  std::vector<std::size_t> first(network.systems.size());
  std::iota(first.begin(), first.end(), std::size_t{0});
  for (const auto& [id, whole] : hoses) {
    for (const auto& part : whole.parts) {
      const std::size_t a = first[whole.parts.front().first];
      const std::size_t b = first[part.first];
      for (std::size_t& f : first) f = f == a || f == b ? std::min(a, b) : f;
    }
  }
  return first;
}

bool is_same(const parts::Law& a, const parts::Law& b) {
  return std::visit(
      [&](const auto& one) {
        using L = std::decay_t<decltype(one)>;
        if constexpr (std::is_same_v<L, parts::PumpLaw>) {
          return false;
        } else {
          const L* other = std::get_if<L>(&b);
          return other != nullptr && one == *other;
        }
      },
      a);
}

bool is_same(const Element& a, const Element& b) {
  return a.kind == b.kind && a.flow_factor == b.flow_factor && is_same(a.law, b.law);
}

bool is_same(const HoseGroup& group, const HosePart& a, const HosePart& b) {
  if (a.system != b.system || group.point(a).share != group.point(b).share) return false;
  const Run& x = group.run(a);
  const Run& y = group.run(b);
  const PipingSystem& system = *group.systems[a.system];
  const auto outlet = [&](const Run& run) { return system.openings[at(run.to) - system.places.size()].elevation; };
  return x.from == y.from && outlet(x) == outlet(y) && x.bounds.lowest == y.bounds.lowest &&
         x.bounds.highest == y.bounds.highest &&
         std::equal(x.elements.begin(), x.elements.end(), y.elements.begin(), y.elements.end(),
                    [](const Element& one, const Element& other) { return is_same(one, other); });
}

bool is_same(const HoseGroup& group, const GroupHose& a, const GroupHose& b) {
  return std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(),
                    [&](const HosePart& x, const HosePart& y) { return is_same(group, x, y); });
}

std::vector<std::vector<std::size_t>> equal_hoses(const HoseGroup& group) {
  std::vector<std::vector<std::size_t>> equal;
  for (std::size_t h = 0; h < group.hoses.size(); ++h) {
    const auto found = std::find_if(equal.begin(), equal.end(), [&](const std::vector<std::size_t>& one) {
      return is_same(group, group.hoses[one.front()], group.hoses[h]);
    });
    if (found == equal.end()) {
      equal.push_back({h});
    } else {
      found->push_back(h);
    }
  }
  return equal;
}

/// The group of the systems of the station that are in it, by index.
HoseGroup group_of(const StationNetwork& network, const std::vector<std::size_t>& systems,
                   const std::map<std::string, Whole>& whole) {
  HoseGroup group;
  std::map<std::size_t, std::size_t> place;  // of each system in the group
  for (const std::size_t s : systems) {
    place[s] = group.systems.size();
    group.id += (group.id.empty() ? "" : " + ") + network.systems[s].id;
    group.systems.push_back(&network.systems[s]);
  }
  for (const std::size_t s : systems) {
    for (const HosePoint& hose : network.systems[s].hoses) {
      const auto found = whole.find(hose.id);
      if (found == whole.end() || found->second.parts.front().first != s) continue;
      GroupHose one{hose.id, hose.dispenser, {}};
      for (const auto& [system, index] : found->second.parts) one.parts.push_back({place[system], index});
      group.hoses.push_back(std::move(one));
    }
  }
  group.equal = equal_hoses(group);
  return group;
}

}  // namespace

bool HoseGroup::opening_never_raises() const {
  if (is_blended() || systems.front()->has_moving_control()) return false;
  return std::all_of(hoses.begin(), hoses.end(), [&](const GroupHose& hose) {
    return hose.parts.size() == 1 && run(hose.parts.front()).bounds.lowest >= 0.0;
  });
}

std::vector<HoseGroup> hose_groups(const StationNetwork& network) {
  const std::map<std::string, Whole> whole = whole_hoses(network);
  const std::vector<std::size_t> first = first_tied(network, whole);
  std::map<std::size_t, std::vector<std::size_t>> tied;
  for (std::size_t s = 0; s < network.systems.size(); ++s) {
    if (delivers(network.systems[s])) tied[first[s]].push_back(s);
  }
  std::vector<HoseGroup> groups;
  groups.reserve(tied.size());
  for (const auto& [start, systems] : tied) groups.push_back(group_of(network, systems, whole));
  return groups;
}

}  // namespace forecourse::network
