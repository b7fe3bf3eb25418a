#pragma once

#include <algorithm>
#include <string_view>

#include "forecourse/site/site.h"

namespace forecourse::site {

/// Whether a site file names a rule set.
[[nodiscard]] inline bool is_under(const Site& site, std::string_view rule_set) {
  return std::any_of(site.rules.begin(), site.rules.end(), [&](const Name& rule) { return rule.text == rule_set; });
}

}  // namespace forecourse::site
