#include "forecourse/report/lesson/questions/questions_report.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

std::string questions_summary(const lesson::AskResult& asked, const std::string& version, const site::Site& site,
                              const terminal::Style& style, const ReportFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": questions");
  page.notice("Caution", question_cautions().front());
  for (std::size_t i = 0; i < asked.questions.size(); ++i) {
    const lesson::Question& one = asked.questions[i];
    page.heading(std::to_string(i + 1) + ". " + one.question + " (" + lesson::word(one.form) + ", level " +
                 std::to_string(one.level) + ", page " + one.page + ")");
    page.paragraph(phrase_words(one.asks, site.display, glyphs));
    char letter = 'A';
    for (const ShownOption& shown : shown_options(one)) {
      page.item(std::string(1, letter++) + ": " + phrase_words(shown.option->words, site.display, glyphs));
    }
    page.remark("Answer: " + answer_words(one, site.display, glyphs) + ". " +
                phrase_words(one.explains, site.display, glyphs));
    if (!one.rests_on.empty()) page.remark("Rests on an illustrative value: " + one.rests_on + ".");
    if (!style.verbose) continue;
    if (!one.follows.words.empty()) page.remark(phrase_words(one.follows, site.display, glyphs) + ".");
    for (const lesson::Option& option : one.options) {
      if (!option.right) page.remark(phrase_words(option.words, site.display, glyphs) + ": " + option.why);
    }
  }
  if (!asked.left_out.empty()) page.heading("Left out");
  for (const lesson::LeftOut& one : asked.left_out) page.item(one.question + ": " + one.reason);
  tell_end({version, {}, {}, question_cautions()}, site.display, glyphs, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
