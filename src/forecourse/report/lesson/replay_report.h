#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/failures/replay.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What every replay ends with.
[[nodiscard]] std::vector<std::string> replay_cautions(const lesson::Replay& replay);

/// The whole document: what the page moves its picture by. Values in SI, and as shown in both systems of units.
[[nodiscard]] Json replay_document(const lesson::Replay& replay, const std::vector<Diagnostic>& warnings,
                                   const ReportFacts& facts = {});

/// Both scenes in two columns: what they tell, then what happens when.
[[nodiscard]] std::string replay_summary(const lesson::Replay& replay, const std::vector<Diagnostic>& warnings,
                                         const site::Site& site, const terminal::Style& style,
                                         const ReportFacts& facts = {});

}  // namespace forecourse::report
