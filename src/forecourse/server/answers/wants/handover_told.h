#pragma once

#include <memory>
#include <vector>

#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/handover/kit/kit.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {

/// The equipment schedule of a want, or why there is none.
struct ToldKit {  // NOLINT(bugprone-exception-escape): as OpenedSite
  const OpenedSite* opened = nullptr;
  handover::Kit kit;
  report::Json problem;  ///< null: there is one
};
[[nodiscard]] ToldKit told_kit(const Asked& asked);

/// The calendar of a want, or why there is none.
struct ToldCalendar {  // NOLINT(bugprone-exception-escape): as OpenedSite
  const OpenedSite* opened = nullptr;
  std::shared_ptr<const ReadRecords> records;  ///< null: none are given; those that cannot be read do not count
  std::vector<SourceText> texts;
  handover::Calendar calendar;
  report::Json problem;  ///< null: there is one
};
[[nodiscard]] ToldCalendar told_calendar(const Asked& asked);

}  // namespace forecourse::server
