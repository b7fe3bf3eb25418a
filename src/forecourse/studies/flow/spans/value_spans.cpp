#include "forecourse/studies/flow/spans/value_spans.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace forecourse::studies {
namespace {

using site::UncertainValue;

bool same(double a, double b) { return std::abs(a - b) <= 1e-9 * std::max({std::abs(a), std::abs(b), 1e-6}); }

bool same(const std::optional<SpanFlows>& a, const std::optional<SpanFlows>& b) {
  if (a.has_value() != b.has_value()) return false;
  return !a || (same(a->total, b->total) && same(a->slowest, b->slowest) && same(a->fastest, b->fastest));
}

/// True if the value is the flowing temperature of a system: its fluid is at another one at each end.
bool is_temperature(const UncertainValue& value, const SystemFlows& low, const SystemFlows& high) {
  return value.quantity == &Temperature::kind() && low.fluid.temperature < high.fluid.temperature;
}

std::string what_goes_with(const network::Fluid& low, const network::Fluid& high) {
  const bool density = low.density != high.density;
  const bool viscosity = low.dynamic_viscosity != high.dynamic_viscosity;
  if (density && viscosity) return "density and viscosity go with it";
  if (density) return "density goes with it, viscosity stays: no law of it is entered (viscosity_points)";
  if (viscosity) return "viscosity goes with it, density stays as entered at the flowing temperature";
  return "neither density nor viscosity goes with it: both are entered at the flowing temperature";
}

FlowSpan row_of(const UncertainValue& value, const std::string& system) {
  return {SpanKind::entered_value,
          value.path,
          system,
          value.quantity,
          value.low,
          value.likely,
          value.high,
          {},
          {},
          {},
          {},
          {}};
}

}  // namespace

std::vector<FlowSpan> value_spans(const std::vector<UncertainValue>& values, const OneAtATime& singles, std::size_t set,
                                  const network::StationNetwork& network, std::vector<bool>& moves) {
  std::vector<FlowSpan> rows;
  for (std::size_t v = 0; v < values.size(); ++v) {
    for (std::size_t s = 0; s < network.systems.size(); ++s) {
      const SystemFlows& likely = singles.likely[set].systems[s];
      const SystemFlows& low = singles.low[v][set].systems[s];
      const SystemFlows& high = singles.high[v][set].systems[s];
      if (!likely.flows) continue;
      const bool temperature = is_temperature(values[v], low, high);
      const bool moved = !same(low.flows, likely.flows) || !same(high.flows, likely.flows);
      if (moved) moves[v] = true;
      if (!moved && !temperature) continue;
      FlowSpan row = row_of(values[v], network.systems[s].id);
      row.at_low = low.flows;
      row.at_likely = likely.flows;
      row.at_high = high.flows;
      if (temperature) {
        row.kind = SpanKind::temperature;
        row.note = what_goes_with(low.fluid, high.fluid);
      }
      if (!low.flows || !high.flows) {
        row.reason = std::string("with it at its ") + (low.flows ? "high" : "low") + " the flows are not determined";
      }
      rows.push_back(std::move(row));
    }
  }
  return rows;
}

}  // namespace forecourse::studies
