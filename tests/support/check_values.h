#pragma once

#include <gtest/gtest.h>

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace forecourse::test {

/// How a reference row was come by. Rows from memory are never handed out.
enum class Verified {
  published,  ///< read in a published source ("yes")
  computed,   ///< a second, independent computation
  memory,     ///< recalled only ("no")
};

/// One row of tests/data/check_values.csv or check_values2.csv, as written.
struct CheckRow {
  std::string id;
  std::string quantity;
  std::string inputs;
  std::string expected;
  std::string unit;
  std::string tolerance;
  std::string source;
  Verified verified = Verified::memory;

  /// The expected value as a number; the test stops if it is none.
  [[nodiscard]] double number() const;
};

/// How far a value may lie from the expected one: `absolute + relative * |expected|`.
struct Tolerance {
  double absolute = 0.0;
  double relative = 0.0;
};

/// Published and computed rows of both files whose id starts with the prefix ("K-" does not take "KT-..." or
/// "TANK-...").
[[nodiscard]] std::vector<CheckRow> rows_starting(std::string_view prefix);

/// The one row with this id; throws std::out_of_range if there is none.
[[nodiscard]] CheckRow row(std::string_view id);

/// Splits "group=crude; t=-27.7 degF; measured" into {group: crude, t: -27.7 degF, measured: ""}.
[[nodiscard]] std::map<std::string, std::string> parse_inputs(std::string_view inputs);

/// Splits inputs at semicolons: "Ethanol; 15 degC; 101.325 kPa" into three parts without outer blanks.
[[nodiscard]] std::vector<std::string> parts_of(std::string_view inputs);

/// The first word of a text that is a number: -10 out of "API -10", 0.7943 out of "RD60 0.7943". Empty if none.
[[nodiscard]] std::optional<double> number_in(std::string_view text);

/// The number of one input; the row must have it.
[[nodiscard]] double input_number(const CheckRow& check, const std::string& name);

/// The temperature [K] that a text gives in degF or degC: "t=-27.7 degF", "15 degC".
[[nodiscard]] double kelvin_in(std::string_view text);

/// Reads "1e-9", "0.1%", "0.5 % rel", "0.001 rel", "exact", "printed digits" (half of the last digit of `expected`).
/// Empty for words that set no number ("handbook", "range").
[[nodiscard]] std::optional<Tolerance> parse_tolerance(std::string_view tolerance, std::string_view expected = "");

/// Reads a printed range "0.72-0.78"; a single value is its own range.
[[nodiscard]] std::pair<double, double> parse_range(std::string_view expected);

/// Holds a value, in the unit of the row, against the row at its own tolerance, and counts the check.
[[nodiscard]] testing::AssertionResult agrees(const CheckRow& check, double value);

/// The same at a tolerance of the caller's, who says why.
[[nodiscard]] testing::AssertionResult agrees(const CheckRow& check, double value, Tolerance tolerance);

/// Counts a row as checked by other means. At the end of the program the counts are printed per prefix:
/// "VCF: published 42, computed 30".
void count_check(const CheckRow& check);

}  // namespace forecourse::test
