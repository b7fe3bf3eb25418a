#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/fuel/kinds.h"
#include "forecourse/fuel/viscosity.h"

namespace forecourse::fuel {

/// How far a property can be relied on, best first. What is worked out from several has the last of theirs.
enum class PropertyStatus {
  entered,          ///< by the user, at the flowing state
  published,        ///< printed in the source named
  computed,         ///< by a published method from entered or published values
  approximation,    ///< by a method made for a neighboring fuel
  common_practice,  ///< no source
  illustrative,     ///< middle of a published range: good for trying, not for deciding
  not_determined,   ///< value NaN
};

/// The word of a status, such as "not determined".
[[nodiscard]] const char* status_word(PropertyStatus status);

/// One property with its standing and where it comes from, in words.
struct Property {
  double value;
  PropertyStatus status;
  std::string source;

  [[nodiscard]] bool determined() const { return status != PropertyStatus::not_determined; }
};

/// What the user entered of a fuel. What is missing comes from the kind or stays not determined.
struct EnteredProperties {
  std::optional<double> density = std::nullopt;  ///< [kg/m3]
  std::optional<double> density_temperature =
      std::nullopt;                                  ///< of that density [K]; missing: it holds at the flowing state
  std::optional<double> api_gravity = std::nullopt;  ///< at 60 degF [degAPI]
  std::optional<double> dynamic_viscosity = std::nullopt;  ///< at the flowing state [Pa s]
  std::optional<ViscosityLaw> viscosity_law =
      std::nullopt;  ///< kinematic viscosity against temperature, from two points
  std::optional<double> reid_vapor_pressure = std::nullopt;      ///< absolute [Pa]
  std::optional<double> true_vapor_pressure = std::nullopt;      ///< absolute, at the flowing temperature [Pa]
  std::optional<double> isothermal_bulk_modulus = std::nullopt;  ///< [Pa]
  std::optional<double> thermal_expansion = std::nullopt;        ///< [1/K]
};

/// A fuel at temperature and pressure.
struct Properties {
  Property density;                  ///< [kg/m3]
  Property base_density;             ///< at 60 degF and 0 gauge [kg/m3]; only where API MPMS 11.1 is used
  Property dynamic_viscosity;        ///< [Pa s]
  Property true_vapor_pressure;      ///< absolute [Pa]
  Property isothermal_bulk_modulus;  ///< [Pa]; not the one for surge, see bulk_modulus.h
  Property thermal_expansion;        ///< [1/K]
  std::vector<std::string> warnings;
};

/// Gives the properties of a kind of fuel at temperature and pressure, each with status and source.
///
/// Entered values win. Gasoline E0 and E10 and diesel B0 to B20 follow API MPMS 11.1, the blends as an
/// approximation; ethanol follows OIML R 22 and its equation of state; E15, E85 and others are what is entered.
/// A density or gravity at another temperature is carried over by the method of the kind, else by an entered
/// expansion, else it is not determined. Defaults are the middle of a published range and marked illustrative.
///
/// \param kind kind of fuel [1]
/// \param entered what the user knows [SI, see the struct]
/// \param temperature flowing temperature [K]
/// \param gauge_pressure flowing pressure [Pa]
/// \return properties [SI, see the struct] with warnings in plain words.
/// \source [api_11_1_2004, 11.1.6.1], [oiml_r22, general formula], [ap42_7_1, figure 7.1-14b] and
///     [afdc_fuel_properties, table], each named in the result.
/// \error as the methods; a default may be off by half its range, stated in its source.
/// \fails status `not_determined` and a warning.
[[nodiscard]] Properties properties_of(Kind kind, const EnteredProperties& entered, double temperature,
                                       double gauge_pressure);

}  // namespace forecourse::fuel
