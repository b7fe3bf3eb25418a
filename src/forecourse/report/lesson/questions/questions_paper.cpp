#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/lesson/questions/questions_report.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {
namespace {

using lesson::Form;
using lesson::Question;
using svg::escape;

constexpr const char* rules = R"css(
.ask{margin:22px 0;break-inside:avoid}.ask h3{font-weight:400;font-size:17px;margin:0 0 8px;line-height:1.35}
.ask h3 b{margin-right:6px}.ask .to{color:var(--ink2);font-size:14px;margin:0 0 4px}
.ask ol{list-style:none;margin:0;padding:0;max-width:none}.ask li{display:flex;align-items:baseline;padding:4px 0}
.ask li+li{margin-top:0}.ask i{flex:none;display:inline-block;width:14px;height:14px;border:1.2px solid var(--ink);
margin-right:10px;transform:translateY(2px)}.ask i.place{width:30px;height:20px;transform:translateY(4px)}.ask li b{flex:none;width:18px;margin-right:6px}
.ask .line{display:inline-block;width:180px;border-bottom:1.2px solid var(--ink);height:22px;vertical-align:bottom}
.ask .wrong li{padding:1px 0}.ask .to+h3{margin-top:4px}.ask p{max-width:none}.ask p+ol{margin-top:6px}
@media print{.ask{margin:15pt 0}.ask h3{font-size:11.5pt}.ask .to,.ask .wrong{font-size:10pt})css";

std::string letter_of(std::size_t index) { return "<b>" + std::string(1, static_cast<char>('A' + index)) + "</b>"; }

std::string heading_of(const Question& one, std::size_t number, site::Display display) {
  return "<h3><b>" + std::to_string(number) + ".</b>" + escape(phrase_words(one.asks, display)) + "</h3>\n";
}

/// What is to be done, and where the answer is written.
std::string answers_html(const Question& one, site::Display display) {
  if (one.form == Form::estimate) return "<p class=\"to\">Your estimate: <span class=\"line\"></span></p>\n";
  const bool is_order = one.form == Form::order;
  std::string out = std::string("<p class=\"to\">") +
                    (is_order ? "Number them in their order, 1 for the first." : "Mark one.") + "</p>\n<ol>\n";
  std::size_t index = 0;
  for (const ShownOption& shown : shown_options(one)) {
    out += std::string("<li><i") + (is_order ? " class=\"place\"" : "") + "></i>" + letter_of(index++) + "<span>" +
           escape(phrase_words(shown.option->words, display)) + "</span></li>\n";
  }
  return out + "</ol>\n";
}

std::string asked_html(const Question& one, std::size_t number, site::Display display) {
  std::string out = "<section class=\"ask\">\n";
  if (!one.caution.empty()) out += html::paragraph(one.caution, "to");
  return out + heading_of(one, number, display) + answers_html(one, display) + "</section>\n";
}

/// The wrong answers with the mistake that leads to each.
std::string wrong_html(const Question& one) {
  std::string out;
  std::size_t index = 0;
  for (const ShownOption& shown : shown_options(one)) {
    if (!shown.option->right)
      out += "<li>" + letter_of(index) + "<span>" + escape(shown.option->why) + "</span></li>\n";
    ++index;
  }
  return out.empty() ? out : "<ol class=\"wrong\">\n" + out + "</ol>\n";
}

/// The command that prints the answer, with the place in its document.
std::string looked_up(const lesson::Proof& proof) {
  if (proof.command.empty()) return {};
  std::string out = "Look it up: forecourse " + proof.command.front() + " SITE";
  for (std::size_t i = 1; i < proof.command.size(); ++i) {
    const std::string& word = proof.command[i];
    out += word.find(' ') == std::string::npos ? " " + word : " \"" + word + "\"";
  }
  return out + " --json, " + proof.pointer;
}

std::string key_html(const Question& one, std::size_t number, site::Display display) {
  std::string out = "<section class=\"ask\">\n<h3><b>" + std::to_string(number) + ".</b><b>" +
                    escape(answer_words(one, display, Glyphs::unicode)) + "</b></h3>\n";
  out += html::paragraph(phrase_words(one.asks, display), "to");
  out += html::paragraph(phrase_words(one.explains, display));
  if (!one.follows.words.empty()) out += html::paragraph(phrase_words(one.follows, display) + ".");
  if (!one.rests_on.empty()) out += html::paragraph("Rests on an illustrative value: " + one.rests_on + ".");
  out += wrong_html(one);
  if (const std::string where = looked_up(one.proof); !where.empty()) out += html::paragraph(where, "to");
  return out + "</section>\n";
}

/// Which questions these are, so that paper and key can be matched.
std::string paper_words(const lesson::AskResult& asked) {
  const int level = asked.options.level;
  return "seed " + std::to_string(asked.options.seed) + ", " +
         (level > 0 ? "level " + std::to_string(level) : std::string("all levels"));
}

html::Page page_of(const lesson::AskResult& asked, const std::string& version, const site::Site& site,
                   const ReportFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.cells = {{"Paper", paper_words(asked)},
                {"Units", site.display == site::Display::us ? "US customary" : "SI"},
                {"Made with", "forecourse " + version}};
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.caution = question_cautions().front();
  page.rules = rules;
  return page;
}

}  // namespace

std::string questions_paper(const lesson::AskResult& asked, const std::string& version, const site::Site& site,
                            const ReportFacts& facts) {
  html::Page page = page_of(asked, version, site, facts);
  page.study = "Questions";
  page.title = {{"Name", "\u00A0"}, {"Day", "\u00A0"}};  // to be filled in
  for (std::size_t i = 0; i < asked.questions.size(); ++i) {
    page.body += asked_html(asked.questions[i], i + 1, site.display);
  }
  return html::page(page);
}

std::string questions_key(const lesson::AskResult& asked, const std::string& version, const site::Site& site,
                          const ReportFacts& facts) {
  html::Page page = page_of(asked, version, site, facts);
  page.study = "Key to the questions, for the trainer";
  for (std::size_t i = 0; i < asked.questions.size(); ++i) {
    page.body += key_html(asked.questions[i], i + 1, site.display);
  }
  std::vector<std::string> left_out;
  left_out.reserve(asked.left_out.size());
  for (const lesson::LeftOut& one : asked.left_out) left_out.push_back(one.question + ": " + one.reason);
  if (!left_out.empty()) page.body += html::heading(2, "Left out at this station") + html::list(left_out);
  page.body += html::heading(2, "Cautions") + html::list(question_cautions());
  if (!facts.command.empty()) {
    page.body += html::heading(2, "Run it again") + html::paragraph(facts.command, "command");
  }
  return html::page(page);
}

}  // namespace forecourse::report
