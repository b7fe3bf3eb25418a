#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/solve.h"
#include "forecourse/studies/flow/spans/span_results.h"

namespace forecourse::studies {

/// What a hose gives, and what is left to give more.
struct Give {
  double flow = 0.0;   ///< [m3/s] of the hose
  double spare = 0.0;  ///< [Pa] that its limiter takes; below zero: lacking at a hose that gives nothing
};

/// True if `a` gives less: less flow or, with the same flow, less to spare.
[[nodiscard]] bool gives_less(const Give& a, const Give& b);

/// One system in one open set.
struct SystemFlows {
  std::optional<SpanFlows> flows;  ///< empty: not determined, or no hose of it is open
  network::Fluid fluid;
};

/// A station in one open set.
struct SetFlows {
  std::map<std::string, Give> hoses;  ///< open hoses that are determined
  std::vector<SystemFlows> systems;   ///< as the network's
};

/// Ids of open hoses, one list for each set.
using HoseSets = std::vector<std::vector<std::string>>;

/// Solves a station for several open sets.
[[nodiscard]] std::vector<SetFlows> solve_sets(const network::StationNetwork& network, network::StationSolver& solver,
                                               const HoseSets& sets);

/// The same, from the station as entered.
[[nodiscard]] std::vector<SetFlows> solve_sets(const site::Site& site, const HoseSets& sets);

}  // namespace forecourse::studies
