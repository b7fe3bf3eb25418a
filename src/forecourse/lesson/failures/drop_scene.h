#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/failures/replay.h"
#include "forecourse/studies/delivery/delivery.h"
#include "forecourse/studies/delivery/read_delivery_options.h"

namespace forecourse::lesson {

/// A delivery as it goes in one scene: what the command `delivery` is asked.
struct DropSide {
  std::string name;  ///< of the scene
  studies::DeliveryTexts texts;
  std::vector<std::string> sets = {};  ///< values changed in the site it is worked out of, as typed behind `--set`
};

/// One worked out.
struct DropWorked {
  std::string problem;  ///< why there is none, and what to enter
  studies::DeliveryRun run;
  std::vector<std::string> command;
  std::vector<std::string> rests_on;
};

[[nodiscard]] DropWorked work_out(const site::Site& site, const DropSide& side, bool charts,
                                  const Context& context = {});

/// What two drops into a tank are drawn against.
struct DropMost {
  double rate = 0.0;   ///< [m3/s]
  double vapor = 0.0;  ///< [m3/s]
  double depth = 0.0;  ///< [m] of the tank, full
};
[[nodiscard]] DropMost most_of_both(const site::Site& site, const std::string& tank, const DropWorked& a,
                                    const DropWorked& b);

/// A scene with all that the pictures of drop, vapor return, vent and tank are drawn from.
[[nodiscard]] Scene drop_scene(const DropSide& side, const DropWorked& worked, const DropMost& most, bool works);

/// Deliveries that drop into a tank, by id; those of `at` first, a tank or a delivery.
struct Drop {
  const site::Delivery* delivery = nullptr;
  const site::TruckCompartment* compartment = nullptr;
  const site::Tank* tank = nullptr;
};
using FitsDrop = bool (*)(const Drop& drop);
[[nodiscard]] std::vector<Drop> drops(const site::Site& site, const std::string& at, FitsDrop fits);

}  // namespace forecourse::lesson
