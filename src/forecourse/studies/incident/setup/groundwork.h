#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/build.h"
#include "forecourse/network/escape/broken_end.h"
#include "forecourse/network/escape/feed.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {

/// One piping that is broken open, and what feeds the opening.
struct EndGround {
  std::size_t system = 0;                      ///< of the network
  const site::Dispenser* dispenser = nullptr;  ///< null: a line
  const site::Inlet* inlet = nullptr;          ///< null: a line
  const site::Hose* hose = nullptr;            ///< of a hose that is open
  std::string place;                           ///< id
  std::string product;
  network::BrokenEnd end;
  std::optional<network::BrokenEnd> torn;  ///< the riser torn off in the sump, where it could be
  network::Feed running;
  network::Feed stopped;
  network::FlowTable path;
  network::FlowTable torn_path;
  std::optional<double> compliance;  ///< [m3/Pa]
  std::string compliance_reason;
  double trunk_inertance = 0.0;  ///< [Pa s2/m3]
  double rest_pressure = 0.0;    ///< [Pa] piezometric
  std::optional<double> relief;  ///< [Pa] piezometric
  bool checked = false;          ///< every pump has a check valve
  std::vector<std::string> pumps;
  std::string tank;                     ///< ids of the tanks that feed it, in words
  std::optional<double> stock;          ///< [m3] in them above the pumps' inlets; empty: not known
  network::FlowTable fall;              ///< [Pa] by which the falling level lowers the feed, against [m3] gone
  bool standing_known = false;          ///< what a standing pump loses is entered
  std::optional<double> above_opening;  ///< [m3] in pipes that stand higher than the opening; empty: not known
  std::shared_ptr<const network::PipingSystem> split;  ///< the system cut in a loop; null: not so
};

/// Everything about the place that stays the same from run to run.
struct Groundwork {
  network::StationNetwork network;
  std::string at;         ///< id of the place
  std::string dispenser;  ///< id, or empty
  const site::Sump* sump = nullptr;
  std::vector<EndGround> ends;
  std::vector<std::string> open;  ///< hoses open elsewhere that count
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
  std::string problem;  ///< why nothing can be computed; empty if it can
};

/// Looks up the place of an incident and solves what feeds it.
[[nodiscard]] Groundwork lay_ground(const site::Site& site, const IncidentOptions& options);

/// The request of the options laid over that of the file with the same kind (and id, where one is given).
[[nodiscard]] site::IncidentRequest merged_request(const site::Site& site, const IncidentOptions& options);

}  // namespace forecourse::studies
