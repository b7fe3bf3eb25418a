#include <algorithm>

#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"

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
  slips.push_back({*fill.to_sensor / 3.0, "A leak of three times as much."});
  slips.push_back({2.0 * *fill.to_sensor, "Twice: the sump taken as wide below as above."});
  Question draft;
  draft.at = sump->owner;
  draft.asks = {
      "{} drip into the sump of " + sump->owner +
          ", {} deep; its sensor sits {} above the floor. How long until it tells?",
      {{fill.inflow, Quantity::leak}, {*sump->depth, Quantity::bore}, {*sump->sensor_height, Quantity::bore}}};
  draft.explains = {"{} are in it by then; the brim is reached after {}.",
                    {{sump->at_sensor.value_or(0.0), Quantity::volume}, {fill.to_brim, Quantity::time}}};
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
  std::vector<Ranked> items{{{"it runs over the brim", {}}, fill.to_brim}};
  if (fill.to_sensor) items.push_back({{"the sensor is wet", {}}, *fill.to_sensor});
  if (fill.to_seal) items.push_back({{"the lowest entry seal is wet", {}}, *fill.to_seal});
  items.push_back({{"half of what it holds has run in", {}}, 0.5 * fill.to_brim});
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
