#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/questions/ask.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// Words of a question with their values in them, as printed: "12.25 gpm flow at D1.a".
[[nodiscard]] std::string phrase_words(const lesson::Phrase& phrase, site::Display display,
                                       Glyphs glyphs = Glyphs::unicode);

/// Answers as they are put before people: those of a choice and a fault as they stand, those of an order by the
/// alphabet, with the place of each in the order to be found.
struct ShownOption {
  const lesson::Option* option = nullptr;
  std::size_t place = 0;  ///< in `Question::options`
};
[[nodiscard]] std::vector<ShownOption> shown_options(const lesson::Question& question);

/// The right answer in words: "B: 31.4 gal", "12.25 gpm, within 15 %", "C, A, B".
[[nodiscard]] std::string answer_words(const lesson::Question& question, site::Display display, Glyphs glyphs);

/// What questions come with.
[[nodiscard]] std::vector<std::string> question_cautions();

/// The whole document; words in both systems of units.
///
/// \param version of the program
[[nodiscard]] Json questions_document(const lesson::AskResult& asked, const std::string& version,
                                      const ReportFacts& facts = {});

/// The questions with their answers in the terminal.
[[nodiscard]] std::string questions_summary(const lesson::AskResult& asked, const std::string& version,
                                            const site::Site& site, const terminal::Style& style,
                                            const ReportFacts& facts = {});

/// The paper that is handed out; it holds no answer.
[[nodiscard]] std::string questions_paper(const lesson::AskResult& asked, const std::string& version,
                                          const site::Site& site, const ReportFacts& facts = {});

/// The key to it, for the trainer: each answer, how it follows, and the mistake behind each wrong one.
[[nodiscard]] std::string questions_key(const lesson::AskResult& asked, const std::string& version,
                                        const site::Site& site, const ReportFacts& facts = {});

}  // namespace forecourse::report
