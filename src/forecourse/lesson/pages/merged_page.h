#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "forecourse/lesson/file/lesson_file.h"
#include "forecourse/site/rules/rule_set.h"
#include "forecourse/site/stop.h"

namespace forecourse::lesson {

/// A page of a lesson with what it leaves out taken from the built-in lesson.
[[nodiscard]] PageEntry merged_page(const PageEntry& page);

/// The stop of a word; empty: there is none of that name.
[[nodiscard]] std::optional<site::Stop> stop_of(std::string_view word);

/// A requirement with its set, by "us-federal.spill-container-tested".
struct KnownRequirement {
  const site::RuleSet* set = nullptr;
  const site::Requirement* requirement = nullptr;  ///< null: there is none of that name
};
[[nodiscard]] KnownRequirement requirement_of(std::string_view id);

}  // namespace forecourse::lesson
