#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"

namespace forecourse::lesson {
namespace {

constexpr const char* no_delivery =
    "no delivery can be worked out: enter a [[delivery]] with its hose and compartments";

const studies::DeliveryResult* some_delivery(const Ground& ground, Chance& chance) {
  return pick(those(ground.studied.deliveries,
                    [](const studies::DeliveryResult& one) { return one.problem.empty() && !one.runs.empty(); }),
              chance);
}

Asked drop_time(const Ground& ground, Chance& chance) {
  const studies::DeliveryResult* delivery = some_delivery(ground, chance);
  if (delivery == nullptr) return left_out(no_delivery);
  const studies::DeliveryRun& run = delivery->runs.front();
  if (!run.moves_all || !run.problem.empty()) {
    return left_out("the load of delivery " + delivery->delivery + " does not go in whole: see the delivery study");
  }
  Question draft;
  draft.at = delivery->delivery;
  draft.asks = {"The tanker of delivery " + delivery->delivery +
                    " brings {} in all. How long is it from the first drop until the last hose is drained?",
                {{run.dropped, Quantity::volume}}};
  draft.explains = {"{} go in at a mean of {} while a drop runs.",
                    {{run.dropped, Quantity::volume}, {run.mean_rate, Quantity::flow}}};
  draft.rests_on = illustrative_of(delivery->defaults);
  const double passing = run.dropped / run.mean_rate;
  draft.follows = {"Volume by mean flow, and the time in which hoses are changed and drained: {} / {} + {} = {}",
                   {{run.dropped, Quantity::volume},
                    {run.mean_rate, Quantity::flow},
                    {run.time - passing, Quantity::time},
                    {run.time, Quantity::time}}};
  draft.proof = {{"delivery", delivery->delivery}, "/result/runs/0/time_s"};
  return estimate(std::move(draft), {run.time, Quantity::time}, 0.25);
}

Asked room_for_load(const Ground& ground, Chance& chance) {
  const studies::TankTold* tank = read_tank(ground, chance);
  if (tank == nullptr) return left_out("no tank has both its shape and a reading: enter shape and reading");
  const studies::TankRoom* room = room_at(*tank, 0.95);
  const studies::TankRoom* earlier = room_at(*tank, 0.90);
  if (room == nullptr || !room->room || *room->room <= 0.0) {
    return left_out(tank->id + " stands at 95 % or more: there is no room to ask about");
  }
  const auto by_diameter = tank_at(ground.site, tank->id, 0.95 * *tank->diameter, tank->now->along);
  std::vector<Slip> slips{
      {tank->now->ullage, "All that is empty, to the very top: nothing is left for the valve to act in."},
      {0.95 * tank->now->ullage, "95 % of what is empty, not of what the tank holds."}};
  if (by_diameter) {
    slips.push_back({by_diameter->volume - tank->now->volume, "95 % of the diameter taken for 95 % of the volume."});
  }
  if (earlier != nullptr && earlier->room) {
    slips.push_back({*earlier->room, "Room to 90 %, where an alarm is set."});
  }
  slips.push_back({0.95 * tank->capacity, "95 % of the tank, without taking off what is in it."});
  Question draft;
  draft.at = tank->id;
  draft.asks = {
      "{} are in tank " + tank->id + ", which holds {} to the top. How much may be dropped until it is 95 % full?",
      {{tank->now->volume, Quantity::volume}, {tank->capacity, Quantity::volume}}};
  draft.explains = {"95 % of the volume is {}; what is in it goes off that.", {{room->volume, Quantity::volume}}};
  draft.follows = {
      "95 % of what the tank holds, less what is in it: 0.95 × {} − {} = {}",
      {{tank->capacity, Quantity::volume}, {tank->now->volume, Quantity::volume}, {*room->room, Quantity::volume}}};
  draft.proof = {{"tank"},
                 "/result/tanks/" + std::to_string(index_of(ground.studied.tank->tanks, tank)) + "/rooms/" +
                     std::to_string(index_of(tank->rooms, room)) + "/room_m3"};
  return choose_value(std::move(draft), {*room->room, Quantity::volume}, slips, chance, 0.04);
}

Asked container_holds(const Ground& ground, Chance& chance) {
  const studies::DeliveryResult* delivery = some_delivery(ground, chance);
  if (delivery == nullptr) return left_out(no_delivery);
  const studies::DeliveryRun& run = delivery->runs.front();
  for (const studies::DropTold& drop : run.drops) {
    const auto tank = std::find_if(run.tanks.begin(), run.tanks.end(),
                                   [&](const studies::DeliveryTank& one) { return one.tank == drop.tank; });
    if (tank == run.tanks.end() || !tank->container || !(drop.hose_holds > 0.0)) continue;
    const double over = drop.hose_holds - *tank->container;
    if (over <= 0.0) return left_out("the spill container of " + drop.tank + " holds the whole hose");
    Question draft;
    draft.at = drop.tank;
    draft.asks = {"The valve of " + drop.tank +
                      " has shut, and the hose to it still stands full: {} in hose and truck pipe. It is uncoupled all "
                      "the same. How much runs over the spill container of {}?",
                  {{drop.hose_holds, Quantity::volume}, {*tank->container, Quantity::volume}}};
    draft.explains = {"The container takes {} of {}. It is there for drips, never for a full hose.",
                      {{*tank->container, Quantity::volume}, {drop.hose_holds, Quantity::volume}}};
    draft.follows = {
        "What the hose holds, less what the container takes: {} − {} = {}",
        {{drop.hose_holds, Quantity::volume}, {*tank->container, Quantity::volume}, {over, Quantity::volume}}};
    return choose_value(std::move(draft), {over, Quantity::volume},
                        {{drop.hose_holds, "The whole hose, as if nothing were there to catch it."},
                         {*tank->container, "What the container holds, not what passes it."},
                         {drop.hose_holds + *tank->container, "Added instead of taken off."},
                         {to_si(5.0, "gal"), "The 5 gal that a rule asks of a spill container."}},
                        chance);
  }
  return left_out("no tank of a delivery has a spill container with its volume: enter spill_container");
}

/// Of a round tank, the place at which its overfill valve hangs, or its stick is read.
const studies::TankPlace* device_place(const studies::TankTold& tank, std::size_t& index) {
  for (const char* wanted : {"fill", "reading"}) {
    for (index = 0; index < tank.places.size(); ++index) {
      if (tank.places[index].what.rfind(wanted, 0) == 0) return &tank.places[index];
    }
  }
  return nullptr;
}

Asked depth_at_95(const Ground& ground, Chance& chance) {
  const studies::TankTold* tank = read_tank(ground, chance);
  if (tank == nullptr) return left_out("no tank has both its shape and a reading: enter shape and reading");
  std::size_t index = 0;
  const studies::TankPlace* place = device_place(*tank, index);
  const studies::TankRoom* room = room_at(*tank, 0.95);
  const studies::TankRoom* earlier = room_at(*tank, 0.90);
  if (place == nullptr || room == nullptr || index >= room->depths.size() || !room->depths[index]) {
    return left_out("where the fill or the stick of " + tank->id + " stands is not entered: enter at of its fill");
  }
  const double diameter = *tank->diameter;
  std::vector<Slip> slips{{0.95 * diameter, "95 % of the diameter taken for 95 % of the volume."},
                          {0.90 * diameter, "90 % of the diameter, as of an alarm set by the stick."}};
  if (earlier != nullptr && index < earlier->depths.size() && earlier->depths[index]) {
    slips.push_back({*earlier->depths[index], "The depth of 90 %, where an alarm is set."});
  }
  slips.push_back({diameter, "The top of the tank: nothing is left for the valve to act in."});
  Question draft;
  draft.at = tank->id;
  const Phrase what = described(ground, *tank);
  draft.asks = {"Tank " + what.words + ": how deep is the fuel at the " + place->what +
                    ", {} from the low end, when 95 % of the volume is in it?",
                what.values};
  draft.asks.values.push_back({place->along, Quantity::length});
  draft.explains = {
      "A lying cylinder is widest in the middle: the last of the diameter holds little. 95 % of the "
      "diameter would be {}.",
      {{0.95 * diameter, Quantity::bore}}};
  draft.follows = {"What lies below a level surface at that depth, of what the tank holds: {} / {} = {}",
                   {{room->volume, Quantity::volume}, {tank->capacity, Quantity::volume}, {0.95, Quantity::share}}};
  draft.proof = {{"tank"},
                 "/result/tanks/" + std::to_string(index_of(ground.studied.tank->tanks, tank)) + "/rooms/" +
                     std::to_string(index_of(tank->rooms, room)) + "/depth_at_places_m/" + std::to_string(index)};
  return choose_value(std::move(draft), {*room->depths[index], Quantity::bore}, slips, chance, 0.015);
}

Asked empty_at_95_of_diameter(const Ground& ground, Chance& chance) {
  const studies::TankTold* tank = read_tank(ground, chance);
  if (tank == nullptr) return left_out("no tank has both its shape and a reading: enter shape and reading");
  std::size_t index = 0;
  const studies::TankPlace* place = device_place(*tank, index);
  if (place == nullptr) return left_out("where the fill of " + tank->id + " stands is not entered: enter its at");
  const auto there = tank_at(ground.site, tank->id, 0.95 * *tank->diameter, place->along);
  if (!there) return left_out("the volume of " + tank->id + " is not determined: enter its shape");
  Question draft;
  draft.at = tank->id;
  const Phrase what = described(ground, *tank);
  draft.asks = {"Tank " + what.words +
                    ": its overfill valve was hung to shut at 95 % of the inside diameter, {} from "
                    "the low end. What share of the tank is then still empty?",
                what.values};
  draft.asks.values.push_back({place->along, Quantity::length});
  draft.explains = {"It shuts at {} of the volume, later than the rule's 95 %.", {{there->share, Quantity::share}}};
  draft.follows = {
      "All of the tank, less what lies below a level surface at that depth: 1 − {} / {} = {}",
      {{there->volume, Quantity::volume}, {tank->capacity, Quantity::volume}, {1.0 - there->share, Quantity::share}}};
  return choose_value(std::move(draft), {1.0 - there->share, Quantity::share},
                      {{0.05, "95 % of the diameter taken for 95 % of the volume."},
                       {1.0 - 0.95 * 0.95, "The share of the diameter squared, as of a whole circle."},
                       {0.025, "As of a triangle between there and the top."},
                       {0.10, "90 %, where an alarm is set."}},
                      chance, 0.1);
}

Asked seconds_90_to_95(const Ground& ground, Chance& chance) {
  const studies::DeliveryResult* delivery = some_delivery(ground, chance);
  if (delivery == nullptr) return left_out(no_delivery);
  const studies::DropTold* drop = pick(
      those(delivery->runs.front().drops, [](const studies::DropTold& one) { return one.first_rate > 0.0; }), chance);
  if (drop == nullptr) return left_out("no drop of delivery " + delivery->delivery + " begins");
  studies::TankOptions options;
  options.tank = drop->tank;
  options.rate = drop->first_rate;
  const studies::TankResult told = studies::study_tank(ground.site, options);
  if (told.tanks.empty() || !told.tanks.front().from_90_to_95) {
    return left_out("the volume of " + drop->tank + " is not determined: enter its shape");
  }
  Question draft;
  draft.at = drop->tank;
  draft.asks = {"Tank " + drop->tank +
                    " holds {}. The alarm sounds at 90 %, and fuel goes on dropping at {}. How long "
                    "has the driver until it is 95 % full?",
                {{told.tanks.front().capacity, Quantity::volume}, {drop->first_rate, Quantity::flow}}};
  draft.explains = {"5 % of the tank is {}.", {{0.05 * told.tanks.front().capacity, Quantity::volume}}};
  draft.follows = {"5 % of what the tank holds, by flow: 0.05 × {} / {} = {}",
                   {{told.tanks.front().capacity, Quantity::volume},
                    {drop->first_rate, Quantity::flow},
                    {*told.tanks.front().from_90_to_95, Quantity::time}}};
  return estimate(std::move(draft), {*told.tanks.front().from_90_to_95, Quantity::time}, 0.15);
}

Asked order_overfill(const Ground& ground, Chance& chance) {
  const studies::TankTold* tank =
      ground.studied.tank
          ? pick(those(ground.studied.tank->tanks,
                       [](const studies::TankTold& one) { return one.problem.empty() && !one.overfill.set.empty(); }),
                 chance)
          : nullptr;
  if (tank == nullptr)
    return left_out("no tank has an overfill device that is set: enter overfill_valve with its depths");
  std::vector<Ranked> items;
  const auto add = [&](const std::string& words, double volume) {
    items.push_back({{words, {}}, volume, Amount{volume, Quantity::volume}});
  };
  add("95 % of the volume is in it", 0.95 * tank->capacity);
  add("the top of the tank is reached", tank->capacity);
  for (const studies::DeviceSet& device : tank->overfill.set) add(device.what, device.volume);
  add("90 % of the volume is in it", 0.90 * tank->capacity);
  Question draft;
  draft.at = tank->id;
  draft.asks = {"Tank " + tank->id + " is being filled and nobody stops it. In which order does this come?", {}};
  draft.explains = {"By the volume that is in the tank then, of {} to the top.", {{tank->capacity, Quantity::volume}}};
  return in_order(std::move(draft), std::move(items), 0.002 * tank->capacity, 4);
}

}  // namespace

std::vector<QuestionKind> drop_questions() {
  return {
      {"drop-time", Form::estimate, 2, "drop", drop_time},
      {"room-for-load", Form::choice, 1, "drop", room_for_load},
      {"container-holds", Form::choice, 1, "fill", container_holds},
      {"depth-at-95-percent", Form::choice, 1, "overfill-valve", depth_at_95},
      {"empty-at-95-of-diameter", Form::choice, 2, "overfill-valve", empty_at_95_of_diameter},
      {"seconds-90-to-95", Form::estimate, 2, "overfill-valve", seconds_90_to_95},
      {"order-overfill", Form::order, 2, "overfill-valve", order_overfill},
  };
}

}  // namespace forecourse::lesson
