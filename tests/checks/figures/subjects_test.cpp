// No two parts that a figure tells of go by one name: of alternatives the best counts for each name.
#include <gtest/gtest.h>

#include <filesystem>
#include <set>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/store/read_records.h"
#include "support/stations.h"

namespace forecourse::checks {
namespace {

void expect_unique(const site::Site& site, const site::records::Records& records) {
  const studies::TankResult tank = studies::study_tank(site, {});
  const studies::ContainmentResult containment = studies::study_containment(site, {});
  Facts facts{site, {2026, 11, 30, {}}};
  facts.records = &records;
  facts.tank = &tank;
  facts.containment = &containment;
  for (const Figure& figure : figures()) {
    std::set<std::string> subjects;
    for (const FigureAt& at : figure.read(facts)) {
      EXPECT_TRUE(subjects.insert(at.subject).second) << figure.id << " of " << at.subject;
    }
  }
}

TEST(Subjects, AreUniqueOverTheExampleStations) {
  std::vector<SourceText> texts;
  const auto records = store::read_records(std::string(SITES_DIR) + "/records/hollin-gap", texts);
  ASSERT_TRUE(records.ok());
  for (const auto& entry : std::filesystem::directory_iterator(SITES_DIR)) {
    if (entry.path().extension() != ".toml") continue;
    SCOPED_TRACE(entry.path().filename().string());
    expect_unique(test::station(test::site_text(entry.path().stem().string())), records.value);
  }
}

constexpr const char* without_ids = R"site(format = 1
[site]
name = "Case (invented)"
[[product]]
id = "regular"
kind = "gasoline-e10"
[[tank]]
id = "T1"
product = "regular"
overfill_alarm = { tested = 2026-01-05 }
  [[tank.fill]]
  spill_container = { tested = 2026-01-05, repaired = 2025-12-20 }
  overfill_valve = { tested = 2026-01-05 }
  [[tank.fill]]
  spill_container = { tested = 2020-01-05, repaired = 2019-12-20 }
  overfill_valve = { tested = 2020-01-05 }
  [[tank.vent]]
  upward = true
  [[tank.vent]]
  upward = false
  [[tank.well]]
  water_depth = "10 ft"
  [[tank.well]]
  water_depth = "21 ft"
)site";

/// Parts without ids, and incidents of one kind and day at one part.
TEST(Subjects, AreUniqueWithoutIds) {
  site::records::Records records;
  for (const double hour : {9.0, 9.0, 17.5}) {
    site::records::Incident one;
    one.at.day = {2026, 5, 3, {}};
    one.at.time = Duration::from_si(3600.0 * hour);
    one.kind.text = "struck";
    records.incidents.push_back(one);
  }
  expect_unique(test::station(without_ids), records);
}

}  // namespace
}  // namespace forecourse::checks
