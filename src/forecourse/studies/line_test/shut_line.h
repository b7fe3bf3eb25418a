#pragma once

#include <optional>
#include <vector>

#include "forecourse/parts/escape/leak_rate.h"
#include "forecourse/parts/line/line_cooling.h"
#include "forecourse/parts/line/trapped_line.h"

namespace forecourse::studies {

/// A line shut at both ends, as its pressure goes.
struct ShutLine {
  double volume = 0.0;           ///< [m3]
  double compliance = 0.0;       ///< [m3/Pa], > 0
  double shrinks = 0.0;          ///< of fuel less line [1/K]
  double warmer = 0.0;           ///< fuel above the ground when it came [K]
  double atmosphere = 0.0;       ///< [Pa] absolute
  double pocket = 0.0;           ///< vapor or air at the first pressure [m3]
  double first_pressure = 0.0;   ///< gauge [Pa]
  std::optional<double> relief;  ///< gauge [Pa] at which it lets fuel back
};

/// Shares of the temperature difference that are left at even steps of a test.
struct Fading {
  double step = 0.0;          ///< [s]
  std::vector<double> share;  ///< from the beginning of the test to its end
};
[[nodiscard]] Fading fading_of(const parts::CoolingLaw& law, double wait, double duration);
/// The same with no difference left.
[[nodiscard]] Fading no_fading(double duration);

struct ShutLineCourse {
  std::vector<double> pressure;       ///< gauge [Pa] at the steps of the fading
  std::optional<double> relieved_at;  ///< [s]
  std::optional<double> to_air_at;    ///< [s] from here on the pressure is told as that of the air
};

/// Pressure of a shut line with a leak while its temperature fades. Stops at the pressure of the air: below it vapor
/// forms or air comes in, and a gauge says nothing more.
/// \error of the step by step integration below 1e-3 of the drop
/// \source law of nature: conservation of volume
[[nodiscard]] ShutLineCourse course_of(const ShutLine& line, const parts::LeakLaw& leak, const Fading& fading);

/// The leak at the first pressure [m3/s] with which the pressure falls by a drop [Pa] by the end; 0 where a tight line
/// falls further; empty where no leak up to `most` does.
[[nodiscard]] std::optional<double> leak_for_drop(const ShutLine& line, double exponent, const Fading& fading,
                                                  double drop, double most);

}  // namespace forecourse::studies
