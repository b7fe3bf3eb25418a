#include "forecourse/studies/flow/worst/downstream.h"

#include <utility>
#include <vector>

#include "forecourse/base/index.h"

namespace forecourse::studies {
namespace {

/// Places that hang together with `start` without the line.
std::vector<char> side_of(const network::PipingSystem& system, int start, std::size_t line) {
  std::vector<char> side(system.places.size(), 0);
  std::vector<int> next{start};
  side[at(start)] = 1;
  while (!next.empty()) {
    const int here = next.back();
    next.pop_back();
    for (std::size_t r = 0; r < system.runs.size(); ++r) {
      const network::Run& run = system.runs[r];
      const bool joins = run.kind == network::RunKind::line || run.kind == network::RunKind::riser;
      if (r == line || !joins || (run.from != here && run.to != here)) continue;
      const int there = run.from == here ? run.to : run.from;
      if (side[at(there)] != 0) continue;
      side[at(there)] = 1;
      next.push_back(there);
    }
  }
  return side;
}

bool has_running_pump(const network::PipingSystem& system, const std::vector<char>& side) {
  for (const network::PumpPoint& pump : system.pumps) {
    if (pump.running && side[at(system.runs[at(pump.run)].to)] != 0) return true;
  }
  return false;
}

}  // namespace

std::optional<network::HoseSet> hoses_behind(const network::HoseGroup& group, std::size_t line) {
  const network::PipingSystem& system = *group.systems.front();
  const network::Run& run = system.runs[line];
  for (const auto& [end, other] : {std::pair(run.to, run.from), std::pair(run.from, run.to)}) {
    const std::vector<char> side = side_of(system, end, line);
    if (side[at(other)] != 0) return std::nullopt;  // a ring
    if (has_running_pump(system, side)) continue;
    network::HoseSet behind = 0;
    for (std::size_t h = 0; h < group.hoses.size(); ++h) {
      const network::HosePart& part = group.hoses[h].parts.front();
      if (side[at(group.run(part).from)] != 0) behind |= network::HoseSet{1} << h;
    }
    return behind;
  }
  return std::nullopt;
}

}  // namespace forecourse::studies
