#include "forecourse/studies/incident/overfill/overfill.h"

#include <algorithm>
#include <array>
#include <utility>

#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/overfill/overfill_model.h"
#include "forecourse/studies/incident/overfill/overfill_setup.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {
namespace {

using overfilling::Case;
using overfilling::Model;
using overfilling::never;
using overfilling::Setup;
namespace seq = solvers::sequence;

constexpr std::array<Holder, 5> holders{Holder::truck, Holder::delivery_hose, Holder::tank, Holder::spill_container,
                                        Holder::slab};

Case without(const Setup& setup, const std::set<Barrier>& missing) {
  Case c = setup.everything;
  if (missing.count(Barrier::overfill_valve) != 0) c.restricts_at = c.closes_at = never;
  if (missing.count(Barrier::overfill_alarm) != 0) {
    c.alarm_at = never;
    c.hears_alarm = false;
  }
  if (missing.count(Barrier::driver) != 0) c.driver_acts_in = never;
  return c;
}

const char* cause_words(int cause) {
  switch (cause) {
    case Model::drops:
      return "dropped into the tank";
    case Model::drains:
      return "the hose drains into the tank";
    case Model::overflows:
      return "out of the fill of the full tank";
    case Model::runs_over:
      return "over the brim of the spill container";
    default:
      return "spilled out of the hose when it was taken off";
  }
}

struct Told {
  Happening what;
  const char* words;
};

std::optional<Told> told(const seq::Event& event) {
  if (event.source == seq::EventSource::timed) {
    if (event.id == Model::driver) return Told{Happening::driver_closes, "the driver shuts the truck's valve"};
    return Told{Happening::emergency_stop, "the drop is stopped"};
  }
  switch (event.id) {
    case Model::restricts:
      return Told{Happening::restricts, "the overfill valve restricts the drop"};
    case Model::closes:
      return Told{Happening::valve_closes, "the overfill valve is shut"};
    case Model::alarms:
      return Told{Happening::alarm, "the overfill alarm sounds"};
    case Model::fills:
      return Told{Happening::tank_full, "the tank is full: fuel comes out of the fill"};
    case Model::container_full:
      return Told{Happening::sump_full, "the spill container is full and runs over"};
    case Model::truck_empty:
      return Told{Happening::line_spent, "the truck's compartment is empty"};
    default:
      return Told{Happening::hose_drains, "the delivery hose has drained"};
  }
}

double escaped(std::span<const double> amounts) { return amounts[Model::container] + amounts[Model::slab]; }

class Teller {
 public:
  Teller(const Setup& setup, bool charts, const Context& context) : s_(setup), charts_(charts), context_(context) {}

  IncidentRun run(const Case& given, std::string name, const std::set<Barrier>& missing) const {
    const Model model(given);
    const seq::SequenceStart start = model.start();
    seq::SequenceOptions options;
    options.keep_states = true;
    options.longest_step = 60.0;
    const auto result = seq::run_sequence(model, start, options, {}, context_);
    IncidentRun out;
    out.name = std::move(name);
    out.missing.assign(missing.begin(), missing.end());
    if (result.status != seq::SequenceStatus::finished) {
      out.status = result.status == seq::SequenceStatus::balance_violated ? RunStatus::failed : RunStatus::cut_short;
      out.reason = "it would not end, or did not balance; this is what it had by then";
    }
    out.counted = result.time;
    out.escaped = escaped(result.amounts);
    out.to_environment = result.amounts[Model::slab];
    out.steady_flow = model.open_flow(given.in_truck, given.in_tank);
    out.holders.assign(holders.begin(), holders.end());
    for (std::size_t h = 0; h < holders.size(); ++h)
      out.amounts.push_back({holders[h], start.amounts[h], result.amounts[h]});
    tell_ledger(result, out);
    tell_timeline(result, start, out);
    tell_chart(model, result, start, out);
    out.reportable = out.to_environment > reportable_quantity;
    out.balance =
        std::max(result.balance.residual, result.balance.total) / std::max(result.balance.largest_moved, 1e-300);
    out.hash = result.hash;
    out.steps = result.steps;
    return out;
  }

 private:
  void tell_ledger(const seq::SequenceResult& result, IncidentRun& out) const {
    for (const seq::LedgerRow& row : result.ledger) {
      if (row.net == 0.0) continue;
      out.ledger.push_back({holders[static_cast<std::size_t>(row.from)], holders[static_cast<std::size_t>(row.to)],
                            s_.product, cause_words(row.cause), row.net});
    }
  }

  void tell_timeline(const seq::SequenceResult& result, const seq::SequenceStart& start, IncidentRun& out) const {
    out.timeline.push_back({0.0, Happening::begins, s_.tank->id.text, "the drop begins", 0.0, 0.0, {}, start.amounts});
    for (std::size_t i = 0; i < result.trace.events.size(); ++i) {
      const auto what = told(result.trace.events[i].event);
      if (!what) continue;
      const auto amounts = result.trace.amounts(i);
      const auto flows = result.trace.flows(i);
      out.timeline.push_back({result.trace.events[i].event.time,
                              what->what,
                              s_.tank->id.text,
                              what->words,
                              escaped(amounts),
                              flows[Model::overflowing],
                              {},
                              {amounts.begin(), amounts.end()}});
    }
    out.timeline.push_back(
        {result.time, Happening::counting_ends, {}, "counting ends", escaped(result.amounts), 0.0, {}, result.amounts});
  }

  void tell_chart(const Model& model, const seq::SequenceResult& result, const seq::SequenceStart& start,
                  IncidentRun& out) const {
    IncidentChart chart;
    chart.held.assign(holders.size(), {});
    const auto add = [&](double time, std::span<const double> amounts, std::span<const double> flows) {
      chart.time.push_back(time);
      chart.escaping.push_back(flows[Model::overflowing]);
      chart.pumped.push_back(flows[Model::dropping] + flows[Model::draining]);
      chart.elsewhere.push_back(0.0);
      for (std::size_t h = 0; h < holders.size(); ++h) chart.held[h].push_back(amounts[h]);
      out.peak_flow = std::max(out.peak_flow, flows[Model::overflowing]);
    };
    std::vector<double> flows(Model::links_count), none;
    model.flows(0.0, {start.amounts, start.auxiliaries, start.marks, start.flags}, flows, none);
    add(0.0, start.amounts, flows);
    for (std::size_t i = 0; i < result.trace.steps.size(); ++i) {
      const auto state = result.trace.state(i);
      add(result.trace.steps[i].time, state.subspan(0, Model::compartments_count),
          state.subspan(Model::compartments_count));
    }
    if (charts_) out.chart = std::move(chart);
  }

  const Setup& s_;
  bool charts_;
  const Context& context_;
};

std::optional<double> first(const IncidentRun& run, Happening what) {
  for (const TimelineRow& row : run.timeline) {
    if (row.what == what) return row.time;
  }
  return std::nullopt;
}

std::string words_of(const std::set<Barrier>& missing) {
  std::string out;
  for (const Barrier barrier : missing) out += (out.empty() ? "without " : ", ") + std::string(word(barrier));
  std::replace(out.begin(), out.end(), '-', ' ');
  return out.empty() ? "every barrier that is there acts" : out;
}

void tell_static(const Setup& setup, double flow, std::vector<std::string>& notes) {
  notes.emplace_back("the drop begins slowly, until the end of the drop tube is covered (static charge)");
  if (!(setup.hose_bore > 0.0)) return;
  const double limit = parts::fill_flow(parts::fill_velocity_limit(setup.hose_bore), setup.hose_bore);
  if (flow > limit) notes.emplace_back("the flow in the delivery hose is above the published limit for static charge");
}

/// What escapes with every uncertain input drawn, from the least to the most of some runs.
void draw(const site::Site& site, const IncidentOptions& options, const site::IncidentRequest& request,
          const std::set<Barrier>& taken, OverfillOutcome& out) {
  constexpr std::size_t runs = 64;
  for (std::size_t i = 0; i < runs; ++i) {
    const seq::Draws draws(options.seed, i);
    Inputs drawn(&draws);
    const Case given = without(overfilling::set_up(site, request, drawn), taken);
    const Model model(given);
    const auto result = seq::run_sequence(model, model.start());
    const double all = escaped(result.amounts), outside = result.amounts[Model::slab];
    out.drawn =
        i == 0 ? Spread{all, all, all} : Spread{std::min(out.drawn.low, all), all, std::max(out.drawn.high, all)};
    out.drawn_outside =
        i == 0 ? Spread{outside, outside, outside}
               : Spread{std::min(out.drawn_outside.low, outside), outside, std::max(out.drawn_outside.high, outside)};
  }
  out.drawn_runs = runs;
}

}  // namespace

OverfillOutcome overfill(const site::Site& site, const IncidentOptions& options, const site::IncidentRequest& request,
                         Inputs& inputs, const Context& context) {
  OverfillOutcome out;
  const Setup setup = overfilling::set_up(site, request, inputs);
  out.problem = setup.problem;
  out.warnings = setup.warnings;
  if (!out.problem.empty()) return out;
  out.barriers = overfilling::barriers_of(setup);
  std::set<Barrier> taken(options.without.begin(), options.without.end());
  for (const DeadBarrier& dead : options.dead) taken.insert(dead.barrier);
  const Teller teller(setup, options.charts, context);
  const auto add = [&](const std::set<Barrier>& missing) {
    out.runs.push_back(teller.run(without(setup, missing), words_of(missing), missing));
  };
  add(taken);
  std::set<Barrier> none = taken;
  for (const BarrierState& state : out.barriers) {
    if (state.assurance == Assurance::absent || taken.count(state.barrier) != 0 || !options.barrier_table) continue;
    std::set<Barrier> missing = taken;
    missing.insert(state.barrier);
    none.insert(state.barrier);
    add(missing);
  }
  if (options.barrier_table && none.size() > taken.size() + 1) add(none);
  if (options.barrier_table && setup.everything.in_hose > 0.0) {
    Case full = without(setup, taken);
    full.disconnects_full = true;
    std::set<Barrier> missing = taken;
    missing.insert(Barrier::driver);
    out.runs.push_back(teller.run(full, "the driver takes off a hose that is still full", missing));
  }
  const bool uncertain = std::any_of(inputs.used().begin(), inputs.used().end(),
                                     [](const InputUsed& input) { return !input.value.is_certain(); });
  out.drawn = {out.runs.front().escaped, 0.0, out.runs.front().escaped};
  out.drawn_outside = {out.runs.front().to_environment, 0.0, out.runs.front().to_environment};
  if (uncertain) draw(site, options, request, taken, out);
  const IncidentRun& told = out.runs.front();
  out.told = {setup.tank->id.text,
              setup.delivery->id.text,
              told.steady_flow,
              first(told, Happening::alarm),
              first(told, Happening::restricts),
              first(told, Happening::valve_closes),
              first(told, Happening::tank_full),
              told.escaped,
              told.escaped - told.to_environment,
              {}};
  tell_static(setup, told.steady_flow, out.told.notes);
  return out;
}

}  // namespace forecourse::studies
