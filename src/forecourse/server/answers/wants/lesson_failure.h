#pragma once

#include <string>

#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {

/// A failure of a station, both scenes: the answer to a want { study: "lesson", failure, at }.
///
/// \param at id of the part; empty: the first that it can happen to
[[nodiscard]] report::Json lesson_failure(const OpenedSite& opened, const std::string& failure, const std::string& at,
                                          const Context& context);

}  // namespace forecourse::server
