// How long all checks of a station take, given its studies: at most 2 ms are wanted.
#include <benchmark/benchmark.h>

#include <fstream>
#include <sstream>
#include <string>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::checks {
namespace {

site::Site site_named(const std::string& name) {
  const std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml");
  std::ostringstream text;
  text << in.rdbuf();
  return site::read_site(text.str()).value;
}

/// Held against every built-in rule set, whatever the site names.
void all_checks(benchmark::State& state, const std::string& name) {
  site::Site site = site_named(name);
  site.rules.clear();
  for (const site::RuleSet& set : site::built_in_rule_sets()) site.rules.push_back(set.id);
  const Studied studied = study_for_checks(site, nullptr);
  const Facts facts = facts_of(site, studied, {2026, 11, 30, {}}, nullptr);
  std::size_t findings = 0;
  for (auto _ : state) {
    const CheckResult result = check_station(facts, studied);
    findings = all_findings(result).size();
  }
  state.counters["findings"] = static_cast<double>(findings);
}

BENCHMARK_CAPTURE(all_checks, hollin_gap, "hollin-gap")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(all_checks, marle_cross, "marle-cross")->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace forecourse::checks
