#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/calendar/calendar.h"

namespace forecourse::report {

/// Duties of one rule that share their state and days, for one sentence.
struct DutyGroup {
  std::vector<const handover::Duty*> duties;  ///< at least one
};

/// In the order of the duties; those of one rule, state and due day are together.
[[nodiscard]] std::vector<DutyGroup> grouped(const std::vector<handover::Duty>& duties);

/// "Overdue", "Due within 90 days"
[[nodiscard]] std::string state_heading(handover::DutyState state, int within);

/// "T1, T2"
[[nodiscard]] std::string subjects(const DutyGroup& group);

/// "2026-10-14: 47 days overdue", "2027-10-14: in 318 days", or why there is no day
[[nodiscard]] std::string due_in_words(const handover::Duty& duty);

/// Of a duty whose last test failed: "failed on 2026-10-14, records: mend it and test again"
[[nodiscard]] std::string failed_in_words(const handover::Duty& duty);

/// "2026-10-14, by the records", or "no record"
[[nodiscard]] std::string done_in_words(const handover::Duty& duty);

/// "40 CFR 280.40(a)(3)", with a word where its text was not verified
[[nodiscard]] std::string clause_in_words(const handover::Duty& duty);

/// Everything of a duty in sentences; alternatives where they are asked for.
[[nodiscard]] std::string in_words(const DutyGroup& group, bool with_alternatives);

/// "results of monitoring are kept for a year; 40 CFR 280.45(b)"
[[nodiscard]] std::string in_words(const handover::PaperKept& paper);

}  // namespace forecourse::report
