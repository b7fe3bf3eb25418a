#pragma once

#include <array>
#include <optional>

namespace forecourse::parts {

/// One row of the published table of vent diameters: highest flow, and the nominal size for each length of vent.
struct VentTableRow {
  int gallons_per_minute = 0;
  std::array<double, 3> nominal_inches{};  ///< at 50, 100 and 200 ft with seven ells
};

/// Vent line diameters of buried tanks.
/// \source [osha_1910_106, (b)(3)(iv)(b), table H-11]
[[nodiscard]] const std::array<VentTableRow, 10>& vent_table();

/// Lengths of the columns [ft].
/// \source [osha_1910_106, (b)(3)(iv)(b), table H-11]
inline constexpr std::array<double, 3> vent_table_feet{50.0, 100.0, 200.0};

/// Tank pressure that vents sized by the table are to keep below, gauge [Pa].
/// \source [cal_5598, the text of the table]
[[nodiscard]] double vent_table_pressure();

/// Nominal size of a vent by the table.
///
/// \param flow   highest flow into the tank [m3/s], > 0
/// \param length of the vent [m], > 0
/// \return nominal size as a length [m]; empty beyond the table.
/// \error none; sizes are not interpolated, the next row and column are taken.
/// \source [osha_1910_106, (b)(3)(iv)(b), table H-11]
[[nodiscard]] std::optional<double> vent_size_by_table(double flow, double length);

}  // namespace forecourse::parts
