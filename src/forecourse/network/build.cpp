#include "forecourse/network/build.h"

#include <map>

#include "forecourse/network/place_groups.h"
#include "forecourse/network/system_builder.h"

namespace forecourse::network {
namespace {

bool has_elevation_default(const PipingSystem& system) {
  if (!system.elevations_known) return false;
  for (const Place& place : system.places) {
    if (!place.elevation_entered) return true;
  }
  return false;
}

}  // namespace

StationNetwork build_network(const site::Site& site) {
  StationNetwork network;
  std::map<std::string, int> count;
  for (const PlaceGroup& group : place_groups(site)) {
    const int number = ++count[group.product];
    const std::string id = number == 1 ? group.product : group.product + " " + std::to_string(number);
    const std::size_t before = network.defaults.size();
    SystemBuilder builder(site, group, network.defaults, network.warnings);
    network.systems.push_back(builder.build(id));
    if (has_elevation_default(network.systems.back())) {
      network.defaults.push_back({"elevation of places of " + id + " without one", 0.0, "m",
                                  DefaultStatus::common_practice, "taken at the site datum; moves gauge pressures only",
                                  id, false});
    }
    for (std::size_t i = before; i < network.defaults.size(); ++i) network.defaults[i].system = id;
  }
  return network;
}

}  // namespace forecourse::network
