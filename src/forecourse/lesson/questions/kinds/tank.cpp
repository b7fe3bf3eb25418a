#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"
#include "forecourse/studies/ledger/months.h"

namespace forecourse::lesson {
namespace {

Asked volume_at_reading(const Ground& ground, Chance& chance) {
  const studies::TankTold* tank = read_tank(ground, chance);
  if (tank == nullptr || !tank->now->along) {
    return left_out("no tank has its shape and a reading with its place: enter shape and reading = { depth, at }");
  }
  Question draft;
  draft.at = tank->id;
  const Phrase what = described(ground, *tank);
  draft.asks = {"Tank " + what.words + ": the stick shows {} at {} from the low end. How much is in it?", what.values};
  draft.asks.values.push_back({tank->now->depth, Quantity::bore});
  draft.asks.values.push_back({*tank->now->along, Quantity::length});
  draft.explains = {"It is {} full, and {} fit in to the very top.",
                    {{tank->now->share, Quantity::share}, {tank->capacity, Quantity::volume}}};
  draft.follows = {
      "The share of a lying cylinder below a level surface at that depth, of what it holds: {} × {} = {}",
      {{tank->now->share, Quantity::share}, {tank->capacity, Quantity::volume}, {tank->now->volume, Quantity::volume}}};
  draft.proof = {{"tank"},
                 "/result/tanks/" + std::to_string(index_of(ground.studied.tank->tanks, tank)) + "/now/volume_m3"};
  return estimate(std::move(draft), {tank->now->volume, Quantity::volume}, 0.10);
}

/// A product that one tank alone holds, with its monthly throughput.
const site::Throughput* sold_from_one_tank(const Ground& ground, Chance& chance) {
  if (!ground.site.operations) return nullptr;
  return pick(those(ground.site.operations->throughput,
                    [&](const site::Throughput& one) {
                      return one.per_month && one.per_month->likely.si() > 0.0 &&
                             those(ground.site.tanks, [&](const site::Tank& tank) {
                               return tank.product.text == one.product.text && tank.compartments.empty();
                             }).size() == 1;
                    }),
              chance);
}

constexpr const char* no_throughput =
    "what is sold in a month of a product with one tank is not entered: enter operations.throughput";

Asked leak_hidden_in_month(const Ground& ground, Chance& chance) {
  if (!is_federal(ground.site)) return left_out(not_federal);
  const site::Throughput* sold = sold_from_one_tank(ground, chance);
  if (sold == nullptr) return left_out(no_throughput);
  const double throughput = sold->per_month->likely.si();
  const double month = to_si(30.0, "d");
  const double test = to_si(0.2, "gal/h");  // [cfr_280, 280.43(c), 280.43(d)]
  Question draft;
  draft.at = sold->product.text;
  draft.asks = {"{} of " + draft.at +
                    " are sold in 30 days. How large a steady leak stays within the monthly limit of 1.0 % of what is "
                    "sold and {}?",
                {{throughput, Quantity::volume}, {studies::monthly_limit(0.0), Quantity::volume}}};
  draft.explains = {"The limit is {} in 30 days. A monthly test has to find {}.",
                    {{studies::monthly_limit(throughput), Quantity::volume}, {test, Quantity::leak}}};
  draft.follows = {
      "1.0 % of what is sold and the fixed part, by the time, 40 CFR 280.43(a): (0.01 × {} + {}) / {} = {}",
      {{throughput, Quantity::volume},
       {studies::monthly_limit(0.0), Quantity::volume},
       {month, Quantity::time},
       {studies::monthly_limit(throughput) / month, Quantity::leak}}};
  return choose_value(std::move(draft), {studies::monthly_limit(throughput) / month, Quantity::leak},
                      {{0.01 * throughput / month, "1.0 % of what is sold, without the fixed part."},
                       {test, "What a monthly test has to find, which is another rule."},
                       {studies::monthly_limit(0.0) / month, "The fixed part alone."},
                       {24.0 * studies::monthly_limit(throughput) / month, "A day taken for an hour."}},
                      chance);
}

Asked water_volume(const Ground& ground, Chance& chance) {
  if (!ground.studied.tank) return left_out("no tank has a shape: enter it");
  const studies::TankTold* tank = pick(those(ground.studied.tank->tanks,
                                             [](const studies::TankTold& one) {
                                               return one.problem.empty() && one.diameter && one.now &&
                                                      one.now->along && one.now->water.value_or(0.0) > 0.0;
                                             }),
                                       chance);
  if (tank == nullptr)
    return left_out("no tank has water at its bottom: enter reading = { water = \"1 in\" } where there is some");
  const site::Tank* site_tank = tank_of(ground.site, tank->tank);
  if (site_tank == nullptr || !site_tank->reading || !site_tank->reading->water || !site_tank->shape ||
      !site_tank->shape->length) {
    return left_out("the depth of the water in " + tank->id + " is not entered: enter reading = { water = \"1 in\" }");
  }
  const double depth = site_tank->reading->water->likely.si();
  const double length = site_tank->shape->length->likely.si();
  Question draft;
  draft.at = tank->id;
  const Phrase what = described(ground, *tank);
  draft.asks = {
      "Tank " + what.words + ": paste on the stick shows {} of water at {} from the low end. How much water is it?",
      what.values};
  draft.asks.values.push_back({depth, Quantity::bore});
  draft.asks.values.push_back({*tank->now->along, Quantity::length});
  draft.explains = {
      "The tank is narrow there, and where it is pitched the water runs to its low end. Of {} it is little, "
      "and it stands where the pump draws.",
      {{tank->capacity, Quantity::volume}}};
  draft.proof = {{"tank"},
                 "/result/tanks/" + std::to_string(index_of(ground.studied.tank->tanks, tank)) + "/now/water_m3"};
  const double radius = 0.5 * *tank->diameter;
  const double half_width = std::sqrt(std::max(0.0, depth * (*tank->diameter - depth)));
  const double slice = radius * radius * std::acos(1.0 - depth / radius) - (radius - depth) * half_width;
  draft.follows = {"As deep all along the tank, and what its pitch and its heads change: {} + {} = {}",
                   {{slice * length, Quantity::volume},
                    {*tank->now->water - slice * length, Quantity::volume},
                    {*tank->now->water, Quantity::volume}}};
  return choose_value(
      std::move(draft), {*tank->now->water, Quantity::volume},
      {{slice * length, "As deep all along the tank: its pitch forgotten."},
       {depth / *tank->diameter * tank->capacity, "The share of the diameter taken for that of the volume."},
       {depth * *tank->diameter * length, "As in a box with the tank's diameter for its width."},
       {2.0 * half_width * depth * length, "As in a box as wide as the water's surface: the round bottom forgotten."},
       {half_width * depth * length, "As in a trough with straight sides: the round bottom holds more."}},
      chance);
}

Asked water_held(const Ground& ground, Chance& chance) {
  if (!ground.studied.vapor || !ground.studied.tank) return left_out("no tank is entered with its shape and product");
  std::vector<std::pair<const studies::TankWater*, const studies::TankTold*>> some;
  for (const studies::TankWater& water : ground.studied.vapor->care.water) {
    if (!water.share || !std::isfinite(*water.share) || !water.temperature) continue;
    for (const studies::TankTold& tank : ground.studied.tank->tanks) {
      if (tank.id == water.tank && tank.now) some.emplace_back(&water, &tank);
    }
  }
  if (some.empty()) {
    return left_out("no tank with gasoline of 10 % ethanol has a reading and a temperature from 20 to 60 degF");
  }
  const auto& taken = some[chance.index(some.size())];
  const double fuel = taken.second->now->volume - taken.second->now->water.value_or(0.0);
  const double held = fuel * *taken.first->share;
  Question draft;
  draft.at = taken.second->id;
  draft.asks = {"{} of gasoline with 10 % ethanol are in tank " + taken.second->id +
                    " at {}. How much water can it take up before it separates?",
                {{fuel, Quantity::volume}, {*taken.first->temperature, Quantity::temperature}}};
  draft.explains = {"It holds {} of its volume at that temperature, and less when it cools.",
                    {{*taken.first->share, Quantity::share}}};
  draft.follows = {"Fuel by the share that it holds: {} × {} = {}",
                   {{fuel, Quantity::volume}, {*taken.first->share, Quantity::share}, {held, Quantity::volume}}};
  return choose_value(std::move(draft), {held, Quantity::volume},
                      {{0.1 * fuel, "As much as there is ethanol."},
                       {0.01 * fuel, "The 1.0 % of another rule."},
                       {taken.second->capacity * *taken.first->share, "Of the whole tank, not of the fuel in it."},
                       {0.1 * held, "Of the ethanol alone, not of the fuel."}},
                      chance);
}

double air_pressure(const site::Site& site) {
  return site.atmospheric_pressure ? site.atmospheric_pressure->likely.si() : standard_atmosphere;
}

Asked warming_lifts_vent(const Ground& ground, Chance& chance) {
  const site::Tank* tank =
      pick(those(ground.site.tanks,
                 [](const site::Tank& one) {
                   return one.vents.size() == 1 && one.vents.front().valve && one.vents.front().valve->opens_at;
                 }),
           chance);
  if (tank == nullptr)
    return left_out("no vent has a valve with its setting: enter valve = { opens_at = \"3 inH2O\" }");
  if (!ground.site.ground_temperature)
    return left_out("the temperature of the ground is not entered: enter ground_temperature");
  const site::VentValve& valve = *tank->vents.front().valve;
  const double opens = valve.opens_at->likely.si();
  const double warm = ground.site.ground_temperature->likely.si();
  const double air = air_pressure(ground.site);
  std::vector<Slip> slips{
      {warm * to_si(from_si(opens, "inH2O"), "psi", Datum::difference) / air, "Inches of water taken for psi."},
      {(warm - to_si(0.0, "degC", Datum::thermometer)) * opens / air, "Degrees Celsius taken for kelvin."}};
  if (valve.vacuum_opens_at) {
    slips.push_back({warm * valve.vacuum_opens_at->likely.si() / air, "The setting for vacuum, not for pressure."});
  }
  slips.push_back({1.8 * warm * opens / air, "Degrees of one scale taken for those of the other."});
  Question draft;
  draft.at = tank->id.text;
  draft.asks = {"The room above the fuel in tank " + draft.at +
                    " is shut and stands at {} without pressure; its vent opens at {}. Taken as dry air, by how much "
                    "must it warm to lift the valve?",
                {{warm, Quantity::temperature}, {opens, Quantity::ullage_pressure}}};
  draft.explains = {
      "Pressure of shut air grows with its absolute temperature: {} of {} absolute. Vapor adds to that, so "
      "it lifts sooner still.",
      {{opens, Quantity::ullage_pressure}, {air, Quantity::pressure}}};
  draft.follows = {
      "Temperature over absolute zero, by the setting, by the absolute pressure of the air: {} × {} / {} = {}",
      {{warm, Quantity::temperature_difference},
       {opens, Quantity::ullage_pressure},
       {air, Quantity::pressure},
       {warm * opens / air, Quantity::temperature_difference}}};
  return choose_value(std::move(draft), {warm * opens / air, Quantity::temperature_difference}, slips, chance);
}

}  // namespace

std::vector<QuestionKind> tank_questions() {
  return {
      {"volume-at-reading", Form::estimate, 1, "tank-walls", volume_at_reading},
      {"leak-hidden-in-month", Form::choice, 3, "tank-walls", leak_hidden_in_month},
      {"water-volume", Form::choice, 2, "tank-water", water_volume},
      {"water-held", Form::choice, 3, "tank-water", water_held},
      {"warming-lifts-vent", Form::choice, 3, "tank-breathing", warming_lifts_vent},
  };
}

}  // namespace forecourse::lesson
