#pragma once

#include <algorithm>

#include "forecourse/site/site.h"

namespace forecourse::handover {

[[nodiscard]] inline bool under_european_rules(const site::Site& site) {
  return std::any_of(site.rules.begin(), site.rules.end(), [](const site::Name& one) { return one.text == "eu"; });
}

/// Without a set that says what holds elsewhere, or beside it.
[[nodiscard]] inline bool under_european_rules_alone(const site::Site& site) {
  return under_european_rules(site) && site.rules.size() == 1;
}

}  // namespace forecourse::handover
