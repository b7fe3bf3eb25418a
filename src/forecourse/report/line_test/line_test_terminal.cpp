#include "forecourse/report/findings.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/line_test/line_test_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {}  // namespace

std::vector<std::string> line_test_cautions() {
  return {
      "Computed from what was entered. It advises; a line is proved tight by a certified tester, not by a computation.",
      "How warm the fuel is against the ground decides most; measure it where the line is, not at the tank.",
      "In ground that the line has warmed for hours, and in a double-walled line, temperature fades more slowly.",
      "A suspected leak is reported within the time the rule allows; explaining a reading does not cancel that duty.",
      "A leak is simulated with the means to catch the fuel, away from what ignites it.",
  };
}

std::string line_test_summary(const studies::LineTestResult& result, const site::Site& site,
                              const terminal::Style& style, const LineTestFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": line tests and leak detectors");
  page.paragraph(line_test_cautions().front() + " forecourse " + result.version + ".");
  if (result.lines.empty()) page.paragraph("The station has no line.");
  for (const studies::LineTest& line : result.lines) {
    for (const std::string& sentence : line_test_answer(line, site.display, glyphs)) page.item(sentence);
  }
  if (!facts.findings.empty()) {
    page.heading("Requirements: " + count_by_state(facts.findings));
    for (const FindingGroup& group : grouped(facts.findings)) {
      page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
    }
  }
  if (!result.lines.empty()) {
    page.heading("Lines");
    page.table(terminal_table(lines_table(result, site.display, glyphs)));
    page.heading("Leak detectors");
    page.item(quiet_sentence(result, glyphs));
  }
  for (const studies::LineTest& line : result.lines) {
    for (const studies::DetectorTold& detector : line.detectors) {
      for (const std::string& sentence : detector_answer(detector, site.display, glyphs)) page.item(sentence);
      page.table(terminal_table(detection_table(detector, site.display, glyphs)));
      page.remark("Expected catch of a simulated leak of 3 gal/h at 10 psi, a sharp hole of " +
                  number(shown_value(Measure::bore, site::Display::si, detector.orifice), 2, glyphs) + " mm:");
      page.table(terminal_table(catch_table(detector, site.display, glyphs)));
    }
  }
  tell_end({result.version, result.defaults, result.warnings, line_test_cautions()}, site.display, glyphs,
           facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
