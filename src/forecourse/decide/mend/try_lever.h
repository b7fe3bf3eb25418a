#pragma once

#include <functional>
#include <optional>
#include <string>

#include "forecourse/decide/mend/levers.h"

namespace forecourse::decide {

/// The finding that a text gives; empty: the text cannot be read, or has no such finding.
using JudgeText = std::function<std::optional<checks::Finding>(const std::string& text)>;

/// What a lever can be tried on.
struct Bench {
  std::string_view text;  ///< of the station
  site::Display display = site::Display::us;
  const checks::Finding& finding;  ///< that falls short
  JudgeText judge;
  std::function<std::string(const std::string& text)> taken;  ///< what the part moved in this text would stand on
};

/// Changes the lever's value alone, by as little as mends the finding.
///
/// \return empty: the lever has no value at this station
[[nodiscard]] std::optional<MendTry> try_lever(const Bench& bench, const Lever& lever);

}  // namespace forecourse::decide
