#include "forecourse/report/findings.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/meter/meter_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

void tell(const studies::MeterTold& meter, const studies::MeterResult& result, site::Display display, Glyphs glyphs,
          bool verbose, terminal::Page& page) {
  page.heading("Meter of " + meter.hose);
  for (const std::string& sentence : meter_answer(meter, display, glyphs)) page.item(sentence);
  for (const std::string& sentence : left_out_of(meter)) page.item(sentence);
  page.table(terminal_table(meter_limit_table(meter, result, display, glyphs)));
  if (!verbose) return;
  page.remark("Provings:");
  page.table(terminal_table(proving_table(meter, display, glyphs)));
  page.remark("Draws:");
  page.table(terminal_table(draw_table(meter, display, glyphs)));
}

}  // namespace

std::vector<std::string> meter_cautions() {
  return {
      "Computed from what was entered. It advises; a meter is approved and sealed by whom the local authority names.",
      "Between measure and meter a degree Fahrenheit is 0.07 % of gasoline's volume: read both temperatures.",
      "The measure is wetted, drained for its stated time and level; its own calibration is not in these errors.",
      "Fuel that was drawn goes back into its tank and into returns.csv; bond the measure, keep ignition away.",
      "A meter that explains a shortage does not cancel a duty to report it.",
  };
}

std::string meter_summary(const studies::MeterResult& result, const site::Site& site, const terminal::Style& style,
                          const MeterFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": meters");
  page.paragraph(meter_cautions().front() + " forecourse " + result.version + ".");
  if (result.meters.empty()) page.paragraph("No meter was proved, or that is not on record.");
  if (result.meters.size() > 1) page.table(terminal_table(meters_table(result, site.display, glyphs)));
  for (const studies::MeterTold& meter : result.meters) {
    tell(meter, result, site.display, glyphs, style.verbose, page);
  }
  for (const studies::MetersOfBook& book : result.books) {
    page.heading("Which meters explain " + book.book.book);
    for (const std::string& sentence : book_meters_answer(book, site.display, glyphs)) page.item(sentence);
    page.table(terminal_table(share_table(book, site.display, glyphs)));
  }
  if (!facts.findings.empty()) {
    page.heading("Requirements: " + count_by_state(facts.findings));
    for (const FindingGroup& group : grouped(facts.findings)) {
      page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
    }
  }
  tell_end({result.version, result.defaults, result.warnings, meter_cautions()}, site.display, glyphs, facts.written,
           page);
  return page.text();
}

}  // namespace forecourse::report
