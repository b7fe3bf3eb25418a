// Wants: the documents are those of the commands; what cannot be answered says why; drawings are told apart.
#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "forecourse/cli/run.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/records/station_records.h"
#include "server/scratch.h"
#include "support/stations.h"

namespace forecourse::server {
namespace {

using report::Json;
using test::site_text;

std::string path_of(const std::string& name) { return std::string(SITES_DIR) + "/" + name + ".toml"; }

/// What a command prints with --json.
Json printed(const std::vector<std::string>& arguments) {
  testing::internal::CaptureStdout();
  static_cast<void>(cli::run(arguments));
  return Json::parse(testing::internal::GetCapturedStdout());
}

Json document_of(const std::string& name, const Json& want) {
  Json got = answer(site_text(name), path_of(name), want, {});
  EXPECT_TRUE(got.contains("document")) << got.dump();
  return got["document"];
}

/// How a command was called is no part of the answer to a want.
Json without_call(Json document) {
  document["options"].erase("set");
  return document;
}

void expect_same(const std::vector<std::string>& arguments, const std::string& name, const Json& want) {
  const Json command = without_call(printed(arguments));
  const Json answer = without_call(document_of(name, want));
  EXPECT_EQ(Json::diff(command, answer), Json::array()) << want.dump();
}

/// How many findings of a study there are.
std::size_t count_of(const Json& findings, const std::string& study) {
  return static_cast<std::size_t>(
      std::count_if(findings.begin(), findings.end(), [&](const Json& one) { return one["study"] == study; }));
}

TEST(Wants, GiveTheDocumentsOfTheCommands) {
  expect_same({"flow", path_of("site-s"), "--json"}, "site-s", {{"study", "flow"}});
  expect_same({"flow", path_of("site-s"), "--json", "--open", "D1.a,D3.a", "--keep", "9 gpm", "--units", "si"},
              "site-s", {{"study", "flow"}, {"open", {"D1.a", "D3.a"}}, {"keep", "9 gpm"}, {"units", "si"}});
  expect_same({"containment", path_of("hollin-gap"), "--json", "--inflow", "3 gph"}, "hollin-gap",
              {{"study", "containment"}, {"inflows", {"3 gph"}}});
  expect_same(
      {"tank", path_of("ludd-bank"), "--json", "--tank", "T1", "--depth", "50 in", "--at", "gauge", "--draw", "20 gpm"},
      "ludd-bank", {{"study", "tank"}, {"tank", "T1"}, {"depth", "50 in"}, {"at", "gauge"}, {"draws", {"20 gpm"}}});
  expect_same({"flotation", path_of("hollin-gap"), "--json", "--water-level", "2 ft"}, "hollin-gap",
              {{"study", "flotation"}, {"water_level", "2 ft"}});
  expect_same({"vapor", path_of("hollin-gap"), "--json", "--on", "2026-11-25"}, "hollin-gap",
              {{"study", "vapor"}, {"on", "2026-11-25"}});
  expect_same({"line-test", path_of("hollin-gap"), "--json", "--product", "diesel", "--warmer", "-5 degF", "--warmer",
               "18 degF", "--quiet", "5 h", "--on", "2026-11-25", "--units", "si"},
              "hollin-gap",
              {{"study", "line-test"},
               {"product", "diesel"},
               {"warmer", {"-5 degF", "18 degF"}},
               {"quiet", "5 h"},
               {"on", "2026-11-25"},
               {"units", "si"}});
  expect_same({"delivery", path_of("marle-cross"), "--json", "--without", "vapor-return", "--stop-at", "3 min"},
              "marle-cross", {{"study", "delivery"}, {"without", {"vapor-return"}}, {"stop_at", "3 min"}});
  expect_same({"compare", path_of("site-s"), "--json", "--set", "line.trunk.bore=3 in"}, "site-s",
              {{"study", "compare"}, {"sets", {"line.trunk.bore=3 in"}}});
}

TEST(Wants, GiveTheDocumentOfTheIncidentCommand) {
  expect_same({"incident", path_of("hollin-gap"), "struck", "--json", "--at", "D4", "--on", "2026-11-25"}, "hollin-gap",
              {{"study", "incident"}, {"kind", "struck"}, {"at", "D4"}, {"on", "2026-11-25"}});
}

TEST(Wants, DrawTheTestsOfALine) {
  const Json asked = {{"product", "regular"},
                      {"warmer", "18 degF"},
                      {"time_constant", "1.5 h"},
                      {"per_degree", "50 psi/degF"},
                      {"leak", "0.1 gph"}};
  for (const char* drawing : {"volume-test", "shut-pressure"}) {
    Json want = asked;
    want["drawing"] = drawing;
    const Json got = answer(site_text("hollin-gap"), "a.toml", want, {});
    ASSERT_TRUE(got.contains("svg")) << got.dump();
    EXPECT_NE(got["svg"].get<std::string>().find("alone"), std::string::npos) << drawing;
  }
}

TEST(Wants, OfMetersAreAnsweredFromTheRecords) {
  const std::string text = site_text("hollin-gap");
  StationRecords records(path_of("hollin-gap"), std::string(SITES_DIR) + "/records/hollin-gap");
  const RecordsOf of = records.of(path_of("hollin-gap"));
  const Json command = without_call(
      printed({"meter", path_of("hollin-gap"), "--records", std::string(SITES_DIR) + "/records/hollin-gap", "--json"}));
  const Json got = answer(text, path_of("hollin-gap"), {{"study", "meter"}}, {}, of);
  ASSERT_TRUE(got.contains("document")) << got.dump();
  EXPECT_EQ(Json::diff(command["result"], got["document"]["result"]), Json::array());
  EXPECT_EQ(command["findings"].size(), got["document"]["findings"].size());
  const Json drawn = answer(text, path_of("hollin-gap"), {{"drawing", "meter-errors"}}, {}, of);
  EXPECT_NE(drawn.value("svg", "").find("D1.regular-a"), std::string::npos) << drawn.dump();
  const Json findings = answer(text, path_of("hollin-gap"), {{"study", "findings"}}, {}, of);
  EXPECT_EQ(count_of(findings["document"]["findings"], "meter"), command["findings"].size());
  const Json wrong = answer(text, path_of("hollin-gap"), {{"study", "meter"}, {"hose", "D9.z"}}, {}, of);
  EXPECT_TRUE(wrong.contains("error")) << wrong.dump();
  const Json none = answer(text, path_of("hollin-gap"), {{"study", "meter"}}, {});
  EXPECT_TRUE(none.contains("error") && none["records"].is_null()) << none.dump();
}

/// The calendar that the workbench tells, without what it adds to the duties.
Json calendar_told(const std::string& text, const std::string& path, const RecordsOf& records = {}) {
  Json document = answer(text, path, {{"study", "calendar"}, {"on", "2026-11-30"}}, {}, records)["document"];
  for (Json& duty : document["result"]["duties"]) {
    duty.erase("path");
    duty.erase("proof");
  }
  return document;
}

/// \param folder of records; empty: none
Json calendar_printed(const std::string& path, const std::string& folder = {}) {
  std::vector<std::string> arguments{"calendar", path, "--on", "2026-11-30", "--json"};
  if (!folder.empty()) arguments.insert(arguments.end(), {"--records", folder});
  return printed(arguments);
}

TEST(Wants, OfTheCalendarAreThatOfTheCommandAtEveryStation) {
  std::size_t warnings = 0;
  for (const char* name : {"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge", "site-s", "thornby", "truck-lane"}) {
    const Json command = calendar_printed(path_of(name));
    EXPECT_EQ(Json::diff(command, calendar_told(site_text(name), path_of(name))), Json::array()) << name;
    warnings += command["warnings"].size();
  }
  EXPECT_GT(warnings, 0U);  // Marle Cross has one of its tank study
  const std::string folder = std::string(SITES_DIR) + "/records/hollin-gap";
  StationRecords records(path_of("hollin-gap"), folder);
  EXPECT_EQ(
      Json::diff(calendar_printed(path_of("hollin-gap"), folder),
                 calendar_told(site_text("hollin-gap"), path_of("hollin-gap"), records.of(path_of("hollin-gap")))),
      Json::array());
}

/// Of the site file, of a part that is not there, and of a day that proves nothing.
TEST(Wants, OfTheCalendarHoldTheWarningsOfTheCommand) {
  const std::string folder = scratch_folder("wants-calendar");
  std::string text = site_text("hollin-gap");
  const std::string outlet = "outlet_elevation = \"3 ft\"";
  text.replace(text.find(outlet), outlet.size(), "outlet_elevation = \"-30 ft\"");
  const std::string site = folder + "/site.toml";
  write_outside(site, text);
  write_outside(folder + "/tests.csv",
                "day,time,kind,part,passed\n2026-10-14,,leak-detector,P11,yes\n2026-10-20,,leak-detector,P1,yes\n"
                "2026-10-20,09:00,leak-detector,P1,no\n");
  StationRecords records(site, folder);
  const Json command = calendar_printed(site, folder);
  const Json told = calendar_told(text, site, records.of(site));
  EXPECT_EQ(Json::diff(command, told), Json::array());
  EXPECT_EQ(told["warnings"].size(), 3U) << told["warnings"].dump(1);
  write_outside(folder + "/tests.csv", "day,kind,part,passed\n2026-12-14,leak-detector,P1,yes\n");
  const Json to_come = calendar_told(text, site, records.of(site))["warnings"];
  ASSERT_EQ(to_come.size(), 2U) << to_come.dump(1);  // that of the file first, and the day once
  EXPECT_EQ(to_come[1]["message"], "a test is dated 2026-12-14, which is after 2026-11-30");
}

TEST(Wants, GiveTheScheduleOfTheCommand) {
  expect_same({"kit", path_of("hollin-gap"), "--json"}, "hollin-gap", {{"study", "kit"}});
  expect_same({"kit", path_of("site-s"), "--json", "--units", "si"}, "site-s", {{"study", "kit"}, {"units", "si"}});
}

TEST(Wants, GiveTheLessonOfTheCommand) {
  expect_same({"lesson", path_of("site-s"), "--json", "--on", "2026-11-30"}, "site-s",
              {{"study", "lesson"}, {"on", "2026-11-30"}});
  expect_same({"lesson", path_of("site-s"), "--json", "--questions", "3", "--seed", "2"}, "site-s",
              {{"study", "lesson"}, {"questions", 3U}, {"seed", 2U}});
  const Json own = document_of("site-s", {{"study", "lesson"}, {"lesson", "format = 1\n[[page]]\npage = \"sump\"\n"}});
  EXPECT_EQ(own["result"]["pages"].size(), 1U);
  const Json wrong = answer(site_text("site-s"), "a.toml",
                            {{"study", "lesson"}, {"lesson", "format = 1\n[[page]]\npage = \"sumq\"\n"}}, {});
  EXPECT_EQ(wrong["error"], "there is no page 'sumq'");
  EXPECT_EQ(wrong["hint"], "did you mean 'sump'?");
}

TEST(Wants, OfTheCalendarTellWhichPartADutyIsOf) {
  const Json got = answer(site_text("hollin-gap"), "a.toml", {{"study", "calendar"}, {"on", "2026-11-30"}}, {});
  EXPECT_TRUE(got["records"].is_null());
  std::set<std::string> of_no_part;
  for (const Json& duty : got["document"]["result"]["duties"]) {
    if (duty["path"].is_null()) of_no_part.insert(duty["rule"]);
    if (duty["rule"] == "shear-valve-yearly") {
      EXPECT_NE(duty["path"].get<std::string>().find(".shear_valve"), std::string::npos) << duty["path"];
      EXPECT_EQ(duty["proof"]["part"], duty["subject"]);
    }
  }
  EXPECT_EQ(of_no_part, (std::set<std::string>{"walk-through-30-days", "walk-through-yearly"}));
}

TEST(Wants, OfOneAskingAreAnsweredAsEachAlone) {
  const std::string text = site_text("site-s");
  Answers together(text, "a.toml");
  for (const Json& want :
       {Json{{"study", "findings"}}, Json{{"study", "kit"}}, Json{{"drawing", "section"}}, Json{{"drawing", "budget"}},
        Json{{"study", "flow"}, {"parts", {"states"}}}, Json{{"drawing", "section"}, {"units", "si"}},
        Json{{"drawing", "section"}, {"open", "each"}}}) {
    EXPECT_EQ(together.answer(want, {}), answer(text, "a.toml", want, {})) << want.dump();
  }
}

TEST(Wants, OfPartsOfAFlowAreThoseOfTheWhole) {
  const Json whole = document_of("site-s", {{"study", "flow"}})["result"];
  const Json part = document_of("site-s", {{"study", "flow"}, {"parts", {"states", "hoses"}}})["result"];
  EXPECT_EQ(part.size(), 2U);
  EXPECT_EQ(part["states"], whole["states"]);
}

TEST(Wants, OfMendsAreThoseOfTheCommandAndOfTheFindingAskedFor) {
  const Json printed_one = printed({"checks", path_of("hollin-gap"), "--mend", "--on", "2026-11-30", "--json"});
  const Json command = printed_one["result"]["mends"];
  const Json document = document_of("hollin-gap", {{"study", "mends"}, {"on", "2026-11-30"}});
  EXPECT_EQ(document["cautions"], printed_one["cautions"]);
  const Json all = document["result"]["mends"];
  ASSERT_EQ(all.size(), command.size());
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const char* member : {"rule", "subject", "words", "edits", "effects", "tried", "after"})
      EXPECT_EQ(all[i][member], command[i][member]) << member;
    EXPECT_NE(all[i]["study"].is_null(), all[i]["set"].is_null());
  }
  const Json one =
      document_of("hollin-gap", {{"study", "mends"}, {"rule", "shear-groove-offset"}, {"subject", "D3.diesel"}});
  ASSERT_EQ(one["result"]["mends"].size(), 1U);
  EXPECT_EQ(one["result"]["mends"][0]["subject"], "D3.diesel");
  EXPECT_EQ(one["result"]["mends"][0]["set"], "Fire code for the forecourt");
}

TEST(Wants, OfFindingsHoldThoseOfEveryStudyAndThePathOfTheValue) {
  const Json document = document_of("hollin-gap", {{"study", "findings"}, {"on", "2026-11-30"}});
  EXPECT_EQ(document["cautions"], printed({"checks", path_of("hollin-gap"), "--json"})["cautions"]);
  const Json findings = document["findings"];
  std::size_t told = 0;
  for (const char* study : {"flow", "tank", "flotation", "vapor", "delivery", "line-test"}) {
    if (study != std::string("flow")) {
      const Json alone = document_of("hollin-gap", {{"study", study}})["findings"];
      const bool has_vents = study == std::string("delivery");  // what vents are held against on any day
      const std::size_t of_vents = has_vents ? count_of(findings, "vents") : 0;
      EXPECT_EQ(count_of(findings, study) + of_vents, alone.size()) << study;
      told += of_vents;
    }
    told += count_of(findings, study);
  }
  for (const Json& one : findings) {
    if (one["study"].is_null()) {
      EXPECT_FALSE(one["set"].is_null()) << one["rule"];
      ++told;
    }
  }
  EXPECT_EQ(told, findings.size());
  EXPECT_GT(count_of(findings, "flow"), 0U);
  EXPECT_GT(count_of(findings, "delivery"), 0U);
  EXPECT_GT(count_of(findings, "line-test"), 0U);
  for (const Json& one : findings) EXPECT_TRUE(one.contains("path"));
}

TEST(Wants, ThatCannotBeAnsweredSayWhatToWrite) {
  const std::string text = site_text("site-s");
  for (const Json& want : {Json{},
                           Json{{"study", "flows"}},
                           Json{{"study", 3}},
                           Json{{"drawing", "sektion"}},
                           Json{{"drawing", 4}},
                           Json{{"study", "flow"}, {"opne", "all"}},
                           Json{{"study", "flow"}, {"open", {"D9.z"}}},
                           Json{{"study", "flow"}, {"parts", {"state"}}},
                           Json{{"study", "flow"}, {"keep", "9 ft"}},
                           Json{{"study", "incident"}},
                           Json{{"study", "line-test"}, {"warmer", "18"}},
                           Json{{"study", "line-test"}, {"product", "kerosene"}},
                           Json{{"drawing", "volume-test"}},
                           Json{{"drawing", "shut-pressure"}, {"wait", "2 psi"}},
                           Json{{"study", "incident"}, {"kind", "struk"}},
                           Json{{"study", "incident"}, {"kind", "struck"}, {"runs", -1}},
                           Json{{"study", "compare"}},
                           Json{{"drawing", "section"}, {"width", 1}},
                           Json{{"drawing", "section"}, {"hose", "D9.z"}},
                           Json{{"drawing", "section"}, {"prefix", "a b"}},
                           Json{{"drawing", "plan"}},
                           Json{{"study", "flow"}, {"units", "uk"}}}) {
    const Json got = answer(text, "a.toml", want, {});
    EXPECT_TRUE(got.contains("error") && got.contains("hint")) << want.dump() << got.dump();
  }
}

TEST(Wants, OfAFileWithErrorsAreRefusedWithTheFirst) {
  const Json got = answer("format = 1\n[[tank]]\nid = 3\n", "a.toml", {{"study", "flow"}}, {});
  EXPECT_NE(got["error"].get<std::string>().find("cannot be studied"), std::string::npos) << got.dump();
}

std::string drawn(const std::string& name, const Json& want) {
  const Json got = answer(site_text(name), "a.toml", want, {});
  EXPECT_TRUE(got.contains("svg")) << got.dump();
  return got.value("svg", "");
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(Drawings, TellStopsAndParts) {
  const std::string section = drawn("hollin-gap", {{"drawing", "section"}});
  for (int stop = 1; stop <= 11; ++stop) {
    EXPECT_TRUE(has(section, "<g class=\"cell\" data-stop=\"" + std::to_string(stop) + "\"")) << stop;
  }
  EXPECT_TRUE(has(section, "data-part=\"pump."));
  EXPECT_TRUE(has(drawn("hollin-gap", {{"drawing", "grade-line"}}), "data-stop=\"10\""));
  EXPECT_TRUE(has(drawn("hollin-gap", {{"drawing", "sumps"}}), "data-stop=\"6\" data-part=\"dispenser.D1.sump\""));
  const std::string plan = drawn("hollin-gap", {{"drawing", "plan"}});
  EXPECT_TRUE(has(plan, "data-px-per-m=\""));
  EXPECT_TRUE(has(plan, "data-part=\"dispenser.D1\" data-x=\"30.48\" data-y=\"0\""));  // 100 ft
}

/// Every part that a drawing names is a part of the station.
TEST(Drawings, NamePartsThatTheStationHas) {
  for (const char* name : {"hollin-gap", "marle-cross", "site-s"}) {
    std::set<std::string> paths;
    const Json station = station_json({site_text(name), 1, "a.toml", true, "", ""});
    for (const Json& part : station["parts"]) paths.insert(part["path"].get<std::string>());
    for (const char* drawing : {"section", "grade-line", "plan", "sumps"}) {
      const Json got = answer(site_text(name), "a.toml", {{"drawing", drawing}}, {});
      const std::string svg = got.value("svg", "");
      const std::regex named("data-part=\"([^\"]*)\"");
      for (auto i = std::sregex_iterator(svg.begin(), svg.end(), named); i != std::sregex_iterator(); ++i) {
        EXPECT_TRUE(paths.contains((*i)[1].str())) << name << " " << drawing << " " << (*i)[1];
      }
    }
  }
}

TEST(Drawings, BeginTheirIdsAsAsked) {
  const std::regex ids(" id=\"([^\"]*)\"");
  for (const char* drawing : {"section", "grade-line", "plan", "sumps", "budget", "ladder"}) {
    const std::string svg = drawn("hollin-gap", {{"drawing", drawing}, {"prefix", "left"}});
    for (auto i = std::sregex_iterator(svg.begin(), svg.end(), ids); i != std::sregex_iterator(); ++i) {
      EXPECT_EQ((*i)[1].str().rfind("left", 0), 0U) << drawing << " " << (*i)[1];
    }
  }
}

/// Blended hoses tie regular and premium to one ladder: it is that of both.
TEST(Drawings, OfALadderOnSharedPipingFitEachOfItsProducts) {
  const auto ladder_of = [](const char* product) {
    return answer(site_text("marle-cross"), "a.toml", {{"drawing", "ladder"}, {"product", product}}, {});
  };
  const Json regular = ladder_of("regular"), premium = ladder_of("premium"), diesel = ladder_of("diesel");
  ASSERT_TRUE(regular.contains("svg")) << regular.dump();
  EXPECT_EQ(regular, premium);
  ASSERT_TRUE(diesel.contains("svg")) << diesel.dump();
  EXPECT_NE(regular, diesel);
  EXPECT_TRUE(ladder_of("kerosene").contains("error"));
}

TEST(Drawings, OfASceneSayWhatMovesAndHowFar) {
  const std::string scene = drawn("hollin-gap", {{"drawing", "scene"}, {"kind", "struck"}, {"at", "D4"}});
  for (const char* what : {"sump", "pool", "flow", "jet", "dispenser", "tank-level"}) {
    EXPECT_TRUE(has(scene, std::string("data-move=\"") + what + "\"")) << what;
  }
  EXPECT_TRUE(has(scene, "data-full-sump-m3=\""));
  EXPECT_TRUE(has(scene, "data-full-flow-m3-per-s=\""));
  const Json none = answer(site_text("hollin-gap"), "a.toml", {{"drawing", "scene"}, {"kind", "overfill"}}, {});
  EXPECT_TRUE(none.contains("error")) << none.dump();
}

/// Of a file whose incident has a hose open elsewhere.
TEST(IncidentDocument, OpenHosesThatAreNotGivenAreTheFilesAndNoneIsNone) {
  const std::string text =
      site_text("site-s") + "\n[[incident]]\nkind = \"line-break\"\nat = \"gap-2\"\nopen = [\"D1.a\"]\n";
  const auto open_of = [&](const Json& open) {
    Json want{{"study", "incident"}, {"kind", "line-break"}, {"on", "2026-11-25"}};
    if (!open.is_null()) want["open"] = open;
    const Json got = answer(text, "a.toml", want, {});
    EXPECT_TRUE(got.contains("document")) << got.dump();
    return got["document"]["options"]["open"];
  };
  EXPECT_EQ(open_of(nullptr), Json({"D1.a"}));
  EXPECT_EQ(open_of(Json::array()), Json::array());
  EXPECT_EQ(open_of("none"), Json::array());
  EXPECT_EQ(open_of({"D2.a"}), Json({"D2.a"}));
}

TEST(IncidentDocument, OfADriveOffSaysWhenTheDispenserGoesOver) {
  const Json result = document_of(
      "hollin-gap", {{"study", "incident"}, {"kind", "drive-off"}, {"at", "D4"}, {"on", "2026-11-25"}})["result"];
  std::size_t over = 0;
  for (const Json& run : result["runs"]) {
    const bool told = run["name"].get<std::string>().find("goes over") != std::string::npos;
    EXPECT_EQ(run["dispenser_over_at_s"].is_number(), told) << run["name"];
    over += told ? 1 : 0;
  }
  EXPECT_GT(over, 0U);
  EXPECT_LT(over, result["runs"].size());
}

TEST(IncidentDocument, HoldsWhatTheSceneMovesBy) {
  const Json result = document_of(
      "hollin-gap", {{"study", "incident"}, {"kind", "struck"}, {"at", "D4"}, {"on", "2026-11-25"}})["result"];
  EXPECT_GT(result["sump_brim_m3"].get<double>(), 0.0);
  for (const Json& run : result["runs"]) EXPECT_EQ(run["dispenser_over_at_s"], 0.0);
  for (const Json& run : result["runs"]) {
    const Json& chart = run["chart"];
    for (const char* course : {"sump_share", "pool_radius_m", "jet_low_m", "jet_high_m"}) {
      EXPECT_EQ(chart[course].size(), chart["time_s"].size()) << course;
    }
    for (std::size_t i = 0; i < chart["time_s"].size(); ++i) {
      EXPECT_NEAR(chart["sump_share"][i].get<double>() * result["sump_brim_m3"].get<double>(),
                  chart["sump_m3"][i].get<double>(), 1e-12);
    }
  }
}

}  // namespace
}  // namespace forecourse::server
