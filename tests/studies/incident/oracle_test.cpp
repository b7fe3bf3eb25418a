// SOURCE: [cvode, CVODE with root finding, relative tolerance 1e-10, pack held as excess]
// Ten incidents on Site S against a stiff ODE library. Laws are shared, steps and search for moments are not. Goals:
// moments within 1 ms or 0.1 %, amounts within 0.01 %.
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/solvers/sequence/stepper.h"
#include "solvers/sequence/cvode_run.h"
#include "studies/incident/incident_ground.h"

namespace forecourse::studies {
namespace {

namespace seq = solvers::sequence;
using test::entered;
using test::IncidentGround;
using test::site_text;

/// Below this an amount is not compared by its share: a hundredth of a milliliter.
constexpr double nothing = 1e-8;

/// The library knows no closed form and no end of a tank that drains by a root: those stay with the stepper's tests.
void expect_same(release::Case given) {
  for (release::Broken& b : given.broken) b.above = {};
  const release::Model model(given);
  const auto ours = seq::run_sequence(model, model.start(), release::told_options());
  const auto theirs = test::CvodeRun<release::Model>(model, model.start(), {}).run();
  EXPECT_EQ(ours.status, seq::SequenceStatus::finished);
  EXPECT_TRUE(ours.balance.holds) << ours.balance.residual;
  ASSERT_EQ(ours.trace.events.size(), theirs.events.size());
  for (std::size_t i = 0; i < theirs.events.size(); ++i) {
    const seq::Event& a = ours.trace.events[i].event;
    const seq::Event& b = theirs.events[i];
    EXPECT_EQ(a.id, b.id) << "event " << i;
    EXPECT_NEAR(a.time, b.time, std::max(1e-3, 1e-3 * b.time)) << "event " << i;
  }
  for (std::size_t c = 0; c < theirs.amounts.size(); ++c) {
    const double moved = std::abs(theirs.amounts[c]);
    EXPECT_NEAR(ours.amounts[c], theirs.amounts[c], 1e-4 * moved + nothing) << "compartment " << c;
  }
}

IncidentGround struck(const std::vector<site::Name>& open = {}) {
  IncidentGround ground(site_text("site-s"), IncidentKind::struck, "D3");
  ground.options.request.line_compliance = entered<Compliance>(3e-9);
  ground.options.request.open = open;
  ground.options.request.counts_until = entered<Duration>(120.0);
  ground.lay();
  return ground;
}

const std::set<Barrier> no_valve{Barrier::shear_valve};
const std::set<Barrier> unguarded{Barrier::shear_valve, Barrier::sump_sensor};

TEST(FullIncidentOracle, TheValveShuts) { expect_same(struck().made()); }

TEST(FullIncidentOracle, NoValveAndASensor) { expect_same(struck().made(no_valve)); }

TEST(FullIncidentOracle, NoValveAndAnEmergencyStop) { expect_same(struck().made(unguarded)); }

TEST(FullIncidentOracle, HosesOpenElsewhere) { expect_same(struck({{"D1.a", {}}, {"D2.a", {}}}).made(unguarded)); }

TEST(FullIncidentOracle, AValveThatShutsWithHosesOpen) { expect_same(struck({{"D1.a", {}}}).made()); }

TEST(FullIncidentOracle, ASteadyStroke) {
  release::Case given = struck().made();
  given.broken.front().shutting.law = parts::steady_stroke(0.02, 0.2);
  expect_same(given);
}

TEST(FullIncidentOracle, ASeatThatLeaks) {
  release::Case given = struck().made();
  given.broken.front().opening.seat_leak = 2e-9;
  expect_same(given);
}

TEST(FullIncidentOracle, ARigidLine) {
  release::Case given = struck().made(unguarded);
  given.broken.front().compliance = 0.0;
  expect_same(given);
}

TEST(FullIncidentOracle, ANarrowOpening) {
  release::Case given = struck().made(unguarded);
  given.broken.front().opening.discharge *= 400.0;
  expect_same(given);
}

TEST(FullIncidentOracle, AFusibleLink) {
  release::Case given = struck().made(no_valve);
  release::Broken& b = given.broken.front();
  b.shutting.law = parts::full_flow_for(0.1);
  b.shutting.by_link = true;
  given.fire.response_index = 100.0;
  given.fire.gas_temperature = 873.15;
  given.fire.gas_speed = 2.0;
  given.fire.rated = 344.25;
  given.fire.start = 293.15;
  expect_same(given);
}

}  // namespace
}  // namespace forecourse::studies
