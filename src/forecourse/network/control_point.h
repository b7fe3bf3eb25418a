#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/equipment/pump_control.h"

namespace forecourse::network {

/// A control that starts, stops or turns pumps by itself, as the network sees it.
struct ControlPoint {
  std::string id;
  site::ControlKind kind = site::ControlKind::all;
  std::vector<std::size_t> pumps;          ///< of `PipingSystem::pumps`, in the order they start
  std::optional<double> starts_below;      ///< [Pa] gauge
  std::optional<double> stops_above;       ///< [Pa] gauge
  std::optional<double> hoses_calling;     ///< the next pump starts when more than this call
  std::optional<double> alternates_after;  ///< [s]
  std::optional<double> holds;             ///< [Pa] gauge
  double least_speed = 0.0;                ///< of full speed [1]
  double most_speed = 1.0;                 ///< of full speed [1]
  SourceSpan where{};
};

/// How each pump of a system runs in one state.
struct PumpSetting {
  std::vector<char> running;  ///< per pump
  std::vector<double> speed;  ///< of full speed, per pump [1]
};

}  // namespace forecourse::network
