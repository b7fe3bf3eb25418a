#pragma once

namespace forecourse::parts {

struct Loss;

/// A part whose loss is linear*q + quadratic*q|q|: fittings, valves, nozzles, and devices fitted this way.
struct QuadraticLaw {
  double linear = 0.0;     ///< [Pa s/m3], >= 0
  double quadratic = 0.0;  ///< [Pa s2/m6], >= 0

  friend bool operator==(const QuadraticLaw&, const QuadraticLaw&) = default;
};

/// Two parts passed by the same flow, one after the other.
constexpr QuadraticLaw operator+(QuadraticLaw a, QuadraticLaw b) {
  return {a.linear + b.linear, a.quadratic + b.quadratic};
}

/// Pressure loss and slope of a quadratic law.
///
/// \param law  linear [Pa s/m3] and quadratic [Pa s2/m6] coefficient, both >= 0
/// \param flow [m3/s], either sign
/// \return loss [Pa], slope [Pa s/m3]; odd in flow.
/// \error rounding only.
/// \source common practice, no source
Loss loss(const QuadraticLaw& law, double flow);

/// Flow through a quadratic law that loses a given pressure.
///
/// \param law           at least one coefficient > 0, [Pa s/m3] and [Pa s2/m6]
/// \param pressure_loss [Pa], either sign
/// \return flow [m3/s]; infinite when the law has no loss at all, 0 at 0.
/// \error rounding only.
/// \source common practice, no source
double flow_at(const QuadraticLaw& law, double pressure_loss);

/// Law of a fitting whose loss is K velocity heads.
///
/// \param loss_coefficient K [1], >= 0, of the velocity in `bore`
/// \param bore             inside diameter [m], > 0
/// \param density          of the liquid [kg/m3], > 0
/// \return quadratic law [Pa s2/m6].
/// \pre turbulent flow; published K scatter by -20 to +30 %.
/// \error rounding only against the definition.
/// \source [tp410, loss = K rho v2 / 2]
QuadraticLaw from_loss_coefficient(double loss_coefficient, double bore, double density);

/// Law of a valve given by its flow coefficient as an area: q = Av sqrt(loss / density).
///
/// Cv and Kv are turned into Av in base/flow_coefficient.h.
/// \param flow_area Av [m2], > 0
/// \param density   of the liquid [kg/m3], > 0
/// \return quadratic law [Pa s2/m6].
/// \pre no cavitation, turbulent flow.
/// \error rounding only against the definition.
/// \source [isa_75_01, definition of the flow coefficient]
QuadraticLaw from_flow_area(double flow_area, double density);

/// Quadratic law through one known point.
///
/// \param pressure_loss at that flow [Pa], >= 0
/// \param flow          [m3/s], > 0
/// \return quadratic law [Pa s2/m6] without a linear part.
/// \pre the device is turbulent over its range.
/// \error unknown away from the point; give more points where it matters.
/// \source common practice, no source
QuadraticLaw from_loss_at_flow(double pressure_loss, double flow);

/// Loss coefficient K of the velocity in a bore that a purely quadratic law stands for.
///
/// \param law     quadratic coefficient [Pa s2/m6]
/// \param bore    inside diameter [m], > 0
/// \param density of the liquid [kg/m3], > 0
/// \return K [1].
/// \error rounding only.
/// \source [tp410, loss = K rho v2 / 2]
double loss_coefficient(const QuadraticLaw& law, double bore, double density);

}  // namespace forecourse::parts
