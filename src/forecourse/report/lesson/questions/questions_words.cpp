#include <algorithm>
#include <cmath>

#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/questions/questions_report.h"

namespace forecourse::report {

std::string phrase_words(const lesson::Phrase& phrase, site::Display display, Glyphs glyphs) {
  std::string out;
  std::size_t begin = 0;
  for (const lesson::Amount& amount : phrase.values) {
    const std::size_t at = phrase.words.find("{}", begin);
    if (at == std::string::npos) break;
    out += phrase.words.substr(begin, at - begin) + shown(amount.value, amount.quantity, display, glyphs);
    begin = at + 2;
  }
  return out + phrase.words.substr(begin);
}

std::vector<ShownOption> shown_options(const lesson::Question& question) {
  std::vector<ShownOption> out;
  out.reserve(question.options.size());
  for (std::size_t i = 0; i < question.options.size(); ++i) out.push_back({&question.options[i], i});
  if (question.form == lesson::Form::order) {
    std::sort(out.begin(), out.end(), [](const ShownOption& one, const ShownOption& other) {
      return one.option->words.words < other.option->words.words;
    });
  }
  return out;
}

namespace {

std::string letter(std::size_t index) { return std::string(1, static_cast<char>('A' + index)); }

/// "C, A, B": where each item of the order stands among those shown.
std::string order_words(const lesson::Question& question) {
  const std::vector<ShownOption> options = shown_options(question);
  std::string out;
  for (std::size_t place = 0; place < options.size(); ++place) {
    for (std::size_t i = 0; i < options.size(); ++i) {
      if (options[i].place == place) out += (out.empty() ? "" : ", ") + letter(i);
    }
  }
  return out;
}

}  // namespace

std::string answer_words(const lesson::Question& question, site::Display display, Glyphs glyphs) {
  if (question.form == lesson::Form::order) return order_words(question);
  if (question.form == lesson::Form::estimate) {
    return shown(question.answer->value, question.answer->quantity, display, glyphs) + ", within " +
           shown(question.tolerance, lesson::Quantity::share, display, glyphs);
  }
  for (std::size_t i = 0; i < question.options.size(); ++i) {
    if (question.options[i].right) {
      return letter(i) + ": " + phrase_words(question.options[i].words, display, glyphs);
    }
  }
  return {};
}

std::vector<std::string> question_cautions() {
  return {"In an emergency stop the pump, clear people away and call the fire service before anything else.",
          "Answers are computed from what was entered. They teach; a computed result is no test and no approval.",
          "The edition of the code that the local authority has adopted rules. Never try a failure at a station."};
}

}  // namespace forecourse::report
