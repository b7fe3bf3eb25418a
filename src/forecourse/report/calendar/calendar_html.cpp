#include <algorithm>
#include <array>

#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/calendar/calendar_view.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/svg/month_strip.h"

namespace forecourse::report {
namespace {

using handover::Calendar;
using handover::Duty;
using handover::DutyState;
using svg::StripMark;

constexpr std::array all_states{DutyState::failed,    DutyState::overdue, DutyState::due_soon,
                                DutyState::no_record, DutyState::later,   DutyState::not_determined};

StripMark mark_of(DutyState state) {
  switch (state) {
    case DutyState::failed:
      return StripMark::cross;
    case DutyState::overdue:
      return StripMark::diamond;
    case DutyState::due_soon:
      return StripMark::disk;
    case DutyState::no_record:
      return StripMark::square;
    case DutyState::later:
      return StripMark::ring;
    case DutyState::not_determined:
      return StripMark::dash;
  }
  return StripMark::none;
}

std::string month_name(const handover::Month& month) {
  constexpr std::array names{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return names.at(static_cast<std::size_t>(month.month - 1));
}

/// Groups of a state, in their order.
std::vector<DutyGroup> groups_of(const Calendar& calendar, DutyState state) {
  std::vector<DutyGroup> out = grouped(calendar.duties);
  std::erase_if(out, [&](const DutyGroup& group) { return group.duties.front()->state != state; });
  return out;
}

bool has_no_day(DutyState state) {
  return state == DutyState::failed || state == DutyState::no_record || state == DutyState::not_determined;
}

html::Row row_of(const DutyGroup& group, DutyState state) {
  const Duty& first = *group.duties.front();
  const std::string what = first.what + (first.instead.empty() ? "" : "; the rule allows other ways");
  const std::string by = first.by_whom + (first.sheet.empty() ? "" : "; sheet " + first.sheet);
  if (has_no_day(state)) {
    const std::string open = first.reason + (first.enter.empty() ? "" : "; " + first.enter);
    return {{subjects(group), what, open, by, clause_in_words(first)}, state == DutyState::failed};
  }
  return {{subjects(group), what, due_in_words(first), done_in_words(first), by, clause_in_words(first)},
          state == DutyState::overdue};
}

std::string table_of(const Calendar& calendar, DutyState state) {
  html::Table table{state_heading(state, calendar.options.within), {}, {}, {}, {}};
  table.columns = {{"Part", {}}, {"What", {}, false, true}};
  if (has_no_day(state)) {
    table.columns.push_back({"Open", {}, false, true});
  } else {
    table.columns.push_back({"Due", {}});
    table.columns.push_back({"Last done", {}});
  }
  table.columns.push_back({"By whom", {}});
  table.columns.push_back({"Clause", {}});
  for (const DutyGroup& group : groups_of(calendar, state)) table.rows.push_back(row_of(group, state));
  return table.rows.empty() ? std::string() : html::table(table);
}

std::string strip_of(const Calendar& calendar) {
  svg::MonthStrip strip;
  strip.id = "calendar-strip";
  strip.title = "Twelve months";
  strip.description = "Months in which each duty falls due. " + counts_in_words(calendar);
  for (const handover::Month& month : calendar.months) strip.months.push_back(month_name(month));
  for (const DutyGroup& group : grouped(calendar.duties)) {
    svg::StripRow row{subjects(group) + ": " + group.duties.front()->what, {}};
    for (const handover::StripMonth& one : group.duties.front()->strip)
      row.marks.push_back(one.state ? mark_of(*one.state) : StripMark::none);
    strip.rows.push_back(std::move(row));
  }
  for (const DutyState state : all_states) {
    const bool any = std::any_of(calendar.duties.begin(), calendar.duties.end(), [&](const Duty& duty) {
      return std::any_of(duty.strip.begin(), duty.strip.end(), [&](const auto& one) { return one.state == state; });
    });
    if (any) strip.keys.push_back({mark_of(state), word(state)});
  }
  return html::drawing(
      "Twelve months",
      "The first mark of a row is the next due day; the others follow if each is done on its day. What "
      "failed, is overdue or without a record is taken as done today.",
      svg::draw(strip));
}

std::string papers_of(const Calendar& calendar) {
  std::vector<std::string> items;
  items.reserve(calendar.papers.size());
  for (const handover::PaperKept& paper : calendar.papers)
    items.push_back(std::string(checks::word(paper.state)) + ": " + in_words(paper));
  return items.empty() ? std::string() : html::heading(3, "Papers to keep") + html::list(items);
}

std::string tables_of(const Calendar& calendar) {
  std::string out;
  for (const DutyState state : all_states) out += table_of(calendar, state);
  return out;
}

}  // namespace

std::string calendar_body(const Calendar& calendar) {
  return html::heading(2, "Tests and inspections that come back") +
         html::paragraph("On " + checks::text(calendar.today) + ": " + counts_in_words(calendar)) +
         tables_of(calendar) + strip_of(calendar) + papers_of(calendar);
}

std::string calendar_report(const Calendar& calendar, const site::Site& site, const ReportFacts& facts) {
  return study_page("Test calendar", "calendar", calendar_cautions().front() + " " + calendar_cautions().back(),
                    calendar_body(calendar), {calendar.version, {}, calendar.warnings, calendar_cautions()}, site,
                    facts);
}

std::string calendar_section(const Calendar& calendar) {
  if (calendar.duties.empty()) return {};
  std::vector<std::string> items;
  for (const DutyState state : {DutyState::failed, DutyState::overdue, DutyState::due_soon}) {
    for (const DutyGroup& group : groups_of(calendar, state)) {
      const Duty& first = *group.duties.front();
      const std::string stands = first.failed ? failed_in_words(first) : "due " + due_in_words(first);
      items.push_back(subjects(group) + ": " + first.what + "; " + stands + ".");
    }
  }
  return html::heading(2, "Test calendar") + html::paragraph(counts_in_words(calendar)) + html::list(items) +
         html::paragraph("The whole is told by `forecourse calendar`.");
}

}  // namespace forecourse::report
