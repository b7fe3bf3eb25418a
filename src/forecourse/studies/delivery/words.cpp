#include "forecourse/studies/delivery/delivery.h"

namespace forecourse::studies {

const char* word(DeliveryPart part) {
  switch (part) {
    case DeliveryPart::vapor_return:
      return "vapor-return";
    case DeliveryPart::vent:
      return "vent";
    case DeliveryPart::vent_valve:
      return "vent-valve";
    case DeliveryPart::overfill_valve:
      return "overfill-valve";
    case DeliveryPart::overfill_alarm:
      return "overfill-alarm";
    case DeliveryPart::driver:
      return "driver";
  }
  return "";
}

const char* word(DropEnd end) {
  switch (end) {
    case DropEnd::emptied:
      return "emptied";
    case DropEnd::stopped:
      return "stopped";
    case DropEnd::held:
      return "held by the overfill valve";
    case DropEnd::stalled:
      return "stalled";
    case DropEnd::tank_full:
      return "tank full";
    case DropEnd::not_begun:
      return "not begun";
    case DropEnd::going_on:
      return "going on";
  }
  return "";
}

const char* word(DeliveryHappening what) {
  using enum DeliveryHappening;
  switch (what) {
    case begins:
      return "begins";
    case covered:
      return "covered";
    case lifts:
      return "vent-opens";
    case draws:
      return "vent-draws-air";
    case truck_over:
      return "truck-pressure";
    case truck_under:
      return "truck-vacuum";
    case alarm:
      return "alarm";
    case ninety:
      return "ninety";
    case ninety_five:
      return "ninety-five";
    case restricts:
      return "valve-restricts";
    case closes:
      return "valve-shuts";
    case tank_full:
      return "tank-full";
    case truck_empty:
      return "truck-empty";
    case truck_shut:
      return "truck-shut";
    case hose_drained:
      return "hose-drained";
    case hose_stays:
      return "hose-stays-full";
    case stalls:
      return "stalls";
    case ends:
      return "ends";
  }
  return "";
}

}  // namespace forecourse::studies
