#pragma once

#include <map>
#include <string>

#include "forecourse/network/system_solver.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// Tells of the pumps of solved states what only the pumps are asked: when a weaker one opens, how fast one that
/// delivers nothing warms, how its flow stands to the flow of best efficiency. Keeps what does not change with the
/// open hoses.
class PumpLimits {
 public:
  explicit PumpLimits(const site::Site& site) : site_(site) {}

  /// Fills in the pumps of `out`, which tells `state`.
  void tell(const network::PipingSystem& system, const network::SystemState& state, SystemFlow& out);

 private:
  using Openings = std::vector<std::optional<PumpOpening>>;  ///< per pump of a system

  const Openings& openings(const network::PipingSystem& system, const network::SystemState& state);
  [[nodiscard]] PumpHeat heat(const site::Pump& pump, const std::string& product) const;

  const site::Site& site_;
  std::map<std::string, Openings> known_;  ///< by system, and which pumps run how fast
};

}  // namespace forecourse::studies
