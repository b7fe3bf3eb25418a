#include "forecourse/report/findings.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/line_test/line_test_view.h"

namespace forecourse::report {
namespace {

constexpr Glyphs glyphs = Glyphs::unicode;

std::string of_detector(const studies::DetectorTold& detector, site::Display display) {
  std::string out = html::list(detector_answer(detector, display, glyphs));
  out += html::table(page_table(detection_table(detector, display, glyphs), "Leak detector of pump " + detector.pump,
                                "Quiet time: until temperature looks like less than half the rate, and the test."));
  return out + html::table(page_table(catch_table(detector, display, glyphs),
                                      "Expected catch of a simulated leak, pump " + detector.pump,
                                      "A leak of 3 gal/h at 10 psi, carried over to the site's pressures."));
}

std::string of_line(const studies::LineTest& line, site::Display display, std::size_t number) {
  std::string out = html::heading(3, "Line of " + line.system) + html::list(line_test_answer(line, display, glyphs));
  const std::string id = "line-test-" + std::to_string(number);
  if (!line.volume_test.points.empty()) {
    out += html::chart_figure(rate_chart(line, display, id + "-rate"), "Above the dashed line a test calls a leak.");
  }
  if (!line.pressure_test.points.empty()) {
    const svg::CurveChart chart = shut_pressure_chart(line, display, id + "-pressure");
    if (!chart.curves.empty()) out += html::chart_figure(chart, "The line shut at both ends.");
  }
  for (const studies::DetectorTold& detector : line.detectors) out += of_detector(detector, display);
  return out;
}

}  // namespace

std::string line_test_section(const studies::LineTestResult& result, const site::Site& site) {
  if (result.lines.empty()) return {};
  std::string out = html::heading(2, "Line tests and leak detectors");
  out += html::table(page_table(lines_table(result, site.display, glyphs), "Lines",
                                "Fuel and ground as entered; nothing is measured here."));
  out += html::paragraph(quiet_sentence(result, glyphs));
  for (std::size_t i = 0; i < result.lines.size(); ++i) out += of_line(result.lines[i], site.display, i + 1);
  return out;
}

std::string line_test_report(const studies::LineTestResult& result, const site::Site& site,
                             const LineTestFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = "Line tests and leak detectors";
  page.cells = {{"Station", site.name.text}, {"Study", "line test"}};
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + result.version);
  page.caution = line_test_cautions().front();
  page.body = line_test_section(result, site) + findings_html(facts.findings, site.display);
  std::vector<std::string> defaults;
  for (const DefaultUsed& used : result.defaults) {
    defaults.push_back(used.system + ": " + used.what + " " + default_value(used, site.display) + ", " +
                       word(used.status) + " (" + used.source + ")");
  }
  if (!defaults.empty()) page.body += html::heading(2, "Values that were not entered") + html::list(defaults);
  std::vector<std::string> warnings;
  for (const Diagnostic& warning : result.warnings) warnings.push_back(warning.message);
  if (!warnings.empty()) page.body += html::heading(2, "Warnings") + html::list(warnings);
  page.body += html::heading(2, "Cautions") + html::list(line_test_cautions());
  if (!facts.command.empty()) {
    page.body += html::heading(2, "Run it again") + html::paragraph(facts.command, "command");
  }
  return html::page(page);
}

}  // namespace forecourse::report
