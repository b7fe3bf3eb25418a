#pragma once

#include <string>

#include "forecourse/lesson/numbers/number.h"

namespace forecourse::lesson {

/// The value of a finding about the part at hand.
///
/// \param rule id of the requirement
/// \param set  the rule set that has it: what to enter where the site does not name it
[[nodiscard]] Picked of_finding(const From& from, const std::string& rule, const std::string& set);

}  // namespace forecourse::lesson
