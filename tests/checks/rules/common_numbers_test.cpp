// Where the number that is commonly quoted differs from the text: each such place is handled as the text says. A test
// names the number of hearsay and the source of the one that holds.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "checks/shop.h"
#include "forecourse/base/api_units.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/fuel/vapor_pressure.h"
#include "forecourse/parts/vapor/emissions.h"
#include "forecourse/parts/vapor/stage_one.h"
#include "forecourse/parts/vapor/vent_table.h"
#include "forecourse/studies/flow/flow_cap.h"
#include "forecourse/studies/ledger/gauging.h"
#include "forecourse/studies/meter/limits.h"

namespace forecourse::checks {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

const BoundRequirement& rule(const std::string& set, const std::string& id) {
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& one : rules) {
      if (one.set->id.text == set && one.entered->id.text == id) return one;
    }
  }
  ADD_FAILURE() << "no requirement " << set << " " << id;
  return built_in_rules().front().front();
}

std::optional<double> least(const std::string& set, const std::string& id, const char* unit) {
  const std::optional<double> si = rule(set, id).at_least;
  return si ? std::optional(from_si(*si, unit)) : std::nullopt;
}

std::optional<double> most(const std::string& set, const std::string& id, const char* unit) {
  const std::optional<double> si = rule(set, id).at_most;
  return si ? std::optional(from_si(*si, unit)) : std::nullopt;
}

template <class Tell>
std::vector<std::string> of_each_requirement(Tell tell) {
  std::vector<std::string> out;
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& one : rules) out.push_back(tell(one));
  }
  return out;
}

std::vector<std::string> clauses() {
  return of_each_requirement([](const BoundRequirement& one) { return one.entered->clause.text; });
}

/// State of a built-in requirement, or route, at a station.
FindingState state(const std::string& set, const std::string& id_or_route, const std::string& text,
                   const std::string& subject = "") {
  std::vector<BoundRequirement> rules;
  for (const auto& all : built_in_rules()) {
    for (const BoundRequirement& one : all) {
      const bool named = one.entered->id.text == id_or_route || one.entered->route.text == id_or_route;
      if (one.set->id.text == set && named) rules.push_back(one);
    }
  }
  const site::Site site = test::station("format = 1\n" + text);
  const studies::TankResult tank = studies::study_tank(site, {});
  Facts facts{site, today};
  facts.tank = &tank;
  for (const Finding& found : check_rules(facts, rules)) {
    if (subject.empty() || found.subject == subject) return found.state;
  }
  ADD_FAILURE() << "no finding " << id_or_route;
  return FindingState::does_not_apply;
}

// "A tank needs an alarm at 90 % and a shutoff at 95 %": under the ground either is enough, or a third route; a
// protected tank above ground needs both.
// SOURCE: [cfr_280, 280.20(c)(1)(ii)] [ifc_2018, 5704.2.9.7.5]
TEST(CommonNumbers, NinetyAndNinetyFivePercent) {
  const auto buried = [](studies::OverfillDevice device, double share, std::optional<bool> wets) {
    studies::TankResult result;
    studies::TankTold& tank = result.tanks.emplace_back();
    tank.id = tank.tank = "T1";
    tank.overfill.has_fill = true;
    studies::DeviceSet& set = tank.overfill.set.emplace_back();
    set.device = device;
    set.share = share;
    set.heard = true;
    set.before_full = 30.0;
    set.wets_fitting = wets;
    return check_tanks(test::station(shop), result).at(0).state;
  };
  EXPECT_EQ(buried(studies::OverfillDevice::alarm, 0.90, true), FindingState::meets);
  EXPECT_EQ(buried(studies::OverfillDevice::shutoff, 0.95, true), FindingState::meets);
  EXPECT_EQ(buried(studies::OverfillDevice::shutoff, 0.98, false), FindingState::meets) << "no fitting gets wet";
  EXPECT_EQ(buried(studies::OverfillDevice::alarm, 0.95, true), FindingState::falls_short);
  const std::string protected_tank =
      "[[product]]\nid = \"f\"\nkind = \"diesel-b0\"\n[[tank]]\nid = \"T1\"\nproduct = \"f\"\nabove_ground = "
      "true\nprotected = true\nshape = { kind = \"vertical-cylinder\", inside_diameter = \"8 ft\", height = \"10 ft\" "
      "}\noverfill_alarm = { at_share = \"90 %\", heard_at_fill = true }\n[[tank.fill]]\nid = \"F1\"\n";
  EXPECT_EQ(state("us-fire-code", "protected-notice-share", protected_tank), FindingState::close);
  EXPECT_EQ(state("us-fire-code", "protected-shutoff-share", protected_tank), FindingState::not_determined);
}

// "More than 1 % and 130 gal is a leak to report": a month alone is to be looked into, a second one to be reported.
// SOURCE: [cfr_280, 280.43(a), 280.50(c)(2)]
TEST(CommonNumbers, OneMonthAloneIsNotReported) {
  studies::LedgerResult result;
  studies::LedgerBook& book = result.books.emplace_back();
  book.buried = true;
  studies::LedgerMonth& month = book.months.emplace_back();
  month.whole = month.follows_whole = month.exceeds = true;
  month.limit = cubic_meters_from_gallons(230.0);
  month.over_short = cubic_meters_from_gallons(-300.0);
  const auto alone = check_ledger(result);
  EXPECT_EQ(finding(alone, "inventory-month").state, FindingState::falls_short);
  EXPECT_THAT(finding(alone, "inventory-month").change, HasSubstr("a second month like it is to be reported"));
  EXPECT_EQ(finding(alone, "inventory-confirmed").state, FindingState::meets);
  month.follows_excess = month.confirmed = true;
  EXPECT_EQ(finding(check_ledger(result), "inventory-confirmed").state, FindingState::falls_short);
}

// "36 hours, 13 and 7 gal for a tank of 1,000 gal": by its diameter and by whether it is tested for tightness.
// SOURCE: [cfr_280, 280.43(b)(4) and (5)] the printed table
TEST(CommonNumbers, ManualGaugingByDiameter) {
  const auto row = [](double gallons, std::optional<double> inches) {
    const auto found = studies::gauging_rule(cubic_meters_from_gallons(gallons),
                                             inches ? std::optional(meters_from_inches(*inches)) : std::nullopt);
    if (!found) return std::vector<double>{};
    return std::vector<double>{found->hours, std::round(from_si(found->weekly, "gal")),
                               std::round(from_si(found->monthly, "gal")), found->alone ? 1.0 : 0.0};
  };
  EXPECT_THAT(row(550, {}), ElementsAre(36, 10, 5, 1));
  EXPECT_THAT(row(1000, 64), ElementsAre(44, 9, 4, 1));
  EXPECT_THAT(row(1000, 48), ElementsAre(58, 12, 6, 1));
  EXPECT_THAT(row(1000, 56), ElementsAre(36, 13, 7, 0));
  EXPECT_THAT(row(2000, {}), ElementsAre(36, 26, 13, 0));
  EXPECT_TRUE(row(2001, {}).empty());
}

// "A drop tube ends within 6 in": 1 ft under inventory control; 12 or 6 in by the day for vapor; the 6 in of safety at
// work leave gasoline out.
// SOURCE: [cfr_280, 280.43(a)(4)] [cfr_63_cccccc, 63.11117(b)] [osha_1910_106, (b)(3)(v)]
TEST(CommonNumbers, EndOfADropTube) {
  EXPECT_NEAR(*most("us-federal", "inventory-drop-tube", "in"), 12.0, 1e-9);
  EXPECT_NEAR(*most("us-osha", "fill-pipe-end", "in"), 6.0, 1e-9);
  const std::string far = changed(shop, {"end_above_bottom = \"5 in\"", "end_above_bottom = \"10 in\""});
  EXPECT_EQ(finding(vapor_of(test::station(far)), "submerged-fill").state, FindingState::falls_short);
  const std::string old = changed(far, {"installed = 2010-01-01", "installed = 2006-11-09"});
  EXPECT_EQ(finding(vapor_of(test::station(old)), "submerged-fill").state, FindingState::meets);
  const std::string text =
      "[[product]]\nid = \"f\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = "
      "\"f\"\n[[tank.fill]]\nid = \"F1\"\ndrop_tube = { end_above_bottom = \"10 in\" }\n";
  EXPECT_EQ(state("us-osha", "fill-pipe-end", text), FindingState::does_not_apply);
}

// "Each vent valve may leak 0.17 and 0.63 ft3/h": all of a site together; 0.05 and 0.21 are for each, in California.
// SOURCE: [cfr_63_cccccc, table 1 (1)(g)] [vr_101, exhibit 3]
TEST(CommonNumbers, LeaksOfVentValves) {
  const auto two = [](const std::string& leak) {
    std::string text = changed(shop, {"pressure_leak = \"0.05 ft3/h\"", "pressure_leak = \"" + leak + "\""});
    const std::size_t at = text.find("  [[tank.vent]]"), end = text.find("[[tank]]\nid = \"T2\"");
    std::string second = changed(text.substr(at, end - at), {"\"V1\"", "\"V9\""});
    return finding(vapor_of(test::station(text.insert(end, second))), "vent-pressure-leak").state;
  };
  EXPECT_EQ(two("0.08 ft3/h"), FindingState::meets);
  EXPECT_EQ(two("0.10 ft3/h"), FindingState::falls_short) << "each is below 0.17";
  EXPECT_NEAR(*most("us-california", "vent-valve-pressure-leak", "ft3/h"), 0.05, 1e-9);
  EXPECT_NEAR(*most("us-california", "vent-valve-vacuum-leak", "ft3/h"), 0.21, 1e-9);
}

// "A vent valve opens at 3 and 8 in, to half an inch": those are California's; the federal band is 2.5 to 6 and 6
// to 10. SOURCE: [cfr_63_cccccc, table 1 (1)(g)] [vr_101, exhibit 3]
TEST(CommonNumbers, SettingsOfVentValves) {
  const std::string text = changed(shop, {"opens_at = \"3 inH2O\"", "opens_at = \"5 inH2O\""});
  EXPECT_EQ(finding(vapor_of(test::station(text)), "vent-pressure-setting").state, FindingState::meets);
  EXPECT_NEAR(*most("us-california", "vent-valve-opens-at", "inH2O"), 3.5, 1e-9);
  EXPECT_NEAR(*least("us-california", "vent-valve-vacuum-opens-at", "inH2O"), 6.0, 1e-9);
}

// "Monthly throughput is what was sold in the month": the sum of 365 days over 12.
// SOURCE: [cfr_63_cccccc, 63.11132]
TEST(CommonNumbers, MonthlyThroughputIsAYearsTwelfth) {
  EXPECT_EQ(parts::throughput_tier(cubic_meters_from_gallons(1'200'000.0) / 12.0), parts::ThroughputTier::from_100000);
  std::string text = shop;
  text.erase(text.find("[operations]"));
  EXPECT_THAT(finding(vapor_of(test::station(text)), "vapor-balance").change, HasSubstr("last 365 days over 12"));
}

// "Nozzles give no more than 10 gal/min, but for trucks": gasoline alone is held to it, and the exemption of dedicated
// pumps is not in the current text.
// SOURCE: [cfr_1090_1550, paragraph (b)]
TEST(CommonNumbers, TenGallonsAMinute) {
  const site::Site site = test::station(shop);
  EXPECT_FALSE(studies::flow_cap(site, "diesel"));
  EXPECT_NEAR(from_si(studies::flow_cap(site, "regular")->flow, "L/min"), 37.85, 0.005);
}

// "A spout is 0.840 in wide, straight for 2.5 in, with its spring 3 in away": the current text has millimeters alone.
// SOURCE: [cfr_1090_1550, (a)(1) to (a)(3)]
TEST(CommonNumbers, SpoutsInMillimeters) {
  EXPECT_NEAR(*most("us-federal", "spout-diameter", "mm"), 21.3, 1e-9);
  EXPECT_LT(*rule("us-federal", "spout-diameter").at_most, meters_from_inches(0.840));
  EXPECT_NEAR(*least("us-federal", "spout-straight", "mm"), 63.0, 1e-9);
  EXPECT_NEAR(*least("us-federal", "spout-spring", "mm"), 76.0, 1e-9);
}

// "6 in3 in 5 gal is half a percent": it is 0.519 %.
// SOURCE: [cfr_280, 280.43(a)(5)] [nist_handbook_44, 3.30]
TEST(CommonNumbers, SixCubicInches) {
  for (const studies::MeterLimit& limit : studies::published_limits(test::station(shop))) {
    if (limit.name != "federal inventory control") continue;
    const double draft = cubic_meters_from_gallons(5.0);
    EXPECT_NEAR(*studies::allowed(limit, draft) / draft, 0.00519, 5e-6);
    EXPECT_EQ(limit.seen, studies::LimitSeen::verified);
  }
}

// "A breakaway parts at 200 to 300 lbf": the text has 100 to 350.
// SOURCE: [ul_567, 6.3]
TEST(CommonNumbers, PullOfABreakaway) {
  EXPECT_NEAR(*least("equipment-standards", "breakaway-pull", "lbf"), 100.0, 1e-9);
  EXPECT_NEAR(*most("equipment-standards", "breakaway-pull", "lbf"), 350.0, 1e-9);
}

// "The groove lies 25 mm below to 13 mm above the base of the dispenser": that is Quebec's; half an inch to either side
// of the top of the concrete island.
// SOURCE: [ifc_2018, 2306.7.4]
TEST(CommonNumbers, ShearGroove) {
  EXPECT_NEAR(*least("us-fire-code", "shear-groove-offset", "mm"), -12.7, 1e-9);
  EXPECT_NEAR(*most("us-fire-code", "shear-groove-offset", "mm"), 12.7, 1e-9);
  EXPECT_THAT(rule("us-fire-code", "shear-groove-offset").entered->words.text, HasSubstr("top of the concrete island"));
}

// "The valve is rigidly anchored": these words were not seen of the liquid's valve; what was says securely.
// SOURCE: [rp1200_17, 10.1] [ifc_2018, 2306.7.9.1.4 on the joint of the vapor line]
TEST(CommonNumbers, WordsOnAnchoring) {
  EXPECT_EQ(rule("recommended-practices", "shear-valve-anchored").entered->clause.text, "RP1200 10.1");
  EXPECT_THAT(rule("us-fire-code", "vapor-line-shear-mounted").entered->words.text, HasSubstr("rigidly"));
}

// "OSHA wants the emergency stop within 100 ft": it names no distance; the fire code has 20 to 100 ft.
// SOURCE: [ifc_2018, 2303.2] [osha_1910_106, (g)(3)(iii)]
TEST(CommonNumbers, DistanceOfAnEmergencyStop) {
  EXPECT_NEAR(*most("us-fire-code", "emergency-stop-reach", "ft"), 100.0, 1e-9);
  EXPECT_NEAR(*least("us-fire-code", "emergency-stop-clearance", "ft"), 20.0, 1e-9);
  const auto far = of_each_requirement([](const BoundRequirement& one) {
    const bool is_distance = one.figure->id == "emergency-stop-reach" || one.figure->id == "emergency-stop-clearance";
    return is_distance ? one.set->id.text : std::string("none");
  });
  EXPECT_THAT(far, Not(testing::Contains("us-osha")));
}

// "Hoses are 16 ft": a city's; 15 ft in older handbooks; 18 ft in the fire code.
// SOURCE: [ifc_2018, 2306.7.5] 5,486 mm
TEST(CommonNumbers, LengthOfAHose) { EXPECT_NEAR(*most("us-fire-code", "hose-length", "mm"), 5486.0, 0.5); }

// "Table H-10": it is H-11 in the text seen, and the current copy prints no number.
// SOURCE: [osha_1910_106, (b)(3)(iv)(b)]
TEST(CommonNumbers, TheVentTableHasNoNumber) {
  std::vector<std::string> all = clauses();
  all.push_back(finding(delivery_of(test::station(shop)), "vent-size").clause);
  EXPECT_THAT(all, testing::Each(Not(HasSubstr("H-1"))));
  EXPECT_THAT(all, testing::Contains(HasSubstr("table of vent line diameters")));
}

// "1-1/4 in does for 500 gal/min over 50 ft": in a state's table with five cells that let the pressure rise too far.
// SOURCE: [osha_1910_106, (b)(3)(iv)(b)] [illinois_160_90, the table]
TEST(CommonNumbers, CellsOfTheVentTable) {
  for (const auto& [gpm, feet] :
       {std::pair{300.0, 200.0}, {400.0, 100.0}, {500.0, 50.0}, {500.0, 100.0}, {600.0, 50.0}}) {
    EXPECT_NEAR(from_si(*parts::vent_size_by_table(to_si(gpm, "gpm"), to_si(feet, "ft")), "in"), 1.5, 1e-9);
  }
}

// "571.614 for 7 to 12 nozzles": as a scan reads; it breaks the pattern, and the program says that it is in doubt.
// SOURCE: [tp_201_3, equation] [cfr_63_cccccc, table 1 (1)(h)]
TEST(CommonNumbers, ConstantOfTheStaticTest) {
  EXPECT_NEAR(parts::static_test_constant(8).gallons, 531.614, 1e-9);
  EXPECT_FALSE(parts::static_test_constant(8).read);
  // The federal rule prints that of up to six nozzles alone: 1.809 in of water are left of 2 at 5,000 gal.
  const std::string many = changed(shop, {"nozzles = 6, end = \"1.85 inH2O\"", "nozzles = 24, end = \"1.80 inH2O\""});
  EXPECT_EQ(finding(vapor_of(test::station(many)), "static-pressure-test").state, FindingState::falls_short);
}

// "Containment only within 1,000 ft of a well": the statute of 2005; the rule asks for it everywhere. Nor does it speak
// of fuels: compatibility is asked for elsewhere.
// SOURCE: [cfr_280, 280.20(f), 280.32]
TEST(CommonNumbers, ContainmentUnderDispensers) {
  for (const char* id : {"dispenser-sump-fitted", "dispenser-sump-tight", "dispenser-sump-open"}) {
    const BoundRequirement& one = rule("us-federal", id);
    ASSERT_EQ(one.when.size(), 1U) << id;
    EXPECT_EQ(one.when.front().figure->id, "dispenser-system-installed") << id;
    EXPECT_THAT(one.entered->words.text, Not(HasSubstr("compatible"))) << id;
  }
  EXPECT_EQ(rule("us-federal", "dispenser-sump-open").entered->route.text,
            rule("us-federal", "dispenser-sump-sensor").entered->route.text)
      << "open to view, or watched";
}

// "RP900 asks for a daily inspection": no longer since 2021, and no figure of it was seen. "API 1621 allows 0.5 %":
// only one unreliable page says so. Clauses of NFPA 30A were not seen, but for one. SOURCE: common practice, no source:
// what is not cited
TEST(CommonNumbers, WhatWasNotSeenIsNotCited) {
  for (const std::string& clause : clauses()) {
    for (const char* unseen : {"RP900", "RP500", "API 1621", "API 2000", "NFPA 30,", "NEC", "UL 33,"}) {
      EXPECT_THAT(clause, Not(HasSubstr(unseen)));
    }
    EXPECT_TRUE(!clause.starts_with("NFPA 30A") || clause == "NFPA 30A 9.2.5.4") << clause;
  }
}

// "5.2 psia is wrong, a calculator says 0.42": the calculator prints a garbled equation. And RVP 13 at 60 degF is 6.95
// by the formula, printed as 7 and remembered as 6.9. SOURCE: [ap42_7_1, figure 7.1-14b] the formula
TEST(CommonNumbers, VaporPressureOfGasoline) {
  const auto psia = [](double reid) {
    return psi_from_pascal(fuel::true_vapor_pressure_refined(pascal_from_psi(reid), 3.0, kelvin_from_fahrenheit(60.0)));
  };
  EXPECT_NEAR(psia(10.0), 5.19, 0.005);
  EXPECT_NEAR(psia(13.0), 6.95, 0.005);
}

// "Refueling displaces by AP-42's equation 6": a newer one of the agency gives 16 % less at 70 degF and RVP 10.
// SOURCE: [nonroad_source, clcevems.f]
TEST(CommonNumbers, RefuelingLosses) {
  const parts::Refueling refueling{kelvin_from_fahrenheit(70.0), 0.0, pascal_from_psi(10.0)};
  EXPECT_NEAR(parts::refueling_loss(refueling) / parts::refueling_loss_older(refueling), 1.0 - 0.16, 0.005);
}

// "A tank lies 1 ft from a basement": by safety at work; 3 ft by the fire code, which also has 1 ft between tanks.
// SOURCE: [ifc_2018, 5704.2.11.1] [osha_1910_106, (b)(3)(i)]
TEST(CommonNumbers, RoomAroundATank) {
  EXPECT_NEAR(*least("us-osha", "tank-to-basement", "ft"), 1.0, 1e-9);
  EXPECT_NEAR(*least("us-osha", "tank-to-buildable", "ft"), 3.0, 1e-9);
  EXPECT_NEAR(*least("us-fire-code", "tank-to-basement", "ft"), 3.0, 1e-9);
  EXPECT_NEAR(*least("us-fire-code", "tank-to-tank", "ft"), 1.0, 1e-9);
}

// "A new line is tested for 30 min": at its greatest pressure by safety at work; at 150 % or 110 % for 10 min by the
// fire code. Who lives under both meets both.
// SOURCE: [ifc_2018, 5703.6.3] [osha_1910_106, (g)(3)(v)(f)]
TEST(CommonNumbers, TestOfANewLine) {
  EXPECT_NEAR(*least("us-osha", "line-acceptance-time", "min"), 30.0, 1e-9);
  EXPECT_NEAR(*least("us-fire-code", "line-acceptance-time", "min"), 10.0, 1e-9);
  EXPECT_THAT(rule("us-fire-code", "line-acceptance-pressure").entered->words.text, HasSubstr("150 %"));
  EXPECT_THAT(rule("us-osha", "line-acceptance-operating").entered->words.text, HasSubstr("greatest pressure in use"));
}

// "280.40(a)(3) asks for 95 and 5 %": that is (a)(4) since 2015, and it covers (h) and (i) too.
// SOURCE: [cfr_280, 280.40(a)(4)]
TEST(CommonNumbers, ProbabilitiesStandInTheFourthParagraph) {
  EXPECT_EQ(rule("us-federal", "method-detection").entered->clause.text, "40 CFR 280.40(a)(4)");
  EXPECT_EQ(rule("us-federal", "method-false-alarm").entered->clause.text, "40 CFR 280.40(a)(4)");
}

// "Extinguishers of 6-B:C": by safety at work; the fire code asks for 2-A:20-B:C.
// SOURCE: [ifc_2018, 2305.5] [osha_1910_106, (g)(9)]
TEST(CommonNumbers, Extinguishers) {
  EXPECT_EQ(rule("us-osha", "extinguisher-reach").figure->id, "extinguisher-6bc-reach");
  EXPECT_EQ(rule("us-fire-code", "extinguisher-reach").figure->id, "extinguisher-2a-20bc-reach");
}

// "A sump is tested every year": by a practice; every three years by the rule.
// SOURCE: [cfr_280, 280.35(a)(1)]
TEST(CommonNumbers, TestOfASump) {
  EXPECT_EQ(rule("us-federal", "sump-tested").every->years, 3);
  EXPECT_EQ(rule("recommended-practices", "sump-yearly").every->years, 1);
  EXPECT_EQ(rule("recommended-practices", "sump-yearly").entered->seen->value, site::ClauseSeen::told);
}

// "A display is seen from 40 in": that belongs to other machines, and texts contradict each other: nothing is asked.
// SOURCE: common practice, no source: what is not asked
TEST(CommonNumbers, NoDisplayHeight) {
  const auto figures = of_each_requirement([](const BoundRequirement& one) { return std::string(one.figure->id); });
  EXPECT_THAT(figures, testing::Each(Not(HasSubstr("display"))));
}

// "Europe: 0.95 to 1.05, and 97 %": both from memory alone; neither is asked. The ratio of 0.95 to 1.15 is that of an
// order of California.
// SOURCE: common practice, no source: what is not asked
TEST(CommonNumbers, LimitsOfMemoryAreLeftOut) {
  const auto european = of_each_requirement([](const BoundRequirement& one) {
    return one.set->id.text == "eu" ? std::string(one.figure->id) : std::string();
  });
  EXPECT_THAT(european, testing::Each(Not(HasSubstr("ratio"))));
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& one : rules) {
      EXPECT_NE(one.entered->seen->value, site::ClauseSeen::memory) << one.entered->id.text;
    }
  }
  EXPECT_NEAR(*most("us-california", "recovery-ratio", "%"), 115.0, 1e-9);
}

}  // namespace
}  // namespace forecourse::checks
