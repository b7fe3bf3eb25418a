#pragma once

namespace forecourse {

// Conversions of the units in which API procedures, AP-42 and product tables are written.
// Physics takes SI doubles and calls these by name; the factors stand nowhere else.

inline constexpr double kelvin_at_zero_celsius = 273.15;                ///< [K], exact by definition
inline constexpr double pascal_per_psi = 4.4482216152605 / 6.4516e-4;   ///< [Pa], lbf/in2, exact by definition
inline constexpr double pascal_second_per_centipoise = 1e-3;            ///< [Pa s], exact
inline constexpr double square_meter_per_second_per_centistoke = 1e-6;  ///< [m2/s], exact; 1 cSt = 1 mm2/s
inline constexpr double rankine_at_zero_fahrenheit_as_in_ap42 = 459.6;  ///< [degR], rounded so in that source

[[nodiscard]] constexpr double kelvin_from_celsius(double celsius) { return celsius + kelvin_at_zero_celsius; }
[[nodiscard]] constexpr double celsius_from_kelvin(double kelvin) { return kelvin - kelvin_at_zero_celsius; }
[[nodiscard]] constexpr double celsius_from_fahrenheit(double fahrenheit) { return (fahrenheit - 32.0) / 1.8; }
[[nodiscard]] constexpr double fahrenheit_from_celsius(double celsius) { return celsius * 1.8 + 32.0; }
[[nodiscard]] constexpr double kelvin_from_fahrenheit(double fahrenheit) {
  return kelvin_from_celsius(celsius_from_fahrenheit(fahrenheit));
}
[[nodiscard]] constexpr double fahrenheit_from_kelvin(double kelvin) {
  return fahrenheit_from_celsius(celsius_from_kelvin(kelvin));
}
/// Temperature in the degrees Rankine of AP-42, which rounds the offset to 459.6.
[[nodiscard]] constexpr double ap42_rankine_from_kelvin(double kelvin) {
  return fahrenheit_from_kelvin(kelvin) + rankine_at_zero_fahrenheit_as_in_ap42;
}
/// A quantity per kelvin from one per degree Fahrenheit, and back.
[[nodiscard]] constexpr double per_kelvin_from_per_fahrenheit(double per_fahrenheit) { return 1.8 * per_fahrenheit; }
[[nodiscard]] constexpr double per_fahrenheit_from_per_kelvin(double per_kelvin) { return per_kelvin / 1.8; }
[[nodiscard]] constexpr double pascal_from_psi(double psi) { return psi * pascal_per_psi; }
[[nodiscard]] constexpr double psi_from_pascal(double pascal) { return pascal / pascal_per_psi; }
/// A quantity per pascal from one per psi, and back.
[[nodiscard]] constexpr double per_pascal_from_per_psi(double per_psi) { return per_psi / pascal_per_psi; }
[[nodiscard]] constexpr double per_psi_from_per_pascal(double per_pascal) { return per_pascal * pascal_per_psi; }
[[nodiscard]] constexpr double pascal_second_from_centipoise(double centipoise) {
  return centipoise * pascal_second_per_centipoise;
}
[[nodiscard]] constexpr double square_meter_per_second_from_centistoke(double centistoke) {
  return centistoke * square_meter_per_second_per_centistoke;
}
[[nodiscard]] constexpr double centistoke_from_square_meter_per_second(double square_meter_per_second) {
  return square_meter_per_second / square_meter_per_second_per_centistoke;
}
/// US gallons, 231 in3 each, exact by definition.
[[nodiscard]] constexpr double cubic_meters_from_gallons(double gallons) { return gallons * 3.785411784e-3; }
/// Conventional inches of water column: water of 1000 kg/m3 under standard gravity.
[[nodiscard]] constexpr double pascal_from_inches_of_water(double inches) { return inches * 1000.0 * 9.80665 * 0.0254; }
/// Inches, exact by definition.
[[nodiscard]] constexpr double meters_from_inches(double inches) { return inches * 0.0254; }
/// Cubic feet an hour, exact by definition.
[[nodiscard]] constexpr double cubic_meters_per_second_from_cubic_feet_per_hour(double cubic_feet_per_hour) {
  return cubic_feet_per_hour * 0.3048 * 0.3048 * 0.3048 / 3600.0;
}
/// Pounds in a thousand US gallons, exact by definition.
[[nodiscard]] constexpr double kilograms_per_cubic_meter_from_pounds_per_thousand_gallons(double pounds) {
  return pounds * 0.45359237 / cubic_meters_from_gallons(1000.0);
}
[[nodiscard]] constexpr double kilograms_from_grams(double grams) { return 1e-3 * grams; }
[[nodiscard]] constexpr double grams_from_kilograms(double kilograms) { return 1e3 * kilograms; }
/// Temperature in degrees Rankine.
[[nodiscard]] constexpr double rankine_from_kelvin(double kelvin) { return 1.8 * kelvin; }
/// US gallons a minute.
[[nodiscard]] constexpr double cubic_meters_per_second_from_gpm(double gpm) {
  return cubic_meters_from_gallons(gpm) / 60.0;
}
[[nodiscard]] constexpr double meters_from_feet(double feet) { return feet * 0.3048; }  ///< exact by definition
[[nodiscard]] constexpr double seconds_from_minutes(double minutes) { return 60.0 * minutes; }
[[nodiscard]] constexpr double minutes_from_seconds(double seconds) { return seconds / 60.0; }
[[nodiscard]] constexpr double hours_from_seconds(double seconds) { return seconds / 3600.0; }

}  // namespace forecourse
