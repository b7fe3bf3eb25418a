#include "forecourse/parts/fittings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "forecourse/base/flow_coefficient.h"

namespace forecourse::parts {
namespace {

// SOURCE: [hooper_1981, table of constants] as carried by [fluids_library, fluids/fittings.py]
constexpr std::array two_k_constants{
    TwoK{"elbow 90 standard, threaded", 800.0, 0.40}, TwoK{"elbow 90 long radius, threaded", 800.0, 0.20},
    TwoK{"elbow 45 standard", 500.0, 0.20},           TwoK{"tee run, threaded", 200.0, 0.10},
    TwoK{"ball valve, reduced bore", 500.0, 0.15},    TwoK{"gate valve", 300.0, 0.10},
    TwoK{"swing check valve", 1500.0, 1.50},          TwoK{"lift check valve", 2000.0, 10.0},
    TwoK{"globe valve, angle or Y", 1000.0, 2.0},
};

// SOURCE: [darby_2001, table of constants] as carried by [fluids_library, fluids/fittings.py]
constexpr std::array three_k_constants{
    ThreeK{"elbow 90, threaded", 800.0, 0.140, 4.0}, ThreeK{"elbow 90 long radius, threaded", 800.0, 0.071, 4.2},
    ThreeK{"elbow 45, threaded", 500.0, 0.071, 4.2}, ThreeK{"tee branch, threaded", 500.0, 0.274, 4.0},
    ThreeK{"tee run, threaded", 200.0, 0.091, 4.0},  ThreeK{"ball valve", 300.0, 0.017, 3.5},
    ThreeK{"gate valve", 300.0, 0.037, 3.9},         ThreeK{"swing check valve", 1500.0, 0.46, 4.0},
    ThreeK{"lift check valve", 2000.0, 2.85, 3.8},   ThreeK{"angle valve 90", 1000.0, 0.69, 4.0},
};

// SOURCE: [lmno_k, table of minor loss coefficients] and [pe_calc_k, table of minor loss coefficients]
constexpr std::array published_ranges{
    KRange{"entrance, flush and sharp", 0.5, 0.5},
    KRange{"entrance, projecting", 0.5, 1.0},
    KRange{"entrance, well rounded", 0.03, 0.1},
    KRange{"exit", 1.0, 1.0},
    KRange{"elbow 90, threaded", 0.9, 1.5},
    KRange{"elbow 90, flanged", 0.3, 0.3},
    KRange{"elbow 90 long radius, threaded", 0.6, 0.7},
    KRange{"elbow 90 long radius, flanged", 0.2, 0.2},
    KRange{"elbow 45, threaded", 0.4, 0.4},
    KRange{"return bend 180, threaded", 1.5, 1.5},
    KRange{"tee run, threaded", 0.9, 0.9},
    KRange{"tee run, flanged", 0.2, 0.2},
    KRange{"tee branch, threaded", 2.0, 2.0},
    KRange{"tee branch, flanged", 1.0, 1.0},
    KRange{"gate valve", 0.1, 0.3},
    KRange{"globe valve", 3.0, 10.0},
    KRange{"angle valve", 1.8, 5.0},
    KRange{"ball valve", 0.04, 0.05},
    KRange{"swing check valve", 0.29, 2.5},
    KRange{"lift check valve", 0.85, 9.1},
};

template <class Entry>
std::optional<Entry> find_by_name(std::span<const Entry> table, std::string_view name) {
  const auto found = std::find_if(table.begin(), table.end(), [&](const Entry& entry) { return entry.name == name; });
  if (found == table.end()) return {};
  return *found;
}

double size_factor(const TwoK& fitting, double bore) { return fitting.k_infinity * (1.0 + 1.0 / in_inches(bore)); }

double size_factor(const ThreeK& fitting, double nominal_size) {
  return fitting.ki * (1.0 + fitting.kd / std::pow(in_inches(nominal_size), 0.3));
}

// The loss k1/Re velocity heads, which is linear in flow: k1 viscosity v / (2 bore).
double linear_part(double k1, double bore, double dynamic_viscosity) {
  const double area = std::numbers::pi / 4.0 * bore * bore;
  return k1 * dynamic_viscosity / (2.0 * bore * area);
}

}  // namespace

std::span<const TwoK> two_k_table() { return two_k_constants; }
std::span<const ThreeK> three_k_table() { return three_k_constants; }
std::span<const KRange> k_ranges() { return published_ranges; }

std::optional<TwoK> find_two_k(std::string_view name) { return find_by_name(two_k_table(), name); }
std::optional<ThreeK> find_three_k(std::string_view name) { return find_by_name(three_k_table(), name); }
std::optional<KRange> find_k_range(std::string_view name) { return find_by_name(k_ranges(), name); }

double loss_coefficient(const TwoK& fitting, double reynolds, double bore) {
  return fitting.k1 / reynolds + size_factor(fitting, bore);
}

double loss_coefficient(const ThreeK& fitting, double reynolds, double nominal_size) {
  return fitting.k1 / reynolds + size_factor(fitting, nominal_size);
}

QuadraticLaw fitting_law(const TwoK& fitting, double bore, double density, double dynamic_viscosity) {
  return QuadraticLaw{.linear = linear_part(fitting.k1, bore, dynamic_viscosity)} +
         from_loss_coefficient(size_factor(fitting, bore), bore, density);
}

QuadraticLaw fitting_law(const ThreeK& fitting, double nominal_size, double bore, double density,
                         double dynamic_viscosity) {
  return QuadraticLaw{.linear = linear_part(fitting.k1, bore, dynamic_viscosity)} +
         from_loss_coefficient(size_factor(fitting, nominal_size), bore, density);
}

}  // namespace forecourse::parts
