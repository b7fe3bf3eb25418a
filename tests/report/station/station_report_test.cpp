#include "forecourse/report/station/station_report.h"

#include <gtest/gtest.h>

#include <set>

#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "report/flow_sample.h"
#include "report/incident/incident_sample.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

StationFacts facts() { return {"25 Nov 2026", "forecourse study sites/site-s.toml", {{"site-s.toml", sample_text()}}}; }

site::Site site_with_incident() {
  site::Site site = sample_site();
  site.incidents.emplace_back();
  site.incidents.back().kind.text = "struck";
  site.incidents.back().at.text = "D1";
  return site;
}

StationStudies studies_with_incident() {
  StationStudies out;
  out.flow = sample_result();
  out.incidents.push_back(sample_incident(studies::IncidentKind::struck));
  return out;
}

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }
std::string anchor(const std::string& id) { return "<section id=\"" + id + "\">"; }

std::string report_of(const ReportChoice& choice) {
  return station_report(studies_with_incident(), site_with_incident(), facts(), choice);
}

TEST(StationReport, TellsOfAllThatHasSomethingToTell) {
  const std::string html = report_of({});
  for (const char* id : {"asked", "course", "flow", "incident-1", "again", "site-file"}) {
    EXPECT_TRUE(has(html, anchor(id))) << id;
  }
  EXPECT_FALSE(has(html, anchor("containment")));  // the sample has no sump
}

TEST(StationReport, LeavesOutWhatIsNotChosen) {
  const std::string html = report_of({{"flow"}, {}});
  EXPECT_TRUE(has(html, anchor("flow")));
  for (const char* id : {"asked", "course", "incident-1", "again"}) EXPECT_FALSE(has(html, anchor(id))) << id;
}

TEST(StationReport, HasHosesAndCourseEachOnce) {
  const std::string both = report_of({{"flow", "course"}, {}});
  const std::string course = report_of({{"course"}, {}});
  EXPECT_TRUE(has(both, "id=\"piping-1-hoses-title\""));
  EXPECT_FALSE(has(course, "id=\"piping-1-hoses-title\""));
  EXPECT_TRUE(has(course, "Course of the fuel, regular"));
}

TEST(StationReport, TellsOfLineTestsWithTheirFindingsDefaultsAndCautions) {
  const site::Site site = test::station(test::site_text("site-s"));
  StationStudies studies = study_without_flow(site, {2026, 11, 25, {}});
  ASSERT_TRUE(studies.line_test);
  EXPECT_FALSE(studies.line_test_findings.empty());
  const std::string html = station_report(studies, site, facts(), {{"line-test", "findings", "defaults"}, {}});
  EXPECT_TRUE(has(html, anchor("line-test")));
  EXPECT_TRUE(has(html, "Line of regular"));
  EXPECT_TRUE(has(html, "a pressurized line is tested for tightness each year"));
  EXPECT_TRUE(has(html, line_test_cautions()[1]));
  EXPECT_FALSE(has(station_report(studies, site, facts(), {{"findings"}, {}}), line_test_cautions()[1]));
  studies.containment.reset();
  studies.tank.reset();
  studies.vapor.reset();
  EXPECT_TRUE(has(station_report(studies, site, facts(), {{"defaults"}, {}}), "Values that were not entered"));
}

TEST(StationReport, TellsADefaultOfTwoStudiesOnce) {
  const DefaultUsed used{"density of regular", 740.0, "kg/m3", DefaultStatus::computed, "somewhere", "regular", true};
  StationStudies studies;
  studies.flow = sample_result();
  studies.flow->defaults = {used};
  studies.line_test.emplace().defaults = {used};
  EXPECT_TRUE(has(station_report(studies, sample_site(), facts(), {{"defaults"}, {}}), "rests on 1 computed"));
}

TEST(StationReport, SaysWhyAChosenSectionIsEmpty) {
  const std::string html = report_of({{"containment"}, {}});
  EXPECT_TRUE(has(html, "<h2>Containment</h2>\n<p>Left out: no sump is entered.</p>"));
}

TEST(StationReport, NoChoiceLeavesOutTheCautions) {
  for (const StationSection& section : station_sections(site_with_incident())) {
    const std::string html = report_of({{section.id}, {}});
    EXPECT_TRUE(has(html, "<p class=\"caution\" role=\"note\">")) << section.id;
    EXPECT_TRUE(has(html, "It advises")) << section.id;
    EXPECT_TRUE(has(html, "The local code in its local edition and the authority that applies it come first."));
    EXPECT_TRUE(has(html, "So do the listing and the instructions of each piece of equipment.")) << section.id;
    EXPECT_TRUE(has(html, "Decisions that need a license belong to the licensed")) << section.id;
  }
}

TEST(StationReport, SaysWhatToDoFirstAboveEveryNumberOfAnIncident) {
  const std::string html = report_of({{"incident-1"}, {}});
  const std::size_t first = html.find(incident_first);
  ASSERT_NE(first, std::string::npos);
  EXPECT_LT(first, html.find(anchor("incident-1")));
  const std::size_t again = html.find(incident_first, html.find(anchor("incident-1")));
  ASSERT_NE(again, std::string::npos);
  const std::size_t heading = html.find("<h2>", html.find(anchor("incident-1")));
  EXPECT_EQ(html.find("<p", heading), again - std::string("<p class=\"first\">If it has happened: ").size());
  EXPECT_FALSE(has(report_of({{"flow"}, {}}), incident_first));
}

TEST(StationReport, PrintsTitleCellsEscapedAndNeverAsAGap) {
  const std::string html = report_of({{"flow"}, {{"client", "Gap & <Sons>"}}});
  EXPECT_TRUE(has(html, "<dt>Client</dt><dd>Gap &amp; &lt;Sons&gt;</dd>"));
  EXPECT_TRUE(has(html, "<dt>Checked by</dt><dd>not checked</dd>"));
  EXPECT_TRUE(has(html, "<dt>Prepared by</dt><dd>not given</dd>"));
  EXPECT_TRUE(has(html, "<dt>Date</dt><dd>25 Nov 2026</dd>"));
  EXPECT_TRUE(has(html, "<dt>Station</dt><dd>Site S</dd>"));
}

TEST(StationReport, TakesStationAndDateFromTheirCells) {
  const std::string html = report_of({{"flow"}, {{"station", "Gate 4"}, {"date", "1 Dec 2026"}}});
  EXPECT_TRUE(has(html, "<h1>Gate 4</h1>"));
  EXPECT_TRUE(has(html, "<dt>Date</dt><dd>1 Dec 2026</dd>"));
  EXPECT_FALSE(has(html, "25 Nov 2026"));
}

TEST(StationReport, TellsOfIncidentsWithoutAHose) {
  StationStudies studies = studies_with_incident();
  studies.flow.reset();
  const std::string html = station_report(studies, site_with_incident(), facts());
  EXPECT_TRUE(has(html, anchor("incident-1")));
  EXPECT_FALSE(has(html, anchor("flow")));
  EXPECT_FALSE(has(html, anchor("defaults")));
}

TEST(StationSections, AreCheckedWithTheNearestName) {
  const std::vector<Diagnostic> wrong = check_sections({"flow", "laders", "incident-2"}, site_with_incident());
  ASSERT_EQ(wrong.size(), 2U);
  EXPECT_EQ(wrong[0].message, "the report has no section 'laders'");
  EXPECT_EQ(wrong[0].hint.rfind("did you mean 'ladders'?", 0), 0U);
  EXPECT_EQ(wrong[1].hint.rfind("did you mean 'incident-1'?", 0), 0U);
}

TEST(StationSections, EachHasAnIdANameAndAReason) {
  std::set<std::string> ids;
  for (const StationSection& section : station_sections(site_with_incident())) {
    EXPECT_TRUE(ids.insert(section.id).second) << section.id;
    EXPECT_FALSE(section.name.empty());
    EXPECT_FALSE(section.why_empty.empty());
  }
}

}  // namespace
}  // namespace forecourse::report
