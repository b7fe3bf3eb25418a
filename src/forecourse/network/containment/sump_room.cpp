#include "forecourse/network/containment/sump_room.h"

#include <algorithm>

namespace forecourse::network {

std::optional<parts::SumpRoom> sump_room(const site::Sump& sump) {
  const double share = sump.parts_share ? sump.parts_share->likely.si() : 0.0;
  const auto depth = sump.depth ? std::optional(sump.depth->likely.si()) : std::nullopt;
  if (sump.volume) return parts::SumpRoom{parts::EnteredSump{sump.volume->likely.si(), depth}, share};
  if (!depth) return std::nullopt;
  if (sump.kind.text == "round" && sump.diameter) {
    return parts::SumpRoom{parts::RoundSump{sump.diameter->likely.si(), *depth}, share};
  }
  if (!sump.floor) return std::nullopt;
  const site::Position top = sump.top.value_or(*sump.floor);
  return parts::SumpRoom{parts::TaperedSump{sump.floor->x.si(), sump.floor->y.si(), top.x.si(), top.y.si(), *depth},
                         share};
}

std::optional<double> sensor_height(const site::Sump& sump) {
  if (sump.sensor && sump.sensor->height) return sump.sensor->height->likely.si();
  return sump.sensor_height ? std::optional(sump.sensor_height->likely.si()) : std::nullopt;
}

std::optional<double> lowest_seal(const site::Sump& sump) {
  std::optional<double> lowest;
  if (sump.lowest_seal) lowest = sump.lowest_seal->likely.si();
  for (const site::EntrySeal& seal : sump.seals) {
    if (seal.height) lowest = std::min(lowest.value_or(seal.height->likely.si()), seal.height->likely.si());
  }
  return lowest;
}

}  // namespace forecourse::network
