// What the cases of us-federal cannot say one by one: dates that decide, alternatives, records beside the site file.
// SOURCE: [cfr_280, 280.12, 280.20, 280.33, 280.35, 280.41, 280.43, 280.53]
#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/site/read.h"

namespace forecourse::checks {
namespace {

constexpr site::Date today{2026, 11, 30, {}};

std::vector<BoundRequirement> rules_of(const std::string& id_or_route) {
  std::vector<BoundRequirement> out;
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      const bool named = rule.entered->id.text == id_or_route || rule.entered->route.text == id_or_route;
      if (rule.set->id.text == "us-federal" && named) out.push_back(rule);
    }
  }
  return out;
}

std::vector<Finding> findings(const std::string& rule, const std::string& text,
                              const site::records::Records* records = nullptr) {
  const auto read = site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n" + text);
  for (const Diagnostic& d : read.diagnostics) {
    EXPECT_TRUE(d.severity != Severity::error || d.message.starts_with("no line goes")) << d.message;
  }
  Facts facts{read.value, today};
  facts.records = records;
  const std::vector<BoundRequirement> rules = rules_of(rule);
  EXPECT_FALSE(rules.empty()) << rule;
  return check_rules(facts, rules);
}

FindingState state(const std::string& rule, const std::string& text, const site::records::Records* records = nullptr) {
  const std::vector<Finding> found = findings(rule, text, records);
  EXPECT_EQ(found.size(), 1U) << rule;
  return found.empty() ? FindingState::does_not_apply : found.front().state;
}

std::string tank(const std::string& more) {
  return "[[product]]\nid = \"regular\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n" +
         more + "\n";
}

std::string line(const std::string& more) {
  return tank("") +
         "[[pump]]\nid = \"P1\"\ntank = \"T1\"\n[[dispenser]]\nid = \"D1\"\n[[dispenser.inlet]]\nproduct = "
         "\"regular\"\n[[line]]\nid = \"trunk\"\nfrom = \"P1\"\nto = \"D1.regular\"\nlength = \"60 ft\"\n" +
         more + "\n";
}

TEST(FederalRules, ATankOfTheLastOldDayNeedsNoSecondWall) {
  const auto of = [](const char* day) {
    return state("tank-secondary-containment", tank(std::string("double_wall = false\ninstalled = ") + day));
  };
  EXPECT_EQ(of("2016-04-11"), FindingState::does_not_apply);
  EXPECT_EQ(of("2016-04-12"), FindingState::falls_short);
}

TEST(FederalRules, ALineReplacedByHalfIsNew) {
  const auto of = [](const char* share) {
    return state("line-secondary-containment",
                 line(std::string("double_wall = false\ninstalled = 2001-01-01\nreplaced = 2019-01-01\n") + share));
  };
  EXPECT_EQ(of("replaced_share = \"49 %\""), FindingState::does_not_apply);
  EXPECT_EQ(of("replaced_share = \"50 %\""), FindingState::falls_short);
  EXPECT_EQ(of(""), FindingState::not_determined);
}

TEST(FederalRules, ADispenserOnOldConnectorsIsNotNew) {
  const auto of = [](const char* connectors, const char* valve) {
    return state("dispenser-sump-fitted", tank("") + "[[dispenser]]\nid = \"D1\"\ninstalled = 2020-01-01\n" +
                                              connectors + "\n[[dispenser.inlet]]\nproduct = \"regular\"\n" + valve);
  };
  EXPECT_EQ(of("connectors_installed = 2020-01-01", ""), FindingState::falls_short);
  EXPECT_EQ(of("connectors_installed = 2010-01-01", ""), FindingState::does_not_apply);
  EXPECT_EQ(of("connectors_installed = 2020-01-01", "shear_valve = { installed = 2012-01-01 }"),
            FindingState::does_not_apply);
  EXPECT_EQ(of("", ""), FindingState::not_determined);
}

TEST(FederalRules, OneWayOfMonitoringIsEnough) {
  EXPECT_EQ(state("tank-monitored", tank("installed = 2010-01-01\nstatistics = { made = 2026-11-10 }")),
            FindingState::meets);
  EXPECT_EQ(state("tank-monitored", tank("installed = 2018-01-01\nstatistics = { made = 2026-11-10 }")),
            FindingState::not_determined);
  EXPECT_EQ(state("tank-monitored", tank("installed = 2018-01-01\ninterstice = { alarm = false, monitored = "
                                         "2026-10-01 }")),
            FindingState::falls_short);
}

/// From April 2026 on inventory control serves no tank: it did for ten years, and later tanks never had it.
TEST(FederalRules, InventoryControlHasRunOut) {
  EXPECT_EQ(
      state("tank-tightness-test", tank("installed = 2016-04-11\nmonitored_by = \"inventory\"\ntested = 2026-01-01")),
      FindingState::does_not_apply);
}

TEST(FederalRules, ATankAboveGroundIsExempt) {
  for (const char* rule : {"tank-secondary-containment", "tank-interstice-alarm", "tank-gauge-leak-test"}) {
    EXPECT_EQ(state(rule, tank("above_ground = true\ninstalled = 2010-01-01")), FindingState::does_not_apply) << rule;
  }
}

TEST(FederalRules, SmallTransfersNeedNoSpillContainer) {
  const auto of = [](const char* gallons) {
    return state("spill-container-fitted",
                 tank(std::string("largest_transfer = \"") + gallons + " gal\"\n[[tank.fill]]\nid = \"F1\""));
  };
  EXPECT_EQ(of("25"), FindingState::does_not_apply);
  EXPECT_EQ(of("26"), FindingState::falls_short);
}

site::records::Test test_of(site::records::TestKind kind, const char* part, site::Date day, site::Fact passed) {
  site::records::Test out;
  out.kind = kind;
  out.part.text = part;
  out.at.day = day;
  out.passed = passed;
  return out;
}

TEST(FederalRules, TheLaterOfSiteAndRecordsCountsAndAFailedTestDoesNot) {
  using site::records::TestKind;
  const std::string site = tank("[[tank.fill]]\nid = \"F1\"\nspill_container = { tested = 2020-01-01 }");
  site::records::Records records;
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::falls_short);
  records.tests.push_back(test_of(TestKind::spill_container, "F2", {2026, 2, 3, {}}, true));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::falls_short);
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 3, {}}, false));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::not_determined);
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 4, {}}, true));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::meets);
  const std::string later = tank("[[tank.fill]]\nid = \"F1\"\nspill_container = { tested = 2026-06-01 }");
  EXPECT_NE(findings("spill-container-tested", later, &records).front().reason.find("last on 2026-06-01"),
            std::string::npos);
}

/// A failed test after a pass leaves it open until a later one is passed.
TEST(FederalRules, AFailAfterAPassLeavesItOpen) {
  using site::records::TestKind;
  const std::string site = tank("[[tank.fill]]\nid = \"F1\"\nspill_container = { volume = \"5 gal\" }");
  site::records::Records records;
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 3, {}}, true));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::meets);
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 4, {}}, false));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::not_determined);
  EXPECT_EQ(findings("spill-container-tested", site, &records).front().change,
            "its last test failed; mend it and test again");
  const std::string entered = tank("[[tank.fill]]\nid = \"F1\"\nspill_container = { tested = 2026-02-05 }");
  EXPECT_EQ(state("spill-container-tested", entered, &records), FindingState::meets);
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 6, {}}, true));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::meets);
}

TEST(FederalRules, ATestWithoutAnOutcomeProvesNothing) {
  using site::records::TestKind;
  const std::string site = tank("[[tank.fill]]\nid = \"F1\"\nspill_container = { volume = \"5 gal\" }");
  site::records::Records records;
  records.tests.push_back(test_of(TestKind::spill_container, "F1", {2026, 2, 3, {}}, std::nullopt));
  EXPECT_EQ(state("spill-container-tested", site, &records), FindingState::not_determined);
}

/// Of two fills without ids, the better one does not stand for both.
TEST(FederalRules, EachOfTwoFillsWithoutAnIdIsJudged) {
  const std::string site = tank(
      "[[tank.fill]]\nspill_container = { tested = 2026-02-05 }\n"
      "[[tank.fill]]\nspill_container = { tested = 2020-02-05 }");
  const std::vector<Finding> found = findings("spill-container-tight", site);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].subject, "T1 fill 1");
  EXPECT_EQ(found[0].state, FindingState::meets);
  EXPECT_EQ(found[1].subject, "T1 fill 2");
  EXPECT_NE(found[1].state, FindingState::meets);
}

/// Its size alone monitors no tank: somebody must have gauged it.
TEST(FederalRules, ASmallTankIsGaugedEvery30Days) {
  const std::string small = "installed = 2012-06-01\nmonitored_by = \"manual-gauging\"\ncapacity = \"550 gal\"\n";
  EXPECT_EQ(state("tank-gauged-alone", tank(small)), FindingState::not_determined);
  site::records::Records records;
  site::records::Dip dip;
  dip.tank.text = "T1";
  dip.depth = Length::from_si(0.5);
  dip.by.text = "stick";
  dip.at.day = {2026, 11, 20, {}};
  records.dips.push_back(dip);
  EXPECT_EQ(state("tank-gauged-alone", tank(small), &records), FindingState::meets);
  records.dips.front().by.text = "gauge";
  EXPECT_EQ(state("tank-gauged-alone", tank(small), &records), FindingState::not_determined);
}

/// Its size alone keeps a large tank from being gauged by hand, whatever is entered of it.
TEST(FederalRules, ALargeTankIsNotGaugedAlone) {
  const auto of = [](const char* capacity) {
    return state("tank-gauged-alone",
                 tank("installed = 2012-06-01\nreading = { depth = \"20 in\", at = \"3 ft\", taken = "
                      "2026-11-20 }\ncapacity = \"" +
                      std::string(capacity) + "\""));
  };
  EXPECT_EQ(of("17611 gal"), FindingState::does_not_apply);
  EXPECT_EQ(of("1001 gal"), FindingState::does_not_apply);
  EXPECT_EQ(of("1000 gal"), FindingState::not_determined);  // by a listed diameter it may be
  EXPECT_EQ(of("550 gal"), FindingState::not_determined);
}

/// A method of which it is not known whether it serves does not stand before one that does.
TEST(FederalRules, OfAlternativesThatWhichIsKnownToApplyComesBack) {
  const std::string small =
      "installed = 2012-06-01\ncapacity = \"550 gal\"\n"
      "reading = { depth = \"20 in\", at = \"3 ft\", taken = 2026-10-01 }\n";
  const std::vector<Finding> found = findings("tank-monitored", tank(small));
  ASSERT_EQ(found.size(), 1U);
  ASSERT_TRUE(found.front().recurrence);
  EXPECT_EQ(found.front().recurrence->open, "");
  EXPECT_EQ(found.front().recurrence->what.find("by hand"), std::string::npos) << found.front().recurrence->what;
}

/// A walk-through in which everything was at fault is to be made again.
TEST(FederalRules, AWalkThroughOfNothingInOrderProvesNothing) {
  site::records::Records records;
  site::records::Inspection walk;
  walk.at.day = {2026, 11, 20, {}};
  walk.kind.text = "30-day";
  walk.items.emplace_back();
  walk.items.back().in_order = false;
  records.inspections.push_back(walk);
  EXPECT_EQ(state("walk-through-30-days", "", &records), FindingState::not_determined);
  records.inspections.front().items.emplace_back();
  records.inspections.front().items.back().in_order = true;
  EXPECT_EQ(state("walk-through-30-days", "", &records), FindingState::meets);
}

/// The first test after a repair counts, not the last.
TEST(FederalRules, ARepairIsProvedByTheFirstTestAfterIt) {
  using site::records::TestKind;
  const std::string site = tank("repaired = 2025-03-01\ntested = 2026-03-01");
  EXPECT_EQ(state("repair-tested", site), FindingState::falls_short);
  site::records::Records records;
  records.tests.push_back(test_of(TestKind::tank_tightness, "T1", {2025, 3, 20, {}}, true));
  EXPECT_EQ(state("repair-tested", site, &records), FindingState::meets);
  EXPECT_EQ(state("repair-tested", tank("repaired = 2026-11-20\ntested = 2024-01-01")), FindingState::not_determined)
      << "ten days after the repair it is not yet overdue";
}

TEST(FederalRules, OnlyALargeSpillMustBeReported) {
  const auto of = [](double gallons, site::Fact reported) {
    site::records::Records records;
    site::records::Incident incident;
    incident.at.day = {2026, 10, 5, {}};
    incident.kind.text = "release";
    incident.released = Volume::from_si(cubic_meters_from_gallons(gallons));
    incident.reported = reported;
    records.incidents.push_back(incident);
    return state("spill-reported", tank(""), &records);
  };
  EXPECT_EQ(of(25.0, false), FindingState::does_not_apply);
  EXPECT_EQ(of(25.1, false), FindingState::falls_short);
  EXPECT_EQ(of(25.1, true), FindingState::meets);
  EXPECT_EQ(of(25.1, std::nullopt), FindingState::not_determined);
}

TEST(FederalRules, ABlendBeyondTheBordersNeedsProof) {
  const auto of = [](const char* product) {
    return state("tank-compatible", std::string("[[product]]\nid = \"f\"\n") + product +
                                        "\n[[tank]]\nid = \"T1\"\nproduct = \"f\"\ncompatible = false\n");
  };
  EXPECT_EQ(of("kind = \"gasoline-e10\""), FindingState::does_not_apply);
  EXPECT_EQ(of("kind = \"diesel-b20\""), FindingState::does_not_apply);
  EXPECT_EQ(of("kind = \"gasoline-e15\""), FindingState::falls_short);
  EXPECT_EQ(of("kind = \"other\""), FindingState::not_determined);
  EXPECT_EQ(of("kind = \"other\"\nbiodiesel = \"21 %\""), FindingState::falls_short);
}

}  // namespace
}  // namespace forecourse::checks
