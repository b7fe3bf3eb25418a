#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/questions/questions_report.h"

namespace forecourse::report {
namespace {

using lesson::Question;
using site::Display;

Json option_json(const ShownOption& shown) {
  return {{"words", phrase_words(shown.option->words, Display::us)},
          {"words_si", phrase_words(shown.option->words, Display::si)},
          {"right", shown.option->right},
          {"why", text_or_null(shown.option->why)}};
}

Json answer_json(const std::optional<lesson::Amount>& answer) {
  if (!answer) return nullptr;
  return {{"value", answer->value},
          {"unit", lesson::unit(answer->quantity)},
          {"quantity", lesson::word(answer->quantity)},
          {"shown", shown(answer->value, answer->quantity, Display::us)},
          {"shown_si", shown(answer->value, answer->quantity, Display::si)}};
}

/// Of an order, the options in the order to be found; of the other forms none.
Json order_json(const Question& question, const std::vector<ShownOption>& options) {
  Json out = Json::array();
  if (question.form != lesson::Form::order) return out;
  for (std::size_t place = 0; place < options.size(); ++place) {
    for (std::size_t i = 0; i < options.size(); ++i) {
      if (options[i].place == place) out.push_back(i);
    }
  }
  return out;
}

Json question_json(const Question& one) {
  const std::vector<ShownOption> options = shown_options(one);
  return {{"question", one.question},
          {"form", lesson::word(one.form)},
          {"level", one.level},
          {"page", one.page},
          {"at", text_or_null(one.at)},
          {"caution", text_or_null(one.caution)},
          {"words", phrase_words(one.asks, Display::us)},
          {"words_si", phrase_words(one.asks, Display::si)},
          {"options", array_of(options, option_json)},
          {"answer", answer_json(one.answer)},
          {"tolerance", one.answer ? Json(one.tolerance) : Json()},
          {"order", order_json(one, options)},
          {"explanation", phrase_words(one.explains, Display::us)},
          {"explanation_si", phrase_words(one.explains, Display::si)},
          {"follows", text_or_null(phrase_words(one.follows, Display::us))},
          {"follows_si", text_or_null(phrase_words(one.follows, Display::si))},
          {"rests_on", text_or_null(one.rests_on)},
          {"command", one.proof.command},
          {"pointer", text_or_null(one.proof.pointer)}};
}

}  // namespace

Json questions_document(const lesson::AskResult& asked, const std::string& version, const ReportFacts& facts) {
  JsonDocument out;
  out.study = "lesson";
  out.version = version;
  out.cautions = question_cautions();
  const lesson::AskOptions& options = asked.options;
  out.options = {{"questions", options.count},
                 {"level", options.level > 0 ? Json(options.level) : Json()},
                 {"seed", options.seed},
                 {"page", text_or_null(options.page)},
                 {"kinds", options.kinds}};
  out.result = {{"questions", array_of(asked.questions, question_json)},
                {"left_out", array_of(asked.left_out, [](const lesson::LeftOut& one) {
                   return Json{{"question", one.question}, {"reason", one.reason}};
                 })}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
