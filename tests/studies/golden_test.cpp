// Golden numbers of the example stations: ours, kept so that a change of any of them is seen and meant.
// They prove nothing about truth. SOURCE: common practice, no source
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "forecourse/studies/flow/flow.h"
#include "support/stations.h"

namespace forecourse::studies {
namespace {

using test::in_gpm;
using test::in_psi;

std::string shown(const std::optional<SummaryFlow>& flow) {
  return flow ? fmt::format("{:.4f}", in_gpm(flow->flow)) : "-";
}

/// To 1e-4 gpm and 1e-4 psi: coarser than the solver's residual, finer than anyone measures.
std::string numbers(const FlowResult& result) {
  std::string out = "hose flow in gpm: alone, one at each dispenser, all open\n";
  for (const HoseSummary& hose : result.hoses) {
    out += fmt::format("{} {} {} {}\n", hose.id, shown(hose.alone), shown(hose.one_each), shown(hose.all_open));
  }
  for (const FlowState& state : result.states) {
    out += "\n" + state.open_set.name + "\n";
    for (const SystemFlow& system : state.systems) {
      out += fmt::format("{} total {:.4f} gpm\n", system.system, in_gpm(system.total_flow));
      for (const PumpDuty& pump : system.pumps) {
        out += fmt::format("  {} {:.4f} gpm, rise {:.4f} psi, discharge {:.4f} psig{}\n", pump.id, in_gpm(pump.flow),
                           in_psi(pump.pressure_rise), in_psi(pump.discharge_pressure_gauge),
                           pump.dead_headed ? ", dead-headed" : "");
      }
      for (const PlacePressure& place : system.places) {
        out += fmt::format("  {} {:.4f} psig\n", place.id, in_psi(place.pressure_gauge));
      }
    }
  }
  return out;
}

std::string content(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

class Golden : public testing::TestWithParam<const char*> {};

TEST_P(Golden, NumbersAreAsKept) {
  const std::string path = std::string(TEST_SOURCE_DIR) + "/studies/golden/" + GetParam() + ".txt";
  const std::string now = numbers(study_flow(test::station(test::site_text(GetParam())), {}));
  if (now == content(path)) return;
  std::ofstream(path + ".new", std::ios::binary) << now;
  ADD_FAILURE() << GetParam() << " has other numbers than kept; they are beside them in " << path << ".new";
}

INSTANTIATE_TEST_SUITE_P(Sites, Golden,
                         testing::Values("site-s", "truck-lane", "hollin-gap", "thornby", "marle-cross", "pell-ridge",
                                         "ludd-bank", "sedge-fold"));

TEST(GoldenFiles, EveryExampleIsKept) {
  for (const auto& entry : std::filesystem::directory_iterator(SITES_DIR)) {
    if (entry.path().extension() != ".toml") continue;
    const std::string kept = std::string(TEST_SOURCE_DIR) + "/studies/golden/" + entry.path().stem().string() + ".txt";
    EXPECT_TRUE(std::filesystem::exists(kept)) << "add " << entry.path().stem() << " to the golden numbers";
  }
}

}  // namespace
}  // namespace forecourse::studies
