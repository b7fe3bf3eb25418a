// What the tank study tells of the tank at hand.
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

using studies::DeviceSet;
using studies::OverfillDevice;
using studies::TankRoom;
using studies::TankTold;

/// A value of the tank at hand, or of the first of its compartments.
///
/// \param value  of the tank
/// \param key    of its place below the tank
/// \param reason why it may be empty
template <class Value>
Picked of_tank(const From& from, Value value, const std::string& key, const std::string& reason) {
  if (!from.ground.studied.tank) return nothing("enter the shape of tank " + from.at + ", or its chart");
  const auto& tanks = from.ground.studied.tank->tanks;
  const auto place = place_of(tanks, [&](const TankTold& told) { return told.id == from.at || told.tank == from.at; });
  if (!place) return nothing("enter the shape of tank " + from.at + ", or its chart");
  const TankTold& told = tanks[*place];
  if (!told.problem.empty()) return nothing(told.problem);
  return picked(value(told), {"tank"}, at_place("/result/tanks", *place) + key, reason, unpublished(told.defaults));
}

/// A value of what is in it now.
template <class Value>
Picked of_now(const From& from, Value value, const std::string& key, const std::string& enter) {
  const auto taken = [&](const TankTold& told) {
    return told.now ? std::optional<double>(value(*told.now)) : std::nullopt;
  };
  Picked out = of_tank(from, taken, "/now/" + key, enter);
  if (out.value || out.proof.command.empty()) return out;
  for (const TankTold& told : from.ground.studied.tank->tanks) {
    if ((told.id == from.at || told.tank == from.at) && !told.now) return nothing(told.not_read);
  }
  return out;
}

constexpr double ninety_five = 0.95;

/// A value of the room up to 95 %, which every tank is told of.
template <class Value>
Picked of_room(const From& from, Value value, const std::string& key, const std::string& reason) {
  const auto is_meant = [](const TankRoom& room) { return room.share == ninety_five; };
  std::size_t place = 1;
  const auto taken = [&](const TankTold& told) -> std::optional<double> {
    const auto found = place_of(told.rooms, is_meant);
    if (!found) return std::nullopt;
    place = *found;
    return value(told.rooms[*found]);
  };
  Picked out = of_tank(from, taken, "", reason);
  if (!out.proof.command.empty()) out.proof.pointer += at_place("/rooms", place) + key;
  return out;
}

std::string of_valve_unset(const TankTold& told) {
  for (const std::string& remark : told.overfill.remarks) {
    if (remark.find("overfill valve") != std::string::npos && remark.find(" shuts") != std::string::npos) return remark;
  }
  return "enter closes_at of the overfill valve and the place of its fill along the tank";
}

/// A value of the overfill valve as it is set.
template <class Value>
Picked of_valve(const From& from, Value value, const std::string& key) {
  if (!from.ground.studied.tank) return nothing("enter the shape of tank " + from.at + ", or its chart");
  const auto& tanks = from.ground.studied.tank->tanks;
  const auto tank = place_of(tanks, [&](const TankTold& told) { return told.id == from.at || told.tank == from.at; });
  if (!tank) return nothing("enter the shape of tank " + from.at + ", or its chart");
  const auto set =
      place_of(tanks[*tank].overfill.set, [](const DeviceSet& one) { return one.device == OverfillDevice::shutoff; });
  if (!set) return nothing(of_valve_unset(tanks[*tank]));
  return picked(value(tanks[*tank].overfill.set[*set]), {"tank"},
                at_place(at_place("/result/tanks", *tank) + "/overfill/set_now", *set) + key,
                of_valve_unset(tanks[*tank]));
}

Picked capacity(const From& from) {
  return of_tank(
      from, [](const TankTold& told) { return std::optional<double>(told.capacity); }, "/capacity_m3", "");
}

/// Least and most in it now, where its depth was entered as a spread.
std::optional<Ends> volume_ends(const From& from) {
  if (!from.ground.studied.tank) return std::nullopt;
  for (const TankTold& told : from.ground.studied.tank->tanks) {
    if (told.id != from.at && told.tank != from.at) continue;
    if (!told.now || !told.now->least || !told.now->most) return std::nullopt;
    return Ends{*told.now->least, *told.now->most};
  }
  return std::nullopt;
}

Picked holds(const From& from) {
  Picked out = of_now(
      from, [](const auto& now) { return now.volume; }, "volume_m3", "");
  const auto ends = volume_ends(from);
  if (!ends || !out.value) return out;
  const std::string now = out.proof.pointer.substr(0, out.proof.pointer.rfind('/'));
  return between(std::move(out), {ends->low, ends->high, now + "/least_m3", now + "/most_m3"});
}

Picked share(const From& from) {
  Picked out = of_now(
      from, [](const auto& now) { return now.share; }, "share", "");
  const auto ends = volume_ends(from);
  const std::optional<double> whole = capacity(from).value;
  if (!ends || !whole) return out;
  return between(std::move(out), {ends->low / *whole, ends->high / *whole});
}

Picked depth(const From& from) {
  return of_now(
      from, [](const auto& now) { return now.depth; }, "depth_m", "");
}

Picked ullage(const From& from) {
  Picked out = of_now(
      from, [](const auto& now) { return now.ullage; }, "ullage_m3", "");
  const auto ends = volume_ends(from);
  const std::optional<double> whole = capacity(from).value;
  if (!ends || !whole) return out;
  return between(std::move(out), {*whole - ends->high, *whole - ends->low});
}

Picked water(const From& from) {
  const auto taken = [](const TankTold& told) { return told.now ? told.now->water : std::nullopt; };
  return of_tank(from, taken, "/now/water_m3", "enter water = \"...\" in the reading of tank " + from.at);
}

Picked water_level(const From& from) {
  const auto taken = [](const TankTold& told) { return told.now ? told.now->water_level : std::nullopt; };
  return of_tank(from, taken, "/now/water_level_m", "enter water = \"...\" in the reading of tank " + from.at);
}

Picked volume_at_95(const From& from) {
  return of_room(
      from, [](const TankRoom& one) { return std::optional<double>(one.volume); }, "/volume_m3", "");
}

Picked room(const From& from) {
  Picked out = of_room(
      from, [](const TankRoom& one) { return one.room; }, "/room_m3", "enter the reading of tank " + from.at);
  const auto ends = volume_ends(from);
  const std::optional<double> full = volume_at_95(from).value;
  if (!ends || !full) return out;
  return between(std::move(out), {*full - ends->high, *full - ends->low});
}

Picked level_at_95(const From& from) {
  return of_room(
      from, [](const TankRoom& one) { return std::optional<double>(one.level); }, "/level_m", "");
}

Picked valve_share(const From& from) {
  return of_valve(
      from, [](const DeviceSet& one) { return std::optional<double>(one.share); }, "/share");
}

Picked valve_depth(const From& from) {
  return of_valve(
      from, [](const DeviceSet& one) { return one.depth; }, "/depth_m");
}

}  // namespace

std::vector<NumberKind> tank_numbers() {
  return {{"tank-capacity", "Holds to the very top", Quantity::volume, capacity},
          {"tank-volume", "In the tank now", Quantity::volume, holds},
          {"tank-share", "Full now, by volume", Quantity::share, share},
          {"tank-depth", "Depth of liquid now", Quantity::length, depth},
          {"tank-ullage", "Room for vapor above the fuel", Quantity::volume, ullage},
          {"tank-water", "Water at the bottom", Quantity::volume, water},
          {"tank-water-level", "Water stands this high at the low end", Quantity::bore, water_level},
          {"room-to-95", "Room up to 95 % of the volume", Quantity::volume, room},
          {"volume-at-95", "95 % of the volume", Quantity::volume, volume_at_95},
          {"level-at-95", "95 % of the volume is this high", Quantity::length, level_at_95},
          {"overfill-valve-share", "Overfill valve shuts at, by volume", Quantity::share, valve_share},
          {"overfill-valve-depth", "Overfill valve shuts at a depth of", Quantity::length, valve_depth}};
}

}  // namespace forecourse::lesson
