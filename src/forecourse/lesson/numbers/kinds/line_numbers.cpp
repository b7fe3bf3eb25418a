// What the flow study and containment tell of the line at hand.
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

/// A value of the line in the first state.
template <class Value>
Picked of_line(const From& from, Value value, const char* key) {
  const auto at = line_in_flow(from.ground, from.at);
  if (!at) return nothing(why_no_flow(from.ground, system_of_line(from.ground, from.at)));
  return picked_flow(from.ground, value(*at->told), at->pointer + key, at->system, "");
}

/// A value of its system with every hose shut.
template <class Value>
Picked at_rest(const From& from, Value value, const char* key, const std::string& reason) {
  const std::string system = system_of_line(from.ground, from.at);
  const auto at = system_at_rest(from.ground, system);
  if (!at) return nothing(why_no_flow(from.ground, system));
  if (!at->told->reason.empty()) return nothing(at->told->reason);
  return picked_flow(from.ground, value(*at->told), at->pointer + key, system,
                     reason.empty() ? at->told->held_by : reason);
}

Picked velocity(const From& from) {
  return of_line(
      from, [](const auto& line) { return line.velocity; }, "/velocity_m_per_s");
}

Picked loss(const From& from) {
  return of_line(
      from, [](const auto& line) { return line.pressure_loss; }, "/pressure_loss_pa");
}

Picked flow(const From& from) {
  return of_line(
      from, [](const auto& line) { return line.flow; }, "/flow_m3_per_s");
}

Picked held(const From& from) {
  return at_rest(
      from, [](const auto& rest) { return rest.held_pressure; }, "/held_pressure_gauge_pa", "");
}

Picked volume(const From& from) {
  return at_rest(
      from, [](const auto& rest) { return std::optional<double>(rest.line_volume); }, "/line_volume_m3",
      "enter the length and the bore of the lines");
}

Picked fall(const From& from) {
  if (!from.ground.studied.containment) return nothing("the station lists no sump: add sump = { ... }");
  const auto& lines = from.ground.studied.containment->lines;
  const auto place = place_of(lines, [&](const auto& one) { return one.line == from.at; });
  if (!place) return nothing("line " + from.at + " is not among the double-walled ones");
  return picked(lines[*place].fall, {"containment"}, at_place("/result/lines", *place) + "/fall",
                "enter fall of line " + from.at + ", or the elevations of its ends");
}

}  // namespace

std::vector<NumberKind> line_numbers() {
  return {{"line-velocity", "Speed in the line, with the hoses open", Quantity::velocity, velocity},
          {"line-loss", "Lost in the line, with the hoses open", Quantity::pressure, loss},
          {"line-flow", "Through the line, with the hoses open", Quantity::flow, flow},
          {"line-held", "Held at the height of the tank's liquid, pump off", Quantity::pressure, held},
          {"line-volume", "Fuel in the lines of this product", Quantity::volume, volume},
          {"line-fall", "Falls toward its sump", Quantity::share, fall}};
}

}  // namespace forecourse::lesson
