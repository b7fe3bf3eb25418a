// What the three writers of an incident print, by snapshot; what stands first and what is never said.
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

#include "report/incident/incident_sample.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

std::string summary(const studies::IncidentResult& result, std::size_t width = 80, bool utf8 = true) {
  return incident_summary(result, sample_incident_site(), {width, false, utf8, false}, sample_incident_facts());
}

std::string page(const studies::IncidentResult& result) {
  return incident_report(result, sample_incident_site(), sample_incident_facts());
}

std::string body(const std::string& page) { return page.substr(page.find("<main>")); }

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
  return text;
}

// ---- terminal ---------------------------------------------------------------------------------------------

TEST(IncidentTerminal, PrintsAStrikeIn80Columns) {
  EXPECT_TRUE(matches_snapshot(summary(sample_strike()), "incident_80.txt"));
}

TEST(IncidentTerminal, PrintsWhatEachKindTellsInAscii) {
  EXPECT_TRUE(matches_snapshot(summary(sample_of_all_kinds(), 100, false), "incident_kinds_100_ascii.txt"));
}

TEST(IncidentTerminal, PrintsInSi) {
  site::Site site = sample_incident_site();
  site.display = site::Display::si;
  EXPECT_TRUE(
      matches_snapshot(incident_summary(sample_strike(), site, {120, false, true, false}, {}), "incident_120_si.txt"));
}

TEST(IncidentTerminal, NoLinePassesTheWidthAndNoNameSteers) {
  studies::IncidentResult r = sample_strike();
  const std::string hostile = std::string(200, 'x') + "\033]0;owned\a";
  r.at = r.barriers[0].owner = r.barriers[0].reasons[0] = hostile;
  r.runs[0].name = r.runs[0].timeline[1].words = r.open_ends[0].product = r.inputs[0].what = hostile;
  for (const std::size_t width : {60U, 80U, 140U}) {
    const std::string text = summary(r, width);
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) EXPECT_LE(terminal::columns(line), width);
    EXPECT_EQ(text.find('\033'), std::string::npos);
  }
}

// ---- what stands first, what is never said ----------------------------------------------------------------

/// Where the first digit stands after the words that stand above every number.
void expect_first_before_numbers(const std::string& text) {
  const std::size_t first = text.find(incident_first);
  ASSERT_NE(first, std::string::npos);
  EXPECT_EQ(text.substr(0, first).find_first_of("0123456789"), std::string::npos);
}

TEST(IncidentWriters, WhatToDoStandsAboveEveryNumber) {
  for (const studies::IncidentResult& result : {sample_strike(), sample_of_all_kinds()}) {
    expect_first_before_numbers(summary(result));
    EXPECT_EQ(incident_document(result)["cautions"][0], incident_first);
    const std::string section = incident_section(result, sample_incident_site());
    EXPECT_LT(section.find(incident_first), section.find("gal"));
    const std::string whole = body(page(result));
    EXPECT_LT(whole.find(incident_first), whole.find("gal"));
  }
}

TEST(IncidentWriters, WhatIsNotDeterminedStillBeginsWithIt) {
  studies::IncidentResult r;
  r.version = "1.2.3";
  r.problem = "no pump feeds it";
  expect_first_before_numbers(summary(r));
  EXPECT_NE(summary(r).find("Not determined: no pump feeds it."), std::string::npos);
  EXPECT_NE(page(r).find("Not determined: no pump feeds it."), std::string::npos);
}

TEST(IncidentWriters, NothingIsCalledSafe) {
  for (const studies::IncidentResult& result : {sample_strike(), sample_of_all_kinds()}) {
    for (std::string text : {summary(result), body(page(result)), to_text(incident_document(result))}) {
      text = lower(text);
      for (std::size_t at = text.find("safe"); at != std::string::npos; at = text.find("safe", at + 1)) {
        const bool of_a_circuit = at >= 5 && (text.substr(at - 5, 5) == "fail-" || text.substr(at - 5, 5) == "fail_");
        EXPECT_TRUE(of_a_circuit) << text.substr(at > 40 ? at - 40 : 0, 80);
      }
    }
  }
}

TEST(IncidentWriters, EndsWithWhatIsLeftOutAndWhoDecides) {
  for (const std::string& text : {summary(sample_strike(), 140), page(sample_strike())}) {
    for (const char* said : {"wind", "no test", "No distance", "local code"})
      EXPECT_NE(text.find(said), std::string::npos) << said;
  }
}

// ---- JSON -------------------------------------------------------------------------------------------------

TEST(IncidentJson, IsOneDocument) {
  EXPECT_TRUE(matches_snapshot(to_text(incident_document(sample_strike(), sample_incident_facts())), "incident.json"));
}

TEST(IncidentJson, TellsWhatEachKindTells) {
  const Json result = incident_document(sample_of_all_kinds())["result"];
  EXPECT_EQ(result["crack"]["bound_to_be_seen"], false);
  EXPECT_DOUBLE_EQ(result["fire"]["link_parts_at_s"].get<double>(), 6.5);
  EXPECT_TRUE(result["drive_off"]["limits"][1]["pull_n"].is_null());
  EXPECT_TRUE(result["overfill"]["full_at_s"].is_null());
  EXPECT_EQ(result["runs"][0]["hash"], "0123456789abcdef");
}

TEST(IncidentJson, ThereAreNumbersOrNullWhereNumbersAre) {
  studies::IncidentResult r = sample_strike();
  r.runs[0].escaped = r.runs[0].timeline[0].flow = std::numeric_limits<double>::quiet_NaN();
  const std::string text = to_text(incident_document(r));
  EXPECT_EQ(lower(text).find(": nan"), std::string::npos);
  EXPECT_TRUE(Json::accept(text));
}

// ---- page -------------------------------------------------------------------------------------------------

TEST(IncidentHtml, BodyIsAsItWasLookedAt) {
  EXPECT_TRUE(matches_snapshot(body(page(sample_strike())), "incident_body.html"));
}

TEST(IncidentHtml, EscapesWhatComesFromAFile) {
  studies::IncidentResult r = sample_strike();
  r.at = r.barriers[0].owner = r.runs[1].name = r.runs[1].timeline[1].words = r.inputs[0].what =
      r.open_ends[0].product = r.cause_effect.columns[0] = r.warnings[0].message = r.barrier_table[1].name =
          "<script>x</script>";
  IncidentFacts facts = sample_incident_facts();
  facts.command = "<script>y</script>";
  EXPECT_EQ(incident_report(r, sample_incident_site(), facts).find("<script>"), std::string::npos);
}

TEST(IncidentHtml, EachSectionOfAPageHasItsOwnIds) {
  const std::string first = incident_section(sample_strike(), sample_incident_site(), 1);
  const std::string second = incident_section(sample_strike(), sample_incident_site(), 2);
  EXPECT_NE(first.find("id=\"incident-1-scene"), std::string::npos);
  EXPECT_EQ(second.find("incident-1-"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report
