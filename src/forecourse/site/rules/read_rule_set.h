#pragma once

#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include "forecourse/site/rules/rule_set.h"

namespace forecourse::site {

/// Reads a rule set (TOML) as it stands; whether its figures are known and its limits fit them is the checks' to tell.
/// All that is wrong is told in one run.
///
/// \param text_index index of this text in the spans of set and diagnostics
[[nodiscard]] Parsed<RuleSet> read_rule_set(std::string_view text, std::uint32_t text_index = 0);

/// The files of the folder rules/, as compiled in (see cmake/embed.cmake).
[[nodiscard]] std::span<const std::string_view> rule_set_texts();

/// The rule sets of the folder rules/, read once. They are our own: a fault in one is our mistake, std::logic_error.
[[nodiscard]] const std::vector<RuleSet>& built_in_rule_sets();

}  // namespace forecourse::site
