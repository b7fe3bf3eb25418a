#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::decide {

/// What a row of the difference table is about.
enum class Topic {
  hose_flow,         ///< of each open hose
  slowest_flow,      ///< of the slowest open hose of a piping
  total_flow,        ///< from the tanks of a piping
  spread,            ///< flow of the nearest open hose less that of the farthest, by the length of the course
  inlet_pressure,    ///< where the hoses of a dispenser begin
  slowest_pressure,  ///< where the slowest open hose begins
  pump_rise,         ///< what a pump adds
  pump_discharge,    ///< pressure at its discharge
  line_velocity,
  line_loss,
  line_length,   ///< of a line, a riser or a pump's leg
  pipe_of_bore,  ///< length of all lines, risers and legs of one bore
  pipe_total,    ///< length of all of them
  joints_at,     ///< joints at one pump, dispenser or branch
  joints_total,
};

enum class Amount { flow, pressure_difference, gauge_pressure, velocity, length, count };

[[nodiscard]] Amount amount_of(Topic topic);

/// One row: a figure of A beside that of B, in SI.
struct DifferenceRow {
  Topic topic = Topic::hose_flow;
  std::string system;    ///< piping; empty: of the station, or of more than one
  std::string state;     ///< name of the open set, or `alone`; empty: in every state
  std::string subject;   ///< id of what it is of; empty: the whole
  std::string detail_a;  ///< which hoses are meant in A: "D3.b", "D1.a to D3.a"
  std::string detail_b;
  std::optional<double> bore;  ///< [m] of a row of pipe of one bore; 0: not entered
  std::optional<double> a;     ///< empty: A does not have it, or it is not determined
  std::optional<double> b;
  bool differs = false;  ///< by more than the solver's accuracy, or only one has it

  [[nodiscard]] std::optional<double> difference() const;  ///< B minus A
  [[nodiscard]] std::optional<double> share() const;  ///< of A's size; empty where that is zero or B runs the other way

  static constexpr const char* alone = "alone";
};

/// True for two values that the solver cannot tell apart: they differ by less than a millionth, or by less than
/// 1e-9 m3/s, 0.1 Pa, 1e-6 m/s, 1e-9 m. Counts must be equal.
[[nodiscard]] bool same_value(Amount amount, double a, double b);

/// The rows of a topic, state and piping of which none differs.
struct Unchanged {
  Topic topic = Topic::hose_flow;
  std::string state;
  std::string system;
  int rows = 0;
  bool whole_topic = false;  ///< nor does any other row of this topic and state
};

/// The difference table, by topic and state in the order of the enumeration and of the results.
[[nodiscard]] std::vector<DifferenceRow> difference_rows(const site::Site& a, const studies::FlowResult& flow_a,
                                                         const site::Site& b, const studies::FlowResult& flow_b);

[[nodiscard]] std::vector<Unchanged> unchanged_in(const std::vector<DifferenceRow>& rows);

}  // namespace forecourse::decide
