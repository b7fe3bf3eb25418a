#pragma once

#include <string>

#include "forecourse/studies/flotation/flotation.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// What is asked, as texts with their units; an empty text: not asked.
struct FlotationTexts {
  std::string tank;
  std::string water_level;
  std::string filled;
  std::string factor;  ///< a number
};

/// The options, with what is wrong with any of them.
[[nodiscard]] Parsed<FlotationOptions> read_flotation_options(const FlotationTexts& texts, Asker asker);

}  // namespace forecourse::studies
