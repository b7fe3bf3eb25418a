#pragma once

#include <compare>

#include "forecourse/base/quantity_kind.h"

namespace forecourse {

/// A physical quantity held in its SI unit. `Kind` tells quantities apart, so that a gauge pressure
/// never passes for an absolute one, nor a temperature for a temperature difference.
/// Made by `from_si` (or read from text, see unit_text.h) and read by `si()`: a bare number never
/// crosses a border between layers unnoticed.
template <class Kind>
class Quantity {
 public:
  constexpr Quantity() = default;
  [[nodiscard]] static constexpr Quantity from_si(double value) { return Quantity(value); }
  [[nodiscard]] static constexpr const QuantityKind& kind() { return Kind::kind; }
  [[nodiscard]] constexpr double si() const { return value_; }

  friend constexpr Quantity operator+(Quantity a, Quantity b) { return from_si(a.value_ + b.value_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return from_si(a.value_ - b.value_); }
  friend constexpr Quantity operator*(double k, Quantity a) { return from_si(k * a.value_); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;

 private:
  constexpr explicit Quantity(double value) : value_(value) {}
  double value_ = 0.0;
};

// The kinds of quantity a site file can hold. SI unit in brackets.
using Length = Quantity<kinds::Length>;                                // [m]
using Area = Quantity<kinds::Area>;                                    // [m2]
using Volume = Quantity<kinds::Volume>;                                // [m3]
using Mass = Quantity<kinds::Mass>;                                    // [kg]
using Duration = Quantity<kinds::Duration>;                            // [s]
using Velocity = Quantity<kinds::Velocity>;                            // [m/s]
using VolumeFlow = Quantity<kinds::VolumeFlow>;                        // [m3/s]
using PressureDifference = Quantity<kinds::PressureDifference>;        // [Pa]
using GaugePressure = Quantity<kinds::GaugePressure>;                  // [Pa]
using AbsolutePressure = Quantity<kinds::AbsolutePressure>;            // [Pa]
using Modulus = Quantity<kinds::Modulus>;                              // [Pa]
using Temperature = Quantity<kinds::Temperature>;                      // [K]
using TemperatureDifference = Quantity<kinds::TemperatureDifference>;  // [K]
using Density = Quantity<kinds::Density>;                              // [kg/m3]
using DynamicViscosity = Quantity<kinds::DynamicViscosity>;            // [Pa s]
using KinematicViscosity = Quantity<kinds::KinematicViscosity>;        // [m2/s]
using LinearLoss = Quantity<kinds::LinearLoss>;                        // [Pa s/m3]
using SquareLoss = Quantity<kinds::SquareLoss>;                        // [Pa s2/m6]
using Expansion = Quantity<kinds::Expansion>;                          // [1/K]
using SpecificHeat = Quantity<kinds::SpecificHeat>;                    // [J/(kg K)]
using Power = Quantity<kinds::Power>;                                  // [W]
using Force = Quantity<kinds::Force>;                                  // [N]
using Stiffness = Quantity<kinds::Stiffness>;                          // [N/m]
using Moment = Quantity<kinds::Moment>;                                // [N m]
using Acceleration = Quantity<kinds::Acceleration>;                    // [m/s2]
using Compliance = Quantity<kinds::Compliance>;                        // [m3/Pa]
using UnitWeight = Quantity<kinds::UnitWeight>;                        // [N/m3]
using Angle = Quantity<kinds::Angle>;                                  // [rad]
using Ratio = Quantity<kinds::Ratio>;                                  // [1]

}  // namespace forecourse
