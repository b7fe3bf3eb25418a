#include <fmt/format.h>

#include <algorithm>

#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/calendar/calendar_view.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

using handover::Duty;
using handover::DutyState;

std::string calendar_summary(const handover::Calendar& calendar, const site::Site& site, const terminal::Style& style,
                             const ReportFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": test calendar");
  page.paragraph(calendar_cautions().front() + " forecourse " + calendar.version + ".");
  page.item("On " + checks::text(calendar.today) + ": " + counts_in_words(calendar));
  int left_out = 0;
  std::optional<DutyState> shown;
  for (const DutyGroup& group : grouped(calendar.duties)) {
    const DutyState state = group.duties.front()->state;
    if (state == DutyState::later && !style.verbose) {
      left_out += static_cast<int>(group.duties.size());
      continue;
    }
    if (shown != state) page.heading(state_heading(state, calendar.options.within));
    shown = state;
    page.item(in_words(group, style.verbose));
  }
  if (left_out > 0) page.remark(fmt::format("{} more that fall due later: --verbose lists them.", left_out));
  if (!calendar.papers.empty()) page.heading("Papers to keep");
  for (const handover::PaperKept& paper : calendar.papers) page.notice(checks::word(paper.state), in_words(paper));
  const bool has_ics = std::any_of(facts.written.begin(), facts.written.end(),
                                   [](const std::string& path) { return path.ends_with(".ics"); });
  if (const std::string left = left_out_of_ics(calendar); has_ics && !left.empty())
    page.remark("The calendar file: " + left);
  tell_end({calendar.version, {}, calendar.warnings, calendar_cautions()}, site.display, glyphs, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
