#include "forecourse/report/flow/flow_html.h"

#include <gtest/gtest.h>

#include <set>

#include "forecourse/report/html/style.h"
#include "report/flow_sample.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

FlowReportFacts facts() {
  return {"25 Nov 2026", "forecourse flow sites/site-s.toml --out report", {{"sites/site-s.toml", sample_text()}}};
}

/// The report without its style sheet, which would hide what a snapshot shows.
std::string body(const std::string& report) {
  const std::size_t begin = report.find("<body>");
  return report.substr(begin);
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++found;
  return found;
}

/// Tag names that are opened and not closed again in order; void elements do not count.
std::string first_unbalanced(const std::string& html) {
  const std::set<std::string> alone{"!doctype", "meta", "line", "rect", "circle", "polygon", "polyline", "path", "wbr"};
  std::vector<std::string> open;
  for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
    const bool closes = html[at + 1] == '/';
    const std::size_t begin = at + (closes ? 2 : 1);
    const std::string name = html.substr(begin, html.find_first_of(" >/\n", begin) - begin);
    if (alone.count(name) != 0) continue;
    if (!closes) {
      open.push_back(name);
    } else if (open.empty() || open.back() != name) {
      return name + " at " + std::to_string(at);
    } else {
      open.pop_back();
    }
  }
  return open.empty() ? "" : open.back();
}

TEST(FlowHtml, MatchesItsSnapshot) {
  EXPECT_TRUE(matches_snapshot(body(flow_report(sample_result(), sample_site(), facts())), "flow_body.html"));
}

TEST(FlowHtml, ShowsSi) {
  const std::string html = flow_report(sample_result(), sample_site(site::Display::si), facts());
  EXPECT_NE(html.find("kPa gauge"), std::string::npos);
  EXPECT_NE(html.find("L/min"), std::string::npos);
  EXPECT_EQ(html.find(">gpm<"), std::string::npos);
  EXPECT_EQ(html.find("psi"), std::string::npos);
}

TEST(FlowHtml, CautionStandsAboveEveryNumber) {
  const std::string html = flow_report(sample_result(), sample_site(), facts());
  const std::size_t caution = html.find("a computed flow is not a test");
  ASSERT_NE(caution, std::string::npos);
  for (const char* number : {"12.28", "9.58", "23.3"}) EXPECT_LT(caution, html.find(number));
}

TEST(FlowHtml, WhatIsNotDeterminedStandsBeforeTheNumbers) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  const std::string html = flow_report(result, sample_site(), facts());
  EXPECT_LT(html.find("diesel is not determined"), html.find("12.28"));
  EXPECT_EQ(html.find("nan"), std::string::npos);
  EXPECT_EQ(first_unbalanced(html), "");
}

TEST(FlowHtml, TagsAreBalancedAndHeadingsInOrder) {
  const std::string html = flow_report(sample_result(), sample_site(), facts());
  EXPECT_EQ(first_unbalanced(html), "");
  EXPECT_EQ(count(html, "<h1>"), 1U);
  EXPECT_LT(html.find("<h1>"), html.find("<h2>"));
  EXPECT_LT(html.find("<h2>"), html.find("<h3>"));
  EXPECT_EQ(count(html, "<table"), count(html, "<caption>"));
}

TEST(FlowHtml, IdsAreUnique) {
  studies::FlowResult result = sample_result();
  result.systems.push_back(result.systems[0]);
  result.systems[1].id = "premium";
  for (studies::FlowState& state : result.states) {
    state.systems.push_back(state.systems[0]);
    state.systems[1].system = "premium";
  }
  const std::string html = flow_report(result, sample_site(), facts());
  std::set<std::string> ids;
  for (std::size_t at = html.find(" id=\""); at != std::string::npos; at = html.find(" id=\"", at + 1)) {
    const std::string id = html.substr(at + 5, html.find('"', at + 5) - at - 5);
    EXPECT_TRUE(ids.insert(id).second) << id;
  }
  EXPECT_GT(ids.size(), 10U);
}

TEST(FlowHtml, HostileNamesStayText) {
  const std::string hostile = "</title></style><script>alert(1)</script>\"'><img src=x onerror=y>\xFF\u202E&amp;";
  studies::FlowResult result = sample_result();
  result.version = hostile;
  result.systems[0].product = hostile;
  result.hoses[0].id = result.hoses[0].dispenser = hostile;
  result.states[0].open_set.name = result.options.open_sets[0].name = result.options.open_sets[0].hoses[0] = hostile;
  studies::SystemFlow& system = result.states[0].systems[0];
  system.hoses[4].id = system.pumps[0].id = system.lines[0].id = system.places[0].id = hostile;
  system.hoses[4].rule_clause = system.hoses[4].budget[1].owner = system.hoses[4].grade_line[1].place = hostile;
  result.defaults[0].what = result.defaults[0].source = result.defaults[0].unit = hostile;
  result.warnings[0].message = result.warnings[0].hint = hostile;
  const std::string html =
      flow_report(result, sample_site(site::Display::us, hostile), {hostile, hostile, {{hostile, hostile}}});
  for (const char* markup : {"<script", "<img", "</title></style>"}) EXPECT_EQ(count(html, markup), 0U) << markup;
  EXPECT_EQ(count(html, "</style>"), 1U);
  EXPECT_EQ(html.find('\xFF'), std::string::npos);
  EXPECT_EQ(first_unbalanced(html), "");
}

TEST(FlowHtml, AnEmptyResultIsAReport) {
  const std::string html = flow_report({}, {});
  EXPECT_NE(html.find("Station without a name"), std::string::npos);
  EXPECT_EQ(html.find("Date"), std::string::npos);
  EXPECT_EQ(first_unbalanced(html), "");
}

}  // namespace
}  // namespace forecourse::report
