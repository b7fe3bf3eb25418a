// Failures and their replays: every kind at every example station.
// SOURCE: common practice, no source; the figures themselves are held against sources where their studies are tested.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>
#include <string>

#include "forecourse/lesson/failures/failure_asked.h"
#include "forecourse/lesson/failures/replay.h"
#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/read_incident_options.h"
#include "support/stations.h"

namespace forecourse::lesson {
namespace {

constexpr std::array stations{"hollin-gap", "marle-cross", "thornby",    "site-s",
                              "ludd-bank",  "pell-ridge",  "truck-lane", "sedge-fold"};

site::Site site_of(const std::string& name) { return test::station(test::site_text(name)); }

const FailureKind& kind_of(const std::string& id) {
  const FailureKind* kind = find_failure(id);
  EXPECT_NE(kind, nullptr) << id;
  return *kind;
}

Replay replay_at(const site::Site& site, const std::string& id, const std::string& at = {}) {
  return run_failure(kind_of(id), site, at);
}

const SceneValue* told(const Scene& scene, const std::string& end_of_pointer) {
  const auto found = std::find_if(scene.told.begin(), scene.told.end(), [&](const SceneValue& one) {
    return one.pointer.size() >= end_of_pointer.size() &&
           one.pointer.compare(one.pointer.size() - end_of_pointer.size(), std::string::npos, end_of_pointer) == 0;
  });
  return found == scene.told.end() ? nullptr : &*found;
}

double value(const Scene& scene, const std::string& end_of_pointer) {
  const SceneValue* one = told(scene, end_of_pointer);
  EXPECT_NE(one, nullptr) << end_of_pointer;
  return one == nullptr ? std::nan("") : one->value.value_or(std::nan(""));
}

bool may_be_below_zero(const std::string& name) { return name == "pressure" || name == "warm"; }

void expect_sound(const Scene& scene) {
  SCOPED_TRACE(scene.name);
  ASSERT_GE(scene.time.size(), 2U);
  EXPECT_TRUE(std::is_sorted(scene.time.begin(), scene.time.end()));
  EXPECT_FALSE(scene.values.empty());
  for (const auto& [name, values] : scene.values) {
    EXPECT_EQ(values.size(), scene.time.size()) << name;
    const double least = may_be_below_zero(name) ? -1.0 : 0.0;
    EXPECT_TRUE(std::all_of(values.begin(), values.end(), [&](double one) { return one >= least && one <= 1.0; }))
        << name;
  }
  for (const Course& course : scene.courses) EXPECT_EQ(course.values.size(), scene.time.size()) << course.course;
  EXPECT_FALSE(scene.events.empty());
  EXPECT_FALSE(scene.told.empty());
  for (const SceneValue& one : scene.told) {
    EXPECT_TRUE(!one.value || std::isfinite(*one.value)) << one.label;
    EXPECT_FALSE(one.pointer.empty()) << one.label;
  }
  EXPECT_FALSE(scene.command.empty());
}

class EveryFailure : public ::testing::TestWithParam<const char*> {};

TEST_P(EveryFailure, IsShownSoundlyOrSaysWhyNot) {
  const site::Site site = site_of(GetParam());
  for (const FailureKind& kind : failure_kinds()) {
    SCOPED_TRACE(kind.id);
    const Replay replay = run_failure(kind, site, {});
    EXPECT_EQ(replay.problem, kind.lacks(site, {}));
    EXPECT_EQ(replay.failure, kind.id);
    if (!replay.problem.empty()) {
      EXPECT_TRUE(replay.scenes.empty());
      continue;
    }
    ASSERT_EQ(replay.scenes.size(), 2U);
    EXPECT_FALSE(replay.scenes[0].works);
    EXPECT_TRUE(replay.scenes[1].works);
    for (const Scene& scene : replay.scenes) expect_sound(scene);
    if (told(replay.scenes[0], "/escaped_m3") != nullptr && told(replay.scenes[1], "/escaped_m3") != nullptr) {
      EXPECT_LE(value(replay.scenes[1], "/escaped_m3"), value(replay.scenes[0], "/escaped_m3"));
    }
  }
}

// Of three: what a shear valve, a leak detector and a breakaway are there for ends the escape.
TEST(Failures, AShutShearValveEndsTheEscape) {
  const Replay replay = replay_at(site_of("hollin-gap"), "struck", "D1");
  ASSERT_EQ(replay.problem, "");
  const Scene& fails = replay.scenes[0];
  const Scene& works = replay.scenes[1];
  EXPECT_EQ(works.values.at("lower").back(), 1.0);
  EXPECT_EQ(fails.values.at("lower").back(), 0.0);
  for (std::size_t i = 0; i < works.time.size(); ++i) {
    if (works.time[i] <= 0.2) continue;
    EXPECT_LT(works.values.at("escape")[i], 1e-3) << works.time[i];
  }
  EXPECT_GT(value(fails, "/escaped_m3"), 100.0 * value(works, "/escaped_m3"));
}

TEST(Failures, WhatEscapesIsWhatTheLastPointOfItsCourseHolds) {
  const site::Site site = site_of("hollin-gap");
  for (const char* id : {"struck", "single-poppet", "sump-sensor-dead", "emergency-stop-dead", "overfilled"}) {
    const Replay replay = replay_at(site, id);
    ASSERT_EQ(replay.problem, "") << id;
    for (const Scene& scene : replay.scenes) {
      const double escaped = value(scene, "/escaped_m3");
      EXPECT_NEAR(scene.courses.front().values.back(), escaped, 1e-9 + 1e-6 * escaped) << id << ", " << scene.name;
    }
  }
}

/// What the ledger of an incident brings out of tanks, pipes and hoses.
double out_by_ledger(const studies::IncidentRun& run) {
  using studies::Holder;
  const std::set<Holder> outside{Holder::sump, Holder::slab, Holder::ground, Holder::air, Holder::interceptor};
  double out = 0.0;
  for (const studies::LedgerLine& line : run.ledger) {
    if (outside.count(line.to) != 0 && outside.count(line.from) == 0) out += line.amount;
  }
  return out;
}

TEST(Failures, WhatEscapesIsWhatTheLedgerOfTheIncidentBringsOut) {
  const site::Site site = site_of("hollin-gap");
  for (const char* barrier : {"", "shear-valve"}) {
    studies::IncidentTexts texts{"struck"};
    texts.at = "D3";
    texts.open.emplace();
    if (*barrier != '\0') texts.without = {barrier};
    const auto options = studies::read_incident_options(texts, studies::Asker::command);
    ASSERT_TRUE(options.ok());
    const studies::IncidentResult result = study_incident(site, options.value);
    const Replay replay = replay_at(site, "struck", "D3");
    ASSERT_EQ(replay.problem, "");
    const Scene& scene = replay.scenes[*barrier == '\0' ? 1 : 0];
    EXPECT_EQ(value(scene, "/escaped_m3"), result.runs.front().escaped);
    EXPECT_NEAR(value(scene, "/escaped_m3"), out_by_ledger(result.runs.front()), 1e-9);
  }
}

TEST(Failures, ALeakDetectorStopsALeakThatItMustFind) {
  const Replay replay = replay_at(site_of("hollin-gap"), "no-leak-detector");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(replay.scenes[1].values.at("trips").back(), 1.0);
  EXPECT_EQ(replay.scenes[0].values.at("trips").back(), 0.0);
  EXPECT_LT(value(replay.scenes[1], "/escaped_m3"), 0.01 * value(replay.scenes[0], "/escaped_m3"));
}

TEST(Failures, ABreakawayPartsAndLetsNothingOut) {
  const Replay replay = replay_at(site_of("hollin-gap"), "drive-off", "D4.regular-b");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(replay.scenes[1].values.at("shut").back(), 1.0);
  EXPECT_EQ(value(replay.scenes[1], "/escaped_m3"), 0.0);
  EXPECT_GT(value(replay.scenes[0], "/escaped_m3"), 0.0);
}

TEST(Failures, ADropWithoutItsVaporHoseSendsItsVaporOutOfTheVent) {
  const Replay replay = replay_at(site_of("marle-cross"), "vapor-hose-left-off");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(value(replay.scenes[0], "/to_truck_m3"), 0.0);
  EXPECT_GT(value(replay.scenes[1], "/to_truck_m3"), 0.0);
  EXPECT_GT(value(replay.scenes[0], "/vented_m3"), value(replay.scenes[1], "/vented_m3"));
}

TEST(Failures, ABlockedVentHoldsTheDropUp) {
  const Replay replay = replay_at(site_of("marle-cross"), "vent-blocked");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(value(replay.scenes[0], "/vented_m3"), 0.0);
  EXPECT_GT(value(replay.scenes[1], "/vented_m3"), 0.0);
  EXPECT_GT(value(replay.scenes[0], "/highest_pressure_gauge_pa"),
            value(replay.scenes[1], "/highest_pressure_gauge_pa"));
}

TEST(Failures, AValveSetByTheDiameterShutsTooLate) {
  const Replay replay = replay_at(site_of("marle-cross"), "valve-at-95-of-diameter");
  ASSERT_EQ(replay.problem, "");
  const auto share = [&](int i) {
    const Scene& scene = replay.scenes[static_cast<std::size_t>(i)];
    return value(scene, "/volume_after_m3") / value(scene, "/capacity_m3");
  };
  EXPECT_GT(share(0), 0.97);
  EXPECT_NEAR(share(1), 0.95, 0.005);  // what leaks and drains while it shuts comes on top
}

TEST(Failures, ACrackTripNeedsItsVolume) {
  std::string text = test::site_text("hollin-gap");
  EXPECT_NE(kind_of("cracked").lacks(test::station(text), {}).find("trip_volume"), std::string::npos);
  text = test::with(text, "dispenser.D2.inlet.regular.shear_valve.crack_trip", "true");
  text = test::with(text, "dispenser.D2.inlet.regular.shear_valve.trip_volume", "0.1 gal");
  const Replay replay = replay_at(test::station(text), "cracked");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(replay.at, "D2.regular");
  EXPECT_EQ(replay.scenes[1].values.at("tripped").back(), 1.0);
  EXPECT_LT(value(replay.scenes[1], "/escaped_m3"), 0.01 * value(replay.scenes[0], "/escaped_m3"));
}

TEST(Failures, ATankSumpIsSeenWhereItsSensorWorks) {
  std::string text = test::site_text("hollin-gap");
  text = test::with(text, "tank.T1.sump",
                    "{ kind = \"round\", diameter = \"42 in\", depth = \"48 in\", sensor_height = \"2 in\", "
                    "lowest_seal = \"10 in\" }");
  const Replay replay = replay_at(test::station(text), "tank-sump-fills");
  ASSERT_EQ(replay.problem, "");
  EXPECT_EQ(replay.scenes[0].values.at("brim").back(), 1.0);
  EXPECT_EQ(replay.scenes[0].values.at("sensor").back(), 0.0);
  EXPECT_EQ(replay.scenes[1].values.at("sensor").back(), 1.0);
  EXPECT_LT(replay.scenes[1].time.back(), replay.scenes[0].time.back());
}

// The line begins at the pressure it is held at, and a relief keeps it at its own from when it comes there.
TEST(Failures, AShutLineThatWarmsStaysAtItsRelief) {
  const site::Site site = site_of("sedge-fold");
  const Replay replay = replay_at(site, "line-warms");
  ASSERT_EQ(replay.problem, "");
  const double relief = site.pumps.front().pressure_relief->likely.si();
  const std::vector<double>& free = replay.scenes[0].courses.front().values;
  const std::vector<double>& held = replay.scenes[1].courses.front().values;
  EXPECT_EQ(free.front(), value(replay.scenes[0], "/start_pressure_gauge_pa"));
  EXPECT_LT(held.front(), relief);
  EXPECT_GT(free.back(), relief);
  EXPECT_EQ(held.back(), relief);
  const double opens = replay.scenes[1].events.back().time;
  for (std::size_t i = 0; i < held.size(); ++i) {
    EXPECT_EQ(replay.scenes[1].time[i] >= opens, held[i] == relief) << replay.scenes[1].time[i];
  }
}

TEST(Failures, AReliefThatTheWarmingLineDoesNotReachIsNoFailure) {
  const std::string text = test::with(test::site_text("sedge-fold"), "pump.P1.pressure_relief", "\"300 psi\"");
  const Replay replay = replay_at(test::station(text), "line-warms", "P1");
  EXPECT_NE(replay.problem.find("up to the pressure of its relief"), std::string::npos) << replay.problem;
  EXPECT_TRUE(replay.scenes.empty());
}

TEST(Failures, AnUnknownOneIsToldWithTheNearest) {
  const auto asked = asked_failure("stuck");
  ASSERT_FALSE(asked.ok());
  EXPECT_EQ(asked.diagnostics.front().message, "there is no failure 'stuck'");
  EXPECT_EQ(asked.diagnostics.front().hint.rfind("did you mean 'struck'?", 0), 0U);
  EXPECT_TRUE(asked_failure("struck").ok());
  const site::Site site = site_of("hollin-gap");
  EXPECT_TRUE(check_part(site, "D4.regular-b").empty());
  EXPECT_TRUE(check_part(site, "").empty());
  ASSERT_EQ(check_part(site, "D9").size(), 1U);
  EXPECT_EQ(check_part(site, "D9").front().message, "there is no part 'D9' at this station");
}

INSTANTIATE_TEST_SUITE_P(Stations, EveryFailure, ::testing::ValuesIn(stations), [](const auto& one) {
  std::string name = one.param;
  name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
  return name;
});

}  // namespace
}  // namespace forecourse::lesson
