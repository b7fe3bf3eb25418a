#include <fmt/format.h>

#include <algorithm>

#include "forecourse/report/flow/flow_html_course.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/lesson/glossary.h"
#include "forecourse/report/lesson/lesson_report.h"

namespace forecourse::report {
namespace {

using lesson::Page;

/// The course that is drawn: of the first product that flows.
std::string course(const site::Site& site, const checks::Studied& studied) {
  if (!studied.flow || studied.flow->states.empty()) return {};
  for (const studies::SystemFlow& system : studied.flow->states.front().systems) {
    bool heights_known = false;
    for (const studies::SystemSummary& one : studied.flow->systems) {
      if (one.id == system.system) heights_known = one.elevations_known;
    }
    const std::string drawn = section_figure(site, system, heights_known, "course");
    if (!drawn.empty()) return html::heading(2, "The course") + drawn;
  }
  return {};
}

std::string numbers(const Page& page, site::Display display) {
  if (page.numbers.empty()) return {};
  html::Table table{"At " + page.subject, "", {{"Number", "", false, false}, {"Value", "", false, false}}, {}, {}};
  std::vector<std::string> rests_on;  // each once, with the numbers that rest on it
  for (const lesson::Number& one : page.numbers) {
    std::string value = value_words(one, display, Glyphs::unicode);
    if (one.value && !one.rests_on.empty()) {
      const auto told = std::find(rests_on.begin(), rests_on.end(), one.rests_on);
      const auto place = static_cast<std::size_t>(told - rests_on.begin());
      if (told == rests_on.end()) rests_on.push_back(one.rests_on);
      value += " " + std::string(place + 1, '*');
    }
    table.rows.push_back({{one.label, value}});
  }
  std::string out = html::table(table);
  std::string mark;
  for (const std::string& one : rests_on) {
    mark += '*';
    out += html::paragraph(fmt::format("{} Not entered: {}.", mark, one), "quiet");
  }
  return out;
}

std::string clauses(const Page& page) {
  std::vector<std::string> out;
  for (const lesson::PageClause& one : page.clauses) {
    out.push_back((one.clause.empty() ? "no clause" : one.clause) + ": " + one.words + "." +
                  (one.text_seen ? "" : " Text not seen: read it before relying on it."));
  }
  return html::list(out);
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

std::string page_section(const Page& page, site::Display display) {
  std::string out = "<section class=\"keep\">\n" + html::heading(3, stop_words(page) + ": " + page.title);
  if (!page.caution.empty()) out += html::paragraph(page.caution, "caution");
  out += html::paragraph(page.prevents) + html::paragraph("Without it: " + page.without);
  if (!page.synonyms.empty()) out += html::paragraph("Also called: " + joined(page.synonyms) + ".", "quiet");
  return out + numbers(page, display) + clauses(page) + "</section>\n";
}

std::string words_of(const lesson::Lesson& lesson) {
  std::string out;
  for (const Page& page : lesson.pages) {
    out += page.title + ". " + page.prevents + " " + page.without + " ";
    for (const lesson::Number& number : page.numbers) out += number.label + ". ";
  }
  return out;
}

std::string glossary_table(const lesson::Lesson& lesson) {
  html::Table table{"By the alphabet", "", {{"Word", "", false, false}, {"Meaning", "", false, false}}, {}, {}};
  for (const GlossaryWord& one : words_used(glossary(), words_of(lesson))) {
    table.rows.push_back({{one.word, one.meaning}});
  }
  return table.rows.empty() ? std::string() : html::heading(2, "Words used") + html::table(table);
}

std::string left_out(const lesson::Lesson& lesson) {
  std::vector<std::string> items;
  items.reserve(lesson.pages_left_out.size());
  for (const lesson::PageLeftOut& one : lesson.pages_left_out) items.push_back(one.page + ": " + one.reason);
  return items.empty() ? std::string() : html::heading(2, "Pages left out") + html::list(items);
}

}  // namespace

std::string lesson_report(const lesson::Lesson& lesson, const site::Site& site, const checks::Studied& studied,
                          const ReportFacts& facts) {
  std::string body = course(site, studied) + html::heading(2, "Pages");
  for (const Page& page : lesson.pages) body += page_section(page, site.display);
  body += left_out(lesson) + glossary_table(lesson);
  const std::vector<std::string> cautions = lesson_cautions();
  return study_page(lesson.title, "lesson", cautions.front(), body, {lesson.version, {}, lesson.warnings, cautions},
                    site, facts);
}

}  // namespace forecourse::report
