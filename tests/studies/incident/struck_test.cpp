// Site S with its last dispenser struck. The figures were computed by an independent script, not by this program:
// computed rows, a second computation. SOURCE: common practice, no source
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/network/system_solver.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/figures/figures.h"
#include "forecourse/studies/incident/read_incident_options.h"
#include "studies/incident/incident_ground.h"

namespace forecourse::studies {
namespace {

using test::in_gpm;
using test::IncidentGround;
using test::site_text;

constexpr double one_percent = 0.01;  // the agreement asked of these figures
constexpr double spring = 3e-9;       // [m3/Pa] invented: some hoses and 200 ft of line
constexpr double all = 1e-12;         // of the largest amount moved: rounding

double in_gallons(double cubic_meters) { return cubic_meters / cubic_meters_from_gallons(1.0); }

IncidentGround struck(double compliance = 0.0, const std::string& text = site_text("site-s")) {
  IncidentGround ground(text, IncidentKind::struck, "D3");
  ground.options.request.line_compliance = test::entered<Compliance>(compliance);
  ground.lay();
  return ground;
}

TEST(IncidentStruck, SteadyFlowOfSiteS) {
  const IncidentGround ground = struck();
  const OpenEnd end = open_ends(ground.scene(), ground.made()).front();
  EXPECT_NEAR(in_gpm(end.steady_flow), 83.4, one_percent * 83.4);
  EXPECT_NEAR(in_gallons(end.in_45_seconds.value()), 62.6, one_percent * 62.6);
  EXPECT_NEAR(in_gallons(end.steady_figure.value()), 0.14, 0.005);  // printed to two digits
}

TEST(IncidentStruck, WithoutSpringAndInertiaTheLossIsTheSteadyFigure) {
  const IncidentGround ground = struck();
  const double figure = open_ends(ground.scene(), ground.made()).front().steady_figure.value();
  const auto told = pack_and_column(ground.made());
  ASSERT_TRUE(told.has_value());
  EXPECT_NEAR(told->steady, figure, one_percent * figure);
}

TEST(IncidentStruck, ASpringyLineGivesMoreAndAColumnLess) {
  const auto told = pack_and_column(struck(spring).made());
  ASSERT_TRUE(told.has_value());
  EXPECT_GT(told->with_pack, told->steady);
  EXPECT_LT(told->with_column, told->steady);
  EXPECT_GT(told->with_both, told->with_column);
}

TEST(IncidentStruck, NoneOpenIsNotTheSameAsNotGiven) {
  IncidentOptions options;
  options.kind = IncidentKind::struck;
  site::Site site = test::station(site_text("site-s"));
  site.incidents.resize(1);
  site.incidents.back().kind.text = "struck";
  site.incidents.back().open = {{"D1.a", {}}};
  EXPECT_EQ(merged_request(site, options).open.size(), 1U);
  options.none_open = true;
  EXPECT_TRUE(merged_request(site, options).open.empty());
  EXPECT_FALSE(read_incident_options({.kind = "struck"}, Asker::command).value.none_open);
  for (const std::vector<std::string>& none : {std::vector<std::string>{}, std::vector<std::string>{"none"}}) {
    const IncidentOptions read = read_incident_options({.kind = "struck", .open = none}, Asker::command).value;
    EXPECT_TRUE(read.none_open);
    EXPECT_TRUE(read.request.open.empty());
  }
}

/// The whole network solved with the steady flow drawn at the break, against the table that the sequence reads.
TEST(IncidentStruck, HosesElsewhereAreThoseOfTheNetwork) {
  IncidentGround ground = struck();
  ground.options.request.open = {{"D1.a", {}}, {"D2.b", {}}};
  ground.lay();
  const OpenEnd end = open_ends(ground.scene(), ground.made()).front();
  const network::PipingSystem& system = ground.ground.network.systems.front();
  network::SystemCase asked;
  for (const network::HosePoint& hose : system.hoses)
    asked.open_hoses.push_back(hose.id == "D1.a" || hose.id == "D2.b");
  asked.demand.assign(system.places.size(), 0.0);
  network::SystemSolver solver(system);
  for (const bool during : {false, true}) {
    asked.demand[ground.ground.ends.front().end.place] = during ? end.steady_flow : 0.0;
    const network::SystemState state = solver.solve(asked);
    ASSERT_TRUE(state.report.usable());
    for (const HoseElsewhere& hose : end.elsewhere) {
      for (const network::HosePoint& point : system.hoses) {
        if (point.id != hose.id) continue;
        const double flow = state.flow[static_cast<std::size_t>(point.run)];
        EXPECT_NEAR(during ? hose.during : hose.before, flow, 1e-4 * flow);  // the table's interpolation
      }
    }
  }
}

TEST(IncidentStruck, EveryLiterIsAccountedFor) {
  const IncidentGround ground = struck(spring);
  for (const std::set<Barrier>& missing :
       {std::set<Barrier>{}, {Barrier::shear_valve}, {Barrier::shear_valve, Barrier::sump_sensor}, {Barrier::sump}}) {
    const IncidentRun run = ground.run(missing);
    EXPECT_EQ(run.status, RunStatus::finished);
    EXPECT_LT(run.balance, all);
    double change = 0.0, moved = 0.0;
    for (const HolderAmount& held : run.amounts) {
      change += held.end - held.start;
      moved = std::max(moved, std::abs(held.end - held.start));
    }
    EXPECT_NEAR(change, 0.0, all * std::max(moved, 1e-3));
  }
}

/// From the moment the flow is steady what escapes is flow times time.
TEST(IncidentStruck, NothingShutsIt) {
  IncidentGround ground = struck(spring);
  ground.options.request.counts_until = test::entered<Duration>(120.0);
  ground.options.request.stop_at = test::entered<Duration>(200.0);
  ground.lay();
  const IncidentRun run = ground.run({Barrier::shear_valve, Barrier::sump_sensor});
  const double steady = run.steady_flow * 120.0;
  EXPECT_NEAR(run.escaped, steady + 0.9 * cubic_meters_from_gallons(1.0), one_percent * steady);
}

TEST(IncidentStruck, ADoublePoppetKeepsWhatIsInTheDispenser) {
  const std::string text = test::with(site_text("site-s"), "dispenser.D3.inlet.regular.shear_valve.poppet", "double");
  const IncidentGround both = struck(spring, text);
  const double one = struck(spring).run().escaped;
  EXPECT_NEAR(in_gallons(one - both.run().escaped), 0.9, 3e-6);  // 60 % of 1.5 gal, less what counts as drained
  EXPECT_NEAR(both.run({Barrier::upper_poppet}).escaped, one, 1e-9);
}

TEST(IncidentStruck, TwoRunsAreTheSame) {
  const IncidentGround ground = struck(spring);
  const IncidentRun a = ground.run({Barrier::shear_valve}), b = ground.run({Barrier::shear_valve});
  EXPECT_EQ(a.hash, b.hash);
  EXPECT_EQ(a.escaped, b.escaped);
}

TEST(IncidentStruck, AReplayIsTheSameBitForBit) {
  const release::Case given = struck(spring).made({Barrier::shear_valve});
  const release::Model model(given);
  const auto result = solvers::sequence::run_sequence(model, model.start(), release::told_options());
  EXPECT_TRUE(solvers::sequence::replay(model, model.start(), release::told_options(), result.trace).same());
}

TEST(IncidentStruck, APumpThatIsOffGivesWhatTheLineHolds) {
  IncidentGround ground = struck(spring);
  ground.options.request.pump_runs = false;
  ground.lay();
  const release::Case given = ground.made({Barrier::shear_valve});
  const IncidentRun run = ground.run({Barrier::shear_valve});
  const release::Broken& b = given.broken.front();
  const double pressed = b.running.pressure.at(0.0).value - b.opening.weight;
  EXPECT_NEAR(run.escaped - given.broken.front().above.volume, b.compliance * pressed, 1e-3 * b.compliance * pressed);
}

}  // namespace
}  // namespace forecourse::studies
