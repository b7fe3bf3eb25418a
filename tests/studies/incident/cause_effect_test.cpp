// SOURCE: [rp1200_17, 11.1 to 11.3] an emergency stop drops power to every pump; the rest is the invented station's own
// text, read back from the matrix.
#include "forecourse/studies/incident/barriers/cause_effect.h"

#include <gtest/gtest.h>

#include "studies/incident/barrier_station.h"

namespace forecourse::studies {
namespace {

using test::BarrierStation;
using test::station;

const CauseRow* row(const CauseEffect& matrix, const std::string& cause) {
  const auto found =
      std::find_if(matrix.rows.begin(), matrix.rows.end(), [&](const CauseRow& one) { return one.cause == cause; });
  return found == matrix.rows.end() ? nullptr : &*found;
}

TEST(CauseEffectMatrix, HasAColumnForEachPumpAndDispenser) {
  const CauseEffect matrix = cause_effect(station(BarrierStation{}.text()));
  EXPECT_EQ(matrix.columns, (std::vector<std::string>{"P1", "P2", "D1"}));
  for (const CauseRow& one : matrix.rows) EXPECT_EQ(one.effects.size(), matrix.columns.size()) << one.cause;
}

TEST(CauseEffectMatrix, AnEmergencyStopStopsItsPumpsAndCutsPower) {
  BarrierStation given;
  given.more =
      "[[emergency_stop]]\nid = \"E1\"\nstops = [\"P2\"]\nacts_in = \"1 s\"\nalso_cuts_power = true\n"
      "tested = 2026-03-12\n";
  const CauseEffect matrix = cause_effect(station(given.text()));
  const CauseRow* stop = row(matrix, "emergency stop E1");
  ASSERT_NE(stop, nullptr);
  EXPECT_EQ(stop->effects, (std::vector<std::string>{"", "stops", "cuts power"}));
  EXPECT_TRUE(stop->tested);
  EXPECT_DOUBLE_EQ(stop->acts_in.value_or(0.0), 1.0);
}

TEST(CauseEffectMatrix, AnInterlockActsAsItIsEntered) {
  BarrierStation given;
  given.more =
      "[[interlock]]\nid = \"I1\"\nwhen = \"S1\"\nthen = \"alarm\"\nwhat = [\"P1\", \"D1\"]\nfail_safe = false\n"
      "[[interlock]]\nid = \"I2\"\nwhen = \"P2\"\nthen = \"restrict\"\nwhat = [\"P2\"]\n";
  const CauseEffect matrix = cause_effect(station(given.text()));
  const CauseRow* sensor = row(matrix, "S1");
  ASSERT_NE(sensor, nullptr);
  EXPECT_EQ(sensor->effects, (std::vector<std::string>{"alarm", "", "alarm"}));
  EXPECT_EQ(sensor->fail_safe, std::optional<bool>(false));
  EXPECT_FALSE(sensor->tested);
  EXPECT_EQ(row(matrix, "P2")->effects, (std::vector<std::string>{"", "restricts", ""}));
  EXPECT_FALSE(row(matrix, "P2")->fail_safe.has_value());  // not entered is not "no"
  EXPECT_EQ(row(matrix, "leak detector of P2"), nullptr);  // its interlock calls it by its pump
}

TEST(CauseEffectMatrix, WhatNoInterlockKnowsStopsNothing) {
  BarrierStation given;
  given.more = "";
  const CauseEffect matrix = cause_effect(station(given.text()));
  ASSERT_EQ(matrix.rows.size(), 3U);
  for (const char* cause : {"S1", "leak detector of P1", "leak detector of P2"}) {
    ASSERT_NE(row(matrix, cause), nullptr) << cause;
    EXPECT_EQ(row(matrix, cause)->effects, std::vector<std::string>(3)) << cause;
    EXPECT_TRUE(row(matrix, cause)->tested) << cause;
  }
}

}  // namespace
}  // namespace forecourse::studies
