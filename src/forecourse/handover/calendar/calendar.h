#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/checks/station/check_station.h"

namespace forecourse::handover {

/// How a duty stands on the day of the calendar.
enum class DutyState {
  failed,          ///< its last test failed, and none was passed since
  overdue,         ///< its due day lies before
  due_soon,        ///< it falls due within the days that are looked ahead, today included
  no_record,       ///< it was never done, for all that is known
  later,           ///< it falls due after these days
  not_determined,  ///< whether it applies is not known
};

/// "failed", "overdue", "due soon", "no record", "later", "not determined"
[[nodiscard]] const char* word(DutyState state);

/// What tells when a duty was last done.
enum class DoneBy { nothing, site_file, records };
/// "", "site file", "records"
[[nodiscard]] const char* word(DoneBy by);

/// A calendar month.
struct Month {
  int year = 0;
  int month = 0;  ///< 1 to 12

  friend bool operator==(const Month&, const Month&) = default;
};

/// A month of a duty's strip.
struct StripMonth {
  Month month;
  std::vector<site::Date> days;    ///< on which it falls due, if it is done each time on the day it is due
  std::optional<DutyState> state;  ///< of the first of them; empty: none falls due
};

/// A test, inspection or reading that comes back, of one part.
struct Duty {
  std::string id;  ///< stable: set, rule and part, "us-federal/gauge-yearly/T1"
  std::string set;
  std::string set_title;
  std::string rule;
  std::string subject;  ///< id of the part, or "station"
  std::string figure;   ///< that tells its days; of a study the rule
  std::string what;
  std::vector<std::string> instead;  ///< alternatives of the rule that would do as well
  std::string clause;                ///< of the alternative that the days are of; empty: the owner's own wish
  std::string edition;
  bool clause_verified = false;
  checks::Period every;
  std::optional<site::Date> last_done;  ///< its place is where that is entered
  std::optional<site::Date> failed;     ///< of a failed one: the day of its last test; its place as that of last_done
  std::optional<site::Date> due;
  std::optional<int> days_left;  ///< until it is due; negative: overdue by so many
  DutyState state = DutyState::no_record;
  std::string reason;   ///< why there is no due day, or why it is not known whether the duty applies
  std::string enter;    ///< what to enter then
  std::string by_whom;  ///< as the rule asks: "a qualified tester"
  std::string sheet;    ///< id of the procedure sheet that leads through it; empty: none does
  SourceSpan where{};   ///< of the part
  std::vector<StripMonth> strip;
};

/// The day of the last test, passed or failed, or null.
[[nodiscard]] const site::Date* last_test(const Duty& duty);
[[nodiscard]] DoneBy done_by(const Duty& duty);

/// A paper that is to be kept for a time: it has no due day.
struct PaperKept {
  std::string set;
  std::string what;
  std::string clause;
  std::string edition;
  bool clause_verified = false;
  checks::FindingState state = checks::FindingState::not_determined;
  std::optional<double> least;  ///< [s]
  std::optional<double> kept;   ///< [s]
  std::string enter;
  SourceSpan where{};
};

struct CalendarOptions {
  int within = 90;  ///< [d] that are looked ahead
};

struct DutyCounts {
  int failed = 0;
  int overdue = 0;
  int due_soon = 0;
  int no_record = 0;
  int later = 0;
  int not_determined = 0;
};

struct Calendar {
  std::string version;
  site::Date today;
  CalendarOptions options;
  std::vector<Month> months;  ///< twelve, from that of today
  std::vector<Duty>
      duties;  ///< failed first, then what is overdue, due soon, has no record, is due later, is not determined
  DutyCounts counts;
  std::vector<PaperKept> papers;
  std::vector<Diagnostic> wrong_days;  ///< errors: days of the site file that are yet to come
  std::vector<Diagnostic> warnings;
};

/// Every duty that comes back under the rule sets of a station and the checks of its studies, from their findings. Of
/// alternatives there is one duty: the one that is done, else the one due last; none where it is done by something that
/// does not come back. A requirement of which it is not known whether it applies is listed as that.
[[nodiscard]] Calendar calendar_of(const checks::CheckResult& checked, const CalendarOptions& options = {});

}  // namespace forecourse::handover
