#include <fmt/format.h>

#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {
namespace {

constexpr Glyphs glyphs = Glyphs::unicode;

std::string of_statistics(const studies::LedgerBook& book, site::Display display, const std::string& number) {
  if (!book.loss || !book.loss->problem.empty()) return {};
  std::string out;
  if (!book.loss->faults.empty()) {
    out +=
        html::table(page_table(fault_table(book, display, glyphs), "Readings that stand alone, and steps, " + book.name,
                               "Each stands out of what chance gives once in a hundred months."));
  }
  out += html::table(page_table(free_table(book, display, glyphs), "Everything free at once, " + book.name,
                                "Without what proving tells; a loss is positive."));
  out += html::list(not_parted(book, glyphs));
  out +=
      html::chart_figure(sum_chart(book, number),
                         fmt::format("Where nothing is wrong it passes its limit once in {:.0f} readings, on the mean.",
                                     book.loss->cusum_run_length));
  out +=
      html::chart_figure(average_chart(book, number),
                         fmt::format("Where nothing is wrong it passes its limit once in {:.0f} readings, on the mean.",
                                     book.loss->ewma_run_length));
  return out;
}

std::string of_book(const studies::LedgerBook& book, site::Display display, const std::string& number) {
  std::string out = html::heading(3, "Book of " + book.name);
  if (!book.joined.empty()) out += html::paragraph("One book, because " + book.joined + ".");
  out += html::list(book_answer(book, display, glyphs));
  if (!book.problem.empty()) return out;
  out += html::heading(3, "What to do next") + html::list(what_next(book, display, glyphs));
  out += html::table(page_table(month_table(book, display, glyphs), "Months, " + book.name,
                                "The limit is 1.0 % of throughput and 130 gal, 40 CFR 280.43(a)."));
  out += html::chart_figure(
      running_chart(book, display, number),
      "The limits open with what was sold so far. A tick at the foot is a delivery, a cross a day outside.");
  if (book.terms) {
    out += html::chart_figure(term_chart(book, display, number),
                              "Whiskers are one standard error; what is hatched is not explained.");
    out += html::table(page_table(term_table(book, display, glyphs), "What explains it, " + book.name));
  }
  out += of_statistics(book, display, number);
  return out + html::table(page_table(day_table(book, display, glyphs), "Day by day, " + book.name));
}

}  // namespace

std::string ledger_section(const studies::LedgerResult& result, const site::Site& site) {
  std::string out = html::heading(2, "Ledger");
  for (std::size_t i = 0; i < result.books.size(); ++i) {
    out += of_book(result.books[i], site.display, std::to_string(i + 1));
  }
  if (!result.gauging.empty()) {
    out += html::table(page_table(gauging_table(result, site.display, glyphs), "Manual tank gauging",
                                  "40 CFR 280.43(b)(4), for tanks up to 2,000 gal."));
  }
  if (result.own_test) out += html::paragraph(own_test_words(result, site.display, glyphs));
  return out;
}

std::string ledger_report(const studies::LedgerResult& result, const site::Site& site, const LedgerFacts& facts) {
  return study_page("Ledger", "ledger",
                    (ledger_falls_short(result) ? std::string(ledger_first) + " " : "") + ledger_cautions()[1],
                    ledger_section(result, site) + findings_html(facts.findings, site.display),
                    {result.version, result.defaults, result.warnings, ledger_cautions()}, site, facts);
}

}  // namespace forecourse::report
