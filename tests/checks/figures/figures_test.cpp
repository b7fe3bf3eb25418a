// What a requirement says where it does not apply, and where what it rests on is only partly known.
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/site/read.h"

namespace forecourse::checks {
namespace {

Finding finding(const std::string& set, const std::string& requirement, const std::string& text) {
  const auto read = site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n" + text);
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      if (rule.set->id.text != set || rule.entered->id.text != requirement) continue;
      const std::vector<Finding> found = check_rules(Facts{read.value, {2026, 11, 30, {}}}, {&rule, 1});
      if (!found.empty()) return found.front();
    }
  }
  throw std::invalid_argument(set + " " + requirement);
}

std::string with_lot_line(const std::string& x, const std::string& around) {
  return "[[dispenser]]\nid = \"D1\"\nposition = [\"" + x + " ft\", \"0 ft\"]\n[surroundings]\n" + around +
         "  [[surroundings.lot_line]]\n  from = [\"0 ft\", \"-9 ft\"]\n  to = [\"0 ft\", \"9 ft\"]\n";
}

/// A list that may lack something nearer cannot show that a distance is kept, but it can show that it is not.
TEST(Surroundings, AListThatIsNotCompleteMeetsNothing) {
  const auto state = [](const std::string& x, const std::string& around) {
    return finding("us-fire-code", "dispenser-to-lot-line", with_lot_line(x, around)).state;
  };
  EXPECT_EQ(state("30", "complete = true\n"), FindingState::meets);
  EXPECT_EQ(state("30", ""), FindingState::not_determined);
  EXPECT_EQ(state("30", "complete = false\n"), FindingState::not_determined);
  EXPECT_EQ(state("5", ""), FindingState::falls_short);
}

TEST(Surroundings, NoneAndAllListedDoesNotApply) {
  const std::string dispenser = "[[dispenser]]\nid = \"D1\"\nposition = [\"0 ft\", \"0 ft\"]\n";
  const auto state = [&](const std::string& around) {
    return finding("us-fire-code", "dispenser-to-ignition", dispenser + around).state;
  };
  EXPECT_EQ(state("[surroundings]\ncomplete = true\n"), FindingState::does_not_apply);
  EXPECT_EQ(state("[surroundings]\ncomplete = false\n"), FindingState::not_determined);
  EXPECT_EQ(state(""), FindingState::not_determined);
}

/// Walls that withstand fire for an hour and do not burn may stand nearer.
TEST(Surroundings, AStrongWallDoesNotCount) {
  const std::string text =
      "[[dispenser]]\nid = \"D1\"\nposition = [\"5 ft\", \"0 ft\"]\n[surroundings]\ncomplete = true\n"
      "  [[surroundings.building]]\n  corner = [\"-9 ft\", \"-9 ft\"]\n  opposite = [\"0 ft\", \"9 ft\"]\n"
      "  combustible = false\n";
  const auto state = [&](const std::string& rating) {
    return finding("us-fire-code", "dispenser-to-building", text + rating).state;
  };
  EXPECT_EQ(state("  fire_rating = \"1 h\"\n"), FindingState::does_not_apply);
  EXPECT_EQ(state("  fire_rating = \"45 min\"\n"), FindingState::falls_short);
  EXPECT_EQ(state(""), FindingState::not_determined);
}

/// SOURCE: [osha_1910_106, (b)(3)(v)] exempts gasoline; a common quotation holds it for every fuel.
TEST(FillPipe, TheSixInchesOfTheLaborCodeAreNotForGasoline) {
  const auto state = [](const std::string& kind) {
    return finding("us-osha", "fill-pipe-end",
                   "[[product]]\nid = \"p\"\nkind = \"" + kind +
                       "\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n  [[tank.fill]]\n  id = \"F1\"\n"
                       "  drop_tube = { length = \"13 ft\", bore = \"4 in\", end_above_bottom = \"10 in\" }\n")
        .state;
  };
  EXPECT_EQ(state("gasoline-e10"), FindingState::does_not_apply);
  EXPECT_EQ(state("diesel-b5"), FindingState::falls_short);
}

/// SOURCE: [ifc_2018, 2305.5] Several of less rating do not make one that is enough.
TEST(Extinguisher, AWeakOneNearDoesNotCount) {
  const auto at = [](const std::string& rating) {
    return finding("us-fire-code", "extinguisher-reach",
                   "[[dispenser]]\nid = \"D1\"\nposition = [\"0 ft\", \"0 ft\"]\n[[extinguisher]]\nid = \"X1\"\n"
                   "position = [\"10 ft\", \"0 ft\"]\nrating = \"" +
                       rating + "\"\n");
  };
  EXPECT_EQ(at("2-A:20-B:C").state, FindingState::meets);
  EXPECT_EQ(at("4-A:60-B:C").state, FindingState::meets);
  EXPECT_EQ(at("2-A:10-B:C").state, FindingState::not_determined);
  EXPECT_EQ(at("2-A:20-B").state, FindingState::not_determined);
  EXPECT_EQ(at("large").state, FindingState::not_determined);
}

/// Beyond the table of vents nothing is told, neither good nor bad.
TEST(VentSize, BeyondTheTableItIsNotDetermined) {
  const Finding found = finding(
      "us-osha", "vent-size-for-flow",
      "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n  [[tank.vent]]\n"
      "  id = \"V1\"\n  pipe = { length = \"300 ft\", bore = \"3.07 in\" }\n[[delivery]]\nid = \"L1\"\n"
      "rate = \"400 gpm\"\n  [[delivery.compartment]]\n  product = \"p\"\n  tank = \"T1\"\n");
  EXPECT_EQ(found.state, FindingState::not_determined);
}

/// Two drops at once into tanks that breathe through one vent count together.
TEST(VentSize, TanksFilledTogetherCountTogether) {
  const auto state = [](const std::string& at_once) {
    const std::string vent =
        "  [[tank.vent]]\n  shared = \"stack\"\n  pipe = { length = \"150 ft\", bore = \"1.38 in\" }\n";
    return finding("us-osha", "vent-size-for-flow",
                   "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n" + vent +
                       "[[tank]]\nid = \"T2\"\nproduct = \"p\"\n" + vent +
                       "[[delivery]]\nid = \"L1\"\nrate = \"200 gpm\"\nat_once = " + at_once +
                       "\n  [[delivery.compartment]]\n  product = \"p\"\n  tank = \"T1\"\n"
                       "  [[delivery.compartment]]\n  product = \"p\"\n  tank = \"T2\"\n")
        .state;
  };
  EXPECT_EQ(state("1"), FindingState::meets);        // 200 gpm, 200 ft: 1-1/4 in
  EXPECT_EQ(state("2"), FindingState::falls_short);  // 400 gpm, 200 ft: 2 in
}

}  // namespace
}  // namespace forecourse::checks
