#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/lesson_report.h"

namespace forecourse::report {
namespace {

using lesson::Number;
using lesson::Page;
using site::Display;

Json shown_or_null(const Number& number, Display display) { return text_or_null(shown(number, display)); }

Json number_json(const Number& number) {
  return {{"number", number.number},
          {"label", number.label},
          {"value", number_or_null(number.value)},
          {"low", number.range ? Json(number.range->low) : Json()},
          {"high", number.range ? Json(number.range->high) : Json()},
          {"low_pointer", number.range ? text_or_null(number.range->low_pointer) : Json()},
          {"high_pointer", number.range ? text_or_null(number.range->high_pointer) : Json()},
          {"unit", lesson::unit(number.quantity)},
          {"quantity", lesson::word(number.quantity)},
          {"shown", shown_or_null(number, Display::us)},
          {"shown_si", shown_or_null(number, Display::si)},
          {"reason", text_or_null(number.reason)},
          {"rests_on", text_or_null(number.rests_on)},
          {"command", number.proof.command},
          {"pointer", text_or_null(number.proof.pointer)},
          {"times", number.proof.times}};
}

Json values_json(const std::map<std::string, double>& values) {
  Json out = Json::object();
  for (const auto& one : values) out[one.first] = number_or_null(one.second);
  return out;
}

Json state_json(const lesson::PictureState& one) {
  return {{"state", one.state}, {"words", one.words}, {"values", values_json(one.values)}};
}

Json clause_json(const lesson::PageClause& one) {
  return {{"clause", one.clause},
          {"edition", text_or_null(one.edition)},
          {"words", one.words},
          {"text_seen", one.text_seen}};
}

Json failure_json(const lesson::PageFailure& one) {
  return {{"failure", one.failure},
          {"title", one.title},
          {"available", one.reason.empty()},
          {"reason", text_or_null(one.reason)}};
}

Json left_out_json(const lesson::LeftOut& one) { return {{"question", one.question}, {"reason", one.reason}}; }

Json page_json(const Page& page) {
  return {{"page", page.page},
          {"stop", site::word(page.stop)},
          {"stop_number", static_cast<int>(page.stop)},
          {"title", page.title},
          {"subject", page.subject},
          {"caution", text_or_null(page.caution)},
          {"picture", page.page},
          {"states", array_of(page.states, state_json)},
          {"numbers", array_of(page.numbers, number_json)},
          {"prevents", page.prevents},
          {"without", page.without},
          {"synonyms", page.synonyms},
          {"clauses", array_of(page.clauses, clause_json)},
          {"failures", array_of(page.failures, failure_json)},
          {"questions", page.questions},
          {"questions_left_out", array_of(page.questions_left_out, left_out_json)},
          {"notes", text_or_null(page.notes)}};
}

}  // namespace

Json lesson_document(const lesson::Lesson& lesson, const ReportFacts& facts) {
  JsonDocument out;
  out.study = "lesson";
  out.version = lesson.version;
  out.cautions = lesson_cautions();
  out.options = {{"lesson", facts.texts.size() > 1 ? Json(facts.texts[1].name) : Json()}};
  out.result = {{"title", lesson.title},
                {"pages", array_of(lesson.pages, page_json)},
                {"pages_left_out", array_of(lesson.pages_left_out, [](const lesson::PageLeftOut& one) {
                   return Json{{"page", one.page}, {"reason", one.reason}};
                 })}};
  out.warnings = lesson.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
