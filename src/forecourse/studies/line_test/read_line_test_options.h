#pragma once

#include <string>
#include <vector>

#include "forecourse/studies/line_test/options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// What is asked, as texts with their units; an empty text: not asked.
struct LineTestTexts {
  std::string product;
  std::vector<std::string> warmer;  ///< one, or two between which it lies
  std::string fuel_temperature, ground_temperature;
  std::string time_constant, ground, ground_conductivity, ground_heat;
  std::string expansion, line_expansion;
  std::string volume, compliance, per_degree, vapor;
  std::string leak, leak_pressure, exponent;
  std::string pressure, wait, duration, drop, measured, find, limit;
  std::vector<std::string> quiet;
  std::string stopped;
};

/// The options, with what is wrong with any of them.
[[nodiscard]] Parsed<LineTestOptions> read_line_test_options(const LineTestTexts& texts, Asker asker);

}  // namespace forecourse::studies
