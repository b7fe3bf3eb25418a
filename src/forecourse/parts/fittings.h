#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "forecourse/parts/minor_loss.h"

namespace forecourse::parts {

/// Constants of the two-constant correlation K = k1/Re + k_infinity (1 + 1/D), D in inches.
struct TwoK {
  std::string_view name;
  double k1 = 0.0;          ///< [1]
  double k_infinity = 0.0;  ///< [1]
};

/// Constants of the three-constant correlation K = k1/Re + ki (1 + kd / NPS^0.3), NPS in inches.
struct ThreeK {
  std::string_view name;
  double k1 = 0.0;  ///< [1]
  double ki = 0.0;  ///< [1]
  double kd = 0.0;  ///< [in^0.3]
};

/// A published range of K for turbulent flow, fully open.
struct KRange {
  std::string_view name;
  double lowest = 0.0;   ///< [1]
  double highest = 0.0;  ///< [1]
};

/// The constants held, by name, each table with its source beside it in fittings.cpp.
std::span<const TwoK> two_k_table();
std::span<const ThreeK> three_k_table();
std::span<const KRange> k_ranges();

/// The entry of a name, empty when there is none.
std::optional<TwoK> find_two_k(std::string_view name);
std::optional<ThreeK> find_three_k(std::string_view name);
std::optional<KRange> find_k_range(std::string_view name);

/// Loss coefficient by the two-constant method.
///
/// \param fitting       constants [1]
/// \param reynolds      Reynolds number in the fitting's bore [1], > 0
/// \param bore          inside diameter [m], > 0
/// \return K [1].
/// \error K scatters by -20 to +30 % about any published value.
/// \source [hooper_1981, K = K1/Re + Kinf (1 + 1/ID)]
double loss_coefficient(const TwoK& fitting, double reynolds, double bore);

/// Loss coefficient by the three-constant method.
///
/// \param fitting      constants [1]
/// \param reynolds     Reynolds number in the fitting's bore [1], > 0
/// \param nominal_size nominal pipe size as a length [m], > 0
/// \return K [1].
/// \error K scatters by -20 to +30 % about any published value.
/// \source [darby_2001, K = K1/Re + Ki (1 + Kd/NPS^0.3)]
double loss_coefficient(const ThreeK& fitting, double reynolds, double nominal_size);

/// The two-constant method as a law: k1/Re is a loss linear in flow, the rest quadratic; nothing is fitted.
///
/// \param fitting           constants [1]
/// \param bore              inside diameter [m], > 0
/// \param density           [kg/m3], > 0
/// \param dynamic_viscosity [Pa s], > 0
/// \return law [Pa s/m3], [Pa s2/m6].
/// \error see `loss_coefficient`.
/// \source [hooper_1981, K = K1/Re + Kinf (1 + 1/ID)]
QuadraticLaw fitting_law(const TwoK& fitting, double bore, double density, double dynamic_viscosity);

/// The three-constant method as a law.
///
/// \param fitting           constants [1]
/// \param nominal_size      nominal pipe size as a length [m], > 0
/// \param bore              inside diameter [m], > 0
/// \param density           [kg/m3], > 0
/// \param dynamic_viscosity [Pa s], > 0
/// \return law [Pa s/m3], [Pa s2/m6].
/// \error see `loss_coefficient`.
/// \source [darby_2001, K = K1/Re + Ki (1 + Kd/NPS^0.3)]
QuadraticLaw fitting_law(const ThreeK& fitting, double nominal_size, double bore, double density,
                         double dynamic_viscosity);

}  // namespace forecourse::parts
