// SOURCE: closed form: exponential cooling, a leak law of exponent 1 (pressure falls exponentially), Boyle's law.
// SOURCE: [cfr_280, 280.44(a) and (b)], the published rates.
#include "forecourse/studies/line_test/line_test.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/line_test/read_line_test_options.h"
#include "forecourse/studies/line_test/shut_line.h"

namespace forecourse::test {
namespace {

using namespace studies;

const char* const station = R"site(
format = 1
[site]
name = "Line test (invented)"
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "740 kg/m3"
viscosity = "0.5 cP"
isothermal_bulk_modulus = "0.914 GPa"
[[tank]]
id = "T1"
product = "regular"
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "30 psi", per_flow_squared = "0.0019 psi/gpm^2" }
check_valve = true
leak_detector = { kind = "electronic", detects = "3 gph", at = "10 psi", acts_within = "1 h", opening_time = "2 s", restricted = "3 gph", tested = 2026-05-02, quiet_tests = [{ detects = "0.2 gph", at = "28 psi", takes = "45 min" }, { detects = "0.1 gph", at = "42 psi", takes = "2 h" }] }
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "180 ft"
bore = "2.00 in"
wall = "0.154 in"
modulus = "200 GPa"
loss = 1
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "regular"
  connection = "tee"
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  lift = "12 ft"
  loss = { per_flow_squared = "0.2 psi/gpm^2" }
)site";

std::string station_text() { return station; }

site::Site read(const std::string& text = station_text()) {
  const Parsed<site::Site> parsed = site::read_site(text);
  EXPECT_TRUE(parsed.ok()) << (parsed.diagnostics.empty() ? "" : parsed.diagnostics.front().message);
  return parsed.value;
}

double gph(double rate) { return cubic_meters_from_gallons(rate) / 3600.0; }
double as_gph(double si) { return si / gph(1.0); }

LineTestTexts warm() {
  LineTestTexts texts;
  texts.warmer = {"18 degF"};
  texts.time_constant = "1.5 h";
  texts.expansion = "0.00067 1/degF";
  return texts;
}

LineTestResult studied(const LineTestTexts& texts, const site::Site& site = read()) {
  const Parsed<LineTestOptions> options = read_line_test_options(texts, Asker::command);
  EXPECT_TRUE(options.ok()) << (options.diagnostics.empty() ? "" : options.diagnostics.front().message);
  return study_line_test(site, options.value);
}

// 180 ft of 2.00 in hold 29.375 gal; 29.375 x 0.00067 x 18 / 1.5 = 0.236 gal/h; 1.5 ln(0.236 / 0.05) = 2.33 h.
TEST(LineTest, SeemingLeakOfWarmFuel) {
  const LineTestResult result = studied(warm());
  ASSERT_EQ(result.lines.size(), 1u);
  const ThermalTold& thermal = result.lines[0].thermal;
  EXPECT_NEAR(as_gph(*thermal.at_start), 0.236, 0.02 * 0.236);
  EXPECT_NEAR(hours_from_seconds(thermal.wait), 2.33, 0.02 * 2.33);
  EXPECT_NEAR(as_gph(*thermal.at_start), 29.375 * 0.00067 * 18.0 / 1.5, 1e-4);  // the volume is rounded
  EXPECT_TRUE(thermal.firm);
}

/// SOURCE: closed form: 320 ft of 3.00 in hold 117.50 gal; 117.50 x 0.00046 x 12 / 2.5 = 0.2594 gph, a gain; down to
/// 0.05 gph in 2.5 ln(0.2594 / 0.05) = 4.12 h; a leak of 0.1 gph cancels it at 2.5 ln 2.594 = 2.38 h
TEST(LineTest, ALineOfWhichNoHeightIsEntered) {
  const site::Site site = read(R"site(
format = 1
[site]
name = "No heights (invented)"
[[product]]
id = "diesel"
kind = "diesel-b0"
[[tank]]
id = "T1"
product = "diesel"
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "30.0 psi", per_flow_squared = "0.0020 psi/gpm^2" }
check_valve = true
[[line]]
id = "main"
from = "P1"
to = "D1.diesel"
length = "320 ft"
bore = "3.00 in"
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "diesel"
  connection = "tee"
  [[dispenser.hose]]
  id = "D1.a"
  product = "diesel"
  loss = "0.17 psi/gpm^2"
)site");
  LineTestOptions options;
  const double colder = -12.0 / 1.8;
  options.warmer = {colder, colder};
  options.time_constant = 2.5 * 3600.0;
  options.expansion = 0.00046 * 1.8;
  options.limit = gph(0.05);
  options.leak = gph(0.1);
  const LineTest line = study_line_test(site, options).lines.at(0);
  EXPECT_EQ(line.problem, "");
  EXPECT_NEAR(line.volume, cubic_meters_from_gallons(117.50), cubic_meters_from_gallons(0.005));
  EXPECT_NEAR(as_gph(*line.thermal.at_start), -0.2594, 5e-5);
  EXPECT_NEAR(line.thermal.wait / 3600.0, 4.115, 5e-3);
  EXPECT_NEAR(*line.volume_test.cancels_at / 3600.0, 2.383, 5e-3);
  EXPECT_NEAR(*line.held, pascal_from_psi(30.0), 1.0);
}

TEST(LineTest, ExpansionOfTheLineCountsAgainstTheFuels) {
  LineTestTexts texts = warm();
  texts.line_expansion = "0.00067 1/degF";
  const LineTestResult result = studied(texts);
  EXPECT_EQ(*result.lines[0].thermal.at_start, 0.0);
  EXPECT_EQ(result.lines[0].thermal.wait, 0.0);
}

// Colder fuel: leak and warming cancel at tau ln(R0 / q), and it is hidden until tau ln(R0 / (q - threshold)).
TEST(LineTest, AColdLineHidesALeak) {
  LineTestTexts texts = warm();
  texts.warmer = {"-18 degF"};
  texts.leak = "0.1 gph";
  const LineTest line = studied(texts).lines[0];
  const double first = -as_gph(*line.thermal.at_start);
  EXPECT_NEAR(hours_from_seconds(*line.volume_test.cancels_at), 1.5 * std::log(first / 0.1), 1e-6);
  EXPECT_NEAR(hours_from_seconds(*line.volume_test.hidden_until), 1.5 * std::log(first / 0.05), 1e-6);
  EXPECT_FALSE(line.volume_test.false_until);
}

TEST(LineTest, PressurePerDegree) {
  const LineTest line = studied(warm()).lines[0];
  const double yield = 1.0 / 0.914e9 + 2.00 / (0.154 * 200e9);
  EXPECT_NEAR(*line.pressure_test.per_degree, per_kelvin_from_per_fahrenheit(0.00067) / yield, 1.0);
  LineTestTexts texts = warm();
  texts.per_degree = "40 psi/degF";
  EXPECT_NEAR(*studied(texts).lines[0].pressure_test.per_degree, 1.8 * pascal_from_psi(40.0), 1e-3);
}

// A leak of exponent 1 empties the line's pressure as exp(-q t / (C p)).
TEST(LineTest, PressureLostByALeak) {
  LineTestTexts texts = warm();
  texts.warmer = {"0 degF"};
  texts.leak = "0.01 gph";
  texts.exponent = "1";
  texts.pressure = "45 psi";
  texts.duration = "10 min";
  const LineTest line = studied(texts).lines[0];
  const double start = pascal_from_psi(45.0);
  const double left = std::exp(-gph(0.01) * 600.0 / (*line.compliance * start));
  EXPECT_NEAR(line.pressure_test.leak_drop, start * (1.0 - left), 1e-3 * start * (1.0 - left));  // as the header says
  EXPECT_NEAR(line.pressure_test.drop, line.pressure_test.leak_drop, 1e-9 * start);
}

TEST(ShutLine, ADropByTemperatureIsThatOfTheVolume) {
  ShutLine line;
  line.volume = 0.1;
  line.compliance = 1e-10;
  line.shrinks = 1.2e-3;
  line.warmer = 0.01;
  line.atmosphere = 101325.0;
  line.first_pressure = 3e5;
  const Fading fading = fading_of(parts::SteadyCooling{3600.0}, 0.0, 3600.0);
  const ShutLineCourse course = course_of(line, {0.0, 0.5}, fading);
  EXPECT_NEAR(course.pressure.back(), 3e5 - 0.1 * 1.2e-3 * 0.01 * (1.0 - std::exp(-1.0)) / 1e-10, 1e-3);
}

// With a pocket: C (p - p0) + G/p0 - G/p = -lost, by hand at G = p0 V0.
TEST(ShutLine, APocketTakesUpMostOfIt) {
  ShutLine line;
  line.volume = 0.1;
  line.compliance = 1e-10;
  line.shrinks = 1.2e-3;
  line.warmer = 0.1;
  line.atmosphere = 1e5;
  line.first_pressure = 3e5;
  line.pocket = 1e-3;
  const Fading fading = fading_of(parts::SteadyCooling{3600.0}, 0.0, 36000.0);
  const double pressure = course_of(line, {0.0, 0.5}, fading).pressure.back() + 1e5;
  const double lost = 0.1 * 1.2e-3 * 0.1 * (1.0 - std::exp(-10.0));
  EXPECT_NEAR(1e-10 * (pressure - 4e5) + 1e-3 - 1e-3 * 4e5 / pressure, -lost, 1e-12);
  EXPECT_GT(pressure, 3.9e5);
}

TEST(ShutLine, RelievesWhenItWarms) {
  ShutLine line;
  line.volume = 0.1;
  line.compliance = 1e-10;
  line.shrinks = 1.2e-3;
  line.warmer = -1.0;
  line.atmosphere = 1e5;
  line.first_pressure = 2e5;
  line.relief = 3e5;
  const ShutLineCourse course = course_of(line, {0.0, 0.5}, fading_of(parts::SteadyCooling{3600.0}, 0.0, 3600.0));
  EXPECT_NEAR(course.pressure.back(), 3e5, 1.0);
  EXPECT_TRUE(course.relieved_at.has_value());
}

TEST(LineTest, WhatADropProves) {
  LineTestTexts texts = warm();
  texts.warmer = {"0 degF"};
  texts.pressure = "45 psi";
  texts.duration = "1 h";
  texts.drop = "2 psi";
  texts.exponent = "1";
  const LineTest line = studied(texts).lines[0];
  ASSERT_TRUE(line.pressure_test.passed);
  const DropProof& proof = *line.pressure_test.passed;
  // p = p0 exp(-q t / (C p0)): q = C p0 ln(45 / 43) / t
  const double q = *line.compliance * pascal_from_psi(45.0) * std::log(45.0 / 43.0) / 3600.0;
  EXPECT_NEAR(proof.leak.high, q, 2e-3 * q);
  EXPECT_NEAR(proof.leak.low, q, 2e-3 * q);
  EXPECT_FALSE(proof.tight_line_drops);
  texts.warmer = {"-1 degF", "1 degF"};  // a spread widens it, and a tight line can fail
  const DropProof wide = *studied(texts).lines[0].pressure_test.passed;
  EXPECT_EQ(wide.leak.low, 0.0);
  EXPECT_GT(wide.leak.high, 10.0 * q);
  EXPECT_TRUE(wide.tight_line_drops);
  texts.vapor = "0.1 gal";  // a pocket hides more
  EXPECT_GT(studied(texts).lines[0].pressure_test.passed->leak.high, wide.leak.high);
}

TEST(LineTest, DetectorsAndQuietTimes) {
  LineTestTexts texts = warm();
  texts.quiet = {"5 h", "40 min"};
  texts.stopped = "6 h";
  const LineTest line = studied(texts).lines[0];
  ASSERT_EQ(line.detectors.size(), 1u);
  const DetectorTold& detector = line.detectors[0];
  ASSERT_EQ(detector.detections.size(), 3u);
  EXPECT_EQ(*detector.detections[0].false_until, 0.0);  // 0.236 gal/h never looks like 3 gal/h
  const double first = as_gph(*line.thermal.at_start);
  EXPECT_NEAR(hours_from_seconds(*detector.detections[1].false_until), 1.5 * std::log(first / 0.2), 1e-6);
  EXPECT_NEAR(hours_from_seconds(*detector.detections[1].quiet_needed), 1.5 * std::log(first / 0.1) + 0.75, 1e-6);
  EXPECT_EQ(*detector.detections[1].quiet_enough, 1);
  EXPECT_NEAR(hours_from_seconds(*detector.detections[2].quiet_needed), 1.5 * std::log(first / 0.05) + 2.0, 1e-6);
  ASSERT_TRUE(detector.restart);
  EXPECT_NEAR(detector.restart->lost, pascal_from_psi(30.0), 1.0);  // the whole of it
  EXPECT_NEAR(*detector.restart->refill_time, *line.compliance * pascal_from_psi(30.0) / gph(3.0), 0.01);
}

// 3 gal/h at 10 psi is 5.196 gal/h at 30 psi through a sharp hole, 9 through a narrow crack; 189 mL in a minute at 10.
TEST(LineTest, ExpectedCatch) {
  const DetectorTold detector = studied(warm()).lines[0].detectors[0];
  ASSERT_EQ(detector.catches.size(), 2u);
  EXPECT_NEAR(detector.catches[0].minute, 189.27e-6, 0.01e-6);
  EXPECT_NEAR(as_gph(detector.catches[1].rate), 5.196152, 1e-6);
  EXPECT_NEAR(as_gph(detector.catches[1].laminar), 9.0, 1e-9);
  EXPECT_NEAR(detector.orifice, 0.694507e-3, 1e-8);  // LEAK-hole of check_values.csv, computed
}

TEST(LineTest, NothingOfTheGroundIsNotDetermined) {
  const LineTest line = studied({}).lines[0];
  EXPECT_NE(line.thermal.problem.find("give --warmer"), std::string::npos);
  EXPECT_NE(line.pressure_test.problem.find("--warmer"), std::string::npos);
}

TEST(LineTest, GroundFromTheShelfIsIllustrative) {
  LineTestTexts texts;
  texts.warmer = {"10 degF"};
  texts.expansion = "0.00067 1/degF";
  const LineTestResult result = studied(texts);
  EXPECT_FALSE(result.lines[0].thermal.firm);
  EXPECT_FALSE(result.lines[0].thermal.at_start);
  bool told = false;
  for (const DefaultUsed& used : result.defaults) {
    told = told || (used.what == "conductivity of the ground" && used.status == DefaultStatus::illustrative);
  }
  EXPECT_TRUE(told);
}

const checks::Finding& finding(const std::vector<checks::Finding>& all, const std::string& rule) {
  for (const checks::Finding& f : all) {
    if (f.rule == rule) return f;
  }
  ADD_FAILURE() << rule;
  return all.front();
}

TEST(LineTest, Findings) {
  LineTestTexts texts = warm();
  texts.warmer = {"0 degF"};
  texts.pressure = "45 psi";
  texts.drop = "2 psi";
  texts.quiet = {"5 h"};
  const site::Site site = read();
  const site::Date on{2026, 11, 30, {}};
  const auto found = checks::check_line_test(site, studied(texts), on);
  using enum checks::FindingState;
  EXPECT_EQ(finding(found, "leak-detector-rate").state, meets);
  EXPECT_EQ(finding(found, "leak-detector-time").state, meets);
  EXPECT_EQ(finding(found, "leak-detector-yearly").state, meets);
  EXPECT_EQ(finding(found, "line-tightness-test").state, meets);
  EXPECT_EQ(finding(found, "line-yearly").state, meets);  // its detector finds 0.2 gal/h in the quiet times
  texts.pressure = "31 psi";
  EXPECT_EQ(finding(checks::check_line_test(site, studied(texts), on), "line-tightness-test").state, not_determined);
  texts.pressure = "45 psi";
  texts.warmer = {"18 degF"};
  EXPECT_EQ(finding(checks::check_line_test(site, studied(texts), on), "line-tightness-test").state, not_determined);
  EXPECT_EQ(
      finding(checks::check_line_test(site, studied(texts), site::Date{2027, 6, 1, {}}), "leak-detector-yearly").state,
      falls_short);
  // a test that is yet to come is none
  EXPECT_EQ(
      finding(checks::check_line_test(site, studied(texts), site::Date{2026, 1, 1, {}}), "leak-detector-yearly").state,
      not_determined);
}

/// A station that names its rules is not held against those of others; what was found stays as information.
TEST(LineTest, FederalRulesAreNotForAStationOfOthers) {
  site::Site site = read();
  const site::Date late{2027, 6, 1, {}};
  site.rules = {{"eu", {}}};
  for (const checks::Finding& one : checks::check_line_test(site, studied(warm()), late)) {
    EXPECT_EQ(one.state, checks::FindingState::does_not_apply) << one.rule;
    EXPECT_EQ(one.reason, "by the rules of the site file");
    EXPECT_TRUE(one.change.empty());
  }
  site.rules.push_back({"us-federal", {}});
  EXPECT_EQ(finding(checks::check_line_test(site, studied(warm()), late), "leak-detector-yearly").state,
            checks::FindingState::falls_short);
}

/// Nothing that is not entered is taken for the hour of the rule, nor a watch of long ago for one of this month.
TEST(LineTest, WhatIsNotEnteredIsNotMet) {
  using enum checks::FindingState;
  const site::Date on{2026, 11, 30, {}};
  std::string text = station_text();
  const std::string time = ", acts_within = \"1 h\"";
  text.replace(text.find(time), time.size(), "");
  const site::Site site = read(text);
  EXPECT_EQ(finding(checks::check_line_test(site, study_line_test(site, {}), on), "leak-detector-time").state,
            not_determined);
  const auto watched = [&](const std::string& monitored) {
    std::string with = station_text();
    const std::string length = "length = \"180 ft\"";
    with.replace(with.find(length), length.size(), length + "\ninterstice = { alarm = true" + monitored + " }");
    const site::Site one = read(with);
    return finding(checks::check_line_test(one, study_line_test(one, {}), on), "line-yearly").state;
  };
  EXPECT_EQ(watched(""), meets);
  EXPECT_EQ(watched(", monitored = 2026-11-20"), meets);
  EXPECT_EQ(watched(", monitored = 2019-11-05"), not_determined);
}

std::string with_detector(const std::string& figures) {
  std::string text = station_text();
  const std::string old = "detects = \"3 gph\", at = \"10 psi\"";
  return text.replace(text.find(old), old.size(), figures);
}

// 3 gal/h at 10 psi is 4.24 to 6 gal/h at 20 psi: what lies between depends on the form of the leak.
TEST(LineTest, ADetectorAtItsOwnPressure) {
  const site::Date on{2026, 11, 30, {}};
  const auto state = [&](const std::string& figures) {
    const site::Site site = read(with_detector(figures));
    return finding(checks::check_line_test(site, studied(warm(), site), on), "leak-detector-rate").state;
  };
  using enum checks::FindingState;
  EXPECT_EQ(state("detects = \"4 gph\", at = \"20 psi\""), meets);
  EXPECT_EQ(state("detects = \"5 gph\", at = \"20 psi\""), not_determined);
  EXPECT_EQ(state("detects = \"7 gph\", at = \"20 psi\""), falls_short);
}

TEST(LineTest, WrongOptions) {
  LineTestTexts texts;
  texts.leak = "-1 gph";
  texts.ground = "clay";
  texts.per_degree = "3 psi";
  texts.warmer = {"1 degF", "2 degF", "3 degF"};
  const auto options = read_line_test_options(texts, Asker::command);
  EXPECT_EQ(options.diagnostics.size(), 4u);
  LineTestOptions other;
  other.product = "plain";
  EXPECT_EQ(study_line_test(read(), other).errors.size(), 1u);
}

TEST(LineTest, ClosedAtNightIsAQuietTime) {
  const site::Site site = read(station_text() + "[operations]\nopens = \"06:00\"\ncloses = \"22:00\"\n");
  const LineTestResult result = studied(warm(), site);
  ASSERT_EQ(result.quiet.size(), 1u);
  EXPECT_EQ(result.quiet[0], 8.0 * 3600.0);
}

}  // namespace
}  // namespace forecourse::test
