#include "forecourse/studies/incident/overfill/overfill.h"

#include <algorithm>
#include <utility>

#include "forecourse/studies/incident/overfill/overfill_setup.h"
#include "forecourse/studies/incident/overfill/overfill_told.h"

namespace forecourse::studies {
namespace {

using overfilling::Case;
using overfilling::never;
using overfilling::Setup;

Case without(Case c, const std::set<Barrier>& missing) {
  if (missing.count(Barrier::overfill_valve) != 0) c.restricts_at = c.closes_at = never;
  if (missing.count(Barrier::overfill_alarm) != 0) {
    c.alarm_at = never;
    c.hears_alarm = false;
  }
  if (missing.count(Barrier::driver) != 0) c.driver_acts_in = never;
  return c;
}

/// The case with barriers that do nothing for a time.
Case asleep(Case c, const std::vector<DeadBarrier>& dead) {
  for (const DeadBarrier& d : dead) {
    if (!d.dead_for) continue;
    if (d.barrier == Barrier::overfill_valve) c.valve_dead = *d.dead_for;
    if (d.barrier == Barrier::overfill_alarm) c.alarm_dead = *d.dead_for;
    if (d.barrier == Barrier::driver) c.driver_dead = *d.dead_for;
  }
  return c;
}

std::string words_of(const std::set<Barrier>& missing) {
  std::string out;
  for (const Barrier barrier : missing) out += (out.empty() ? "without " : ", ") + std::string(word(barrier));
  std::replace(out.begin(), out.end(), '-', ' ');
  return out.empty() ? "every barrier that is there acts" : out;
}

std::optional<double> first(const IncidentRun& run, Happening what) {
  const auto row =
      std::find_if(run.timeline.begin(), run.timeline.end(), [&](const TimelineRow& r) { return r.what == what; });
  return row == run.timeline.end() ? std::nullopt : std::optional(row->time);
}

void widen(Spread& spread, double value) {
  spread.low = std::min(spread.low, value);
  spread.high = std::max(spread.high, value);
}

class Work {
 public:
  Work(const site::Site& site, const IncidentOptions& options, const site::IncidentRequest& request, Inputs& inputs,
       const Context& context)
      : site_(site),
        options_(options),
        request_(request),
        inputs_(inputs),
        context_(context),
        setup_(overfilling::set_up(site, request, inputs)) {
    taken_.insert(options.without.begin(), options.without.end());
    for (const DeadBarrier& dead : options.dead) {
      if (!dead.dead_for) taken_.insert(dead.barrier);
    }
  }

  OverfillOutcome all() {
    out_.problem = setup_.problem;
    out_.warnings = setup_.warnings;
    out_.defaults = setup_.defaults;
    if (!out_.problem.empty()) return std::move(out_);
    out_.barriers = overfilling::barriers_of(setup_);
    add(taken_, words_of(taken_));
    if (options_.barrier_table) add_table();
    draw();
    tell();
    return std::move(out_);
  }

 private:
  [[nodiscard]] Case made(const Setup& setup, const std::set<Barrier>& missing) const {
    return asleep(without(setup.everything, missing), options_.dead);
  }

  void add(const std::set<Barrier>& missing, std::string name) { add(made(setup_, missing), missing, std::move(name)); }
  void add(const Case& given, const std::set<Barrier>& missing, std::string name) {
    out_.runs.push_back(overfilling::tell_run(setup_, given, missing, options_.charts, context_));
    out_.runs.back().name = std::move(name);
  }

  /// Once without each barrier that is there, without all of them, and with a driver who does it wrong.
  void add_table() {
    std::set<Barrier> none = taken_;
    for (const BarrierState& state : out_.barriers) {
      if (state.assurance == Assurance::absent || taken_.count(state.barrier) != 0) continue;
      std::set<Barrier> missing = taken_;
      missing.insert(state.barrier);
      none.insert(state.barrier);
      add(missing, words_of(missing));
    }
    if (none.size() > taken_.size() + 1) add(none, "none of them acts");
    if (!(setup_.everything.in_hose > 0.0) || taken_.count(Barrier::driver) != 0) return;
    Case full = made(setup_, taken_);
    full.disconnects_full = true;
    std::set<Barrier> missing = taken_;
    missing.insert(Barrier::driver);
    add(full, missing, "the driver takes off a hose that is still full");
  }

  /// What escapes with every uncertain input drawn, from the least to the most of some runs: with all that is there,
  /// and with only what is assured.
  void draw() {
    const double escaped = out_.runs.front().escaped, outside = out_.runs.front().to_environment;
    out_.drawn = {escaped, escaped, escaped};
    out_.drawn_outside = {outside, outside, outside};
    const auto& used = inputs_.used();
    if (std::all_of(used.begin(), used.end(), [](const InputUsed& input) { return input.value.is_certain(); })) return;
    std::set<Barrier> unsure = taken_;
    for (const BarrierState& state : out_.barriers) {
      if (state.assurance == Assurance::not_assured) unsure.insert(state.barrier);
    }
    constexpr std::size_t runs = 64;
    for (std::size_t i = 0; i < runs; ++i) draw_one(i, unsure);
    out_.drawn_runs = runs;
  }

  void draw_one(std::size_t run, const std::set<Barrier>& unsure) {
    const solvers::sequence::Draws draws(options_.seed, run);
    Inputs drawn(&draws);
    const Setup setup = overfilling::set_up(site_, request_, drawn, setup_.inside);
    if (!setup.problem.empty()) return;
    const auto widen_by = [&](const std::set<Barrier>& missing) {
      const overfilling::Loss loss = overfilling::loss_of(setup, made(setup, missing));
      widen(out_.drawn, loss.escaped);
      widen(out_.drawn_outside, loss.to_environment);
    };
    widen_by(taken_);
    widen_by(unsure);
  }

  void tell() {
    const IncidentRun& told = out_.runs.front();
    out_.told = {setup_.tank->id.text,
                 setup_.delivery->id.text,
                 told.steady_flow,
                 first(told, Happening::alarm),
                 first(told, Happening::restricts),
                 first(told, Happening::valve_closes),
                 first(told, Happening::tank_full),
                 told.escaped,
                 told.escaped - told.to_environment,
                 overfilling::notes_of(setup_, told.steady_flow)};
  }

  const site::Site& site_;
  const IncidentOptions& options_;
  const site::IncidentRequest& request_;
  Inputs& inputs_;
  const Context& context_;
  Setup setup_;
  std::set<Barrier> taken_;  ///< that do not act, as asked
  OverfillOutcome out_;
};

}  // namespace

OverfillOutcome overfill(const site::Site& site, const IncidentOptions& options, const site::IncidentRequest& request,
                         Inputs& inputs, const Context& context) {
  return Work(site, options, request, inputs, context).all();
}

}  // namespace forecourse::studies
