// SOURCE: [cfr_280, 280.33, 280.44, 280.53], [rp1200_17, 6, 10 and 11], [vr_202, procedure 1.4] steps after an
// incident; [cfr_280, 280.53] 25 gal and 24 hours. The station is invented.
#include "forecourse/studies/incident/after/return_to_service.h"

#include <gtest/gtest.h>

#include <set>

#include "studies/incident/barrier_station.h"

namespace forecourse::studies {
namespace {

using test::BarrierStation;
using test::entered;
using test::IncidentGround;

std::vector<ReturnStep> steps(const BarrierStation& station, IncidentKind kind, const std::string& at) {
  const IncidentGround ground(station.text(), kind, at);
  EXPECT_TRUE(kind == IncidentKind::overfill || ground.ground.problem.empty()) << ground.ground.problem;
  return return_to_service(ground.scene());
}

/// The step of a kind that holds these words; one without words if there is none.
ReturnStep step(const std::vector<ReturnStep>& steps, const std::string& kind, const std::string& words) {
  const auto found = std::find_if(steps.begin(), steps.end(), [&](const ReturnStep& one) {
    return one.kind == kind && one.what.find(words) != std::string::npos;
  });
  return found == steps.end() ? ReturnStep{} : *found;
}

bool has(const std::vector<ReturnStep>& steps, const std::string& kind, const std::string& words) {
  return !step(steps, kind, words).what.empty();
}

struct Place {
  IncidentKind kind;
  const char* at;
};
constexpr Place places[] = {{IncidentKind::struck, "D1"},
                            {IncidentKind::drive_off, "D1.regular-a"},
                            {IncidentKind::sump_fire, "D1"},
                            {IncidentKind::crack, "D1.regular"},
                            {IncidentKind::line_break, "L1"},
                            {IncidentKind::overfill, "T1"},
                            {IncidentKind::nozzle_left_open, "D1.regular-a"}};

/// A clause comes with how its text was read.
bool is_told(const std::string& source) {
  return source == "common practice, no source" || source.find("read") != std::string::npos;
}

bool is_whole(const ReturnStep& one) {
  static const std::set<std::string> kinds{"replace", "inspect", "test", "report"};
  return kinds.count(one.kind) == 1 && !one.by.empty() && is_told(one.source) &&
         one.what.find("safe") == std::string::npos;
}

TEST(ReturnToService, EveryStepSaysByWhomAndWhereFrom) {
  for (const Place& place : places) {
    const auto all = steps(BarrierStation{}, place.kind, place.at);
    EXPECT_GE(all.size(), 2U) << word(place.kind);
    for (const ReturnStep& one : all) EXPECT_TRUE(is_whole(one)) << one.what << ": " << one.source;
  }
}

TEST(ReturnToService, ASpillIsReportedFirstWhateverHappened) {
  for (const Place& place : places) {
    const auto all = steps(BarrierStation{}, place.kind, place.at);
    ASSERT_FALSE(all.empty());
    EXPECT_EQ(all.front().kind, "report");
    EXPECT_NE(all.front().source.find("25 gal, or a sheen: within 24 hours"), std::string::npos);
  }
}

TEST(ReturnToService, AfterAStrikeTheTopIsReplacedNotTheBody) {
  const auto all = steps(BarrierStation{}, IncidentKind::struck, "D1");
  const ReturnStep top = step(all, "replace", "two-piece top");
  EXPECT_NE(top.what.find("not its body, unless that fails inspection"), std::string::npos);
  EXPECT_TRUE(has(all, "inspect", "stabilizer bar"));
  EXPECT_NE(step(all, "test", "the line for tightness").source.find("280.44(b): 0.1 gal/h at 1.5 times"),
            std::string::npos);
  EXPECT_NE(step(all, "test", "sump for tightness").source.find("280.33(d): within 30 days"), std::string::npos);
  EXPECT_EQ(step(all, "test", "tripped").by, "certified tester");
  EXPECT_EQ(step(all, "inspect", "before power returns").by, "licensed electrician");
  EXPECT_EQ(step(all, "test", "meters").by, "weights-and-measures officer");
  EXPECT_TRUE(has(all, "test", "leak detector"));
}

TEST(ReturnToService, OnlyWhatStandsThereIsListed) {
  BarrierStation bare;
  bare.valve = bare.sump = bare.more = "";
  bare.pump = "check_valve = true";
  bare.hose = "loss = \"0.17 psi/gpm^2\"";
  for (const Place& place : places) {
    const auto all = steps(bare, place.kind, place.at);
    for (const char* part : {"shear valve", "sump", "leak detector", "breakaway", "fusible link", "sensor",
                             "emergency stop", "overfill valve", "spill container"}) {
      for (const ReturnStep& one : all) EXPECT_EQ(one.what.find(part), std::string::npos) << one.what;
    }
  }
}

TEST(ReturnToService, ABreakawayIsJoinedAgainOrReplacedAsItIsMade) {
  BarrierStation station;
  const std::string yes = "reconnectable = true";
  const auto again = steps(station, IncidentKind::drive_off, "D1.regular-a");
  EXPECT_TRUE(has(again, "inspect", "join it again as its listing says"));
  EXPECT_FALSE(has(again, "replace", "breakaway"));
  station.hose.replace(station.hose.find(yes), yes.size(), "reconnectable = false");
  const auto once = steps(station, IncidentKind::drive_off, "D1.regular-a");
  EXPECT_EQ(step(once, "replace", "breakaway").what, "the breakaway");
}

TEST(ReturnToService, AfterADriveOffTheHoseIsPurgedAndTheShearValveTested) {
  const auto all = steps(BarrierStation{}, IncidentKind::drive_off, "D1.regular-a");
  const ReturnStep purge = step(all, "test", "purged");
  EXPECT_NE(purge.what.find("at least 2 gal"), std::string::npos);
  EXPECT_NE(purge.what.find("2 min"), std::string::npos);
  EXPECT_NE(step(all, "inspect", "shear valve").source.find("10.1: after a hit or a drive-off"), std::string::npos);
  EXPECT_TRUE(has(all, "test", "tripped"));
}

TEST(ReturnToService, AFireTakesTheLink) {
  EXPECT_TRUE(has(steps(BarrierStation{}, IncidentKind::sump_fire, "D1"), "replace", "fusible link"));
}

TEST(ReturnToService, ALeakIsASuspectedRelease) {
  for (const auto& all : {steps(BarrierStation{}, IncidentKind::crack, "D1.regular"),
                          steps(BarrierStation{}, IncidentKind::line_break, "L1")}) {
    const ReturnStep release = step(all, "report", "suspected or confirmed");
    EXPECT_NE(release.source.find("within 7 days"), std::string::npos);
  }
}

TEST(ReturnToService, TheSpaceBetweenTwoWallsIsTestedWhereItMayBe) {
  BarrierStation station;
  EXPECT_TRUE(has(steps(station, IncidentKind::line_break, "L1"), "test", "walls"));
  station.line = "double_wall = false\n";
  EXPECT_FALSE(has(steps(station, IncidentKind::line_break, "L1"), "test", "walls"));
}

TEST(ReturnToService, AfterAnOverfillItsEquipmentIsTested) {
  BarrierStation station;
  station.tank =
      "overfill_alarm = { at_share = \"90 %\" }\n[[tank.fill]]\n"
      "overfill_valve = { closes_at = \"80 in\" }\nspill_container = { volume = \"5 gal\" }\n";
  const auto all = steps(station, IncidentKind::overfill, "T1");
  for (const char* part : {"the overfill valve", "the overfill alarm", "the spill container for tightness"}) {
    EXPECT_TRUE(has(all, "test", part)) << part;
    EXPECT_NE(step(all, "test", part).source.find("280.33(f)"), std::string::npos) << part;
  }
  EXPECT_NE(step(all, "test", "the overfill valve").source.find("95 %"), std::string::npos);
  EXPECT_NE(step(all, "test", "the overfill alarm").source.find("90 %"), std::string::npos);
}

TEST(ReturnToService, AnEmergencyStopThatWasPressedIsTested) {
  IncidentGround ground(BarrierStation{}.text(), IncidentKind::struck, "D1");
  EXPECT_FALSE(has(return_to_service(ground.scene()), "test", "emergency stop"));
  ground.options.request.stop_at = entered<Duration>(90.0);
  ground.lay();
  EXPECT_TRUE(has(return_to_service(ground.scene()), "test", "emergency stop"));
}

}  // namespace
}  // namespace forecourse::studies
