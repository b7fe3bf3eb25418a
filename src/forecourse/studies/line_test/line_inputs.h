#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/pack/held_line.h"
#include "forecourse/network/piping_system.h"
#include "forecourse/parts/line/line_cooling.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::studies {

/// What the tests of one line are computed from.
struct LineInputs {
  const site::Site& site;
  const network::PipingSystem& system;
  const LineTestOptions& options;
  std::vector<DefaultUsed>& defaults;
};

/// How the temperature of a line fades, with how each figure was come by; empty where the told has a problem.
[[nodiscard]] std::optional<parts::CoolingLaw> cooling_law(const LineInputs& inputs, ThermalTold& told);

/// A place of a system whose height is entered; null: it is not.
[[nodiscard]] const network::Place* placed(const network::PipingSystem& system, const std::string& id);

/// Volume and compliance of the line, entered or of its pipes.
void tell_conduit(const LineInputs& inputs, LineTest& line);

/// Leak detectors of the running pumps of a line.
[[nodiscard]] std::vector<DetectorTold> detectors_of(const LineInputs& inputs, const LineTest& line,
                                                     const std::optional<parts::CoolingLaw>& law,
                                                     const std::vector<double>& quiet);

/// Seeming rate of temperature alone at a time, with the fuel a difference above the ground [m3/s].
[[nodiscard]] double thermal_rate(const LineTest& line, double warmer, const parts::CoolingLaw& law, double time);

/// Time until it is no larger than a rate, of either sign [s].
[[nodiscard]] double thermal_wait(const LineTest& line, double warmer, const parts::CoolingLaw& law, double rate);

}  // namespace forecourse::studies
