#include "forecourse/report/findings.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

std::string title_of(const studies::LedgerBook& book) {
  return book.joined.empty() ? book.name : book.name + ", one book because " + book.joined;
}

void tell(const studies::LedgerBook& book, site::Display display, Glyphs glyphs, bool verbose, terminal::Page& page) {
  page.heading(title_of(book));
  for (const std::string& sentence : book_answer(book, display, glyphs)) page.item(sentence);
  if (!book.problem.empty()) return;
  page.heading("What to do next, " + book.name);
  for (const std::string& step : what_next(book, display, glyphs)) page.item(step);
  page.heading("Months, " + book.name);
  page.table(terminal_table(month_table(book, display, glyphs)));
  if (book.terms) {
    page.heading("What explains it, " + book.name);
    page.table(terminal_table(term_table(book, display, glyphs)));
  }
  if (book.loss && !book.loss->faults.empty()) {
    page.heading("Readings that stand alone, and steps, " + book.name);
    page.table(terminal_table(fault_table(book, display, glyphs)));
  }
  for (const std::string& sentence : not_parted(book, glyphs)) page.remark(sentence);
  if (!verbose) return;
  page.heading("Everything free at once, " + book.name);
  page.table(terminal_table(free_table(book, display, glyphs)));
  page.heading("Day by day, " + book.name);
  page.table(terminal_table(day_table(book, display, glyphs)));
}

}  // namespace

std::vector<std::string> ledger_cautions() {
  return {
      ledger_first,
      "Computed from what was entered. It advises; no statistics replaces a test by a certified tester.",
      "This program is no listed method of release detection: where a rule asks for one, use one.",
      "State rules can ask for more, and for earlier reports, than the federal one.",
  };
}

std::string ledger_summary(const studies::LedgerResult& result, const site::Site& site, const terminal::Style& style,
                           const LedgerFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": ledger");
  if (ledger_falls_short(result)) page.notice("First", ledger_first);
  page.paragraph(ledger_cautions()[1] + " forecourse " + result.version + ".");
  for (const studies::LedgerBook& book : result.books) tell(book, site.display, glyphs, style.verbose, page);
  if (!result.gauging.empty()) {
    page.heading("Manual tank gauging");
    page.table(terminal_table(gauging_table(result, site.display, glyphs)));
  }
  if (result.own_test) page.paragraph(own_test_words(result, site.display, glyphs));
  if (!facts.findings.empty()) {
    page.heading("Requirements: " + count_by_state(facts.findings));
    for (const FindingGroup& group : grouped(facts.findings)) {
      page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
    }
  }
  tell_end({result.version, result.defaults, result.warnings, ledger_cautions()}, site.display, glyphs, facts.written,
           page);
  return page.text();
}

}  // namespace forecourse::report
