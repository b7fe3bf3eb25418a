#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/network/element.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/ladder/ladder.h"
#include "forecourse/studies/flow/pumps/pump_told.h"
#include "forecourse/studies/flow/rest/rest_results.h"
#include "forecourse/studies/flow/spans/span_results.h"
#include "forecourse/studies/flow/worst/worst_states.h"

namespace forecourse::studies {

/// Hoses open at the same time.
struct OpenSet {
  std::string name;
  std::vector<std::string> hoses;  ///< ids
};

struct FlowOptions {
  std::vector<OpenSet> open_sets;       ///< empty: the file's; none there: all open, and one at each dispenser
  std::optional<double> keep_flow;      ///< [m3/s] every open hose should keep this; empty: the file's
  bool spans = true;                    ///< find what moves the flows and how far, and the range of each
  bool lines_at_rest = true;            ///< find pressures with all hoses shut, and times to first flow
  std::vector<std::string> order = {};  ///< in which the hoses of a ladder open; empty: the file's, or none
  bool ladders = true;                  ///< find flow against the number open, and the worst states
  SearchLimits search = {};             ///< how far for these
};

/// One part of the way to a hose: what it adds or takes.
struct BudgetRow {
  network::ElementKind kind = network::ElementKind::line;
  std::string part;       ///< the trade's word: "riser", "lift", "limiter"
  std::string owner;      ///< id of what it belongs to
  double flow = 0.0;      ///< [m3/s] through it
  double velocity = 0.0;  ///< [m/s]; 0 where it has no bore of its own
  double loss = 0.0;      ///< [Pa] of piezometric pressure; negative for a pump
};

/// A point of the grade line.
struct GradePoint {
  std::string place;
  double distance = 0.0;        ///< [m] along the course from the tank
  double elevation = 0.0;       ///< [m] of the pipe
  double grade = 0.0;           ///< [m] elevation the liquid would stand at
  double pressure_gauge = 0.0;  ///< [Pa]
  std::string part = {};        ///< that ends here: "meter", `place` is what it belongs to; empty at a place
  bool height_entered = true;   ///< false: the elevation is that of the nearest place of the course that has one
};

/// What flows at one hose. A blended hose has one of these in each of its products' systems.
struct HoseFlow {
  std::string id;
  std::string dispenser;
  bool open = false;
  double share = 1.0;                        ///< of the hose's flow that this product gives
  double flow = 0.0;                         ///< [m3/s] of this product
  double hose_flow = 0.0;                    ///< [m3/s] of the hose: flow / share
  std::optional<double> share_reached = {};  ///< of a blended hose's flow; 0 where nothing flows; empty: no blend
  bool ratio_met = true;                     ///< false: a blended hose that cannot keep its ratio
  double pressure_gauge = 0.0;               ///< [Pa] where the hose begins
  std::optional<double> low;    ///< [m3/s] least of the hose over all uncertain values; empty: none, or not determined
  std::optional<double> high;   ///< [m3/s] most
  std::optional<double> limit;  ///< [m3/s] of its limiter, for the whole hose
  bool at_limit = false;        ///< the limiter holds it
  std::optional<double> rule_cap;  ///< [m3/s] a rule allows
  std::string rule_clause;
  bool above_rule_cap = false;
  bool below_keep_flow = false;
  std::vector<BudgetRow> budget;  ///< tank to nozzle; rises and losses add up to nothing
  std::vector<GradePoint> grade_line;
};

struct PumpDuty {
  std::string id;
  std::string tank;
  bool running = true;
  double flow = 0.0;                                   ///< [m3/s]
  double pressure_rise = 0.0;                          ///< [Pa] added by the pump
  double discharge_pressure_gauge = 0.0;               ///< [Pa] at the discharge head
  std::optional<double> leak_detector_pressure_gauge;  ///< [Pa] on its line side; empty: no leak detector
  bool dead_headed = false;                            ///< runs and delivers nothing
  bool runs_back = false;                              ///< fuel runs back through it: it has no check valve
  double speed = 1.0;                                  ///< of full speed [1]
  std::optional<PumpOpening> opening = {};  ///< below this flow a stronger one holds it shut; empty: nothing does
  std::optional<PumpHeat> heat = {};        ///< where it delivers nothing, or can be held shut
  std::optional<bool> bypass = {};          ///< as entered
  std::optional<double> share_of_best_efficiency_flow = {};  ///< flow / flow of best efficiency at its speed [1]
};

struct PlacePressure {
  std::string id;
  double elevation = 0.0;       ///< [m]
  double pressure_gauge = 0.0;  ///< [Pa]; NaN where nothing holds it
};

struct LineFlow {
  std::string id;
  double flow = 0.0;           ///< [m3/s], from `from` to `to` of the line
  double velocity = 0.0;       ///< [m/s]
  double pressure_loss = 0.0;  ///< [Pa]
};

enum class FlowStatus { determined, at_rest, no_supply, not_determined };

/// One product's piping in one state.
struct SystemFlow {
  std::string system;
  std::string product;
  FlowStatus status = FlowStatus::not_determined;
  std::string reason;       ///< why it is not determined, or why nothing reaches some open hose
  double total_flow = 0.0;  ///< [m3/s] from the tanks
  std::vector<HoseFlow> hoses;
  std::vector<PumpDuty> pumps;
  std::optional<ControlTold> control = {};  ///< empty: none starts, stops or turns pumps by itself
  std::vector<PlacePressure> places;
  std::vector<LineFlow> lines;
  int iterations = 0;
  double pressure_residual = 0.0;  ///< [Pa]
  double flow_residual = 0.0;      ///< [m3/s]
};

struct FlowState {
  OpenSet open_set;
  std::vector<SystemFlow> systems;
};

/// Flow of a hose in one state, held against its limits.
struct SummaryFlow {
  double flow = 0.0;      ///< [m3/s] of the hose
  bool at_limit = false;  ///< the limiter holds it
  bool above_rule_cap = false;
  bool below_keep_flow = false;
  std::optional<double> low = std::nullopt;   ///< [m3/s] least over all uncertain values, as of `HoseFlow`
  std::optional<double> high = std::nullopt;  ///< [m3/s] most
};

/// Flow of one hose in the three states every station is asked about.
struct HoseSummary {
  std::string id;
  std::string dispenser;
  std::string product;                  ///< or "regular 60 % + premium 40 %"
  std::optional<SummaryFlow> alone;     ///< only this hose open; empty: not determined
  std::optional<SummaryFlow> one_each;  ///< one hose of its product at each dispenser; empty also: not among them
  std::optional<SummaryFlow> all_open;  ///< every hose of the station open
};

/// What flows of one product and what it is.
struct SystemSummary {
  std::string id;
  std::string product;
  double density = 0.0;            ///< [kg/m3]
  double dynamic_viscosity = 0.0;  ///< [Pa s]
  double temperature = 0.0;        ///< [K]
  bool elevations_known = true;    ///< false: gauge pressures are counted as if at the liquid's level
  int hoses = 0;
  int pumps = 0;
};

struct FlowResult {
  FlowOptions options;  ///< as used
  std::string version;
  std::vector<SystemSummary> systems;
  std::vector<HoseSummary> hoses;
  std::vector<FlowState> states;
  std::vector<DefaultUsed> defaults;
  int uncertain_values = 0;               ///< that can move a flow; the flows are those with what is likely
  FlowSpans spans;                        ///< what moves the flows, and how far
  std::vector<LineAtRest> lines_at_rest;  ///< one for each system
  std::vector<Ladder> ladders;            ///< of each group of hoses that depend on each other, one an order
  std::vector<WorstStates> worst_states;  ///< one for each such group
  std::vector<Diagnostic> warnings;       ///< with the reasons why a system is not determined
};

/// What flows at every hose, and the pressure everywhere, for sets of open hoses.
///
/// \error see docs/theory/steady-network.md; the flows are as good as the losses and curves entered.
/// \fails a system that lacks what matters has status not_determined and a reason; the others are solved.
[[nodiscard]] FlowResult study_flow(const site::Site& site, const FlowOptions& options, const Context& context = {});

/// Ids in `options` that are no hose of the station, as errors with the nearest hose; and what is wrong with the order
/// of the options, or of the file where they have none.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const FlowOptions& options);

}  // namespace forecourse::studies
