// Replays as JSON and in the terminal.
// SOURCE: common practice, no source
#include "forecourse/report/lesson/replay_report.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/studies/incident/incident.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

lesson::Replay struck(const site::Site& site) {
  return lesson::run_failure(*lesson::find_failure("struck"), site, "D1");
}

TEST(ReplayReport, CautionsAreThoseOfTheStudies) {
  EXPECT_STREQ(lesson::caution_of_escapes, incident_first);
  EXPECT_STREQ(lesson::caution_of_drops, stalled_caution);
}

TEST(ReplayReport, TheDocumentHasBothScenes) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const Json document = replay_document(struck(site), {});
  EXPECT_EQ(document["study"], "lesson");
  EXPECT_EQ(document["cautions"][0], incident_first);
  const Json& result = document["result"];
  EXPECT_EQ(result["failure"], "struck");
  EXPECT_EQ(result["at"], "D1");
  EXPECT_TRUE(result["problem"].is_null());
  ASSERT_EQ(result["scenes"].size(), 2U);
  EXPECT_EQ(result["command"], result["scenes"][0]["command"]);
  for (const Json& scene : result["scenes"]) {
    const std::size_t length = scene["time_s"].size();
    for (const auto& values : scene["values"]) EXPECT_EQ(values.size(), length);
    for (const Json& course : scene["courses"]) EXPECT_EQ(course["values"].size(), length);
    EXPECT_EQ(scene["told"][0]["unit"], "m3");
    EXPECT_FALSE(scene["told"][0]["shown"].get<std::string>().empty());
  }
}

TEST(ReplayReport, ListsWhatNobodyEntered) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const lesson::Replay replay = struck(site);
  const studies::IncidentResult whole = studies::study_incident(site, [] {
    studies::IncidentOptions out;
    out.request.at.text = "D1";
    out.none_open = true;
    return out;
  }());
  std::size_t loose = 0;
  for (const studies::InputUsed& input : whole.inputs) {
    if (input.entered || input.status != DefaultStatus::illustrative) continue;
    ++loose;
    // The study runs with and without the valve; each scene lists what its own side needs.
    const bool is_told = std::any_of(replay.scenes.begin(), replay.scenes.end(), [&](const lesson::Scene& scene) {
      return std::count(scene.rests_on.begin(), scene.rests_on.end(), input.what + ", illustrative") == 1;
    });
    EXPECT_TRUE(is_told) << input.what;
  }
  EXPECT_GT(loose, 0U);
  const std::string text = replay_summary(replay, {}, site, {100, false, true, false});
  EXPECT_NE(text.find("Rests on\n"), std::string::npos) << text;
  const Json document = replay_document(replay, {});
  EXPECT_EQ(document["result"]["scenes"][0]["rests_on"], Json(replay.scenes[0].rests_on));
}

TEST(ReplayReport, TheTerminalHasTheCautionBeforeAnyFigure) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const std::string text = replay_summary(struck(site), {}, site, {80, false, true, false});
  const auto caution = text.find("Stop the pump.");
  ASSERT_NE(caution, std::string::npos);
  EXPECT_LT(caution, text.find("gal"));
  EXPECT_NE(text.find("without shear valve"), std::string::npos);
  EXPECT_NE(text.find("What happens"), std::string::npos);
}

TEST(ReplayReport, WhatAStationLacksIsSaid) {
  const site::Site site = test::station(test::site_text("ludd-bank"));
  const std::string text = replay_summary(lesson::run_failure(*lesson::find_failure("struck"), site, {}), {}, site,
                                          {80, false, true, false});
  EXPECT_NE(text.find("This station cannot show it: no shear valve is listed"), std::string::npos) << text;
}

}  // namespace
}  // namespace forecourse::report
