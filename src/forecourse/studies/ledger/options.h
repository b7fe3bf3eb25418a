#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// As what a delivery is entered into the book.
enum class DeliveredAs { gross, net };
/// "gross", "net"
[[nodiscard]] const char* word(DeliveredAs as);

/// What proving told of a meter: (indicated less true) over true.
struct MeterError {
  std::string hose;                      ///< empty: of every hose without one of its own
  double error = 0.0;                    ///< [1]; positive: more is charged than flows
  std::optional<double> standard_error;  ///< [1]
  std::optional<Day> proved = {};        ///< empty: it was entered, and holds always
  std::optional<Day> from = {};          ///< first day that it can stand for; empty: any before
  std::optional<Day> until = {};         ///< last; the meter was changed then
};

/// What readings and amounts scatter by where nobody says so. common practice, no source
inline constexpr double default_delivery_deviation = 0.002;  ///< [1] of one delivery
inline constexpr double default_sales_deviation = 0.001;     ///< [1] of what is sold between two readings

struct LedgerOptions {
  std::string tank;          ///< id of a tank or product; empty: every book
  std::optional<Day> month;  ///< a day of the month that is explained; empty: the last with readings
  std::optional<Day> from;   ///< first day of another period that is explained
  std::optional<Day> to;     ///< its last
  DeliveredAs delivered_as = DeliveredAs::gross;
  std::vector<MeterError> meters;
  std::optional<double> measure_expansion;   ///< [1/K] of test measures that tell none of their own
  std::optional<double> evaporation;         ///< [1] share of what is sold
  std::optional<double> reading_deviation;   ///< [m] standard deviation of one depth
  std::optional<double> delivery_deviation;  ///< [1] of one delivery
  std::optional<double> sales_deviation;     ///< [1] of what is sold between two readings
  double smallest_leak = 0.0;                ///< [m3/s] that the records must find; 0: 0.2 gal/h, as the rule has it
  std::optional<double> own_volume;          ///< [m3] in a tank under its own test
  std::optional<double> own_drift;           ///< [K/s] of its temperature
  std::optional<double> own_expansion;       ///< [1/K] of its fuel; empty: of `tank`'s product
};

}  // namespace forecourse::studies
