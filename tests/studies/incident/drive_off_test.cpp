// SOURCE: closed forms of steady acceleration, of a linear spring, of a lever and of forces on a sliding fit (laws of
// nature); [ul_567, clause 6.3, excerpt] the band that is told where no pull is entered. Stations and pulls are
// invented.
#include "forecourse/studies/incident/drive_off/drive_off.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "forecourse/studies/incident/drive_off/pull.h"
#include "studies/incident/incident_ground.h"

namespace forecourse::studies {
namespace {

using test::IncidentGround;
using test::site_text;

constexpr double degree = std::numbers::pi / 180.0;
constexpr double rounding = 1e-12;  // of the closed form

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  text.replace(text.find(from), from.size(), to);
  return text;
}

constexpr const char* vehicle =
    "acceleration = \"1.5 m/s2\", slack = \"1.5 m\", angle = \"30 deg\", nozzle_height = \"0.8 m\", distance = \"2 m\"";
constexpr const char* parting = "  parting = { pull = \"1000 N\", poppet = \"double\", friction = 0.2 }\n";
constexpr const char* strengths =
    "  curb = { length = \"3 m\", bore = \"19 mm\", roughness = \"0 mm\", strength = \"6 kN\", stiffness = \"8 kN/m\" "
    "}\n"
    "  nozzle_pull_out = \"3 kN\"\n";
constexpr const char* foot =
    "mass = \"200 kg\"\nbase_width = \"0.5 m\"\nanchorage = \"4 kN.m\"\noutlet_height = \"2 m\"\n";

/// Site S with more at its last hose and dispenser, and a vehicle that drives off there.
IncidentGround driven_off(const std::string& of_hose, const std::string& of_dispenser = {},
                          const std::string& of_vehicle = vehicle, const std::string& of_incident = {}) {
  std::string text =
      replaced(site_text("site-s"), "id = \"D3.a\"\n  product = \"regular\"\n  loss = \"0.17 psi/gpm^2\"\n",
               "id = \"D3.a\"\n  product = \"regular\"\n" + of_hose +
                   (of_hose.find("curb") == std::string::npos ? "  loss = \"0.17 psi/gpm^2\"\n" : ""));
  text = replaced(text, "id = \"D3\"\n", "id = \"D3\"\n" + of_dispenser);
  text += "\n[[incident]]\nkind = \"drive-off\"\nat = \"D3.a\"\nstop_at = \"60 s\"\n" + of_incident + "vehicle = { " +
          of_vehicle + " }\n";
  return {text, IncidentKind::drive_off, "D3.a"};
}

IncidentGround all_known(const std::string& more = parting) { return driven_off(more + std::string(strengths), foot); }

Pull pull(const IncidentGround& ground) {
  Inputs inputs;
  return pull_of(ground.scene(), inputs);
}

DriveOffOutcome outcome(const IncidentGround& ground) {
  Inputs inputs;
  return drive_off(ground.scene(), inputs, ground.names(), {});
}

std::vector<std::string> names(const DriveOffOutcome& outcome) {
  std::vector<std::string> out;
  for (const IncidentRun& run : outcome.runs) out.push_back(run.name);
  return out;
}

const PullLimit& limit(const DriveOffTold& told, const std::string& what) {
  const auto found = std::find_if(told.limits.begin(), told.limits.end(),
                                  [&](const PullLimit& one) { return one.what.rfind(what, 0) == 0; });
  EXPECT_NE(found, told.limits.end()) << what;
  return *found;
}

// ---- the pull -------------------------------------------------------------------------------------------

TEST(IncidentDriveOff, FromRestTheHoseIsTightAfter141Seconds) {
  const DriveOffTold told = pull(all_known()).told;
  EXPECT_NEAR(told.tight_at, std::sqrt(2.0), rounding);        // 1.41 s: 1.5 m at 1.5 m/s2
  EXPECT_NEAR(told.speed_then, std::sqrt(4.5), 2 * rounding);  // 2.12 m/s
}

TEST(IncidentDriveOff, AVehicleThatRollsTakesUpTheSlackAtItsSpeed) {
  const DriveOffTold told = pull(driven_off(parting, {}, "speed = \"3 m/s\", slack = \"1.5 m\"")).told;
  EXPECT_NEAR(told.tight_at, 0.5, rounding);
  EXPECT_NEAR(told.speed_then, 3.0, rounding);
}

TEST(IncidentDriveOff, TheBreakawayPartsAtItsPullAskew) {
  const DriveOffTold told = pull(all_known()).told;
  const double askew = 1000.0 / (std::cos(30.0 * degree) - 0.2 * std::sin(30.0 * degree));
  ASSERT_TRUE(told.separation_force.has_value());
  EXPECT_NEAR(told.separation_force->low, askew, 1e-9);
  EXPECT_NEAR(told.separation_force->high, askew, 1e-9);
  EXPECT_FALSE(told.may_never_release);
}

TEST(IncidentDriveOff, TheStretchOfTheHoseTakesTime) {
  const Pull p = pull(all_known());
  const double travel = p.told.separation_force->likely / 8000.0;
  const double time = p.parts_at - p.told.tight_at;
  EXPECT_NEAR(p.told.speed_then * time + 0.75 * time * time, travel, 1e-9);
}

TEST(IncidentDriveOff, TheFootBearsThePullTimesItsHeightLessTheWeight) {
  const DriveOffTold told = pull(all_known()).told;
  const double elevation = std::atan2(0.8 - 2.0, 2.0);
  const double level = told.separation_force->likely * std::cos(elevation);
  EXPECT_NEAR(told.base_force.value(), level, 1e-9);
  EXPECT_NEAR(told.base_moment.value(), level * 2.0 - 200.0 * standard_gravity * 0.25, 1e-8);
  const double over = (4000.0 + 200.0 * standard_gravity * 0.25) / (2.0 * std::cos(elevation));
  EXPECT_NEAR(limit(told, "dispenser pulled over").pull.value().likely, over, 1e-8);
}

TEST(IncidentDriveOff, WithoutAWhipHoseItMayNeverRelease) {
  const std::string steep = replaced(vehicle, "30 deg", "80 deg");
  const DriveOffTold told = pull(driven_off(parting, {}, steep)).told;  // locks above arctan(1/0.2) = 78.7 deg
  EXPECT_FALSE(told.has_whip);
  EXPECT_NEAR(told.angle, 80.0 * degree, rounding);
  EXPECT_TRUE(told.may_never_release);
  EXPECT_FALSE(told.separation_force.has_value());
  EXPECT_NE(limit(told, "breakaway").what.find("never releases"), std::string::npos);
}

TEST(IncidentDriveOff, ALongWhipHoseTurnsTheBreakawayAndAShortOneDoesNot) {
  const std::string steep = replaced(vehicle, "30 deg", "80 deg");
  const auto with_whip = [&](const char* length) {
    const std::string whip = "  whip = { length = \"" + std::string(length) +
                             "\", bore = \"19 mm\", roughness = \"0 mm\" }\n" + parting + strengths;
    return pull(driven_off(whip, foot, steep)).told;
  };
  const DriveOffTold turned = with_whip("0.6 m");  // a bend of 80 deg takes up 0.35 m at 0.25 m, the most of it
  EXPECT_TRUE(turned.has_whip);
  EXPECT_LT(turned.angle, 30.0 * degree);
  EXPECT_FALSE(turned.may_never_release);
  const DriveOffTold stiff = with_whip("0.1 m");  // less than the 0.14 m that even the least radius takes up
  EXPECT_NEAR(stiff.angle, 80.0 * degree, rounding);
  EXPECT_TRUE(stiff.may_never_release);
}

TEST(IncidentDriveOff, AnAngleThatIsNotEnteredIsARange) {
  Inputs inputs;
  const IncidentGround ground = driven_off(parting, {}, "acceleration = \"1.5 m/s2\", slack = \"1.5 m\"");
  const Pull p = pull_of(ground.scene(), inputs);
  EXPECT_TRUE(p.told.may_never_release);  // at the steep end of what stands in
  EXPECT_LT(p.told.separation_force.value().low, p.told.separation_force.value().likely);
  const auto angle = std::find_if(inputs.used().begin(), inputs.used().end(),
                                  [](const InputUsed& one) { return one.what.find("angle of the pull") == 0; });
  ASSERT_NE(angle, inputs.used().end());
  EXPECT_FALSE(angle->entered);
  EXPECT_EQ(angle->status, DefaultStatus::illustrative);
  EXPECT_FALSE(angle->value.is_certain());
}

// ---- what comes first -----------------------------------------------------------------------------------

TEST(IncidentDriveOff, WhereAllLimitsAreKnownTheFirstIsDetermined) {
  const DriveOffTold told = pull(all_known()).told;
  EXPECT_TRUE(told.outcome_known);
  EXPECT_EQ(told.outcome, "The pull reaches first: breakaway");
  ASSERT_EQ(told.limits.size(), 4U);
  for (std::size_t i = 1; i < told.limits.size(); ++i) {
    EXPECT_LE(told.limits[i - 1].pull.value().likely, told.limits[i].pull.value().likely);
  }
}

TEST(IncidentDriveOff, AnUnknownLimitCouldComeFirst) {
  const DriveOffTold told = pull(driven_off(parting)).told;
  EXPECT_FALSE(told.outcome_known);
  EXPECT_NE(told.outcome.find("not determined"), std::string::npos);
  EXPECT_FALSE(told.limits.back().pull.has_value());  // unknown ones last
  EXPECT_EQ(told.outcome.find("published"), std::string::npos);
}

TEST(IncidentDriveOff, ABreakawayWithoutItsPullIsToldWhatIsPublished) {
  const DriveOffTold told = pull(driven_off("  parting = { poppet = \"double\" }\n")).told;
  EXPECT_FALSE(told.outcome_known);
  EXPECT_FALSE(told.separation_force.has_value());
  EXPECT_NE(told.outcome.find("100 to 350 lbf"), std::string::npos);
  EXPECT_FALSE(told.may_never_release);  // at 30 deg nothing locks, whatever the pull
}

// ---- what escapes ---------------------------------------------------------------------------------------

TEST(IncidentDriveOff, BothEndsShutLetsNothingOut) {
  const DriveOffOutcome told = outcome(all_known());
  ASSERT_FALSE(told.runs.empty());
  EXPECT_TRUE(told.runs.front().missing.empty());
  EXPECT_EQ(told.runs.front().escaped, 0.0);
}

TEST(IncidentDriveOff, ALineThatNothingFollowsHasNoPressure) {
  const IncidentRun shut = outcome(all_known()).runs.front();
  EXPECT_TRUE(shut.chart.pressure.empty());
  EXPECT_GT(shut.chart.time.size(), 1U);
  for (const TimelineRow& row : shut.timeline) EXPECT_FALSE(row.pressure.has_value()) << row.words;
}

TEST(IncidentDriveOff, AnOpenEndFlowsUntilThePumpsStop) {
  const DriveOffOutcome told = outcome(all_known());
  ASSERT_GE(told.runs.size(), 4U);
  const IncidentRun& open = told.runs[1];
  EXPECT_EQ(open.missing, std::vector<Barrier>{Barrier::breakaway});
  const double held = std::numbers::pi / 4.0 * 0.019 * 0.019 * 3.0;
  const double flows_for = 60.0 - told.told.parts_at.value();
  // The column that gathers speed in the first second, and the spring of the line at its end.
  EXPECT_NEAR(open.escaped, held + open.steady_flow * flows_for, 0.02 * open.escaped);
}

TEST(IncidentDriveOff, EveryLiterIsAccountedFor) {
  for (const IncidentRun& run : outcome(all_known()).runs) EXPECT_LT(run.balance, 1e-12) << run.name;
}

double time_of(const IncidentRun& run, Happening what) {
  const auto row =
      std::find_if(run.timeline.begin(), run.timeline.end(), [&](const TimelineRow& r) { return r.what == what; });
  return row == run.timeline.end() ? -1.0 : row->time;
}

bool earlier(const TimelineRow& a, const TimelineRow& b) { return a.time < b.time; }

void expect_on_the_clock_of(const DriveOffTold& told, const IncidentRun& run) {
  EXPECT_EQ(time_of(run, Happening::begins), 0.0);
  EXPECT_EQ(time_of(run, Happening::hose_tight), told.tight_at);
  EXPECT_EQ(run.timeline.at(2).time, told.parts_at.value());
  EXPECT_NEAR(time_of(run, Happening::emergency_stop), 60.0, 1e-9) << run.name;
  EXPECT_TRUE(std::is_sorted(run.timeline.begin(), run.timeline.end(), earlier)) << run.name;
}

TEST(IncidentDriveOff, TimesCountFromTheMomentTheVehicleSetsOff) {
  const DriveOffOutcome told = outcome(all_known());
  for (const IncidentRun& run : told.runs) expect_on_the_clock_of(told.told, run);
}

TEST(IncidentDriveOff, WhatIsNotSaidOfThePumpIsTold) {
  const std::string words = outcome(all_known()).runs.front().timeline.front().words;
  EXPECT_NE(words.find("taken to be latched open and the pump to run"), std::string::npos);
}

TEST(IncidentDriveOff, APumpThatDoesNotRunIsSaid) {
  const DriveOffOutcome told = outcome(driven_off(parting, {}, vehicle, "pump_runs = false\n"));
  EXPECT_EQ(told.runs.front().timeline.front().words, "the vehicle sets off, the pump not running");
}

TEST(IncidentDriveOff, OnePoppetDoesNotShutBothEnds) {
  const DriveOffOutcome told = outcome(all_known(replaced(parting, "double", "single")));
  EXPECT_EQ(told.runs.front().name, "the breakaway parts and its dispenser end stays open");
}

TEST(IncidentDriveOff, TheDispenserOverIsAStrike) {
  const IncidentGround ground = all_known();
  IncidentGround struck = ground;
  struck.options.kind = IncidentKind::struck;
  struck.options.request = ground.request;
  struck.options.request.at.text = "D3";
  struck.options.request.id.text = "none of the file";
  struck.lay();
  const double steady = struck.run({Barrier::shear_valve}).steady_flow;
  const DriveOffOutcome told = outcome(ground);
  const IncidentRun& bare = told.runs.back();
  EXPECT_EQ(bare.missing, (std::vector<Barrier>{Barrier::breakaway, Barrier::shear_valve}));
  EXPECT_NEAR(bare.steady_flow, steady, rounding * steady);
  EXPECT_GT(bare.escaped, told.runs[told.runs.size() - 2].escaped);
}

TEST(IncidentDriveOff, WhatSurelyComesFirstIsToldFirst) {
  const std::string weak = replaced(foot, "4 kN.m", "0.2 kN.m");  // over at about 400 N, below the breakaway's pull
  const DriveOffOutcome told = outcome(driven_off(parting + std::string(strengths), weak));
  EXPECT_EQ(told.told.outcome, "The pull reaches first: dispenser pulled over");
  EXPECT_EQ(names(told).front(), "the breakaway does not part, and the dispenser goes over");
  const std::vector<std::string> all = names(told);
  EXPECT_EQ(std::count(all.begin(), all.end(), "the breakaway parts and both its ends shut"), 0);
}

TEST(IncidentDriveOff, ABreakawayThatIsLeftOutIsNoLimit) {
  IncidentGround ground = all_known();
  ground.options.without = {Barrier::breakaway};
  const DriveOffOutcome without = outcome(ground);
  EXPECT_EQ(without.told.limits.size(), 3U);
  EXPECT_EQ(names(without).front(), "without its breakaway, and the dispenser goes over");  // 2.6 kN, below 3 and 6
  ground.options.without.clear();
  ground.options.dead = {{Barrier::breakaway, std::nullopt}};
  EXPECT_EQ(names(outcome(ground)), names(without));
  ground.options.dead = {{Barrier::breakaway, 1.0}};  // awake again before the hose is tight
  EXPECT_EQ(names(outcome(ground)), names(outcome(all_known())));
}

TEST(IncidentDriveOff, AStrikeInTheFileIsNotLaidUnderTheDispenserThatGoesOver) {
  const std::string text = site_text("site-s");
  ASSERT_NE(text.find("kind = \"struck\""), std::string::npos);  // stops at 45 s there, at 60 s here
  const DriveOffOutcome told = outcome(all_known());
  const auto& rows = told.runs.back().timeline;
  EXPECT_TRUE(std::none_of(rows.begin(), rows.end(), [](const TimelineRow& row) {
    return row.what == Happening::emergency_stop && std::abs(row.time - 45.0) < 5.0;
  }));
}

}  // namespace
}  // namespace forecourse::studies
