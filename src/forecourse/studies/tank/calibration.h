#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// A size of the tank that readings may correct.
struct FittedSize {
  std::string
      what;  ///< "inside diameter", "length", "pitch", "cross-section area", "zero of the stick", "volume at the start"
  std::string unit;  ///< SI: "m", "m2", "m3", or empty
  double entered = 0.0;
  double value = 0.0;
  std::optional<double> standard_error;  ///< empty: held as entered
  std::string held;                      ///< why it was held
};

/// A calibration reading against the tank as entered and as fitted.
struct FittedReading {
  double added = 0.0;     ///< [m3]
  double depth = 0.0;     ///< [m]
  double residual = 0.0;  ///< [m] read less fitted
};

/// A line of the fitted chart beside that of the tank as entered.
struct FittedChartRow {
  double depth = 0.0;           ///< [m]
  double entered = 0.0;         ///< [m3]
  double fitted = 0.0;          ///< [m3]
  double standard_error = 0.0;  ///< [m3] of `fitted`
};

/// A tank's shape corrected by readings.
struct CalibrationTold {
  std::string problem;  ///< why there is none; empty if there is
  double along = 0.0;   ///< [m] place of the readings
  std::vector<FittedSize> sizes;
  std::vector<std::string> not_apart;  ///< what the readings cannot tell apart, sentences
  std::vector<FittedReading> readings;
  std::vector<FittedChartRow> chart;
  double residual = 0.0;                   ///< [m] one standard deviation of a depth about the fit
  std::optional<double> residual_entered;  ///< [m] the same of the tank as entered, its start fitted alone
  std::optional<double> uncertainty;       ///< [m] of a depth, as entered
  double capacity = 0.0;                   ///< [m3] of the fitted tank
  std::optional<double> capacity_error;    ///< [m3] one standard error
};

/// Least squares over diameter, length, pitch, zero of the stick and volume at the start, as far as the readings tell;
/// of an upright or rectangular tank over its cross-section area and the volume at the start.
///
/// \error Gauss-Newton to 1e-9 of each size; standard errors from the linearized fit
/// \fails with fewer than three readings or a dip chart a problem is told
[[nodiscard]] CalibrationTold fit_calibration(const site::Calibration& calibration, const network::TankInside& inside);

}  // namespace forecourse::studies
