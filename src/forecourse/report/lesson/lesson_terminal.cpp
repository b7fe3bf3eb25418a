#include "forecourse/report/lesson/lesson_report.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using lesson::Page;

void add_rows(const Page& page, site::Display display, Glyphs glyphs, terminal::Table& table) {
  const std::string title = stop_words(page) + ": " + page.title;
  for (const lesson::Number& number : page.numbers) {
    const bool first = &number == &page.numbers.front();
    table.rows.push_back(
        {first ? title : "", first ? page.subject : "", number.label, value_words(number, display, glyphs)});
  }
  if (page.numbers.empty()) table.rows.push_back({title, page.subject, "", ""});
}

void tell_texts(const Page& page, terminal::Page& out) {
  out.heading(stop_words(page) + ": " + page.title);
  if (!page.caution.empty()) out.notice("Caution", page.caution);
  out.paragraph(page.prevents);
  out.paragraph("Without it: " + page.without);
  for (const lesson::PageFailure& one : page.failures) {
    out.item("break it: " + one.title + (one.reason.empty() ? "" : ", not here: " + one.reason));
  }
  if (!page.notes.empty()) out.remark(page.notes);
}

}  // namespace

std::string lesson_summary(const lesson::Lesson& lesson, const site::Site& site, const terminal::Style& style,
                           const ReportFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": " + lesson.title);
  page.notice("Caution", lesson_cautions().front());
  terminal::Table table{{{"Page", false, true}, {"At", false, true}, {"Number", false, true}, {"Value", false, true}},
                        {}};
  for (const Page& one : lesson.pages) add_rows(one, site.display, glyphs, table);
  page.table(table);
  if (style.verbose) {
    for (const Page& one : lesson.pages) tell_texts(one, page);
  }
  if (!lesson.pages_left_out.empty()) page.heading("Pages left out");
  for (const lesson::PageLeftOut& one : lesson.pages_left_out) page.item(one.page + ": " + one.reason);
  tell_end({lesson.version, {}, lesson.warnings, lesson_cautions()}, site.display, glyphs, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
