// What is told of line tests and leak detectors, by snapshot; the numbers are held in tests/studies/line_test.
// SOURCE: common practice, no source
#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "report/snapshot.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

/// A warm line with a leak, tested by pressure: everything there is to tell.
studies::LineTestOptions all_asked() {
  studies::LineTestOptions options;
  options.product = "regular";
  options.warmer = studies::Between{10.0, 10.0};
  options.time_constant = to_si(1.5, "h");
  options.compliance = to_si(0.02, "gal/psi");
  options.leak = to_si(0.1, "gph");
  options.exponent = 0.5;
  options.wait = to_si(6, "h");
  options.drop = to_si(2, "psi");
  options.quiet = {to_si(5, "h")};
  options.stopped = to_si(8, "h");
  return options;
}

struct Told {
  explicit Told(const studies::LineTestOptions& options) : result(studies::study_line_test(site, options)) {
    facts.findings = checks::check_line_test(site, result, site::Date{2026, 11, 25, {}});
  }
  site::Site site = test::station(test::site_text("hollin-gap"));
  studies::LineTestResult result;
  LineTestFacts facts;
};

std::string summary(const Told& told, const terminal::Style& style) {
  return line_test_summary(told.result, told.site, style, told.facts);
}

TEST(LineTestWriters, SummaryIsAsKept) {
  EXPECT_TRUE(matches_snapshot(summary(Told(all_asked()), {80, false, true, false}), "line_test_80.txt"));
}

TEST(LineTestWriters, SummaryInAsciiSaysWhatToEnter) {
  EXPECT_TRUE(
      matches_snapshot(summary(Told({}), {100, false, false, true}), "line_test_100_undetermined_verbose_ascii.txt"));
}

TEST(LineTestWriters, SummaryInSiUnitsIsAsKept) {
  Told told(all_asked());
  told.site.display = site::Display::si;
  EXPECT_TRUE(matches_snapshot(summary(told, {120, false, true, false}), "line_test_120_si.txt"));
}

TEST(LineTestWriters, SectionIsAsKept) {
  const Told told(all_asked());
  EXPECT_TRUE(matches_snapshot(line_test_section(told.result, told.site), "line_test_section.html"));
}

TEST(LineTestWriters, DocumentIsAsKept) {
  const Told told(all_asked());
  Json document = line_test_document(told.result, told.facts);
  for (Json& line : document["result"]["lines"]) {  // ends and number of the curves, not their every point
    for (Json* test : {&line["volume_test"], &line["pressure_test"]}) {
      Json& points = (*test)["points"];
      points = {{"count", points.size()}, {"first", points.front()}, {"last", points.back()}};
    }
  }
  EXPECT_TRUE(matches_snapshot(to_text(document), "line_test.json"));
}

TEST(LineTestWriters, APageSaysFirstThatItIsNoTest) {
  const Told told(all_asked());
  const std::string page = line_test_report(told.result, told.site, told.facts);
  const std::size_t caution = page.find(line_test_cautions().front());
  ASSERT_NE(caution, std::string::npos);
  EXPECT_LT(caution, page.find("Line of regular"));
}

TEST(LineTestWriters, AStationWithoutALineHasNoSection) {
  Told told({});
  told.result.lines.clear();
  EXPECT_EQ(line_test_section(told.result, told.site), "");
}

}  // namespace
}  // namespace forecourse::report
