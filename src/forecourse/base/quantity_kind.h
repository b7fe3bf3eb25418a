#pragma once

namespace forecourse {

/// Powers of the SI base units that a fueling station needs: kilogram, meter, second, kelvin.
struct Dimension {
  int mass = 0;
  int length = 0;
  int time = 0;
  int temperature = 0;

  friend constexpr bool operator==(const Dimension&, const Dimension&) = default;
  friend constexpr Dimension operator+(Dimension a, Dimension b) {
    return {a.mass + b.mass, a.length + b.length, a.time + b.time, a.temperature + b.temperature};
  }
  friend constexpr Dimension operator*(int n, Dimension a) {
    return {n * a.mass, n * a.length, n * a.time, n * a.temperature};
  }
};

/// From where a quantity is counted; quantities of one dimension but other datum do not mix.
enum class Datum {
  none,         ///< the zero is the zero: lengths, flows, densities
  difference,   ///< a difference of pressures or temperatures
  gauge,        ///< pressure above the atmosphere
  absolute,     ///< pressure above vacuum
  thermometer,  ///< a temperature, not a difference
};

/// What the reader of a site file must know of a kind of quantity.
struct QuantityKind {
  const char* noun;      ///< with its article, for messages: "a length"
  Dimension dimension;   ///< in SI base units
  Datum datum;           ///< from where it is counted
  const char* examples;  ///< how to write one: "\"2.00 in\" or \"52 mm\""
};

namespace kinds {

// clang-format off: one kind a line
struct Length {
  static constexpr QuantityKind kind{"a length", {0, 1, 0, 0}, Datum::none, "\"2.00 in\" or \"52 mm\""};
};
struct Area {
  static constexpr QuantityKind kind{"an area", {0, 2, 0, 0}, Datum::none, "\"5 in2\" or \"32 cm2\""};
};
struct Volume {
  static constexpr QuantityKind kind{"a volume", {0, 3, 0, 0}, Datum::none, "\"8000 gal\" or \"30 m3\""};
};
struct Mass {
  static constexpr QuantityKind kind{"a mass", {1, 0, 0, 0}, Datum::none, "\"4400 lb\" or \"2000 kg\""};
};
struct Duration {
  static constexpr QuantityKind kind{"a time", {0, 0, 1, 0}, Datum::none, "\"45 s\" or \"2 h\""};
};
struct Velocity {
  static constexpr QuantityKind kind{"a velocity", {0, 1, -1, 0}, Datum::none, "\"7 ft/s\" or \"2 m/s\""};
};
struct VolumeFlow {
  static constexpr QuantityKind kind{"a flow", {0, 3, -1, 0}, Datum::none, "\"10 gpm\" or \"38 L/min\""};
};
struct PressureDifference {
  static constexpr QuantityKind kind{
      "a pressure difference", {1, -1, -2, 0}, Datum::difference, "\"30 psi\" or \"2.1 bar\""};
};
struct GaugePressure {
  static constexpr QuantityKind kind{"a gauge pressure", {1, -1, -2, 0}, Datum::gauge, "\"30 psig\" or \"2.1 bar\""};
};
struct AbsolutePressure {
  static constexpr QuantityKind kind{
      "an absolute pressure", {1, -1, -2, 0}, Datum::absolute, "\"14.7 psia\" or \"101.3 kPa\""};
};
struct Modulus {
  static constexpr QuantityKind kind{"a modulus", {1, -1, -2, 0}, Datum::none, "\"1.2 GPa\" or \"170000 psi\""};
};
struct Temperature {
  static constexpr QuantityKind kind{"a temperature", {0, 0, 0, 1}, Datum::thermometer, "\"57 degF\" or \"14 degC\""};
};
struct TemperatureDifference {
  static constexpr QuantityKind kind{
      "a temperature difference", {0, 0, 0, 1}, Datum::difference, "\"18 degF\" or \"10 degC\""};
};
struct Density {
  static constexpr QuantityKind kind{"a density", {1, -3, 0, 0}, Datum::none, "\"740 kg/m3\" or \"59.7 degAPI\""};
};
struct DynamicViscosity {
  static constexpr QuantityKind kind{
      "a dynamic viscosity", {1, -1, -1, 0}, Datum::none, "\"0.50 mPa.s\" or \"0.50 cP\""};
};
struct KinematicViscosity {
  static constexpr QuantityKind kind{
      "a kinematic viscosity", {0, 2, -1, 0}, Datum::none, "\"0.68 mm2/s\" or \"0.68 cSt\""};
};
struct LinearLoss {
  static constexpr QuantityKind kind{
      "a loss per flow", {1, -4, -1, 0}, Datum::none, "\"0.2 psi/gpm\" or \"4 kPa.min/L\""};
};
struct SquareLoss {
  static constexpr QuantityKind kind{
      "a loss per flow squared", {1, -7, 0, 0}, Datum::none, "\"0.17 psi/gpm^2\" or \"0.08 kPa.min^2/L^2\""};
};
struct Expansion {
  static constexpr QuantityKind kind{
      "a thermal expansion", {0, 0, 0, -1}, Datum::none, "\"0.00067 1/degF\" or \"0.0012 1/degC\""};
};
struct SpecificHeat {
  static constexpr QuantityKind kind{"a specific heat", {0, 2, -2, -1}, Datum::none, "\"2.2 kJ/kg.K\""};
};
struct Power {
  static constexpr QuantityKind kind{"a power", {1, 2, -3, 0}, Datum::none, "\"1.5 hp\" or \"1.1 kW\""};
};
struct Force {
  static constexpr QuantityKind kind{"a force", {1, 1, -2, 0}, Datum::none, "\"150 lbf\" or \"670 N\""};
};
struct Stiffness {
  static constexpr QuantityKind kind{"a stiffness", {1, 0, -2, 0}, Datum::none, "\"45 lbf/in\" or \"8 kN/m\""};
};
struct Moment {
  static constexpr QuantityKind kind{
      "a moment of force", {1, 2, -2, 0}, Datum::none, "\"3300 lbf.ft\" or \"4.5 kN.m\""};
};
struct Acceleration {
  static constexpr QuantityKind kind{"an acceleration", {0, 1, -2, 0}, Datum::none, "\"5 ft/s2\" or \"1.5 m/s2\""};
};
struct Compliance {
  static constexpr QuantityKind kind{"a compliance", {-1, 4, 2, 0}, Datum::none, "\"20 mL/psi\" or \"0.3 L/bar\""};
};
struct UnitWeight {
  static constexpr QuantityKind kind{"a unit weight", {1, -2, -2, 0}, Datum::none, "\"120 lbf/ft3\" or \"19 kN/m3\""};
};
struct Angle {
  static constexpr QuantityKind kind{"an angle", {0, 0, 0, 0}, Datum::none, "\"30 deg\""};
};
struct Ratio {
  static constexpr QuantityKind kind{"a ratio", {0, 0, 0, 0}, Datum::none, "\"0.5 %\" or 0.005"};
};
// clang-format on

}  // namespace kinds
}  // namespace forecourse
