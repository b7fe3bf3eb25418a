#include "forecourse/report/calendar/calendar_view.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "forecourse/report/calendar/calendar_report.h"

namespace forecourse::report {
namespace {

using handover::Duty;
using handover::DutyState;

std::string counted(int count, const char* one, const char* many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

bool belong_together(const Duty& a, const Duty& b) {
  const auto day = [](const std::optional<site::Date>& date) { return date ? checks::text(*date) : std::string(); };
  return a.set == b.set && a.rule == b.rule && a.state == b.state && a.what == b.what && day(a.due) == day(b.due) &&
         day(a.last_done) == day(b.last_done) && day(a.failed) == day(b.failed) && done_by(a) == done_by(b) &&
         a.reason == b.reason && a.enter == b.enter;
}

}  // namespace

std::vector<std::string> calendar_cautions() {
  return {
      "Computed from what was entered. It advises; a day in a calendar is no test and no approval.",
      "The edition of the code that the local authority has adopted rules, and so do the equipment's listing and "
      "instructions: they may ask for more, and sooner.",
      "Certified testers do the tests, licensed trades the work.",
      "If something escapes: stop the pump, clear people away, call the fire service; then the calendar.",
  };
}

std::string in_words(const checks::Period& every) {
  if (every.years > 0) return every.years == 1 ? "every year" : fmt::format("every {} years", every.years);
  if (every.months > 0) return every.months == 1 ? "every month" : fmt::format("every {} months", every.months);
  return every.days == 1 ? "every day" : fmt::format("every {} days", every.days);
}

std::string counts_in_words(const handover::Calendar& calendar) {
  const handover::DutyCounts& counts = calendar.counts;
  std::string out = counted(static_cast<int>(calendar.duties.size()), "duty comes back", "duties come back") +
                    (counts.failed > 0 ? fmt::format(": {} failed, ", counts.failed) : std::string(": ")) +
                    fmt::format("{} overdue, {} due within {} days, {} later, {} without a record", counts.overdue,
                                counts.due_soon, calendar.options.within, counts.later, counts.no_record);
  if (counts.not_determined > 0)
    out += fmt::format("; of {} it is not determined whether they apply", counts.not_determined);
  return out + ".";
}

std::vector<DutyGroup> grouped(const std::vector<Duty>& duties) {
  std::vector<DutyGroup> out;
  for (const Duty& duty : duties) {
    const auto found = std::find_if(
        out.begin(), out.end(), [&](const DutyGroup& group) { return belong_together(*group.duties.front(), duty); });
    if (found == out.end())
      out.push_back({{&duty}});
    else
      found->duties.push_back(&duty);
  }
  return out;
}

std::string state_heading(DutyState state, int within) {
  switch (state) {
    case DutyState::failed:
      return "Failed";
    case DutyState::overdue:
      return "Overdue";
    case DutyState::due_soon:
      return fmt::format("Due within {} days", within);
    case DutyState::no_record:
      return "Without a record";
    case DutyState::later:
      return "Later";
    case DutyState::not_determined:
      return "Not determined whether it applies";
  }
  return {};
}

std::string subjects(const DutyGroup& group) {
  std::vector<std::string> out;
  out.reserve(group.duties.size());
  for (const Duty* duty : group.duties) out.push_back(duty->subject);
  return fmt::format("{}", fmt::join(out, ", "));
}

std::string due_in_words(const Duty& duty) {
  if (!duty.due) return "no day";
  const int left = *duty.days_left;
  const std::string day = checks::text(*duty.due);
  if (left < 0) return fmt::format("{}, {} overdue", day, counted(-left, "day", "days"));
  return left == 0 ? day + ", today" : fmt::format("{}, in {}", day, counted(left, "day", "days"));
}

std::string failed_in_words(const Duty& duty) {
  return fmt::format("failed on {}, {}: mend it and test again", checks::text(*duty.failed), word(done_by(duty)));
}

std::string done_in_words(const Duty& duty) {
  if (duty.failed) return fmt::format("failed on {}, {}", checks::text(*duty.failed), word(done_by(duty)));
  if (!duty.last_done) return "no record";
  return fmt::format("{}, {}", checks::text(*duty.last_done), word(done_by(duty)));
}

std::string clause_in_words(const Duty& duty) {
  if (duty.clause.empty()) return "an owner's own rule";
  if (duty.clause == "common practice") return "common practice; no clause is known";
  return duty.clause + (duty.clause_verified ? "" : ", its text not verified");
}

std::string in_words(const DutyGroup& group, bool with_alternatives) {
  const Duty& first = *group.duties.front();
  std::string out = subjects(group) + ": " + first.what + ". ";
  if (first.due)
    out += "Due " + due_in_words(first) + "; last done " + done_in_words(first) + "; " + in_words(first.every) + ". ";
  if (first.failed)
    out += "Its test " + failed_in_words(first) + ". ";
  else if (!first.reason.empty())
    out += "Open: " + first.reason + (first.enter.empty() ? ". " : "; " + first.enter + ". ");
  if (!first.by_whom.empty()) out += "By " + first.by_whom + ". ";
  if (!first.sheet.empty()) out += "Sheet " + first.sheet + ". ";
  if (!first.instead.empty() && with_alternatives) out += fmt::format("Instead: {}. ", fmt::join(first.instead, "; "));
  return out + clause_in_words(first) + ".";
}

std::string in_words(const handover::PaperKept& paper) {
  return paper.what + "; " + paper.clause + (paper.clause_verified ? "" : ", its text not verified") +
         (paper.enter.empty() ? "." : "; " + paper.enter + ".");
}

}  // namespace forecourse::report
