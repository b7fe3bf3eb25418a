#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/line_test/line_test_view.h"
#include "forecourse/report/study_page.h"

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
  return study_page("Line tests and leak detectors", "line test", line_test_cautions().front(),
                    line_test_section(result, site) + findings_html(facts.findings, site.display),
                    {result.version, result.defaults, result.warnings, line_test_cautions()}, site, facts);
}

}  // namespace forecourse::report
