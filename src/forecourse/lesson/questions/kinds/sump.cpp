#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"

namespace forecourse::lesson {
namespace {

Asked time_to_sensor(const Ground& ground, Chance& chance) {
  if (!ground.studied.containment) return left_out("no sump is entered");
  const studies::ContainedSump* sump = pick(those(ground.studied.containment->sumps,
                                                  [](const studies::ContainedSump& one) {
                                                    return !one.of_tank && one.problem.empty() && one.sensor_height &&
                                                           one.depth && one.fills.size() > 1 &&
                                                           one.fills[1].to_sensor.value_or(0.0) > 0.0;
                                                  }),
                                            chance);
  if (sump == nullptr)
    return left_out("no dispenser sump has its sizes and a sensor: enter sump = { ..., sensor_height }");
  const studies::SumpFill& fill = sump->fills[1];
  std::vector<Slip> slips{
      {fill.to_brim * *sump->sensor_height / *sump->depth, "The share of the depth taken for that of the volume."}};
  if (fill.to_seal) slips.push_back({*fill.to_seal, "When the lowest entry seal is wet."});
  slips.push_back({fill.to_brim, "When the sump is full to the brim."});
  const double detector = to_si(3.0, "gal/h");  // [cfr_280, 280.44(a)]
  slips.push_back({*fill.to_sensor * fill.inflow / detector,
                   "At the 3 gph that a line leak detector has to find, not at this leak."});
  Question draft;
  draft.at = sump->owner;
  draft.asks = {
      "{} drip into the sump of " + sump->owner +
          ", {} deep; its sensor sits {} above the floor. How long until it tells?",
      {{fill.inflow, Quantity::leak}, {*sump->depth, Quantity::bore}, {*sump->sensor_height, Quantity::bore}}};
  draft.explains = {"{} are in it by then; the brim is reached after {}.",
                    {{sump->at_sensor.value_or(0.0), Quantity::volume}, {fill.to_brim, Quantity::time}}};
  draft.follows = {"What is in it when the sensor is wet, by the leak: {} / {} = {}",
                   {{sump->at_sensor.value_or(0.0), Quantity::volume},
                    {fill.inflow, Quantity::leak},
                    {*fill.to_sensor, Quantity::time}}};
  draft.proof = {
      {"containment"},
      "/result/sumps/" + std::to_string(index_of(ground.studied.containment->sumps, sump)) + "/fills/1/to_sensor_s"};
  return choose_value(std::move(draft), {*fill.to_sensor, Quantity::time}, slips, chance);
}

Asked order_sump(const Ground& ground, Chance& chance) {
  if (!ground.studied.containment) return left_out("no sump is entered");
  const studies::ContainedSump* sump = pick(those(ground.studied.containment->sumps,
                                                  [](const studies::ContainedSump& one) {
                                                    return one.problem.empty() && one.sensor_height &&
                                                           one.seal_height && one.depth && one.fills.size() > 1;
                                                  }),
                                            chance);
  if (sump == nullptr) return left_out("no sump has depth, sensor_height and lowest_seal: enter them");
  const studies::SumpFill& fill = sump->fills[1];
  std::vector<Ranked> items;
  const auto add = [&](const char* words, double volume) {
    items.push_back({{words, {}}, volume / fill.inflow, Amount{volume, Quantity::volume}});
  };
  add("it runs over the brim", sump->brim);
  if (sump->at_sensor) add("the sensor is wet", *sump->at_sensor);
  if (sump->at_seal) add("the lowest entry seal is wet", *sump->at_seal);
  add("half of what it holds has run in", 0.5 * sump->brim);
  Question draft;
  draft.at = sump->owner;
  draft.asks = {
      "Fuel drips into the sump of " + sump->owner +
          ": its sensor sits {} above the floor, its lowest entry seal {}, "
          "and it is {} deep. In which order does this come?",
      {{*sump->sensor_height, Quantity::bore}, {*sump->seal_height, Quantity::bore}, {*sump->depth, Quantity::bore}}};
  draft.explains = {"A sensor that sits above a seal tells of a leak that has already gone out through it.", {}};
  return in_order(std::move(draft), std::move(items), 0.01 * fill.to_brim, 3);
}

}  // namespace

std::vector<QuestionKind> sump_questions() {
  return {
      {"time-to-sensor", Form::choice, 2, "sump", time_to_sensor},
      {"order-sump", Form::order, 1, "sump", order_sump},
  };
}

}  // namespace forecourse::lesson
