// Exercises as a trainer sets them, entered as anybody would, with the answer worked by hand from the text of the rule.
// The stations and the state are invented.
// SOURCE: [cfr_280, 280.12, 280.20, 280.35(a)(1), 280.41(a)] [cfr_63_cccccc, 63.11117(b)]
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::checks {
namespace {

using States = std::map<std::pair<std::string, std::string>, const char*>;

/// What is judged of a station, by requirement and part.
States judged(const std::string& text, const std::string& own_rules = "") {
  const Parsed<site::Site> site = site::read_site(text);
  EXPECT_TRUE(site.ok()) << (site.diagnostics.empty() ? "" : site.diagnostics.front().message);
  std::vector<site::RuleSet> own;
  if (!own_rules.empty()) own.push_back(site::read_rule_set(own_rules).value);
  const Studied studied = study_for_checks(site.value, nullptr);
  const Facts facts = facts_of(site.value, studied, {2026, 11, 30, {}}, nullptr);
  States out;
  for (const Finding& one : all_findings(check_station(facts, studied, own))) {
    const bool is_new = out.emplace(std::pair(one.rule, one.subject), word(one.state)).second;
    EXPECT_TRUE(is_new) << one.rule << " is judged twice of " << one.subject;
  }
  return out;
}

void expect(const States& told, const States& by_hand) {
  for (const auto& [of, state] : by_hand) {
    const auto found = told.find(of);
    ASSERT_NE(found, told.end()) << of.first << " " << of.second;
    EXPECT_STREQ(found->second, state) << of.first << " " << of.second;
  }
}

const char* const harrow_fork = R"site(format = 1
[site]
name = "Harrow Fork (invented)"
rules = ["us-federal"]
[[product]]
id = "regular"
kind = "gasoline-e10"
[[tank]]
id = "T1"
product = "regular"
installed = 2016-04-11
double_wall = false
  [[tank.fill]]
  id = "F1"
  drop_tube = { end_above_bottom = "10 in" }
  [[tank.vent]]
  id = "V1"
  restrictor = true
  installed = 2015-10-13
[[tank]]
id = "T2"
product = "regular"
installed = 2016-04-12
double_wall = false
  [[tank.vent]]
  id = "V2"
  restrictor = true
[[tank]]
id = "T3"
product = "regular"
installed = 2006-11-09
double_wall = false
  [[tank.fill]]
  id = "F3"
  drop_tube = { end_above_bottom = "10 in" }
[[pump]]
id = "P1"
tank = "T1"
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "60 ft"
double_wall = false
installed = 2005-03-01
replaced = 2017-06-01
replaced_share = "60 %"
[[line]]
id = "gap"
from = "D1.regular"
to = "D2.regular"
length = "20 ft"
double_wall = false
installed = 2005-03-01
replaced = 2017-06-01
replaced_share = "40 %"
[[dispenser]]
id = "D1"
installed = 2018-05-01
connectors_installed = 2012-05-01
  [[dispenser.inlet]]
  product = "regular"
  connection = "tee"
[[dispenser]]
id = "D2"
installed = 2018-05-01
connectors_installed = 2018-05-01
  [[dispenser.inlet]]
  product = "regular"
[operations]
throughput = [{ product = "regular", per_month = "20000 gal" }]
)site";

/// Which parts of a station of many ages must have two walls, a sump, another overfill device, a longer drop tube?
TEST(Textbook, DatesDecideWhichTextApplies) {
  expect(judged(harrow_fork), {
                                  {{"tank-secondary-containment", "T1"}, "does not apply"},  // not after 11 April 2016
                                  {{"tank-secondary-containment", "T2"}, "falls short"},
                                  {{"tank-secondary-containment", "T3"}, "does not apply"},
                                  {{"line-secondary-containment", "trunk"}, "falls short"},   // 60 % is more than half
                                  {{"line-secondary-containment", "gap"}, "does not apply"},  // 40 % is less
                                  {{"dispenser-sump-fitted", "D1"}, "does not apply"},        // on old connectors
                                  {{"dispenser-sump-fitted", "D2"}, "falls short"},
                                  {{"vent-restrictor", "V1"}, "meets"},        // not after 13 October 2015
                                  {{"vent-restrictor", "V2"}, "falls short"},  // of its tank's day
                                  {{"submerged-fill", "F1"}, "falls short"},   // 10 in, of 6 in since 10 November 2006
                                  {{"submerged-fill", "F3"}, "meets"},         // 10 in, of 12 in until then
                              });
}

std::string alder_cross(const std::string& rate) {
  return R"site(format = 1
[site]
name = "Alder Cross (invented)"
rules = ["us-federal"]
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "740 kg/m3"
[[tank]]
id = "T1"
product = "regular"
installed = 2012-06-01
shape = { kind = "horizontal-cylinder", inside_diameter = "8 ft", length = "27 ft", heads = "flat" }
overfill_alarm = { at_share = "92 %", heard_at_fill = true }
gauge = { kind = "automatic", leak_tested = 2026-10-30 }
statistics = { made = 2026-11-10 }
  [[tank.fill]]
  id = "F1"
  spill_container = { double_wall = true, tested = 2023-11-29, monitored = 2026-11-05 }
  [[tank.fill]]
  id = "F2"
  spill_container = { double_wall = false, tested = 2023-11-29 }
)site" + rate;
}

/// An alarm at 92 % is above 90 %, but a minute before overfilling serves too: 8 % of 10,152 gal are 812 gal, 2.7 min
/// at 300 gal/min and 0.8 min at 1,000. A test of the gauge 31 days ago is late, a statistical one 20 days ago is not.
/// A spill container tested 3 years and a day ago serves where both its walls were watched within 30 days.
TEST(Textbook, OneOfSeveralWaysIsEnough) {
  const States by_hand{{{"tank-monitored", "T1"}, "meets"},
                       {{"spill-container-tight", "F1"}, "meets"},
                       {{"spill-container-tight", "F2"}, "falls short"},
                       {{"overfill-prevention", "T1"}, "meets"}};
  expect(judged(alder_cross("[[delivery]]\nid = \"load\"\nrate = \"300 gpm\"\n")), by_hand);
  expect(judged(alder_cross("[[delivery]]\nid = \"load\"\nrate = \"1000 gpm\"\n")),
         {{{"overfill-prevention", "T1"}, "falls short"}});
  expect(judged(alder_cross("")), {{{"overfill-prevention", "T1"}, "not determined"}});
}

const char* const brook_lane = R"site(format = 1
[site]
name = "Brook Lane (invented)"
display = "us"
rules = ["us-fire-code"]
[[product]]
id = "regular"
kind = "gasoline-e10"
[[tank]]
id = "T1"
product = "regular"
capacity = "10000 gal"
[[pump]]
id = "P1"
tank = "T1"
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "60 ft"
[[line]]
id = "gap"
from = "D1.regular"
to = "D2.regular"
length = "120 ft"
[[dispenser]]
id = "D1"
position = ["0 ft", "0 ft"]
  [[dispenser.inlet]]
  product = "regular"
  connection = "tee"
  shear_valve = { tested = 2026-05-30 }
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  curb = { length = "16 ft", bore = "0.75 in" }
[[dispenser]]
id = "D2"
position = ["120 ft", "0 ft"]
  [[dispenser.inlet]]
  product = "regular"
  shear_valve = { tested = 2026-05-29 }
  [[dispenser.hose]]
  id = "D2.a"
  product = "regular"
  curb = { length = "16 ft 6 in", bore = "0.75 in" }
[[emergency_stop]]
id = "E1"
position = ["101 ft", "0 ft"]
[[emergency_stop]]
id = "E2"
position = ["-99 ft", "0 ft"]
)site";

const char* const of_the_state = R"site(format = 1
id = "state-of-example"
title = "Forecourt rules of an invented state"
edition = "2025"
[[requirement]]
id = "stop-reach"
words = "an emergency stop stands within 30 m of each dispenser"
clause = "12.3"
seen = "text"
figure = "emergency-stop-reach"
at_most = "30 m"
[[requirement]]
id = "stop-clearance"
words = "an emergency stop stands at least 6 m from each dispenser"
clause = "12.3"
seen = "text"
figure = "emergency-stop-clearance"
at_least = "6 m"
[[requirement]]
id = "hose"
words = "a hose is no longer than 5 m"
clause = "14.1"
seen = "older-text"
figure = "hose-length"
at_most = "5 m"
[[requirement]]
id = "trip"
words = "a shear valve is tripped every 6 months"
clause = "15"
seen = "told"
figure = "shear-valve-tested"
every = "6 months"
)site";

/// A state asks in meters of a station in feet. 99 ft are 30.18 m: within the 100 ft of the fire code, beyond the
/// state's 30 m. 19 ft are 5.79 m: nearer than either allows. 16 ft 6 in are 5.03 m: within 18 ft, beyond 5 m. Half a
/// year before 30 November is 30 May.
TEST(Textbook, AStateInMetersOverAStationInFeet) {
  expect(judged(brook_lane, of_the_state), {
                                               {{"emergency-stop-reach", "D1"}, "close"},  // 1 of 100 ft left
                                               {{"stop-reach", "D1"}, "falls short"},
                                               {{"stop-reach", "D2"}, "meets"},
                                               {{"emergency-stop-clearance", "E1"}, "falls short"},
                                               {{"stop-clearance", "E1"}, "falls short"},
                                               {{"stop-clearance", "E2"}, "meets"},
                                               {{"hose-length", "D2.a"}, "meets"},
                                               {{"hose", "D1.a"}, "meets"},
                                               {{"hose", "D2.a"}, "falls short"},
                                               {{"shear-valve-yearly", "D2.regular"}, "meets"},
                                               {{"trip", "D1.regular"}, "close"},  // due on this day
                                               {{"trip", "D2.regular"}, "falls short"},
                                           });
}

}  // namespace
}  // namespace forecourse::checks
