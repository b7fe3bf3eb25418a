#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/quantity_kind.h"

namespace forecourse::studies {

/// What one piping system gives in one open set.
struct SpanFlows {
  double total = 0.0;    ///< [m3/s] from the tanks
  double slowest = 0.0;  ///< [m3/s] of the open hose that gives least
  double fastest = 0.0;  ///< [m3/s] of the open hose that gives most
  std::string slowest_hose;
  std::string fastest_hose;
};

/// What is moved from one end to the other.
enum class SpanKind {
  entered_value,  ///< a value entered as low, likely and high
  temperature,    ///< the fuel's, with what of density and viscosity goes with it
  level,          ///< tanks from low to full
  filter,         ///< from clean to loaded, all together
};

/// How far one thing alone moves the flows of one system in one open set.
struct FlowSpan {
  SpanKind kind = SpanKind::entered_value;
  std::string subject;                     ///< "line.trunk.length", a product's id, "T1", "filters"
  std::string system;                      ///< of piping
  const QuantityKind* quantity = nullptr;  ///< of the three below; null: a number without a unit
  std::optional<double> low;               ///< SI
  std::optional<double> likely;
  std::optional<double> high;
  std::optional<SpanFlows> at_low;  ///< of filters: empty, since they are entered clean
  std::optional<SpanFlows> at_likely;
  std::optional<SpanFlows> at_high;
  std::string note;    ///< what the ends are, what does not move
  std::string reason;  ///< why it is not determined, and what to enter
};

/// The spans of one set of open hoses.
struct SetSpans {
  std::string open_set;
  std::vector<FlowSpan> flows;
};

/// How far the fuel stays from boiling at one place and temperature.
struct VaporMargin {
  std::string system;
  std::string place;                        ///< "inlet of pump P1"
  std::optional<double> temperature;        ///< [K]
  std::optional<double> atmospheric;        ///< [Pa] absolute
  std::string atmospheric_from;             ///< "entered", "altitude"
  std::optional<double> pressure_absolute;  ///< [Pa] at the place
  std::optional<double> vapor_pressure;     ///< [Pa] true, absolute
  std::string vapor_pressure_from;          ///< its source
  std::optional<double> margin;             ///< [Pa] pressure over vapor pressure; below zero: it boils
  std::string reason;                       ///< why it is not determined, and what to enter
};

/// What moves the flows of a station, and how far.
struct FlowSpans {
  std::vector<SetSpans> sets;               ///< one for each asked open set
  std::vector<VaporMargin> margins;         ///< in the first asked open set
  std::vector<std::string> without_effect;  ///< uncertain values that move no flow of an asked set
  int corners = 0;                          ///< stations solved with several values at their ends
  bool monotone = true;                     ///< no value was seen to move a flow the same way at both ends
};

}  // namespace forecourse::studies
