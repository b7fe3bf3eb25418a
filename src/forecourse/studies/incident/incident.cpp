#include "forecourse/studies/incident/incident.h"

#include <algorithm>
#include <set>
#include <utility>

#include "forecourse/studies/incident/after/return_to_service.h"
#include "forecourse/studies/incident/barriers/barrier_states.h"
#include "forecourse/studies/incident/barriers/cause_effect.h"
#include "forecourse/studies/incident/drive_off/drive_off.h"
#include "forecourse/studies/incident/figures/figures.h"
#include "forecourse/studies/incident/fire/fire_told.h"
#include "forecourse/studies/incident/overfill/overfill.h"
#include "forecourse/studies/incident/release/told_run.h"
#include "forecourse/studies/incident/runs_alone.h"
#include "forecourse/studies/incident/spread/spread.h"

namespace forecourse::studies {
namespace {

std::string listed(const std::set<Barrier>& missing) {
  std::string words;
  for (const Barrier barrier : missing) {
    std::string name = word(barrier);
    std::replace(name.begin(), name.end(), '-', ' ');
    words += (words.empty() ? "" : ", ") + name;
  }
  return words;
}

release::Names names_of(const Scene& scene) {
  release::Names names;
  for (const EndGround& end : scene.ground.ends) {
    names.places.push_back(end.place);
    names.products.push_back(end.product);
    names.tanks.push_back(end.tank);
  }
  names.sump = scene.ground.dispenser.empty() ? scene.ground.at : scene.ground.dispenser;
  names.sensor = names.sump;
  if (scene.ground.sump != nullptr && scene.ground.sump->sensor && !scene.ground.sump->sensor->id.empty()) {
    names.sensor = scene.ground.sump->sensor->id.text;
  }
  names.stop = scene.request.stop_by.text;
  return names;
}

constexpr std::size_t drawn_for_range = 256;
constexpr std::size_t drawn_for_long_range = 32;  ///< where one run is a month of cycles

/// Works an incident out, part by part.
class Work {
 public:
  Work(const site::Site& site, const IncidentOptions& options, const Context& context, bool draws = true)
      : site_(site), options_(options), context_(context), draws_(draws), request_(merged_request(site, options)) {
    result_.options = options;
    result_.options.request = request_;
    result_.version = FORECOURSE_VERSION;
    result_.cause_effect = cause_effect(site);
  }

  IncidentResult all() {
    if (options_.kind == IncidentKind::overfill) return overfilled();
    ground_ = lay_ground(site_, options_);
    result_.at = ground_.at;
    result_.dispenser = ground_.dispenser;
    result_.defaults = ground_.defaults;
    result_.warnings = ground_.warnings;
    result_.problem = ground_.problem;
    for (const Barrier barrier : options_.without) taken_.insert(barrier);
    for (const DeadBarrier& dead : options_.dead) {
      if (!dead.dead_for) taken_.insert(dead.barrier);
    }
    if (!result_.problem.empty()) return std::move(result_);
    work_out();
    return std::move(result_);
  }

 private:
  [[nodiscard]] Scene scene() const { return {site_, options_, request_, ground_}; }

  void work_out() {
    const Scene scene = this->scene();
    result_.barriers = barrier_states(scene);
    if (options_.kind == IncidentKind::drive_off) {
      DriveOffOutcome outcome = drive_off(scene, inputs_, names_of(scene), context_);
      result_.drive_off = std::move(outcome.told);
      for (IncidentRun& run : outcome.runs) add(std::move(run));
    } else if (!run_release(scene)) {
      return;
    }
    tell_figures(scene);
    if (options_.runs > 0 && options_.kind != IncidentKind::drive_off) {
      result_.spread = incident_spread(scene, taken_, context_);
    }
    tell_ranges();
    result_.return_to_service = return_to_service(scene);
    result_.inputs = inputs_.used();
    tell_first_line();
  }

  [[nodiscard]] IncidentRun run(const Scene& scene, std::string name, const std::set<Barrier>& missing,
                                Breakage breakage = Breakage::at_groove, Standing standing = Standing::open) {
    IncidentRun run = release::tell_run(make_case(scene, inputs_, missing, breakage, standing), names_of(scene),
                                        options_.charts, context_);
    run.name = std::move(name);
    run.missing.assign(missing.begin(), missing.end());
    return run;
  }

  void add(IncidentRun run) {
    result_.barrier_table.push_back({run.name, run.missing, run.escaped, run.to_environment, result_.runs.size()});
    result_.runs.push_back(std::move(run));
  }

  [[nodiscard]] bool is_there(Barrier barrier) const {
    const bool listed = std::any_of(result_.barriers.begin(), result_.barriers.end(), [&](const BarrierState& state) {
      return state.barrier == barrier && state.assurance != Assurance::absent &&
             state.assurance != Assurance::not_asked;
    });
    return listed && taken_.count(barrier) == 0;
  }

  /// As the barriers are told, then without each of them, then as if none acted.
  bool run_release(const Scene& scene) {
    const release::Case given = make_case(scene, inputs_, taken_);
    const bool leaks = options_.kind == IncidentKind::crack || options_.kind == IncidentKind::sump_fire;
    if (leaks && !(given.broken.front().opening.leak_coefficient > 0.0)) {
      result_.problem =
          "how much the crack leaks is not said: add a reading { rate = \"3 gph\", at = \"10 psi\" }, or an open_area";
      return false;
    }
    tell_supply(given);
    add(run(scene, as_asked(), taken_));
    if (may_stand_shut(given)) {
      add(run(scene, "no fuel passes the standing pump", taken_, Breakage::at_groove, Standing::shut));
    }
    if (!options_.barrier_table) return true;
    std::set<Barrier> none = taken_;
    for (const BarrierState& state : result_.barriers) {
      if (!is_there(state.barrier) || none.count(state.barrier) != 0) continue;
      none.insert(state.barrier);
      std::set<Barrier> missing = taken_;
      missing.insert(state.barrier);
      add(run(scene, "without " + listed(missing), missing));
    }
    const bool valve = is_there(Barrier::shear_valve) || taken_.count(Barrier::shear_valve) != 0;
    if (options_.kind == IncidentKind::struck && valve) {
      std::set<Barrier> torn = taken_;
      torn.insert(Barrier::shear_valve);
      add(run(scene, "shear valve not anchored: the riser is torn off in the sump", torn, Breakage::torn_in_sump));
    }
    if (none.size() > taken_.size() + 1) add(run(scene, "none of them acts", none));
    return true;
  }

  /// What the first run is called: by what is not there, what does not act, and what does not for a time.
  [[nodiscard]] std::string as_asked() const {
    const std::set<Barrier> gone(options_.without.begin(), options_.without.end());
    std::set<Barrier> dead, late;
    for (const DeadBarrier& one : options_.dead) (one.dead_for ? late : dead).insert(one.barrier);
    std::string words = gone.empty() ? "" : "without " + listed(gone);
    if (!dead.empty()) words += (words.empty() ? "" : "; ") + listed(dead) + " dead";
    if (!late.empty()) words += (words.empty() ? "" : "; ") + listed(late) + " dead at first";
    return words.empty() ? "every barrier that is there acts" : words;
  }

  void warn(std::string words) { result_.warnings.push_back({Severity::warning, std::move(words), {}, {}, {}}); }

  void tell_supply(const release::Case& given) {
    const bool any_supply = std::any_of(given.broken.begin(), given.broken.end(), [](const release::Broken& b) {
      return b.running.supplied || b.stopped.supplied;
    });
    if (!any_supply) warn("no pump can push fuel to the opening: what lies above it runs out");
    for (std::size_t i = 0; i < given.broken.size(); ++i) {
      if (!given.broken[i].stopped.supplied) continue;
      const EndGround& end = ground_.ends[i];
      warn("the liquid in tank " + end.tank + " stands above the opening: it runs out by gravity with the pump off" +
           (end.standing_known ? std::string()
                               : "; what a standing pump lets through is not entered (standing_loss): counted from "
                                 "nothing to a pump without loss"));
    }
  }

  /// Whether it is open how much a standing pump lets through, and it can matter.
  [[nodiscard]] bool may_stand_shut(const release::Case& given) const {
    for (std::size_t i = 0; i < given.broken.size(); ++i) {
      if (given.broken[i].stopped.supplied && !ground_.ends[i].standing_known) return true;
    }
    return false;
  }

  void tell_figures(const Scene& scene) {
    Inputs none;
    const release::Case given = make_case(scene, none, taken_);
    result_.open_ends = open_ends(scene, given);
    if (given.catches.exists) result_.sump_brim = given.catches.brim_volume;
    if (options_.kind == IncidentKind::struck || options_.kind == IncidentKind::line_break) {
      result_.jets = jets(scene, given);
      result_.pack_and_column = pack_and_column(given);
    }
    for (const IncidentRun& run : result_.runs) {
      const auto pool = pool_of(scene, run);
      if (pool && (!result_.pool || pool->volume > result_.pool->volume)) result_.pool = pool;
    }
    result_.crack = crack_told(scene);
    if (options_.kind != IncidentKind::sump_fire || result_.runs.empty()) return;
    const auto without = std::find_if(result_.runs.begin(), result_.runs.end(), [&](const IncidentRun& run) {
      std::set<Barrier> bare = taken_;
      bare.insert(Barrier::fusible_link);
      return run.missing == std::vector<Barrier>(bare.begin(), bare.end());
    });
    result_.fire =
        fire_told(scene, inputs_, &result_.runs.front(), without == result_.runs.end() ? nullptr : &*without);
  }

  /// From what escapes when all that is there acts to what escapes when only what is assured does.
  void tell_ranges() {
    if (result_.runs.empty()) return;
    const IncidentRun& likely = result_.runs.front();
    result_.escaped = {likely.escaped, likely.escaped, likely.escaped};
    result_.to_environment = {likely.to_environment, likely.to_environment, likely.to_environment};
    std::set<Barrier> unsure;
    for (const BarrierState& state : result_.barriers) {
      if (state.assurance == Assurance::not_assured) unsure.insert(state.barrier);
    }
    for (const IncidentRun& run : result_.runs) {
      const bool any_limit = result_.drive_off && !result_.drive_off->outcome_known;
      const bool possible = any_limit || std::all_of(run.missing.begin(), run.missing.end(), [&](Barrier barrier) {
                              return unsure.count(barrier) != 0 || taken_.count(barrier) != 0;
                            });
      if (!possible || run.status == RunStatus::failed) continue;
      widen(result_.escaped, run.escaped);
      widen(result_.to_environment, run.to_environment);
    }
    widen_by_inputs(unsure);
  }

  /// The same with every uncertain input drawn, from the 5 % to the 95 % of the runs asked, or of some.
  void widen_by_inputs(const std::set<Barrier>& unsure) {
    const bool any = std::any_of(inputs_.used().begin(), inputs_.used().end(),
                                 [](const InputUsed& input) { return !input.value.is_certain(); });
    if (!any || !draws_ || options_.kind == IncidentKind::drive_off || options_.kind == IncidentKind::overfill) return;
    IncidentOptions drawn = options_;
    if (drawn.runs == 0) drawn.runs = options_.kind == IncidentKind::crack ? drawn_for_long_range : drawn_for_range;
    std::set<Barrier> missing = taken_;
    missing.insert(unsure.begin(), unsure.end());
    for (const std::set<Barrier>& gone : std::set<std::set<Barrier>>{taken_, missing}) {
      const bool is_made = result_.spread && gone == taken_;
      const IncidentSpread spread =
          is_made ? *result_.spread : incident_spread({site_, drawn, request_, ground_}, gone, quietly());
      if (spread.failed == spread.runs) continue;
      widen(result_.escaped, spread.quantiles.front());
      widen(result_.escaped, spread.quantiles.back());
      widen(result_.to_environment, spread.environment_quantiles.front());
      widen(result_.to_environment, spread.environment_quantiles.back());
    }
    result_.drawn_for_range = drawn.runs;
  }

  /// The caller's threads and its wish to stop, without telling how far it is: these runs are not what was asked.
  [[nodiscard]] Context quietly() const {
    Context context = context_;
    context.progress = {};
    return context;
  }

  static void widen(Spread& spread, double value) {
    spread.low = std::min(spread.low, value);
    spread.high = std::max(spread.high, value);
  }

  void tell_first_line() {
    const bool unsure = std::any_of(result_.barriers.begin(), result_.barriers.end(), [](const BarrierState& state) {
      return state.assurance == Assurance::not_assured;
    });
    std::size_t stand_ins = 0;
    for (const InputUsed& input : result_.inputs) {
      stand_ins +=
          !input.entered && input.status == DefaultStatus::illustrative && input.value.low < input.value.high ? 1 : 0;
    }
    if (result_.spread && result_.spread->mainly_illustrative) {
      result_.first_line = "the spread of this result comes mainly from illustrative inputs";
    } else if (unsure && !result_.escaped.is_certain()) {
      result_.first_line =
          "barriers are not assured: the range runs from all of them acting to only the assured ones acting";
    } else if (stand_ins > 0) {
      result_.first_line = "some inputs are illustrative: the figures show a mechanism and an order of magnitude";
    }
  }

  IncidentResult overfilled() {
    OverfillOutcome outcome = overfill(site_, options_, request_, inputs_, context_);
    result_.problem = outcome.problem;
    result_.defaults = std::move(outcome.defaults);
    result_.at = outcome.told.tank;
    result_.barriers = std::move(outcome.barriers);
    for (const std::string& words : outcome.warnings) {
      result_.warnings.push_back({Severity::warning, words, {}, {}, {}});
    }
    if (!result_.problem.empty()) return std::move(result_);
    result_.overfill = std::move(outcome.told);
    for (IncidentRun& run : outcome.runs) add(std::move(run));
    tell_ranges();
    for (const double escaped : {outcome.drawn.low, outcome.drawn.high}) widen(result_.escaped, escaped);
    for (const double outside : {outcome.drawn_outside.low, outcome.drawn_outside.high})
      widen(result_.to_environment, outside);
    result_.drawn_for_range = outcome.drawn_runs;
    ground_.at = result_.at;
    result_.return_to_service = return_to_service(scene());
    result_.inputs = inputs_.used();
    tell_first_line();
    return std::move(result_);
  }

  const site::Site& site_;
  const IncidentOptions& options_;
  const Context& context_;
  bool draws_;  ///< uncertain inputs are drawn for the ranges
  site::IncidentRequest request_;
  Groundwork ground_;
  Inputs inputs_;
  std::set<Barrier> taken_;  ///< that do not act, as asked
  IncidentResult result_;
};

}  // namespace

IncidentResult study_incident(const site::Site& site, const IncidentOptions& options, const Context& context) {
  return Work(site, options, context).all();
}

IncidentResult incident_runs_alone(const site::Site& site, const IncidentOptions& options, const Context& context) {
  return Work(site, options, context, false).all();
}

}  // namespace forecourse::studies
