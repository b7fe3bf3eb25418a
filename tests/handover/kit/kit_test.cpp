// Counts and lengths were added up by hand over the texts of the stations, or are added up here over their structs, by
// another way than the schedule's.
// SOURCE: closed form
#include "forecourse/handover/kit/kit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "forecourse/base/unit_text.h"
#include "forecourse/handover/kit/needs.h"
#include "forecourse/site/edit.h"
#include "site/whole_station.h"
#include "support/stations.h"

namespace forecourse::handover {
namespace {

using test::site_text;
using test::station;
using test::with;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

constexpr double rounding = 1e-9;  // [m] of sums of a few hundred lengths

const std::vector<std::string>& example_names() {
  static const std::vector<std::string> names{"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge",
                                              "site-s",     "thornby",   "truck-lane"};
  return names;
}

Kit kit_of(const site::Site& site, const KitOptions& options = {}) {
  studies::FlowOptions flow;
  flow.spans = flow.ladders = false;
  const studies::FlowResult result = studies::study_flow(site, flow);
  return make_kit(site, options, &result);
}

Kit kit_of(const std::string& text, const KitOptions& options = {}) { return kit_of(station(text), options); }

/// Without pressures, which take the flow study.
Kit counts_of(const std::string& text, const KitOptions& options = {}) {
  return make_kit(station(text), options, nullptr);
}

double pipe_in(const Kit& kit) {
  return std::accumulate(kit.pipes.begin(), kit.pipes.end(), 0.0,
                         [](double sum, const PipeTotal& one) { return sum + one.length; });
}

std::vector<const KitRow*> rows_of(const Kit& kit, const std::string& kind) {
  std::vector<const KitRow*> out;
  for (const KitRow& row : kit.rows) {
    if (row.kind == kind) out.push_back(&row);
  }
  return out;
}

int count_of(const Kit& kit, const std::string& kind) {
  int out = 0;
  for (const KitRow* row : rows_of(kit, kind)) out += row->count.value_or(0);
  return out;
}

const Spare& spare_of(const Kit& kit, const std::string& kind) {
  static const Spare none;
  const auto found = std::find_if(kit.spares.begin(), kit.spares.end(),
                                  [&](const Spare& one) { return kit.rows[one.rows.front()].kind == kind; });
  if (found == kit.spares.end()) ADD_FAILURE() << "no spare " << kind;
  return found == kit.spares.end() ? none : *found;
}

/// Lengths of all pipe of a station, added up by its structs; of a shared outlet or vapor pipe those of the first.
double pipe_laid(const site::Site& site) {
  double sum = 0.0;
  std::set<std::string> shared;
  const auto add = [&](const std::optional<site::Pipe>& pipe) {
    if (pipe && pipe->length) sum += pipe->length->likely.si();
  };
  for (const site::Line& line : site.lines) add(line.pipe);
  for (const site::Pump& pump : site.pumps) add(pump.leg);
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) add(inlet.riser);
  }
  for (const site::Tank& tank : site.tanks) {
    if (tank.siphon) add(tank.siphon->pipe);
    for (const site::Fill& fill : tank.fills) add(fill.pipe);
    for (const site::Vent& vent : tank.vents) {
      add(vent.branch);
      if (vent.shared.empty() || (vent.pipe && shared.insert(vent.shared.text).second)) add(vent.pipe);
    }
    if (tank.vapor_return) add(tank.vapor_return->pipe);
  }
  return sum;
}

TEST(Kit, LengthsOfPipeAreThoseOfTheSite) {
  for (const std::string& name : example_names()) {
    const site::Site site = station(site_text(name));
    EXPECT_NEAR(pipe_in(make_kit(site, {}, nullptr)), pipe_laid(site), rounding) << name;
  }
}

// 150 ft + 25 ft + 25 ft of line, three risers of 4 ft.
TEST(Kit, LengthsOfASmallStation) {
  const Kit kit = counts_of(site_text("site-s"));
  ASSERT_THAT(kit.pipes, SizeIs(2));
  EXPECT_NEAR(kit.pipes[0].length, to_si(200.0, "ft"), rounding);
  EXPECT_EQ(kit.pipes[0].runs, 3);
  EXPECT_NEAR(kit.pipes[0].order_length, to_si(210.0, "ft"), rounding);  // 5 % more
  EXPECT_NEAR(kit.pipes[1].length, to_si(12.0, "ft"), rounding);
}

// The property that the schedule follows the file, for each line of each example.
TEST(Kit, TwiceTheLengthOfALineIsThatMuchMorePipe) {
  for (const std::string& name : example_names()) {
    const std::string text = site_text(name);
    const site::Site site = station(text);
    const double before = pipe_in(make_kit(site, {}, nullptr));
    for (const site::Line& line : site.lines) {
      ASSERT_TRUE(line.pipe.length) << name << " " << line.id.text;
      const double length = line.pipe.length->likely.si();
      const std::string twice = "\"" + std::to_string(2.0 * length) + " m\"";
      const double after = pipe_in(counts_of(with(text, "line." + line.id.text + ".length", twice)));
      constexpr double written = 1e-6;  // [m] the new length is written to six decimals
      EXPECT_NEAR(after - before, length, written) << name << " " << line.id.text;
    }
  }
}

// 30 m and 40 m along the axes from the pump to the dispenser: 50 m of line, with or without the flow study.
TEST(Kit, ALineWithoutALengthIsAsLongAsOnThePlan) {
  const std::string text = R"toml(format = 1
[[product]]
id = "regular"
[[tank]]
id = "T1"
product = "regular"
[[pump]]
id = "P1"
tank = "T1"
position = ["10 m", "0 m"]
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
bore = "50 mm"
[[dispenser]]
id = "D1"
position = ["40 m", "40 m"]
  [[dispenser.inlet]]
  product = "regular"
)toml";
  for (const Kit& kit : {kit_of(text), counts_of(text)}) {
    ASSERT_THAT(kit.pipes, SizeIs(1));
    EXPECT_NEAR(kit.pipes[0].length, 50.0, rounding);
    EXPECT_EQ(kit.pipes[0].runs_without_length, 0);
    EXPECT_THAT(kit.defaults, Contains(AllOf(Field(&DefaultUsed::what, "length of line trunk"),
                                             Field(&DefaultUsed::status, DefaultStatus::computed))));
  }
  const Kit entered = counts_of(with(text, "line.trunk.length", "\"60 m\""));
  EXPECT_NEAR(entered.pipes[0].length, 60.0, rounding);
  EXPECT_THAT(entered.defaults, Not(Contains(Field(&DefaultUsed::what, HasSubstr("trunk")))));
}

TEST(Kit, EachPartStandsInOneRow) {
  std::vector<std::string> texts{std::string(site::whole_station)};
  for (const std::string& name : example_names()) texts.push_back(site_text(name));
  for (const std::string& text : texts) {
    const site::Site site = station(text);
    const Kit kit = make_kit(site, {}, nullptr);
    std::multiset<std::string> paths;
    for (const KitRow& row : kit.rows) paths.insert(row.parts.begin(), row.parts.end());
    const auto parts = parts_of_station(site);
    EXPECT_EQ(paths.size(), parts.size());
    for (const StationPart& part : parts) EXPECT_EQ(paths.count(part.path), 1U) << part.path;
  }
}

TEST(Kit, CountsAreThoseOfTheParts) {
  for (const std::string& name : example_names()) {
    const site::Site site = station(site_text(name));
    const Kit kit = make_kit(site, {}, nullptr);
    const auto parts = parts_of_station(site);
    for (const PartKind& kind : part_kinds()) {
      int counted = 0;
      for (const StationPart* part : of_kind(parts, kind.kind)) counted += part->count.value_or(0);
      EXPECT_EQ(count_of(kit, std::string(kind.kind)), counted) << name << " " << kind.kind;
    }
  }
}

// Hollin Gap by its text: 20 hoses with whip, breakaway, curb hose, swivel and nozzle each, 16 of them with a limiter;
// 10 inlets each with a shear valve and a filter; 4 dispensers, of which one is guarded.
TEST(Kit, CountsOfAStationByHand) {
  const Kit kit = counts_of(site_text("hollin-gap"));
  for (const char* kind : {"whip-hose", "breakaway", "curb-hose", "swivel", "nozzle", "meter", "control-valve"})
    EXPECT_EQ(count_of(kit, kind), 20) << kind;
  EXPECT_EQ(count_of(kit, "flow-limiter"), 16);
  for (const char* kind : {"shear-valve", "filter", "tee", "riser"}) EXPECT_EQ(count_of(kit, kind), 10) << kind;
  EXPECT_EQ(count_of(kit, "dispenser"), 4);
  EXPECT_EQ(count_of(kit, "strap"), 5);
  EXPECT_THAT(kit.not_told, Contains(HasSubstr("guard against vehicles (at 1 place")));
}

TEST(Kit, WhatTheFileDoesNotCountIsNotCounted) {
  const Kit kit = counts_of(site_text("site-s"));
  for (const KitRow* row : rows_of(kit, "fittings")) EXPECT_EQ(row->count, std::nullopt);
  for (const OrderLine& line : kit.order) {
    if (line.what == "fittings of a pipe") {
      EXPECT_EQ(line.count, std::nullopt);
    }
  }
  EXPECT_THAT(kit.not_told, Contains(HasSubstr("fittings of a pipe (at 6 places")));
}

TEST(Kit, AnotherBoreIsOtherPipe) {
  const std::string text = site_text("site-s");
  const Kit before = counts_of(text);
  const Kit after = counts_of(with(text, "line.gap-2.bore", "\"3.00 in\""));
  ASSERT_THAT(after.pipes, SizeIs(before.pipes.size() + 1));
  EXPECT_NEAR(after.pipes[1].length, to_si(25.0, "ft"), rounding);
  ASSERT_THAT(after.pipes[1].sizes, SizeIs(1));
  EXPECT_NEAR(*after.pipes[1].sizes[0].value, to_si(3.0, "in"), rounding);
  EXPECT_NEAR(pipe_in(after), pipe_in(before), rounding);
}

TEST(Kit, AHoseMoreIsAHoseMore) {
  const std::string text = site_text("site-s");
  const std::string more =
      text +
      "\n[[dispenser]]\nid = \"D9\"\n  [[dispenser.inlet]]\n  product = \"regular\"\n  [[dispenser.hose]]\n  id = "
      "\"D9.a\"\n  product = \"regular\"\n  lift = \"12 ft\"\n  nozzle = { loss = \"0.05 psi/gpm^2\" }\n"
      "[[line]]\nid = \"gap-9\"\nfrom = \"D3.regular\"\nto = \"D9.regular\"\nlength = \"30 ft\"\nbore = \"2.00 in\"\n";
  const Kit before = counts_of(text);
  const Kit after = counts_of(more);
  EXPECT_EQ(count_of(after, "hose-set"), count_of(before, "hose-set") + 1);
  EXPECT_EQ(count_of(after, "nozzle"), 1);
  EXPECT_NEAR(pipe_in(after) - pipe_in(before), to_si(30.0, "ft"), rounding);
  EXPECT_EQ(spare_of(after, "pump").hoses_of_station, 7);
}

// A hanging hose set whose parts are listed is no order of its own: they are.
TEST(Kit, NothingIsOrderedTwice) {
  const Kit kit = counts_of(site_text("hollin-gap"));
  for (const OrderLine& line : kit.order) {
    EXPECT_THAT(line.what, Not(HasSubstr("hose set")));
    EXPECT_THAT(line.what, Not(HasSubstr("delivery hose")));
  }
  const Kit lumped = counts_of(site_text("site-s"));
  EXPECT_THAT(lumped.order, Contains(AllOf(Field(&OrderLine::what, HasSubstr("hanging hose set")),
                                           Field(&OrderLine::count, std::optional<int>(6)))));
}

// ---- pressures

// By hand: shutoff 29.4 psi; the liquid 71 in deep at 8 ft on a pitch of 0.5 %, its surface 98.52 in below the datum,
// the line at the dispenser 30 in below it; 60.2 degAPI is a relative density of 0.738 at 60 degF. So 29.4 psi less
// 68.52 in of 0.738 at 0.0361 psi an inch of water: 27.57 psi.
TEST(Kit, AShearValveBearsShutoffAndStaticHeight) {
  const Kit kit = kit_of(site_text("hollin-gap"));
  const auto rows = rows_of(kit, "shear-valve");
  ASSERT_FALSE(rows.empty());
  ASSERT_TRUE(rows[0]->needed.pressure_gauge);
  constexpr double density_at_57_degf = 0.02;  // [psi] the fuel is a little heavier there than at 60 degF
  EXPECT_NEAR(test::in_psi(*rows[0]->needed.pressure_gauge), 27.57, density_at_57_degf);
  EXPECT_THAT(rows[0]->needed.basis, HasSubstr("surge and the expansion of fuel"));
}

TEST(Kit, PressuresFollowThePump) {
  const std::string text = site_text("hollin-gap");
  const Kit before = kit_of(text);
  const Kit after = kit_of(with(text, "pump.P1.curve.shutoff", "\"39.4 psi\""));
  const double change = *rows_of(after, "shear-valve")[0]->needed.pressure_gauge -
                        *rows_of(before, "shear-valve")[0]->needed.pressure_gauge;
  EXPECT_NEAR(test::in_psi(change), 10.0, 1e-6);  // the solver's own pressure
}

/// [Pa] gauge; empty: not determined.
std::optional<double> pressure_at_part(const std::string& text, const std::string& path) {
  const site::Site site = station(text);
  studies::FlowOptions flow;
  flow.spans = flow.ladders = false;
  const studies::FlowResult result = studies::study_flow(site, flow);
  const auto parts = parts_of_station(site);
  const auto part = std::find_if(parts.begin(), parts.end(), [&](const StationPart& one) { return one.path == path; });
  if (part == parts.end()) ADD_FAILURE() << "no part " << path;
  return part == parts.end() ? std::nullopt : Needs(site, &result).of(*part, Bears::fuel).pressure_gauge;
}

// Its nozzle stands in the lines of both products, whichever comes first in the file.
TEST(Kit, ABlendedHoseBearsTheGreaterOfItsProducts) {
  const std::string text = site_text("marle-cross");
  const std::string nozzle = "dispenser.D1.hose.D1.middle-a.nozzle";
  const double even = test::in_psi(pressure_at_part(text, nozzle).value());
  for (const std::string pump : {"P1", "P3"}) {  // on regular, on premium
    const auto higher = pressure_at_part(with(text, "pump." + pump + ".curve.shutoff", "\"41.5 psi\""), nozzle);
    EXPECT_NEAR(test::in_psi(higher.value()), even + 10.0, 0.5) << pump;  // the two products do not weigh the same
  }
  // Nothing is told of premium whose pump does not run.
  EXPECT_EQ(pressure_at_part(with(text, "pump.P3.running", "false"), nozzle), std::nullopt);
}

TEST(Kit, WithoutElevationsNoPressureIsTold) {
  const Kit kit = kit_of(site_text("site-s"));
  for (const char* kind : {"line", "riser", "shear-valve", "pump"}) {
    for (const KitRow* row : rows_of(kit, kind)) {
      EXPECT_EQ(row->needed.pressure_gauge, std::nullopt) << kind;
      EXPECT_FALSE(row->needed.missing.empty()) << kind;
    }
  }
}

TEST(Kit, WithoutTheFlowStudyNoPressureOfFuelIsTold) {
  for (const std::string& name : example_names()) {
    for (const KitRow& row : counts_of(site_text(name)).rows) {
      if (row.needed.bears == Bears::fuel) {
        EXPECT_EQ(row.needed.pressure_gauge, std::nullopt) << name << row.what;
      }
    }
  }
}

TEST(Kit, ARatingBelowThePressureIsMarked) {
  const std::string text = site_text("hollin-gap");
  const auto marked = [](const Kit& kit) {
    return std::count_if(kit.rows.begin(), kit.rows.end(), [](const KitRow& row) { return row.below_need; });
  };
  EXPECT_EQ(marked(kit_of(text)), 0);
  EXPECT_EQ(marked(kit_of(with(text, "line.regular-trunk.rating", "\"20 psi\""))), 1);
  EXPECT_EQ(marked(kit_of(with(text, "line.regular-trunk.rating", "\"30 psi\""))), 0);
}

TEST(Kit, ATankBearsTheSettingsOfItsVentValve) {
  const Kit kit = counts_of(site_text("marle-cross"));
  int told = 0;
  for (const KitRow* row : rows_of(kit, "tank")) {
    if (!row->needed.pressure_gauge) continue;
    EXPECT_NEAR(*row->needed.pressure_gauge, to_si(3.0, "inH2O"), 1e-9);
    EXPECT_NEAR(*row->needed.vacuum, to_si(8.0, "inH2O"), 1e-9);
    told += row->count.value_or(0);
  }
  EXPECT_EQ(told, 3);  // T4 has no vent in the file
}

// ---- standards and fuels

// What the rule sets say of a text stands in the schedule: UL 971 was told by another text, UL 842 was seen.
TEST(Kit, NoStandardIsSeenThatWasNot) {
  const Kit kit = counts_of(site_text("hollin-gap"));
  std::map<std::string, std::set<site::ClauseSeen>> seen;
  for (const KitRow& row : kit.rows) {
    for (const KitStandard& one : row.standards) seen[one.standard].insert(one.seen);
  }
  EXPECT_EQ(seen["UL 971"], std::set{site::ClauseSeen::told});
  EXPECT_EQ(seen["UL 842"], std::set{site::ClauseSeen::text});
  EXPECT_EQ(seen.count(""), 0U);
}

TEST(Kit, EuropeanStandardsAreForWhoLivesUnderThem) {
  const std::string text = site_text("hollin-gap");
  const auto standard = [](const Kit& kit) { return rows_of(kit, "shear-valve")[0]->standards.front().standard; };
  EXPECT_EQ(standard(counts_of(text)), "UL 842");
  EXPECT_EQ(standard(counts_of(with(text, "site.rules", "[\"eu\"]"))), "EN 13617-3");
}

TEST(Kit, FitIsNeverShownByWhatIsMissing) {
  for (const std::string& name : example_names()) {
    for (const KitRow& row : counts_of(site_text(name)).rows) {
      if (row.compatibility.fit == Fit::not_determined) {
        EXPECT_FALSE(row.compatibility.missing.empty()) << row.what;
      }
    }
  }
  const std::string text = site_text("thornby");
  const auto fit = [](const Kit& kit) { return rows_of(kit, "line")[0]->compatibility.fit; };
  EXPECT_EQ(fit(counts_of(text)), Fit::not_determined);
  EXPECT_EQ(fit(counts_of(with(text, "tank.1.compatible", "true"))), Fit::shown);
  EXPECT_EQ(fit(counts_of(with(text, "tank.1.compatible", "false"))), Fit::not_fit);
}

// ---- spares

// One pump, one product: all hoses hang on it.
TEST(Kit, TheOnlyPumpStopsItsProduct) {
  const Kit kit = counts_of(site_text("site-s"));
  const Spare& pump = spare_of(kit, "pump");
  EXPECT_EQ(pump.consequence, Consequence::product_stops);
  EXPECT_THAT(pump.products, ElementsAre("regular"));
  EXPECT_THAT(pump.hoses, SizeIs(6));
  EXPECT_EQ(&pump, &kit.spares.front());
}

// Two pumps on regular: without one the other goes on. Premium and diesel have one each.
TEST(Kit, OneOfTwoPumpsStopsNothing) {
  const Kit kit = counts_of(site_text("marle-cross"));
  std::set<std::string> stopped;
  int pumps = 0;
  for (const Spare& one : kit.spares) {
    if (kit.rows[one.rows.front()].kind != "pump") continue;
    ++pumps;
    stopped.insert(one.products.begin(), one.products.end());
  }
  EXPECT_GT(pumps, 0);
  EXPECT_EQ(stopped, (std::set<std::string>{"diesel", "premium"}));
}

// A shear valve is out: the two hoses of its product at its dispenser wait.
TEST(Kit, AShearValveShutsTheHosesBehindIt) {
  const Kit kit = counts_of(site_text("hollin-gap"));
  const Spare& valve = spare_of(kit, "shear-valve");
  EXPECT_EQ(valve.consequence, Consequence::fuel_escapes);
  EXPECT_THAT(valve.hoses, ElementsAre("D1.regular-a", "D1.regular-b"));
}

TEST(Kit, SparesAreInTheOrderOfTheirConsequence) {
  for (const std::string& name : example_names()) {
    const Kit kit = counts_of(site_text(name));
    for (std::size_t i = 1; i < kit.spares.size(); ++i)
      EXPECT_LE(static_cast<int>(kit.spares[i - 1].consequence), static_cast<int>(kit.spares[i].consequence)) << name;
  }
}

// ---- options and kinds

TEST(Kit, WasteThatNobodyEnteredIsADefault) {
  const std::string text = site_text("site-s");
  EXPECT_THAT(counts_of(text).defaults, ElementsAre(Field(&DefaultUsed::status, DefaultStatus::common_practice)));
  const Kit kit = counts_of(text, {0.10, std::nullopt});
  EXPECT_THAT(kit.defaults, IsEmpty());
  EXPECT_NEAR(kit.pipes[0].order_length, to_si(220.0, "ft"), rounding);
}

// 200 ft without waste in sticks of 20 ft are ten, in sticks of 21 ft ten as well, in sticks of 19 ft eleven.
TEST(Kit, SticksAreWholeOnes) {
  const std::string text = site_text("site-s");
  const auto sticks = [&](double feet) {
    return counts_of(text, {0.0, to_si(feet, "ft")}).pipes.front().sticks.value_or(0);
  };
  EXPECT_EQ(sticks(20.0), 10);
  EXPECT_EQ(sticks(21.0), 10);
  EXPECT_EQ(sticks(19.0), 11);
  EXPECT_EQ(counts_of(text).pipes.front().sticks, std::nullopt);
}

// Of two vapor pipes of 6 ft one is without a length: what is known is no whole, and no number of sticks.
TEST(Kit, NoSticksAreCountedWhereALengthLacks) {
  const auto text = site::remove_value(site_text("marle-cross"), "tank.T1.vapor_return.pipe.length");
  ASSERT_TRUE(text.ok());
  const Kit kit = counts_of(text.value, {0.0, to_si(20.0, "ft")});
  const PipeTotal& vapor = kit.pipes.back();
  EXPECT_EQ(vapor.runs, 2);
  EXPECT_EQ(vapor.runs_without_length, 1);
  EXPECT_NEAR(vapor.length, to_si(6.0, "ft"), rounding);
  EXPECT_EQ(vapor.sticks, std::nullopt);
  EXPECT_NE(kit.pipes.front().sticks, std::nullopt);
  ASSERT_THAT(rows_of(kit, "vapor-pipe"), SizeIs(1));
  EXPECT_EQ(rows_of(kit, "vapor-pipe").front()->runs_without_length, 1);
}

// The first line of the station is between 26 ft and 40 ft long: the ends lie 14 ft apart.
TEST(Kit, ASpreadOfALengthHasItsEnds) {
  const std::string text =
      with(site_text("site-s"), "line." + station(site_text("site-s")).lines.front().id.text + ".length",
           "{ low = \"26 ft\", likely = \"30 ft\", high = \"40 ft\" }");
  const Kit kit = counts_of(text);
  EXPECT_NEAR(kit.pipes[0].length_high - kit.pipes[0].length_low, to_si(14.0, "ft"), rounding);
}

TEST(Kit, EveryKindOfPartIsInTheTable) {
  std::vector<std::string> texts{std::string(site::whole_station)};
  for (const std::string& name : example_names()) texts.push_back(site_text(name));
  for (const std::string& text : texts) {
    const site::Site site = station(text);
    for (const StationPart& part : parts_of_station(site)) EXPECT_NE(find_part_kind(part.kind), nullptr) << part.kind;
  }
  std::set<std::string_view> kinds;
  for (const PartKind& kind : part_kinds()) {
    EXPECT_TRUE(kinds.insert(kind.kind).second) << kind.kind;
    EXPECT_TRUE(kind.function.ends_with('.')) << kind.kind;
  }
}

}  // namespace
}  // namespace forecourse::handover
