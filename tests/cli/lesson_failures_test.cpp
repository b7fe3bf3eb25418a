// What the replays of a lesson tell is what their commands print.
// SOURCE: common practice, no source
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "cli/program.h"
#include "forecourse/lesson/failures/replay.h"
#include "support/stations.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

/// As typed: the site stands behind the first word.
std::string typed(const std::vector<std::string>& command, const std::string& site) {
  std::string out = quoted(command.front()) + " " + quoted(site);
  for (std::size_t i = 1; i < command.size(); ++i) out += " " + quoted(command[i]);
  return out + " --json";
}

class FullReplayTold : public ::testing::TestWithParam<const char*> {};

TEST_P(FullReplayTold, IsWhatItsCommandPrints) {
  const std::string file = std::string(GetParam()) + ".toml";
  const site::Site site = test::station(test::site_text(GetParam()));
  std::map<std::string, json> printed;
  for (const lesson::FailureKind& kind : lesson::failure_kinds()) {
    const lesson::Replay replay = lesson::run_failure(kind, site, {});
    for (const lesson::Scene& scene : replay.scenes) {
      const std::string command = typed(scene.command, file);
      if (printed.count(command) == 0) {
        const Outcome outcome = run_program(SITES_DIR, command, "LC_ALL=C.UTF-8");
        ASSERT_FALSE(outcome.out.empty()) << command << "\n" << outcome.err;
        printed[command] = json::parse(outcome.out);
      }
      for (const lesson::SceneValue& one : scene.told) {
        const json& there = printed[command].at(json::json_pointer(one.pointer));
        ASSERT_EQ(there.is_null(), !one.value) << command << " " << one.pointer;
        if (!one.value) continue;
        EXPECT_EQ(there.get<double>(), *one.value) << command << " " << one.pointer;
      }
    }
  }
  EXPECT_FALSE(printed.empty());
}

INSTANTIATE_TEST_SUITE_P(Stations, FullReplayTold,
                         ::testing::Values("hollin-gap", "marle-cross", "ludd-bank", "sedge-fold"),
                         [](const auto& one) {
                           std::string name = one.param;
                           name.erase(name.find('-'), 1);
                           return name;
                         });

}  // namespace
}  // namespace forecourse::cli
