// What feeds an opening: a tank above it, a tank that runs empty, a line cut from either of its ends, a limiter.
// SOURCE: [tp410, energy equation with losses]; a tank that drains through a pipe by the same equation, level by level
// (Torricelli with losses). Both are written down a second time in textbook.h. Stations are invented.
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/studies/incident/figures/figures.h"
#include "studies/incident/incident_ground.h"
#include "studies/incident/textbook.h"

namespace forecourse::studies {
namespace {

namespace book = test::textbook;
using book::liter_per_minute;
using test::IncidentGround;

constexpr double close = 2e-3;  // of a flow: friction by an explicit law and by Colebrook's
constexpr double liter = 1e-3;

std::string station_text(const std::string& tank, const std::string& pump, const std::string& rest) {
  return "format = 1\n[site]\nname = \"Bench (invented)\"\ndisplay = \"si\"\n[[product]]\nid = \"fuel\"\nkind = "
         "\"other\"\ndensity = \"750 kg/m3\"\nviscosity = \"0.6 mPa.s\"\n[[tank]]\nid = \"T1\"\nproduct = \"fuel\"\n" +
         tank + "\n[[pump]]\nid = \"P1\"\ntank = \"T1\"\ncheck_valve = true\n" + pump + "\n" + rest;
}

// ---- a tank above the opening ---------------------------------------------------------------------------

constexpr double tank_depth = 2.5, tank_bottom = 1.0, tank_bore = 1.2;  // [m]

/// A raised upright tank, 10 m of line and a riser to a groove at 0 m, no valve on it.
IncidentGround raised(const std::string& pump = {}, bool runs = false) {
  const std::string text = station_text(
      "above_ground = true\nshape = { kind = \"vertical-cylinder\", inside_diameter = \"1.2 m\", height = \"3 m\" }\n"
      "bottom_elevation = \"1 m\"\nreading = { depth = \"2.5 m\" }",
      "curve = { shutoff = \"150 kPa\", run_out = \"300 L/min\" }\ndischarge_elevation = \"1 m\"\n" + pump,
      "[[line]]\nid = \"main\"\nfrom = \"P1\"\nto = \"D1.fuel\"\nlength = \"10 m\"\nbore = \"40 mm\"\n"
      "roughness = \"0.05 mm\"\nloss = 4\n[[dispenser]]\nid = \"D1\"\nelevation = \"0 m\"\n[[dispenser.inlet]]\n"
      "product = \"fuel\"\nconnection = \"through\"\nline_elevation = \"0 m\"\n"
      "loss_to_groove = { k = 1.0, bore = \"40 mm\" }\ndischarge_loss = { k = 1.0, bore = \"40 mm\" }\n"
      "riser = { length = \"0.5 m\", bore = \"40 mm\", roughness = \"0.05 mm\" }\nliquid_above = \"1 L\"\n"
      "drains = \"100 %\"\n"
      "[[dispenser.hose]]\nid = \"D1.a\"\nproduct = \"fuel\"\noutlet_elevation = \"1 m\"\nloss = \"1 kPa.min2/L2\"\n");
  IncidentGround ground(text, IncidentKind::struck, "D1");
  ground.options.request.pump_runs = runs;
  ground.options.request.counts_until = test::entered<Duration>(7200.0);
  ground.lay();
  return ground;
}

/// Flow out of the raised tank at a depth of liquid, with a loss per flow squared of the pump [m3/s].
double out_of(double depth, double standing = 0.0, double shutoff = 0.0) {
  const book::Liquid liquid;
  return book::root(
      [&](double q) {
        return book::head(liquid, tank_bottom + depth) + (shutoff > 0.0 ? book::pump(q, shutoff, 5e-3) : 0.0) -
               standing * q * q - book::pipe(liquid, q, 10.0, 0.04, 4.0) - book::pipe(liquid, q, 0.5, 0.04, 2.0);
      },
      1e-9, 2e-2);
}

/// Time until the tank is empty, level by level [s].
double empties_in(double standing = 0.0, double shutoff = 0.0) {
  constexpr int slices = 400;
  double time = 0.0;
  for (int i = 0; i < slices; ++i) {
    const double middle = tank_depth * (i + 0.5) / slices;
    time += book::area(tank_bore) * tank_depth / slices / out_of(middle, standing, shutoff);
  }
  return time;
}

double time_of(const IncidentRun& run, Happening what) {
  for (const TimelineRow& row : run.timeline) {
    if (row.what == what) return row.time;
  }
  return -1.0;
}

const double full = book::area(tank_bore) * tank_depth;  // [m3]

TEST(IncidentFed, ATankAboveTheOpeningRunsOutByGravity) {
  const IncidentGround ground = raised();
  const IncidentRun run = ground.run();
  EXPECT_NEAR(run.steady_flow, out_of(tank_depth), close * run.steady_flow);
  EXPECT_NEAR(time_of(run, Happening::tank_empty), empties_in(), close * empties_in());
  EXPECT_NEAR(run.escaped, full + 1.0 * liter, 1e-6 * full);
  ASSERT_TRUE(run.isolated_at.has_value());
  EXPECT_NEAR(*run.isolated_at, empties_in(), close * empties_in());
  EXPECT_LT(run.balance, 1e-12);
}

TEST(IncidentFed, ALossOfTheStandingPumpIsTaken) {
  const double standing = 2.0e3 / (liter_per_minute * liter_per_minute * 1e4);  // 2 kPa at 100 L/min
  const IncidentRun run = raised("standing_loss = \"0.2 Pa.min2/L2\"").run();
  EXPECT_NEAR(run.steady_flow, out_of(tank_depth, standing), close * run.steady_flow);
  EXPECT_NEAR(time_of(run, Happening::tank_empty), empties_in(standing), close * empties_in(standing));
}

TEST(IncidentFed, AfterThePumpStopsTheTankGoesOnFeeding) {
  IncidentGround ground = raised({}, true);
  ground.options.request.stop_at = test::entered<Duration>(60.0);
  ground.lay();
  const IncidentRun run = ground.run();
  EXPECT_NEAR(run.escaped, full + 1.0 * liter, 1e-6 * full);
  EXPECT_GT(time_of(run, Happening::tank_empty), 60.0 + 0.9 * (empties_in() - 60.0 * 1.5));
  EXPECT_LT(run.balance, 1e-12);
}

TEST(IncidentFed, APumpEmptiesItsTankAndNoMore) {
  const IncidentRun run = raised({}, true).run();
  const double time = empties_in(0.0, 150e3);
  EXPECT_NEAR(time_of(run, Happening::tank_empty), time, close * time);
  EXPECT_NEAR(run.escaped, full + 1.0 * liter, 1e-6 * full);
}

TEST(IncidentFed, TheInletOfThePumpKeepsWhatIsBelowIt) {
  const IncidentRun run = raised("inlet_above_bottom = \"0.5 m\"", true).run();
  EXPECT_NEAR(run.escaped, 0.8 * full + 1.0 * liter, 1e-6 * full);
}

TEST(IncidentFed, WhatAStandingPumpLetsThroughIsARangeWhereItIsNotEntered) {
  const IncidentGround open = raised(), known = raised("standing_loss = \"0.2 Pa.min2/L2\"");
  const IncidentResult result = study_incident(open.site, open.options);
  EXPECT_NEAR(result.escaped.low, 1.0 * liter, 1e-2 * liter);
  EXPECT_NEAR(result.escaped.high, full + 1.0 * liter, 1e-6 * full);
  const IncidentResult sure = study_incident(known.site, known.options);
  EXPECT_NEAR(sure.escaped.low, full + 1.0 * liter, 1e-6 * full);
}

TEST(IncidentFed, ATankWhoseContentsAreNotKnownSaysSo) {
  IncidentGround ground = raised();
  ground.site.tanks.front().shape.reset();
  ground.lay();
  EXPECT_FALSE(ground.ground.ends.front().stock.has_value());
  ASSERT_FALSE(ground.ground.warnings.empty());
  EXPECT_NE(ground.ground.warnings.front().message.find("no limit to what escapes"), std::string::npos);
}

// ---- a line that is cut ---------------------------------------------------------------------------------

constexpr double shutoff = 250e3, run_out = 400.0 * liter_per_minute;

std::string line(const std::string& id, const std::string& from, const std::string& to, int length, int loss) {
  return "[[line]]\nid = \"" + id + "\"\nfrom = \"" + from + "\"\nto = \"" + to + "\"\nlength = \"" +
         std::to_string(length) + " m\"\nbore = \"50 mm\"\nroughness = \"0.05 mm\"\nloss = " + std::to_string(loss) +
         "\n";
}

/// 60 m from the pump at -1 m to a branch, 40 m up to a dispenser at 5 m; the liquid at -3 m.
IncidentGround hill(const std::string& lines, const std::string& at, double along, double open_area = 0.0) {
  const std::string text = station_text(
      "surface_elevation = \"-3 m\"",
      "curve = { shutoff = \"250 kPa\", run_out = \"400 L/min\" }\ndischarge_elevation = \"-1 m\"",
      lines +
          "[[branch]]\nid = \"B1\"\nelevation = \"-1 m\"\n[[dispenser]]\nid = \"D1\"\nelevation = \"6 m\"\n"
          "[[dispenser.inlet]]\nproduct = \"fuel\"\nconnection = \"through\"\nline_elevation = \"5 m\"\n"
          "riser = { length = \"1 m\", bore = \"40 mm\", roughness = \"0.05 mm\" }\n[[dispenser.hose]]\nid = "
          "\"D1.a\"\n"
          "product = \"fuel\"\noutlet_elevation = \"7 m\"\nloss = \"1 kPa.min2/L2\"\n");
  IncidentGround ground(text, IncidentKind::line_break, at);
  ground.options.request.along = test::entered<Ratio>(along);
  if (open_area > 0.0) {
    ground.options.request.open_area = test::entered<Area>(open_area);
    ground.options.request.discharge_coefficient = site::Entered<double>{0.6, 0.6, 0.6, {}};
  }
  ground.lay();
  return ground;
}

const std::string one_way = line("main", "P1", "B1", 60, 3) + line("hill", "B1", "D1.fuel", 40, 2);
const std::string turned = line("main", "B1", "P1", 60, 3) + line("hill", "B1", "D1.fuel", 40, 2);
const std::string ring = one_way + line("hill2", "B1", "D1.fuel", 40, 2);

/// Flow out of the main cut at a share of it from the pump.
double cut_main(double share) {
  const book::Liquid liquid;
  return book::root(
      [&](double q) {
        return book::pump(q, shutoff, run_out) - book::head(liquid, 2.0) -
               book::pipe(liquid, q, 60.0 * share, 0.05, 3.0 * share + 1.0);
      },
      1e-9, run_out);
}

TEST(IncidentFed, ACutLineIsFedFromTheEndThatFuelReaches) {
  for (const double from_pump : {0.2, 0.5, 0.8}) {
    const double expected = cut_main(from_pump);
    const IncidentGround as_drawn = hill(one_way, "main", from_pump), other = hill(turned, "main", 1.0 - from_pump);
    EXPECT_NEAR(as_drawn.run().steady_flow, expected, close * expected) << from_pump;
    EXPECT_NEAR(other.run().steady_flow, expected, close * expected) << from_pump;
  }
}

/// Both ends of the cut are at the air; the pump's pressure at the branch is shared by both ways to it.
TEST(IncidentFed, BothEndsOfACutLoopFeed) {
  const book::Liquid liquid;
  const auto through = [&](double pressure, double length, double fittings) {
    return book::root([&](double q) { return pressure - book::pipe(liquid, q, length, 0.05, fittings); }, 1e-12, 0.02);
  };
  const auto both = [&](double p) { return through(p, 20.0, 1.0 + 1.0) + through(p, 60.0, 3.0 + 1.0); };
  const double pressure = book::root(
      [&](double p) {
        const double q = both(p);
        return book::pump(q, shutoff, run_out) - book::head(liquid, 5.0) - book::pipe(liquid, q, 60.0, 0.05, 3.0) - p;
      },
      1.0, 2e5);
  const IncidentGround ground = hill(ring, "hill", 0.5);
  EXPECT_NEAR(ground.run().steady_flow, both(pressure), close * both(pressure));
  EXPECT_LT(ground.run().balance, 1e-12);
}

/// The whole hill and its riser stand above a hole in the main: 40 m of 50 mm, 1 m of 40 mm.
TEST(IncidentFed, WhatStandsAboveTheOpeningIsTold) {
  const IncidentGround ground = hill(one_way, "main", 0.5);
  const OpenEnd end = open_ends(ground.scene(), ground.made()).front();
  EXPECT_NEAR(end.above_opening.value(), 40.0 * book::area(0.05) + 1.0 * book::area(0.04), 1e-9);
}

/// A hole of 100 mm2: the jet's speed is that of the whole pressure at it, the pipe being wide.
TEST(IncidentFed, JetsAreSharesOfTheOpeningThatIsEntered) {
  const book::Liquid liquid;
  const double hole = 0.6 * 1e-4;
  const double flow = book::root(
      [&](double q) {
        return book::pump(q, shutoff, run_out) - book::head(liquid, 2.0) - book::pipe(liquid, q, 30.0, 0.05, 1.5) -
               0.5 * liquid.density * q * q / (hole * hole);
      },
      1e-9, run_out);
  const IncidentGround ground = hill(one_way, "main", 0.5, 1e-4);
  const std::vector<JetRow> rows = jets(ground.scene(), ground.made());
  EXPECT_NEAR(rows.front().flow, flow, close * flow);
  EXPECT_NEAR(rows.front().velocity, flow / hole, close * flow / hole);
  for (std::size_t i = 1; i < rows.size(); ++i) {
    EXPECT_LT(rows[i].flow, rows[i - 1].flow);
    EXPECT_GT(rows[i].velocity, rows[i - 1].velocity);
  }
}

TEST(IncidentFed, AnOpeningWiderThanThePipeIsTold) {
  const IncidentGround ground = hill(one_way, "main", 0.5, 1.0);
  bool told = false;
  for (const Diagnostic& warning : ground.ground.warnings)
    told = told || warning.message.find("wider than the pipe") != std::string::npos;
  EXPECT_TRUE(told);
}

// ---- a limiter, and pressures as measured ---------------------------------------------------------------

std::string bench(const std::string& hose, const std::string& incident) {
  return station_text(
      "surface_elevation = \"-3 m\"",
      "curve = { shutoff = \"200 kPa\", run_out = \"500 L/min\" }\ndischarge_elevation = \"-1 m\"",
      line("main", "P1", "D1.fuel", 100, 5) +
          "[[dispenser]]\nid = \"D1\"\nelevation = \"0 m\"\n[[dispenser.inlet]]\nproduct = \"fuel\"\nconnection = "
          "\"through\"\nline_elevation = \"-1 m\"\nriser = { length = \"1 m\", bore = \"40 mm\", roughness = \"0.05 "
          "mm\" }\nshear_valve = { poppet = \"double\", groove_elevation = \"0 m\" }\n[[dispenser.hose]]\nid = "
          "\"D1.a\"\nproduct = \"fuel\"\noutlet_elevation = \"1 m\"\nloss = \"20 Pa.min2/L2\"\n" +
          hose + incident);
}

TEST(IncidentFed, AHoseLeftOpenKeepsToItsLimiter) {
  IncidentGround ground(bench("limiter = \"38 L/min\"\n", ""), IncidentKind::nozzle_left_open, "D1.a");
  ground.options.request.stop_at = test::entered<Duration>(300.0);
  ground.options.request.counts_until = test::entered<Duration>(600.0);
  ground.lay();
  const double limit = 38.0 * liter_per_minute;
  const IncidentRun run = ground.run();
  EXPECT_NEAR(run.steady_flow, limit, 1e-9 * limit);
  EXPECT_NEAR(run.escaped, limit * 300.0, 5e-3 * limit * 300.0);  // the column is slow at first
  EXPECT_LT(run.peak_flow, limit * (1.0 + 1e-3));
}

/// A line that is held at a pressure gives compliance times pressure, and no more.
TEST(IncidentFed, ALineAtRestGivesWhatItsHoldingPressureHolds) {
  IncidentGround ground(
      bench("",
            "[[incident]]\nkind = \"struck\"\nat = \"D1\"\npump_runs = false\nline_compliance = \"5 mL/kPa\"\n"
            "holding_pressure = \"150 kPa\"\ncounts_until = \"60 s\"\n"),
      IncidentKind::struck, "D1");
  const IncidentRun run = ground.run({Barrier::shear_valve});
  const double above = ground.made({Barrier::shear_valve}).broken.front().above.volume;
  EXPECT_NEAR(run.escaped - above, 5e-6 / 1e3 * 150e3, 1e-3 * 0.75 * liter);
}

/// q = k p^n at the running pressure, then the line's spring from the holding pressure: V = C (p0 - p), and with n the
/// exponent p^(1-n) falls evenly.
TEST(IncidentFed, ACrackKeepsToThePressuresAsMeasured) {
  IncidentGround ground(
      bench("",
            "[[incident]]\nkind = \"crack\"\nat = \"D1.fuel\"\nruns_for = \"120 s\"\nrests_for = \"480 s\"\n"
            "running_pressure = \"180 kPa\"\nholding_pressure = \"150 kPa\"\nline_compliance = \"5 mL/kPa\"\n"
            "counts_until = \"600 h\"\n[[incident.reading]]\nrate = \"4 L/h\"\nat = \"70 kPa\"\n"
            "[[incident.reading]]\nrate = \"8 L/h\"\nat = \"200 kPa\"\n"),
      IncidentKind::crack, "D1.fuel");
  const double n = std::log(2.0) / std::log(200.0 / 70.0), k = 4e-3 / 3600.0 / std::pow(70e3, n), c = 5e-9;
  const double left = std::pow(std::pow(150e3, 1.0 - n) - (1.0 - n) * k * 480.0 / c, 1.0 / (1.0 - n));
  const double mean = (k * std::pow(180e3, n) * 120.0 + c * (150e3 - left)) / 600.0;
  EXPECT_NEAR(crack_told(ground.scene())->mean.likely, mean, 1e-6 * mean);
  EXPECT_NEAR(ground.run().escaped, mean * 600.0 * 3600.0, 1e-4 * mean * 600.0 * 3600.0);
  ground.options.request.line_compliance = test::entered<Compliance>(0.0);  // its spring is not known: it is held
  ground.lay();
  const double held = (k * std::pow(180e3, n) * 120.0 + k * std::pow(150e3, n) * 480.0) / 600.0;
  EXPECT_NEAR(crack_told(ground.scene())->mean.likely, held, 1e-6 * held);
  EXPECT_NEAR(ground.run().escaped, held * 600.0 * 3600.0, 1e-4 * held * 600.0 * 3600.0);
}

/// Cd A sqrt(2 p / density), whatever the file reads of the crack.
TEST(IncidentFed, AnOpeningThatIsAskedTakesThePlaceOfTheReadingsOfTheFile) {
  IncidentGround ground(bench("",
                              "[[incident]]\nkind = \"crack\"\nat = \"D1.fuel\"\n[[incident.reading]]\n"
                              "rate = \"4 L/h\"\nat = \"70 kPa\"\n"),
                        IncidentKind::crack, "D1.fuel");
  ground.options.request.open_area = test::entered<Area>(2e-5);
  ground.lay();
  const double pressure = 200e3 - book::head({}, 3.0);
  const double flow = 0.61 * 2e-5 * std::sqrt(2.0 * pressure / 750.0);
  EXPECT_NEAR(crack_told(ground.scene())->at_running.likely, flow, 1e-2 * flow);
}

}  // namespace
}  // namespace forecourse::studies
