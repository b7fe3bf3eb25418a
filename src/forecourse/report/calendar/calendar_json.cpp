#include <fmt/format.h>

#include "forecourse/report/calendar/calendar_report.h"

namespace forecourse::report {
namespace {

using handover::Duty;
using handover::DutyState;

Json day_json(const std::optional<site::Date>& day) { return day ? Json(checks::text(*day)) : Json(); }

std::string text(const handover::Month& month) { return fmt::format("{:04}-{:02}", month.year, month.month); }

Json period_json(const checks::Period& every) {
  return {{"words", in_words(every)}, {"years", every.years}, {"months", every.months}, {"days", every.days}};
}

Json strip_json(const handover::StripMonth& one) {
  return {{"month", text(one.month)},
          {"days", array_of(one.days, [](const site::Date& day) { return Json(checks::text(day)); })},
          {"state", one.state ? Json(word(*one.state)) : Json()}};
}

Json duty_json(const Duty& duty, const std::vector<SourceText>& texts) {
  const site::Date* tested = last_test(duty);
  return {{"id", duty.id},
          {"set", duty.set},
          {"set_title", duty.set_title},
          {"rule", duty.rule},
          {"subject", duty.subject},
          {"what", duty.what},
          {"instead", duty.instead},
          {"clause", text_or_null(duty.clause)},
          {"edition", text_or_null(duty.edition)},
          {"clause_verified", duty.clause_verified},
          {"every", period_json(duty.every)},
          {"last_done", day_json(duty.last_done)},
          {"done_by", text_or_null(word(done_by(duty)))},
          {"done_where", place_json(tested != nullptr ? std::optional(tested->where) : std::nullopt, texts)},
          {"failed", day_json(duty.failed)},
          {"due", day_json(duty.due)},
          {"days_left", count_or_null(duty.days_left)},
          {"state", word(duty.state)},
          {"reason", text_or_null(duty.reason)},
          {"enter", text_or_null(duty.enter)},
          {"by_whom", text_or_null(duty.by_whom)},
          {"sheet", text_or_null(duty.sheet)},
          {"where", place_json(duty.where, texts)},
          {"strip", array_of(duty.strip, strip_json)}};
}

Json paper_json(const handover::PaperKept& paper, const std::vector<SourceText>& texts) {
  return {{"set", paper.set},
          {"what", paper.what},
          {"clause", text_or_null(paper.clause)},
          {"edition", text_or_null(paper.edition)},
          {"clause_verified", paper.clause_verified},
          {"state", checks::word(paper.state)},
          {"at_least_s", number_or_null(paper.least)},
          {"kept_s", number_or_null(paper.kept)},
          {"enter", text_or_null(paper.enter)},
          {"where", place_json(paper.where, texts)}};
}

}  // namespace

Json calendar_json(const handover::Calendar& calendar, const std::vector<SourceText>& texts) {
  const handover::DutyCounts& counts = calendar.counts;
  return {{"counts",
           {{"failed", counts.failed},
            {"overdue", counts.overdue},
            {"due_soon", counts.due_soon},
            {"no_record", counts.no_record},
            {"later", counts.later},
            {"not_determined", counts.not_determined}}},
          {"in_words", counts_in_words(calendar)},
          {"months", array_of(calendar.months, [](const handover::Month& month) { return Json(text(month)); })},
          {"duties", array_of(calendar.duties, [&](const Duty& duty) { return duty_json(duty, texts); })},
          {"papers",
           array_of(calendar.papers, [&](const handover::PaperKept& paper) { return paper_json(paper, texts); })}};
}

Json calendar_document(const handover::Calendar& calendar, const ReportFacts& facts) {
  JsonDocument out;
  out.study = "calendar";
  out.version = calendar.version;
  out.cautions = calendar_cautions();
  out.options = {{"on", checks::text(calendar.today)}, {"within_days", calendar.options.within}};
  out.result = calendar_json(calendar, facts.texts);
  out.warnings = calendar.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
