#include "forecourse/parts/vapor/vent_table.h"

#include "forecourse/base/api_units.h"

namespace forecourse::parts {
namespace {

constexpr double inch_and_a_quarter = 1.25, inch_and_a_half = 1.5;

constexpr std::array<VentTableRow, 10> table{{
    {100, {inch_and_a_quarter, inch_and_a_quarter, inch_and_a_quarter}},
    {200, {inch_and_a_quarter, inch_and_a_quarter, inch_and_a_quarter}},
    {300, {inch_and_a_quarter, inch_and_a_quarter, inch_and_a_half}},
    {400, {inch_and_a_quarter, inch_and_a_half, 2.0}},
    {500, {inch_and_a_half, inch_and_a_half, 2.0}},
    {600, {inch_and_a_half, 2.0, 2.0}},
    {700, {2.0, 2.0, 2.0}},
    {800, {2.0, 2.0, 3.0}},
    {900, {2.0, 2.0, 3.0}},
    {1000, {2.0, 2.0, 3.0}},
}};

constexpr double rounding = 1e-9;  // a flow or length that was entered as the table prints it is on its line

}  // namespace

const std::array<VentTableRow, 10>& vent_table() { return table; }

double vent_table_pressure() { return pascal_from_psi(2.5); }

std::optional<double> vent_size_by_table(double flow, double length) {
  for (std::size_t column = 0; column < vent_table_feet.size(); ++column) {
    if (length > meters_from_feet(vent_table_feet[column]) * (1.0 + rounding)) continue;
    for (const VentTableRow& row : table) {
      if (flow <= cubic_meters_per_second_from_gpm(row.gallons_per_minute) * (1.0 + rounding))
        return meters_from_inches(row.nominal_inches[column]);
    }
    return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace forecourse::parts
