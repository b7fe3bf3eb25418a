#pragma once

#include <string>
#include <variant>

#include "forecourse/base/diagnostic.h"
#include "forecourse/parts/bounds.h"
#include "forecourse/parts/law.h"

namespace forecourse::network {

/// What a part in the path is, in course order. The word of each is in `word(ElementKind)`.
enum class ElementKind {
  pump,
  check_valve,
  leak_detector,
  leg,
  line,
  connection,
  riser,
  shear_valve,
  filter,
  meter,
  hose_set,  ///< all of dispenser and hanging hardware, entered as one loss
  control_valve,
  whip_hose,
  breakaway,
  curb_hose,
  swivel,
  nozzle,
};

/// The trade's word for a kind of part: "shear valve".
[[nodiscard]] const char* word(ElementKind kind);

/// One part in series along a run.
struct Element {
  ElementKind kind = ElementKind::line;
  std::string owner;  ///< id of what it belongs to: "trunk", "D1.regular", "D1.a"
  parts::Law law;
  double flow_factor = 1.0;  ///< flow through the part per flow of the run [1]; above 1 behind a blend
  double bore = 0.0;         ///< [m], 0: no bore of its own
  double length = 0.0;       ///< [m] along the course, 0 for a fitting
  SourceSpan where{};
};

/// Pressure loss of one element at a flow of its run.
/// \param flow [m3/s] of the run
/// \return [Pa], [Pa s/m3] per flow of the run
[[nodiscard]] inline parts::Loss loss(const Element& element, double flow) {
  const parts::Loss own = parts::loss(element.law, element.flow_factor * flow);
  return {own.pressure_loss, own.slope * element.flow_factor};
}

/// A law with its pump, if it is one, turned at a share of its full speed [1].
[[nodiscard]] inline parts::Law at_speed(const parts::Law& law, double speed) {
  const auto* full = std::get_if<parts::PumpLaw>(&law);
  if (full == nullptr) return law;
  return parts::PumpLaw{full->curve, full->speed_ratio * speed, full->efficiency};
}

/// Pressure loss of one element with a pump turned at a share of its full speed.
/// \param flow  [m3/s] of the run
/// \param speed of full speed [1]
/// \return [Pa], [Pa s/m3] per flow of the run
[[nodiscard]] inline parts::Loss loss(const Element& element, double flow, double speed) {
  if (speed == 1.0 || !std::holds_alternative<parts::PumpLaw>(element.law)) return loss(element, flow);
  Element turned = element;
  turned.law = at_speed(element.law, speed);
  return loss(turned, flow);
}

}  // namespace forecourse::network
