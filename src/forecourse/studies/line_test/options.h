#pragma once

#include <optional>
#include <string>
#include <vector>

namespace forecourse::studies {

/// A value between two ends; both equal where it is known.
struct Between {
  double low = 0.0;
  double high = 0.0;

  [[nodiscard]] double middle() const { return 0.5 * (low + high); }
};

/// What a line test is asked. What is left empty comes from the site file, else from a default that is listed.
struct LineTestOptions {
  std::string product;  ///< of the line; empty: every line

  std::optional<Between> warmer;              ///< fuel above the ground [K]; negative: colder
  std::optional<double> fuel_temperature;     ///< [K]
  std::optional<double> ground_temperature;   ///< [K]
  std::optional<double> time_constant;        ///< of the line [s]; empty: from bore and ground
  std::string ground;                         ///< "damp-sand" or "dry-sand"
  std::optional<double> ground_conductivity;  ///< [W/(m K)]
  std::optional<double> ground_heat;          ///< per volume [J/(m3 K)]

  std::optional<double> expansion;       ///< of the fuel [1/K]
  std::optional<double> line_expansion;  ///< of the line's volume [1/K]
  std::optional<double> volume;          ///< of the line [m3]
  std::optional<double> compliance;      ///< of line and fuel [m3/Pa]
  std::optional<double> per_degree;      ///< pressure of the shut line [Pa/K], in place of its compliance
  std::optional<double> vapor;           ///< trapped, at the test pressure [m3]

  std::optional<double> leak;           ///< [m3/s]
  std::optional<double> leak_pressure;  ///< gauge, of that rate [Pa]; empty: that of the test
  std::optional<double> exponent;       ///< [1]; empty: between 0.5 and 1

  std::optional<double> pressure;  ///< of the test, gauge [Pa]; empty: 1.5 times the pressure held
  std::optional<double> wait;      ///< from when the fuel came to the beginning of the test [s]
  std::optional<double> duration;  ///< [s]
  std::optional<double> drop;      ///< of pressure, up to which the test passes [Pa]
  std::optional<double> measured;  ///< drop of pressure that was read [Pa]
  std::optional<double> find;      ///< leak rate that the test is to find [m3/s]
  std::optional<double> limit;     ///< seeming rate below which temperature does not matter [m3/s]

  std::vector<double> quiet;      ///< times for which the line stands still in a day [s]
  std::optional<double> stopped;  ///< for how long the pump stands before it starts again [s]
};

}  // namespace forecourse::studies
