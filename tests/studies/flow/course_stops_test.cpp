// The course told point by point: what the grade line shows is what the budget says. SOURCE: law of nature
#include "forecourse/studies/flow/course_stops.h"

#include <gtest/gtest.h>

#include <cmath>

#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::in_psi;
using test::site_text;
using test::station;

HoseFlow first_open_hose(const std::string& site) {
  const FlowResult result = study_flow(station(site_text(site)), {});
  for (const HoseFlow& hose : result.states.front().systems.front().hoses) {
    if (hose.open) return hose;
  }
  return {};
}

TEST(Course, EveryPointOfTheGradeLineIsWhatTheBudgetLeaves) {
  for (const char* site : {"hollin-gap", "thornby", "marle-cross", "site-s"}) {
    const HoseFlow hose = first_open_hose(site);
    ASSERT_GT(hose.grade_line.size(), 2U) << site;
    double total = 0.0;
    for (const BudgetRow& row : hose.budget) total += row.loss;
    // The solver's residual, summed over the way: far below what is shown.
    EXPECT_NEAR(total, 0.0, 1.0) << site;
    for (std::size_t i = 1; i < hose.grade_line.size(); ++i) {
      EXPECT_GE(hose.grade_line[i].distance, hose.grade_line[i - 1].distance) << site;
    }
    EXPECT_NEAR(hose.grade_line.back().grade, hose.grade_line.back().elevation, 1e-3) << site;
  }
}

TEST(Course, PartsStandBetweenTheirPlacesAndFallByTheirLoss) {
  const HoseFlow hose = first_open_hose("hollin-gap");
  const GradePoint* before = nullptr;
  const GradePoint* meter = nullptr;
  for (const GradePoint& p : hose.grade_line) {
    if (p.part == "meter") meter = &p;
    if (meter == nullptr) before = &p;
  }
  ASSERT_NE(meter, nullptr);
  ASSERT_NE(before, nullptr);
  EXPECT_EQ(before->place, "D1.regular at the dispenser");
  EXPECT_FALSE(meter->height_entered);
  EXPECT_EQ(meter->elevation, before->elevation);
  EXPECT_NEAR(before->pressure_gauge - meter->pressure_gauge, course_stops(hose).meter_loss.value_or(0.0), 1e-6);
}

TEST(Course, TheShearValveStandsAtItsGroove) {
  const CourseStops stops = course_stops(first_open_hose("hollin-gap"));
  ASSERT_TRUE(stops.shear_valve.has_value());
  EXPECT_EQ(stops.shear_valve->elevation, 0.0);
  EXPECT_TRUE(stops.shear_valve->height_entered);
}

TEST(CourseStops, LossesOfTheStopsAndOfTheRestAreThePumpsRise) {
  const HoseFlow hose = first_open_hose("hollin-gap");
  const CourseStops stops = course_stops(hose);
  double others = 0.0;
  for (const BudgetRow& row : hose.budget) {
    using network::ElementKind;
    if (row.kind == ElementKind::leak_detector || row.kind == ElementKind::connection ||
        row.kind == ElementKind::riser || row.kind == ElementKind::shear_valve || row.kind == ElementKind::nozzle ||
        row.kind == ElementKind::control_valve) {
      others += row.loss;
    }
  }
  const double told = *stops.line_loss + *stops.filter_loss + *stops.meter_loss + *stops.hose_loss + others;
  EXPECT_NEAR(in_psi(told), in_psi(*stops.pump_rise), 1e-3);
  EXPECT_EQ(stops.pump, "P1");
  EXPECT_EQ(stops.tank, "T1");
  EXPECT_EQ(stops.inlet, "D1.regular");
}

TEST(CourseStops, WhatWasEnteredAsOneIsNotTakenApart) {
  const CourseStops stops = course_stops(first_open_hose("site-s"));
  EXPECT_TRUE(stops.lumped_loss.has_value());
  EXPECT_FALSE(stops.meter_loss.has_value());
  EXPECT_FALSE(stops.hose_loss.has_value());
  EXPECT_FALSE(stops.shear_valve.has_value());
}

TEST(CourseStops, AHoseWithoutACourseHasNoNumbers) {
  const CourseStops stops = course_stops({});
  EXPECT_FALSE(stops.pump_rise || stops.line_loss || stops.sump || stops.outlet);
}

}  // namespace
}  // namespace forecourse::studies
