#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/incident/options.h"

namespace forecourse::studies {

/// Low, likely and high of one figure, SI. `low == high`: no spread is known.
struct Spread {
  double low = 0.0;
  double likely = 0.0;
  double high = 0.0;

  [[nodiscard]] bool is_certain() const { return !(low < high); }
};

/// Where fuel can be. The word of each in `word(Place)`.
enum class Holder {
  tank,
  line,       ///< what springs back out of a pressed line
  dispenser,  ///< above the shear groove, or in the hose
  sump,
  slab,    ///< lies on the forecourt
  ground,  ///< has left through the sump, or beside it
  air,     ///< evaporated or burned
  interceptor,
  vehicle,  ///< went through hoses that are open elsewhere
  truck,    ///< the tanker, for an overfill
  delivery_hose,
  spill_container,
};
[[nodiscard]] const char* word(Holder holder);

/// Whether a barrier can be counted on.
enum class Assurance { assured, not_assured, absent, not_asked };
[[nodiscard]] const char* word(Assurance assurance);

/// One barrier of this incident at this place.
struct BarrierState {
  Barrier barrier = Barrier::shear_valve;
  std::string owner;  ///< id of what bears it
  Assurance assurance = Assurance::absent;
  std::vector<std::string> reasons;  ///< why it is not assured: "no trip test on record"
  std::string does;                  ///< what it does here, in words: "shuts the riser 0.10 s after the blow"
  SourceSpan where{};
};

/// Which signal stops which pump: one row of the cause-and-effect matrix.
struct CauseRow {
  std::string cause;                 ///< id of a sensor, leak detector or emergency stop
  std::vector<std::string> effects;  ///< per column of the matrix: "stops"; empty: none
  bool tested = false;               ///< a test is on record
  std::optional<bool> fail_safe;     ///< as entered
  std::optional<double> acts_in;     ///< [s] as entered
};
struct CauseEffect {
  std::vector<std::string> columns;  ///< pumps and dispensers
  std::vector<CauseRow> rows;
};

/// What happened at one moment.
enum class Happening {
  begins,
  valve_trips,
  valve_shut,
  valve_fails,
  pump_stops,
  pump_starts,
  emergency_stop,
  sensor_stops,
  sensor_wet,
  sensor_dead,
  lowest_seal,
  sump_full,
  reaches_drain,
  interceptor_full,
  above_drained,
  line_spent,
  check_valve_shuts,
  relief_opens,
  link_parts,
  crack_trips,
  reportable,
  detector_due,
  hose_tight,
  breakaway_parts,
  hose_fails,
  dispenser_over,
  nozzle_out,
  alarm,
  restricts,
  valve_closes,
  driver_closes,
  hose_drains,
  tank_full,
  tank_empty,
  level_down,
  counting_ends,
};

/// A line of the event list.
struct TimelineRow {
  double time = 0.0;  ///< [s] from the incident
  Happening what = Happening::begins;
  std::string owner;               ///< id of what it happens to
  std::string words;               ///< one sentence
  double escaped = 0.0;            ///< [m3] outside the piping so far
  double flow = 0.0;               ///< [m3/s] escaping after it
  std::optional<double> pressure;  ///< [Pa] gauge in the line where it is open; empty: not determined
  std::vector<double> held;        ///< [m3] per holder of the run, in the order of `IncidentRun::holders`
};

/// A row of the ledger: every liter has a cause.
struct LedgerLine {
  Holder from = Holder::line;
  Holder to = Holder::slab;
  std::string product;
  std::string cause;    ///< in words: "while the poppet was closing"
  double amount = 0.0;  ///< [m3]
};

struct HolderAmount {
  Holder holder = Holder::tank;
  double start = 0.0;  ///< [m3]; of a tank and a line: 0, amounts are changes
  double end = 0.0;
};

/// What a course does since the point before; all vectors have the length of `IncidentChart::time`. The first point has
/// its value.
struct CourseBetween {
  std::vector<double> mean;  ///< over time
  std::vector<double> low;
  std::vector<double> high;
};

/// What runs between the points of a chart.
struct ChartBetween {
  CourseBetween escaping;   ///< [m3/s]
  CourseBetween pumped;     ///< [m3/s]
  CourseBetween elsewhere;  ///< [m3/s]
  CourseBetween pressure;   ///< [Pa] gauge; NaN, or empty: not determined
};

/// Courses over time for charts; all vectors have the length of `time`.
struct IncidentChart {
  std::vector<double> time;               ///< [s]
  std::vector<double> escaping;           ///< [m3/s]
  std::vector<double> pumped;             ///< [m3/s] from the tanks
  std::vector<double> elsewhere;          ///< [m3/s] at hoses open elsewhere
  std::vector<double> pressure;           ///< [Pa] gauge in the line at the place; NaN, or empty: not determined
  std::vector<double> link_temperature;   ///< [K]; empty: no fire
  std::vector<std::vector<double>> held;  ///< [m3] per holder
  std::optional<ChartBetween> between;    ///< empty: every step is a point, or none leaves its points by much
};

enum class RunStatus { finished, cut_short, failed };

/// One run of the incident with one state of the barriers.
struct IncidentRun {
  std::string name;              ///< "every barrier acts", "without shear valve"
  std::vector<Barrier> missing;  ///< that do not act in this run
  RunStatus status = RunStatus::finished;
  std::string reason;                 ///< of a run that did not finish
  double counted = 0.0;               ///< [s] until when it was counted
  double escaped = 0.0;               ///< [m3] out of the piping, wherever it went
  double to_environment = 0.0;        ///< [m3] on the slab, in the ground, in the interceptor and in the air
  double peak_flow = 0.0;             ///< [m3/s]
  double steady_flow = 0.0;           ///< [m3/s] once settled, with nothing shut; 0 if it never settles
  std::optional<double> isolated_at;  ///< [s] nothing flows out of the line any more; empty: not within the time
  std::optional<double> sensor_at;    ///< [s]
  std::optional<double> seal_at;      ///< [s] lowest entry seal
  std::optional<double> brim_at;      ///< [s]
  bool reportable = false;            ///< more than the published quantity left the containment
  std::vector<Holder> holders;
  std::vector<HolderAmount> amounts;  ///< per holder
  std::vector<LedgerLine> ledger;
  std::vector<TimelineRow> timeline;
  IncidentChart chart;
  double balance = 0.0;    ///< largest imbalance over the largest amount moved [1]
  std::uint64_t hash = 0;  ///< of the whole run: a replay gives the same
  std::size_t steps = 0;
};

/// A hose open elsewhere.
struct HoseElsewhere {
  std::string id;
  double before = 0.0;  ///< [m3/s] before the incident
  double during = 0.0;  ///< [m3/s] while fuel escapes at its steady rate
};

/// What goes out of one broken end.
struct OpenEnd {
  std::string product;
  std::string system;
  double height_above_liquid = 0.0;       ///< [m] of the opening over the liquid in the tank
  double shutoff_at_opening = 0.0;        ///< [Pa] gauge at the opening, nothing flowing
  double steady_flow = 0.0;               ///< [m3/s] with the pump running
  double pump_flow = 0.0;                 ///< [m3/s] then
  bool pump_runs = true;                  ///< it runs when the incident begins
  std::optional<double> gravity_flow;     ///< [m3/s] with the pump off, from a tank that stands higher, full as it is
  std::optional<double> stock;            ///< [m3] in the tank above the pump's inlet; empty: not known, no limit
  std::optional<double> above_opening;    ///< [m3] at most in pipes higher than the opening; empty: not determined
  std::optional<double> steady_figure;    ///< [m3] steady flow x equivalent full-flow time of the valve
  std::optional<double> in_45_seconds;    ///< [m3] once steady
  std::optional<double> line_compliance;  ///< [m3/Pa]; empty: not determined
  std::string compliance_reason;
  double trunk_inertance = 0.0;  ///< [Pa s2/m3]
  double riser_inertance = 0.0;  ///< [Pa s2/m3]
  std::vector<HoseElsewhere> elsewhere;
};

/// What line pack and the accelerating column change, over the time the opening is open.
struct PackAndColumn {
  double steady = 0.0;       ///< [m3] neither
  double with_pack = 0.0;    ///< [m3] a springy line, no inertia; equal to `steady` where compliance is not determined
  double with_column = 0.0;  ///< [m3] inertia, no spring
  double with_both = 0.0;    ///< [m3]
};

/// How the fuel leaves through a part of the full opening, the valve not acting.
struct JetRow {
  double area_share = 1.0;     ///< of the full opening [1]
  double flow = 0.0;           ///< [m3/s]
  double velocity = 0.0;       ///< [m/s]
  double height_low = 0.0;     ///< [m]
  double height_high = 0.0;    ///< [m] without air
  double in_60_seconds = 0.0;  ///< [m3]
};

/// A pool on the slab.
struct PoolTold {
  double volume = 0.0;          ///< [m3] largest on the slab in the run as told
  Spread film = {};             ///< [m]
  Spread area = {};             ///< [m2] low with the thick film
  Spread radius = {};           ///< [m] as if round
  std::optional<double> slope;  ///< [1]; it runs down the slope
};

/// A crack's leak.
struct CrackTold {
  Spread exponent = {};         ///< [1]
  bool exponent_known = false;  ///< from two readings or entered
  Spread at_running = {};       ///< [m3/s] at the running pressure
  Spread at_holding = {};
  Spread mean = {};  ///< [m3/s] over the share of time
  Spread at_10_psi = {};
  Spread at_detector = {};     ///< at the detector's own pressure
  Spread at_test = {};         ///< at 1.5 x the running pressure
  double hole_diameter = 0.0;  ///< [m] equivalent round hole at the running pressure
  double discharge_coefficient = 0.61;
  double running_pressure = 0.0;  ///< [Pa] gauge
  double holding_pressure = 0.0;
  double running_share = 0.0;            ///< [1]
  std::optional<double> detects;         ///< [m3/s] of the detector
  std::optional<double> detects_at;      ///< [Pa]
  std::optional<bool> bound_to_be_seen;  ///< empty: not determined
  std::string seen_reason;
  std::optional<Spread> to_sensor;  ///< [s]
  std::optional<Spread> to_seal;
  std::optional<Spread> to_brim;
};

/// A limit that a pull reaches.
struct PullLimit {
  std::string what;            ///< "breakaway", "nozzle pull-out", "anchorage"
  std::optional<Spread> pull;  ///< [N] in the hose at which it is reached; empty: not known
  bool illustrative = false;
};

struct DriveOffTold {
  double slack = 0.0;       ///< [m]
  double tight_at = 0.0;    ///< [s]
  double speed_then = 0.0;  ///< [m/s]
  double angle = 0.0;       ///< [rad] of the pull off the breakaway's axis
  bool has_whip = false;
  std::optional<Spread> separation_force;  ///< [N] in the hose; empty: never, or its pull is not known
  bool may_never_release = false;
  std::vector<PullLimit> limits;  ///< in the order reached; unknown ones last
  std::string outcome;            ///< in words
  bool outcome_known = false;
  std::optional<double> parts_at;     ///< [s]
  std::optional<double> base_force;   ///< [N]
  std::optional<double> base_moment;  ///< [N m]
};

struct FireTold {
  std::string fuel;                       ///< row of the published table; empty: none stands for the product
  double pool_diameter = 0.0;             ///< [m]
  Spread burning_rate = {};               ///< [kg/(m2 s)] thin layer to deep pool
  Spread heat_release = {};               ///< [W]
  Spread flame_height = {};               ///< [m]
  std::vector<double> distances;          ///< [m]
  std::vector<Spread> radiation;          ///< [W/m2] at each
  std::optional<double> gas_temperature;  ///< [K] at the link
  std::optional<double> gas_speed;        ///< [m/s]
  std::optional<double> response_index;   ///< [(m s)^0.5]
  std::optional<double> rated;            ///< [K]
  double start_temperature = 0.0;         ///< [K]
  std::optional<double> link_parts_at;    ///< [s]; empty: never, or not determined
  std::string link_reason;
  bool link_never_parts = false;           ///< in gas as it is
  std::optional<double> isolated_at;       ///< [s] after ignition
  std::optional<double> fed_with_link;     ///< [m3]
  std::optional<double> fed_without_link;  ///< [m3] until the emergency stop
};

struct OverfillTold {
  std::string tank;
  std::string delivery;
  double truck_flow = 0.0;         ///< [m3/s] at the start
  std::optional<double> alarm_at;  ///< [s]
  std::optional<double> restricts_at;
  std::optional<double> closes_at;
  std::optional<double> full_at;
  double spilled = 0.0;       ///< [m3] out of the hose and the fill
  double in_container = 0.0;  ///< [m3] of it
  std::vector<std::string> notes;
};

/// One row of the barrier table.
struct BarrierRow {
  std::string name;  ///< "every barrier acts", "without shear valve"
  std::vector<Barrier> missing;
  double escaped = 0.0;         ///< [m3]
  double to_environment = 0.0;  ///< [m3]
  std::size_t run = 0;          ///< of `IncidentResult::runs`
};

/// Which input moves the loss most.
struct InputWeight {
  std::string what;               ///< path of the value, or its words
  double rank_correlation = 0.0;  ///< Spearman's, between input and liters [1]
  bool illustrative = false;
};

/// A Monte Carlo.
struct IncidentSpread {
  std::size_t runs = 0;
  std::size_t failed = 0;  ///< runs that did not finish; not among the figures
  std::uint64_t seed = 0;
  double mean = 0.0;  ///< [m3] to the environment and the sump: escaped
  std::array<double, 5> shares = {0.05, 0.25, 0.5, 0.75, 0.95};
  std::array<double, 5> quantiles = {};              ///< [m3] escaped
  std::array<double, 5> environment_quantiles = {};  ///< [m3] to the environment
  std::vector<double> escaped_by_run;                ///< [m3] in the order of runs; NaN: it did not finish
  std::vector<double> environment_by_run;            ///< [m3] likewise, to the environment
  std::vector<double> exceeded;                      ///< [m3] amounts
  std::vector<double> exceedance;                    ///< share of runs above each
  std::vector<InputWeight> weights;                  ///< greatest first
  bool mainly_illustrative = false;                  ///< the spread comes mainly from illustrative inputs
  std::vector<std::string> drawn;                    ///< what was drawn, in words
};

/// A step of the way back to service.
struct ReturnStep {
  std::string what;    ///< "replace the two-piece top of the shear valve"
  std::string kind;    ///< "replace", "inspect", "test"
  std::string by;      ///< "licensed contractor", "certified tester", "operator"
  std::string source;  ///< clause, or "common practice, no source"
};

/// A figure that the incident was computed with, as the report lists it.
struct InputUsed {
  std::string what;
  Spread value;                                        ///< SI
  std::string unit;                                    ///< of `value`: "s", "m3"; empty: a number
  bool entered = false;                                ///< the user's figure
  DefaultStatus status = DefaultStatus::illustrative;  ///< where it is not
  std::string source;
};

/// An incident, worked out.
struct IncidentResult {
  IncidentOptions options;  ///< as used
  std::string version;
  std::string at;                   ///< id of the place
  std::string dispenser;            ///< id, empty if none
  std::optional<double> sump_brim;  ///< [m3] of the sump there, to its brim; empty: none, or not known
  std::string problem;              ///< why nothing is determined; empty if something is
  std::string first_line;           ///< one sentence: what escapes, as a range where it is one
  Spread escaped = {};              ///< [m3] over the barriers that are not assured and the uncertain inputs
  Spread to_environment = {};
  std::size_t drawn_for_range = 0;  ///< runs with drawn inputs that the ranges take in; 0: no input is uncertain
  std::vector<BarrierState> barriers;
  CauseEffect cause_effect;
  std::vector<OpenEnd> open_ends;
  std::vector<IncidentRun> runs;  ///< first: as the barriers are stated, not assured ones acting
  std::vector<BarrierRow> barrier_table;
  std::optional<PackAndColumn> pack_and_column;
  std::vector<JetRow> jets;
  std::optional<PoolTold> pool;
  std::optional<CrackTold> crack;
  std::optional<DriveOffTold> drive_off;
  std::optional<FireTold> fire;
  std::optional<OverfillTold> overfill;
  std::optional<IncidentSpread> spread;
  std::vector<ReturnStep> return_to_service;
  std::vector<InputUsed> inputs;  ///< which were the user's figures, and which illustrative
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// What escapes, when, and why.
///
/// \error see docs/theory/incident.md
/// \fails `problem` says what is missing; a run that would not end has status cut_short or failed and what it had
[[nodiscard]] IncidentResult study_incident(const site::Site& site, const IncidentOptions& options,
                                            const Context& context = {});

/// What is wrong with the options: a place that does not exist, a stop before time zero, a link rated below ambient.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const IncidentOptions& options);

}  // namespace forecourse::studies
