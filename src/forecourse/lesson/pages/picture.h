#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/numbers/number.h"

namespace forecourse::lesson {

// What the states of pictures are written with.

using PictureValues = std::map<std::string, double>;

/// A value with one more; a share that is not known is left out, one beyond its range stands at its end.
inline void put(PictureValues& values, const char* name, std::optional<double> share, double low = 0.0) {
  if (share && std::isfinite(*share)) values[name] = std::clamp(*share, low, 1.0);
}

/// A part of a whole; empty where either is not known.
[[nodiscard]] inline std::optional<double> share_of(std::optional<double> part, std::optional<double> whole) {
  if (!part || !whole || !(*whole != 0.0)) return std::nullopt;
  return *part / *whole;
}

/// The same picture with some values changed.
[[nodiscard]] inline PictureValues with(PictureValues values, const PictureValues& changed) {
  for (const auto& one : changed) values[one.first] = one.second;
  return values;
}

[[nodiscard]] inline PictureState state(std::string id, std::string words, PictureValues values) {
  return {std::move(id), std::move(words), std::move(values)};
}

// The states of pictures, by what they are of.

using States = std::vector<PictureState>;

[[nodiscard]] States drop_states(const From& from);
[[nodiscard]] States fill_states(const From& from);
[[nodiscard]] States overfill_valve_states(const From& from);
[[nodiscard]] States tank_walls_states(const From& from);
[[nodiscard]] States tank_water_states(const From& from);
[[nodiscard]] States tank_breathing_states(const From& from);
[[nodiscard]] States vapor_return_states(const From& from);
[[nodiscard]] States vent_states(const From& from);

[[nodiscard]] States pump_states(const From& from);
[[nodiscard]] States sump_states(const From& from);
[[nodiscard]] States leak_detector_states(const From& from);
[[nodiscard]] States double_wall_states(const From& from);
[[nodiscard]] States line_states(const From& from);

[[nodiscard]] States shear_valve_states(const From& from);
[[nodiscard]] States filter_states(const From& from);
[[nodiscard]] States meter_states(const From& from);
[[nodiscard]] States parting_states(const From& from);
[[nodiscard]] States turning_states(const From& from);
[[nodiscard]] States nozzle_states(const From& from);
[[nodiscard]] States vehicle_states(const From& from);
[[nodiscard]] States emergency_stop_states(const From& from);
[[nodiscard]] States interlock_states(const From& from);

}  // namespace forecourse::lesson
