#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/lesson/questions/questions_report.h"

namespace forecourse::report {
namespace {

constexpr const char* to_fill = "____________";

std::string asked_html(const lesson::Question& one, std::size_t number, site::Display display) {
  std::string out = html::heading(3, std::to_string(number) + ". " + phrase_words(one.asks, display));
  if (!one.caution.empty()) out += html::paragraph(one.caution);
  const bool is_order = one.form == lesson::Form::order;
  if (one.form == lesson::Form::estimate) return out + html::paragraph(std::string("Your estimate: ") + to_fill);
  html::Table table;
  table.caption = is_order ? "Number them in their order" : "Choose one";
  table.columns = {
      {"", "", false, false}, {"Answer", "", false, true}, {is_order ? "Place" : "Yours", "", false, false}};
  char letter = 'A';
  for (const ShownOption& shown : shown_options(one)) {
    table.rows.push_back({{std::string(1, letter++), phrase_words(shown.option->words, display), "____"}});
  }
  return out + html::table(table);
}

std::string key_html(const lesson::AskResult& asked, site::Display display) {
  html::Table table;
  table.caption = "Answers";
  table.columns = {{"Question", "", true, false}, {"Answer", "", false, true}, {"Because", "", false, true}};
  for (std::size_t i = 0; i < asked.questions.size(); ++i) {
    const lesson::Question& one = asked.questions[i];
    std::string because = phrase_words(one.explains, display);
    char letter = 'A';
    for (const ShownOption& shown : shown_options(one)) {
      if (!shown.option->right) because += std::string(" ") + letter + ": " + shown.option->why;
      ++letter;
    }
    if (!one.rests_on.empty()) because += " Rests on an illustrative value: " + one.rests_on + ".";
    table.rows.push_back({{std::to_string(i + 1), answer_words(one, display, Glyphs::unicode), because}});
  }
  return html::table(table);
}

}  // namespace

std::string questions_paper(const lesson::AskResult& asked, const std::string& version, const site::Site& site,
                            const ReportFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = "Questions";
  page.title = {{"Name", ""}, {"Day", ""}};
  page.cells = {{"Seed", std::to_string(asked.options.seed)},
                {"Level", asked.options.level > 0 ? std::to_string(asked.options.level) : "all"},
                {"Units", site.display == site::Display::us ? "US customary" : "SI"},
                {"Made with", "forecourse " + version}};
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.caution = question_cautions().front();
  page.body = html::heading(2, "Questions");
  for (std::size_t i = 0; i < asked.questions.size(); ++i) {
    page.body += asked_html(asked.questions[i], i + 1, site.display);
  }
  page.body += R"(<section class="key">)" + html::heading(2, "Key, for the trainer") + key_html(asked, site.display);
  std::vector<std::string> left_out;
  left_out.reserve(asked.left_out.size());
  for (const lesson::LeftOut& one : asked.left_out) left_out.push_back(one.question + ": " + one.reason);
  if (!left_out.empty()) page.body += html::heading(3, "Left out at this station") + html::list(left_out);
  page.body += html::heading(3, "Cautions") + html::list(question_cautions());
  if (!facts.command.empty()) {
    page.body += html::heading(3, "Run it again") + html::paragraph(facts.command, "command");
  }
  page.body += "</section>";
  page.rules = "@media print{.key{break-before:page}h3{break-after:avoid}}";
  return html::page(page);
}

}  // namespace forecourse::report
