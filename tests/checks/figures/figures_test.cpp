// What a requirement says where it does not apply, and where what it rests on is only partly known.
#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "forecourse/checks/rules/check_rules.h"
#include "forecourse/site/read.h"

namespace forecourse::checks {
namespace {

Finding finding(const std::string& set, const std::string& requirement, const std::string& text,
                const site::records::Records* records = nullptr) {
  const auto read = site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n" + text);
  for (const auto& rules : built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      if (rule.set->id.text != set || rule.entered->id.text != requirement) continue;
      const studies::FlowResult flow = studies::study_flow(read.value, {});
      Facts facts{read.value, {2026, 11, 30, {}}};
      facts.records = records;
      facts.flow = &flow;
      const std::vector<Finding> found = check_rules(facts, {&rule, 1});
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

TEST(VentSize, WithoutAtOnceAndABranchesLengthItIsNotDetermined) {
  const auto state = [](const std::string& delivery, const std::string& vent) {
    return finding("us-osha", "vent-size-for-flow",
                   "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n"
                   "  [[tank.vent]]\n  pipe = { length = \"150 ft\", bore = \"3.07 in\" }\n" +
                       vent + "[[delivery]]\nid = \"L1\"\nrate = \"200 gpm\"\n" + delivery +
                       "  [[delivery.compartment]]\n  product = \"p\"\n  tank = \"T1\"\n"
                       "  [[delivery.compartment]]\n  product = \"p\"\n  tank = \"T1\"\n")
        .state;
  };
  EXPECT_EQ(state("at_once = 2\n", ""), FindingState::meets);
  EXPECT_EQ(state("", ""), FindingState::not_determined);
  EXPECT_EQ(state("at_once = 2\n", "  branch = { bore = \"2.07 in\" }\n"), FindingState::not_determined);
}

/// A notice that is yet to be given is none.
TEST(TankChange, ANoticeToComeMeetsNothing) {
  const auto state = [](const std::string& notified) {
    return finding("us-federal", "tank-change-notice",
                   "[[product]]\nid = \"p\"\nkind = \"e85\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n"
                   "changed = 2027-03-30\nnotified = " +
                       notified + "\n")
        .state;
  };
  EXPECT_EQ(state("2026-11-30"), FindingState::meets);
  EXPECT_EQ(state("2026-12-01"), FindingState::not_determined);
}

/// A product without a kind may be gasoline.
TEST(Gasoline, WithoutAKindItIsNotDetermined) {
  const auto state = [](const std::string& kind) {
    return finding("us-federal", "spout-diameter",
                   "[[product]]\nid = \"p\"\n" + kind +
                       "[[dispenser]]\nid = \"D1\"\n  [[dispenser.inlet]]\n  product = \"p\"\n"
                       "  [[dispenser.hose]]\n  id = \"H1\"\n  product = \"p\"\n  outlet_elevation = \"3 ft\"\n"
                       "  spout = { diameter = \"2 in\" }\n")
        .state;
  };
  EXPECT_EQ(state("kind = \"gasoline-e10\"\n"), FindingState::falls_short);
  EXPECT_EQ(state("kind = \"diesel-b5\"\n"), FindingState::does_not_apply);
  EXPECT_EQ(state("kind = \"other\"\n"), FindingState::not_determined);
}

/// The relief of a pump acts once it has stopped; while it runs the parts bear all of its pressure.
TEST(Pressure, ReliefDoesNotLowerWhatAPumpGives) {
  const auto state = [](const std::string& shutoff) {
    return finding("equipment-standards", "pump-pressure",
                   "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\ntemperature = \"60 degF\"\n[[tank]]\n"
                   "id = \"T1\"\nproduct = \"p\"\nsurface_elevation = \"0 ft\"\n[[pump]]\nid = \"P1\"\ntank = "
                   "\"T1\"\ncheck_valve = true\npressure_relief = \"10 psi\"\ndischarge_elevation = \"0 ft\"\n"
                   "curve = { shutoff = \"" +
                       shutoff +
                       " psi\", per_flow_squared = \"0.01 psi/gpm^2\" }\n[[line]]\nid = \"L1\"\nfrom = \"P1\"\n"
                       "to = \"D1.p\"\nlength = \"50 ft\"\nbore = \"2 in\"\n[[dispenser]]\nid = \"D1\"\n"
                       "elevation = \"0 ft\"\n  [[dispenser.inlet]]\n  product = \"p\"\n  line_elevation = \"0 ft\"\n"
                       "  [[dispenser.hose]]\n  id = \"H1\"\n  product = \"p\"\n  outlet_elevation = \"3 ft\"\n"
                       "  loss = { per_flow_squared = \"0.1 psi/gpm^2\" }\n")
        .state;
  };
  EXPECT_EQ(state("40"), FindingState::meets);
  EXPECT_EQ(state("60"), FindingState::falls_short);
}

/// A blow is on record by the dispenser, an inlet or a hose of it; one without a place may have been anywhere.
TEST(ShearValve, ABlowCountsByWhateverItsPartIsCalled) {
  const auto state = [](const std::string& part, const site::Date& day) {
    site::records::Records records;
    site::records::Incident blow;
    blow.kind.text = "struck";
    blow.part.text = part;
    blow.at.day = day;
    records.incidents.push_back(blow);
    return finding("recommended-practices", "shear-valve-after-hit",
                   "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[dispenser]]\nid = \"D1\"\n"
                   "  [[dispenser.inlet]]\n  product = \"p\"\n  shear_valve = { tested = 2026-05-01 }\n"
                   "  [[dispenser.hose]]\n  id = \"H1\"\n  product = \"p\"\n  outlet_elevation = \"3 ft\"\n",
                   &records)
        .state;
  };
  const site::Date before{2026, 4, 1, {}};
  const site::Date after{2026, 6, 1, {}};
  for (const char* part : {"D1", "D1.p", "H1"}) {
    EXPECT_EQ(state(part, before), FindingState::meets) << part;
    EXPECT_EQ(state(part, after), FindingState::falls_short) << part;
  }
  EXPECT_EQ(state("", before), FindingState::meets);
  EXPECT_EQ(state("", after), FindingState::not_determined);
  EXPECT_EQ(state("D9", after), FindingState::does_not_apply);
}

/// Without records of any incident it is not known that there was none.
TEST(ShearValve, WithoutRecordsOfIncidentsItIsNotDetermined) {
  const site::records::Records records;
  const std::string text =
      "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[dispenser]]\nid = \"D1\"\n  [[dispenser.inlet]]\n"
      "  product = \"p\"\n  shear_valve = { tested = 2026-05-01 }\n";
  EXPECT_EQ(finding("recommended-practices", "shear-valve-after-hit", text, &records).state,
            FindingState::not_determined);
}

/// A dispenser behind a line of unknown length may be the farthest.
TEST(LeakDetector, BehindALineWithoutLengthItIsNotDetermined) {
  const auto state = [](const std::string& length) {
    return finding("recommended-practices", "detector-tested-at",
                   "[[product]]\nid = \"p\"\nkind = \"gasoline-e10\"\n[[tank]]\nid = \"T1\"\nproduct = \"p\"\n"
                   "[[pump]]\nid = \"P1\"\ntank = \"T1\"\nleak_detector = { tested_at = \"D1.p\" }\n"
                   "[[dispenser]]\nid = \"D1\"\nelevation = \"0 ft\"\n  [[dispenser.inlet]]\n  product = \"p\"\n"
                   "[[dispenser]]\nid = \"D2\"\nelevation = \"0 ft\"\n  [[dispenser.inlet]]\n  product = \"p\"\n"
                   "[[line]]\nid = \"L1\"\nfrom = \"P1\"\nto = \"D1.p\"\nlength = \"50 ft\"\n"
                   "[[line]]\nid = \"L2\"\nfrom = \"D1.p\"\nto = \"D2.p\"\n" +
                       length)
        .state;
  };
  EXPECT_EQ(state("length = \"30 ft\"\n"), FindingState::falls_short);
  EXPECT_EQ(state(""), FindingState::not_determined);
}

}  // namespace
}  // namespace forecourse::checks
