#include "forecourse/network/place_groups.h"

#include <map>

#include "forecourse/site/places.h"

namespace forecourse::network {
namespace {

/// Union-find over the ids of places.
class Groups {
 public:
  int add(const std::string& id) {
    const auto [found, fresh] = index_.emplace(id, static_cast<int>(parent_.size()));
    if (fresh) parent_.push_back(found->second);
    return found->second;
  }
  void join(const std::string& a, const std::string& b) {
    if (index_.count(a) != 0 && index_.count(b) != 0) parent_[at(root(add(a)))] = root(add(b));
  }
  int of(const std::string& id) { return index_.count(id) != 0 ? root(add(id)) : -1; }

 private:
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  int root(int i) {
    while (parent_[at(i)] != i) i = parent_[at(i)] = parent_[at(parent_[at(i)])];
    return i;
  }
  std::map<std::string, int> index_;
  std::vector<int> parent_;
};

Groups joined_places(const site::Site& site) {
  Groups groups;
  for (const site::Pump& pump : site.pumps) groups.add(pump.id.text);
  for (const site::Branch& branch : site.branches) groups.add(branch.id.text);
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Inlet& inlet : d.inlets) groups.add(site::place_name(d, inlet));
  }
  for (const site::Line& line : site.lines) groups.join(line.from.text, line.to.text);
  return groups;
}

/// What a tank or compartment holds.
std::string product_of_tank(const site::Site& site, const std::string& id) {
  for (const site::Tank& tank : site.tanks) {
    if (tank.id.text == id) return tank.product.text;
    for (const site::Compartment& compartment : tank.compartments) {
      if (compartment.id.text == id) return compartment.product.text;
    }
  }
  return {};
}

}  // namespace

std::vector<PlaceGroup> place_groups(const site::Site& site) {
  Groups joined = joined_places(site);
  std::vector<PlaceGroup> groups;
  std::map<int, std::size_t> known;
  const auto group_of = [&](const std::string& place) -> PlaceGroup& {
    const auto [found, fresh] = known.emplace(joined.of(place), groups.size());
    if (fresh) groups.emplace_back();
    return groups[found->second];
  };
  for (const site::Pump& pump : site.pumps) {
    PlaceGroup& group = group_of(pump.id.text);
    group.pumps.push_back(&pump);
    if (group.product.empty()) group.product = product_of_tank(site, pump.tank.text);
  }
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Inlet& inlet : d.inlets) {
      PlaceGroup& group = group_of(site::place_name(d, inlet));
      group.inlets.push_back({&d, &inlet});
      if (group.product.empty()) group.product = inlet.product.text;
    }
  }
  for (const site::Branch& branch : site.branches) {
    if (known.count(joined.of(branch.id.text)) != 0) group_of(branch.id.text).branches.push_back(&branch);
  }
  for (const site::Line& line : site.lines) {
    const int group = joined.of(line.from.text);
    if (group >= 0 && joined.of(line.to.text) >= 0 && known.count(group) != 0) {
      group_of(line.from.text).lines.push_back(&line);
    }
  }
  return groups;
}

}  // namespace forecourse::network
