#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// A row of the published table of manual tank gauging.
struct GaugingRule {
  double hours = 0.0;    ///< least time without flow
  double weekly = 0.0;   ///< [m3] limit of one test
  double monthly = 0.0;  ///< [m3] limit of the mean of four
  bool alone = false;    ///< it may be the only method
  std::string words;     ///< the row in words
};

/// The row for a tank of a capacity [m3] and a diameter [m]; empty: the tank is too large for the method.
/// \source [cfr_280, 43(b)(4)]
[[nodiscard]] std::optional<GaugingRule> gauging_rule(double capacity, const std::optional<double>& diameter);

/// One test: two readings, a quiet time, two readings.
struct GaugingTest {
  Day day;  ///< of the readings that end it
  double hours = 0.0;
  double change = 0.0;  ///< [m3]; negative: less is there
  bool within = false;
};

/// Manual tank gauging of one tank.
struct ManualGauging {
  std::string tank;
  std::optional<GaugingRule> rule;  ///< empty: the tank is too large
  std::vector<GaugingTest> tests;
  std::optional<double> mean;  ///< [m3] of the last four changes
  std::string words;           ///< what is missing, or why it is not for this tank
};

/// What a tank's own test shows though nothing leaks: its fuel warms or cools.
struct OwnTest {
  double volume = 0.0;     ///< [m3]
  double drift = 0.0;      ///< [K/s]
  double expansion = 0.0;  ///< [1/K]
  double apparent = 0.0;   ///< [m3/s]; positive: it looks like a gain
  double hides = 0.0;      ///< [K/s] drift that hides a leak of the least rate a test must find
  double must_find = 0.0;  ///< [m3/s]
};

}  // namespace forecourse::studies
