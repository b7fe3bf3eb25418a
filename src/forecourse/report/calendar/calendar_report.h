#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What stands above the calendar, and what it ends with.
[[nodiscard]] std::vector<std::string> calendar_cautions();

/// "every 3 years", "every month", "every 30 days"
[[nodiscard]] std::string in_words(const checks::Period& every);

/// "12 duties: 2 overdue, 3 due within 90 days, 4 without a record, 3 later."
[[nodiscard]] std::string counts_in_words(const handover::Calendar& calendar);

/// What is due, in sentences; what is later where all is asked for.
[[nodiscard]] std::string calendar_summary(const handover::Calendar& calendar, const site::Site& site,
                                           const terminal::Style& style, const ReportFacts& facts = {});

/// The whole document; days as "2026-11-30".
[[nodiscard]] Json calendar_document(const handover::Calendar& calendar, const ReportFacts& facts = {});

/// The result of the document alone.
[[nodiscard]] Json calendar_json(const handover::Calendar& calendar, const std::vector<SourceText>& texts = {});

/// Tables and strip, and a page of its own.
[[nodiscard]] std::string calendar_body(const handover::Calendar& calendar);
[[nodiscard]] std::string calendar_report(const handover::Calendar& calendar, const site::Site& site,
                                          const ReportFacts& facts = {});

/// How many duties a calendar file leaves out, as they have no day: "16 duties without a known day are not in it."
/// Empty: none.
[[nodiscard]] std::string left_out_of_ics(const handover::Calendar& calendar);

/// The short form for the report of a station: counts, what is overdue and what is due soon.
[[nodiscard]] std::string calendar_section(const handover::Calendar& calendar);

/// What the calendar file tells besides the duties.
struct IcsFacts {
  std::string stamp;          ///< when it is made, in UTC: "20261130T120000Z"
  std::string station;        ///< name of the station
  std::optional<int> remind;  ///< [d] before it is due that a reminder is shown; empty: none is
  std::string file = {};      ///< the site file: its name without folder and ending tells stations apart
};

/// An event for each duty that has a due day, on that day, as iCalendar (RFC 5545). What is overdue, or failed its last
/// test, stands on the day of the calendar. The id of an event stays the same from run to run, also where the station
/// is named anew: it goes by the name of the site file, else by that of the station. Its sequence is the time of
/// writing, which only rises.
///
/// A duty that comes back within `remind` days, or is overdue or failed, has no reminder.
[[nodiscard]] std::string calendar_ics(const handover::Calendar& calendar, const IcsFacts& facts);

}  // namespace forecourse::report
