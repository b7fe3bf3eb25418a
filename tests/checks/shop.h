#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/delivery_checks.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/checks/vapor_checks.h"
#include "support/stations.h"

// A small invented shop on which the requirements that studies judge are tried.
namespace forecourse::checks {

/// By which its tests are judged.
inline constexpr site::Date today{2026, 11, 30, {}};

inline const std::string shop = R"(format = 1
[site]
rules = ["us-federal"]
[[product]]
id = "regular"
kind = "gasoline-e10"
gravity = "60 degAPI"
viscosity = "0.5 mPa.s"
[[product]]
id = "diesel"
kind = "diesel-b0"
[[tank]]
id = "T1"
product = "regular"
surface_elevation = "-8 ft"
capacity = "10000 gal"
installed = 2010-01-01
vapor_return = { kind = "two-point", pressure_test = { ullage = "5000 gal", nozzles = 6, end = "1.85 inH2O", tested = 2025-01-01 } }
  [[tank.fill]]
  id = "F1"
  drop_tube = { length = "12 ft", bore = "4 in", end_above_bottom = "5 in" }
  [[tank.vent]]
  id = "V1"
  shared = "stack"
  installed = 2010-01-01
  outlet_elevation = "13 ft"
  restrictor = false
  pipe = { length = "100 ft", bore = "2.067 in" }
  valve = { opens_at = "3 inH2O", vacuum_opens_at = "8 inH2O", pressure_leak = "0.05 ft3/h", vacuum_leak = "0.21 ft3/h", tested = 2025-01-01 }
[[tank]]
id = "T2"
product = "diesel"
  [[tank.vent]]
  id = "V2"
  shared = "own"
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "30 psi", per_flow_squared = "0.0019 psi/gpm^2" }
check_valve = true
leak_detector = { kind = "mechanical", detects = "3 gph", at = "10 psi", acts_within = "1 h", tested = 2026-05-02 }
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "180 ft"
bore = "2.00 in"
tested = 2026-05-02
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
[operations]
throughput = [{ product = "regular", per_month = "120000 gal" }]
)";

using Change = std::pair<std::string, std::string>;

inline std::string changed(std::string text, const Change& change) {
  const std::size_t at = text.find(change.first);
  EXPECT_NE(at, std::string::npos) << change.first;
  return at == std::string::npos ? text : text.replace(at, change.first.size(), change.second);
}

inline std::vector<Finding> vapor_of(const site::Site& site) {
  return check_vapor(site, studies::study_vapor(site, {}), today);
}

inline std::vector<Finding> lines_of(const site::Site& site) {
  return check_line_test(site, studies::study_line_test(site, {}), today);
}

/// With 400 gal/min into its gasoline.
inline std::vector<Finding> delivery_of(const site::Site& site) {
  studies::DeliveryResult result;
  studies::DropTold drop;
  drop.tank = "T1";
  drop.highest_rate = to_si(400.0, "gpm");
  result.runs.emplace_back().drops.push_back(drop);
  return check_delivery(site, result);
}

inline Finding finding(const std::vector<Finding>& all, const std::string& rule) {
  for (const Finding& one : all) {
    if (one.rule == rule) return one;
  }
  ADD_FAILURE() << "no finding " << rule;
  return {};
}

}  // namespace forecourse::checks
