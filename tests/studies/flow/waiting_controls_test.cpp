// A lag pump that no set of open hoses starts is told. SOURCE: common practice, no source
#include "forecourse/studies/flow/pumps/waiting_controls.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/network/build.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/flow/open_sets.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::site_text;
using test::station;
using test::with;
using testing::Contains;

std::string starts_below(const std::string& pressure) {
  return with(site_text("pell-ridge"), "control.regular-pumps.starts_below", "\"" + pressure + "\"");
}

std::vector<Diagnostic> waiting(const std::string& text) {
  const site::Site site = station(text);
  const network::StationNetwork network = network::build_network(site);
  return waiting_controls(site, network, network::StationSolver(network).solve(all_hoses(site).hoses));
}

/// Line pressure with every hose open and the first pump alone [psi].
double lowest() {
  const SystemFlow system = study_flow(station(site_text("pell-ridge")), {}).states.front().systems.front();
  return test::in_psi(system.control->steps.front().line_pressure_gauge);
}

TEST(WaitingControls, AreToldJustWhereNoSetStartsTheLagPump) {
  EXPECT_TRUE(waiting(site_text("pell-ridge")).empty());
  EXPECT_TRUE(waiting(starts_below(std::to_string(lowest() + 0.01) + " psi")).empty());
  const auto told = waiting(starts_below(std::to_string(lowest() - 0.01) + " psi"));
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told[0].severity, Severity::warning);
}

TEST(WaitingControls, NameThePumpAndBothPressures) {
  const std::string text = starts_below("12 psi");
  const site::Site site = station(text);
  const auto told = study_flow(site, {}).warnings;
  const double tenth = std::round(10.0 * lowest()) / 10.0;
  const std::string reached = std::to_string(tenth).substr(0, std::to_string(tenth).find('.') + 2);
  const std::string words =
      "control 'regular-pumps' never starts pump P2: with every hose open and P1 running, the "
      "line pressure is " +
      reached + " psi, and starts_below is 12 psi";
  EXPECT_THAT(told, Contains(testing::AllOf(testing::Field(&Diagnostic::message, words),
                                            testing::Field(&Diagnostic::where, site.controls.front().where))));
}

// The pressure of the lift alone is told when the network is built.
TEST(WaitingControls, AreNotToldTwice) {
  std::size_t told = 0;
  for (const Diagnostic& warning : study_flow(station(starts_below("0.1 psi")), {}).warnings) {
    told += warning.message.find("regular-pumps") != std::string::npos ? 1 : 0;
  }
  EXPECT_EQ(told, 1U);
}

TEST(WaitingControls, AreNotAskedOfOtherKinds) {
  EXPECT_TRUE(waiting(with(starts_below("12 psi"), "control.regular-pumps.kind", "\"all\"")).empty());
  EXPECT_TRUE(waiting(with(starts_below("12 psi"), "control.regular-pumps.kind", "\"alternating\"")).empty());
}

}  // namespace
}  // namespace forecourse::studies
