#pragma once

#include <optional>
#include <vector>

#include "forecourse/network/system_solver.h"

namespace forecourse::network {

/// One way in which the pumps of a control can run, solved.
struct ControlStep {
  PumpSetting pumps;            ///< of the whole system
  std::vector<std::size_t> on;  ///< pumps of the control that run, indices into `PipingSystem::pumps`
  double line_pressure = 0.0;   ///< [Pa] gauge, where the control reads it; NaN if nothing holds it
  double total_flow = 0.0;      ///< [m3/s] from the tanks
  std::vector<double> flow;     ///< [m3/s] per run
  solvers::SteadyStatus status = solvers::SteadyStatus::not_converged;
  bool rests = true;  ///< the control leaves it as it is
};

/// Whether a variable speed holds its pressure.
enum class PressureHeld {
  not_asked,       ///< no variable speed
  held,            ///< within its speeds
  not_reached,     ///< at the most speed the pressure is lower
  passed,          ///< even at the least speed the pressure is higher
  not_determined,  ///< nothing holds a pressure where the control reads it
};

/// What a control makes of the pumps for one set of open hoses.
struct ControlOutcome {
  std::vector<ControlStep> steps;         ///< lead and lag: 1, 2, ... pumps; alternating: each pump in turn; speed: one
  std::size_t taken = 0;                  ///< the step that the state tells
  std::optional<std::size_t> hunts_with;  ///< the lag pump starts and stops in turn between `taken` and this step
  double speed = 1.0;                     ///< of full speed [1]
  PressureHeld held = PressureHeld::not_asked;
};

/// Gauge pressure where a control reads it: on the line side of its first pump, where the leak detector sits [Pa].
[[nodiscard]] double line_pressure(const PipingSystem& system, const SystemState& state);

/// A system made ready to solve many states, its pumps run as its control says.
///
/// Lead and lag: every number of pumps, in the order they start, is solved; one that neither starts a further pump nor
/// stops the last is at rest. From one pump up, the first number at which no further pump starts is taken. Where
/// its pressure stops the last pump, the pump starts and stops in turn, and the number without it is taken.
/// Alternating: the first pump in order is taken, each other is solved too. Variable speed: the speed at which the
/// line pressure is the one held, by a bracketed search; the nearer limit where there is none.
/// \source common practice, no source
/// \error speed within 1e-12 of full speed or pressure within 1e-3 Pa; each step as the solver's report says.
class ControlledSolver {
 public:
  explicit ControlledSolver(const PipingSystem& system, solvers::SteadyOptions options = {});

  [[nodiscard]] const PipingSystem& system() const { return solver_.system(); }

  /// \param open_hoses  per hose of the system
  /// \param caps        [m3/s] per hose, a further limit on its flow in this system; empty: none
  /// \param start       a state nearby to begin from, null for none; not asked where a control tries several
  [[nodiscard]] SystemState solve(const std::vector<char>& open_hoses, const std::vector<double>& caps = {},
                                  const SystemState* start = nullptr);

 private:
  [[nodiscard]] bool starts_next(const SystemCase& asked, std::size_t n, ControlStep& one) const;
  [[nodiscard]] SystemState lead_and_lag(SystemCase asked);
  [[nodiscard]] SystemState alternating(SystemCase asked);
  [[nodiscard]] SystemState variable_speed(SystemCase asked);
  [[nodiscard]] SystemState at_speed(SystemCase& asked, double speed);
  [[nodiscard]] SystemState told_at(SystemCase& asked, double speed, PressureHeld held);
  [[nodiscard]] PumpSetting setting(const std::vector<std::size_t>& on) const;
  [[nodiscard]] ControlStep step(const SystemCase& asked, const SystemState& state, std::vector<std::size_t> on) const;

  SystemSolver solver_;
};

/// Piezometric pressure that a pump reaches at no flow, turned at a share of full speed [Pa].
/// \pre the system has a graph
[[nodiscard]] double shutoff_pressure(const PipingSystem& system, std::size_t pump, double speed);

/// Total flow of the piping at which the check valve of a pump opens while the others run as given: the flow, drawn
/// at one place, that brings the pressure at the pump's place down to its shutoff. Empty if it opens at no flow,
/// runs back or never opens.
/// \param place  index into `PipingSystem::places`
/// \error 1e-9 of the flow
/// \source common practice, no source
[[nodiscard]] std::optional<double> opening_flow(SystemSolver& solver, const PumpSetting& pumps, std::size_t pump,
                                                 std::size_t place);

}  // namespace forecourse::network
