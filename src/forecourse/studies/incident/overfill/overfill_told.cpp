#include "forecourse/studies/incident/overfill/overfill_told.h"

#include <algorithm>
#include <array>
#include <utility>

#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/overfill/overfill_model.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies::overfilling {
namespace {

constexpr double still = 1e-9;  ///< [m3/s] what counts as no flow

using Holders = std::array<Holder, Model::compartments_count>;

/// Per compartment of the model. What falls into a container that is not tight is in the ground.
Holders holders_of(const Setup& setup) {
  return {Holder::truck, Holder::delivery_hose, Holder::tank,
          setup.container_leaks ? Holder::ground : Holder::spill_container, Holder::slab};
}

double escaped(std::span<const double> amounts) { return amounts[Model::container] + amounts[Model::slab]; }

double to_environment(const Setup& setup, std::span<const double> amounts) {
  return setup.container_leaks ? escaped(amounts) : amounts[Model::slab];
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

std::optional<Told> told_timed(int id, const Case& given) {
  switch (id) {
    case Model::driver:
      return Told{Happening::driver_closes,
                  given.disconnects_full ? "the driver shuts the truck's valve and takes off the hose, still full"
                                         : "the driver shuts the truck's valve"};
    case Model::stopped:
      return Told{Happening::emergency_stop, "the drop is stopped"};
    default:
      return std::nullopt;
  }
}

std::optional<Told> told(const seq::Event& event, const Case& given) {
  if (event.source == seq::EventSource::timed) return told_timed(event.id, given);
  switch (event.id) {
    case Model::restricts:
      return Told{Happening::restricts, "the overfill valve restricts the drop"};
    case Model::closes:
      return Told{Happening::valve_closes, "the overfill valve is shut"};
    case Model::alarms:
      return Told{Happening::alarm, "the overfill alarm sounds"};
    case Model::fills:
      return Told{Happening::tank_full, "the tank is full: what still comes goes out of the fill"};
    case Model::container_full:
      return Told{Happening::sump_full, given.container > 0.0 ? "the spill container is full and runs over"
                                                              : "no spill container holds anything: onto the slab"};
    case Model::truck_empty:
      return Told{Happening::line_spent, "the truck's compartment is empty"};
    default:
      return Told{Happening::hose_drains, "the delivery hose has drained"};
  }
}

class Teller {
 public:
  Teller(const Setup& setup, const Case& given, const Context& context)
      : s_(setup), c_(given), model_(given), holders_(holders_of(setup)), start_(model_.start()) {
    seq::SequenceOptions options;
    options.keep_states = true;
    options.longest_step = 60.0;
    result_ = seq::run_sequence(model_, start_, options, {}, context);
  }

  IncidentRun run() {
    tell_status();
    out_.counted = result_.time;
    out_.escaped = escaped(result_.amounts);
    out_.to_environment = to_environment(s_, result_.amounts);
    out_.reportable = out_.to_environment > reportable_quantity;
    out_.steady_flow = model_.open_flow(c_.in_truck, c_.in_tank);
    out_.holders.assign(holders_.begin(), holders_.end());
    for (std::size_t h = 0; h < holders_.size(); ++h)
      out_.amounts.push_back({holders_[h], start_.amounts[h], result_.amounts[h]});
    tell_ledger();
    tell_timeline();
    tell_chart();
    return std::move(out_);
  }

 private:
  void tell_status() {
    using enum seq::SequenceStatus;
    const seq::Balance& b = result_.balance;
    out_.balance = b.largest_moved > 0.0 ? std::max(b.residual, b.total) / b.largest_moved : 0.0;
    out_.hash = result_.hash;
    out_.steps = result_.steps;
    if (result_.status == finished) return;
    out_.status = result_.status == balance_violated ? RunStatus::failed : RunStatus::cut_short;
    out_.reason = result_.status == balance_violated ? "the ledger does not explain the amounts"
                                                     : "it would not end; this is what it had by then";
  }

  void tell_ledger() {
    for (const seq::LedgerRow& row : result_.ledger) {
      if (row.net == 0.0) continue;
      out_.ledger.push_back({holders_[static_cast<std::size_t>(row.from)], holders_[static_cast<std::size_t>(row.to)],
                             s_.product, cause_words(row.cause), row.net});
    }
  }

  void tell_timeline() {
    const std::string& tank = s_.tank->id.text;
    out_.timeline.push_back({0.0, Happening::begins, tank, "the drop begins", 0.0, 0.0, {}, start_.amounts});
    for (std::size_t i = 0; i < result_.trace.events.size(); ++i) {
      const seq::Event& event = result_.trace.events[i].event;
      const auto what = told(event, c_);
      if (!what) continue;
      const auto amounts = result_.trace.amounts(i);
      out_.timeline.push_back({event.time,
                               what->what,
                               tank,
                               what->words,
                               escaped(amounts),
                               result_.trace.flows(i)[Model::overflowing],
                               {},
                               {amounts.begin(), amounts.end()}});
    }
    const double flow = result_.trace.steps.empty() ? 0.0 : last_flows()[Model::overflowing];
    out_.timeline.push_back({result_.time,
                             Happening::counting_ends,
                             {},
                             "counting ends",
                             escaped(result_.amounts),
                             flow,
                             {},
                             result_.amounts});
  }

  [[nodiscard]] std::span<const double> last_flows() const {
    return result_.trace.state(result_.trace.steps.size() - 1).subspan(Model::compartments_count);
  }

  /// Every step, and beside it what the events at its end changed, so that a jump shows as one.
  void tell_chart() {
    out_.chart.held.assign(holders_.size(), {});
    std::array<double, Model::links_count> flows{};
    model_.flows(0.0, {start_.amounts, start_.auxiliaries, start_.marks, start_.flags}, flows, {});
    add(0.0, start_.amounts, flows);
    std::size_t event = 0;
    const seq::Trace& trace = result_.trace;
    const auto add_events = [&](double until) {
      for (; event < trace.events.size() && trace.events[event].event.time <= until; ++event)
        add(trace.events[event].event.time, trace.amounts(event), trace.flows(event));
    };
    add_events(0.0);
    for (std::size_t i = 0; i < trace.steps.size(); ++i) {
      const auto state = trace.state(i);
      add(trace.steps[i].time, state.subspan(0, Model::compartments_count), state.subspan(Model::compartments_count));
      add_events(trace.steps[i].time);
    }
  }

  void add(double time, std::span<const double> amounts, std::span<const double> flows) {
    IncidentChart& chart = out_.chart;
    chart.time.push_back(time);
    chart.escaping.push_back(flows[Model::overflowing]);
    chart.pumped.push_back(flows[Model::dropping] + flows[Model::draining]);
    chart.elsewhere.push_back(0.0);
    for (std::size_t h = 0; h < holders_.size(); ++h) chart.held[h].push_back(amounts[h]);
    out_.peak_flow = std::max(out_.peak_flow, flows[Model::overflowing]);
    if (flows[Model::dropping] > still) {
      out_.isolated_at.reset();
    } else if (!out_.isolated_at) {
      out_.isolated_at = time;
    }
  }

  const Setup& s_;
  const Case& c_;
  Model model_;
  Holders holders_;
  seq::SequenceStart start_;
  seq::SequenceResult result_;
  IncidentRun out_;
};

/// Until the end of the drop tube is covered by two of its diameters the drop is to be slow.
/// \source [nfpa_77_2000, table 7.6]
std::string slow_start(const Setup& setup) {
  const site::DropTube* tube = setup.fill != nullptr && setup.fill->drop_tube ? &*setup.fill->drop_tube : nullptr;
  const std::string slowly = "until the end of the drop tube is covered the drop is to be slow (static charge)";
  if (tube == nullptr || !tube->bore || !tube->end_above_bottom)
    return slowly + "; whether it is covered at the start is not determined";
  constexpr double diameters = 2.0;
  const auto place = setup.fill->at ? std::optional(setup.fill->at->likely.si()) : std::nullopt;
  const double end = setup.inside->volume.level_at(setup.inside->place(place), tube->end_above_bottom->likely.si());
  const double covered = end + diameters * tube->bore->likely.si();
  return slowly + (setup.level >= covered ? "; here it is covered from the start" : "; here it is not covered yet");
}

}  // namespace

IncidentRun tell_run(const Setup& setup, const Case& given, const std::set<Barrier>& missing, bool charts,
                     const Context& context) {
  IncidentRun run = Teller(setup, given, context).run();
  run.missing.assign(missing.begin(), missing.end());
  if (!charts) run.chart = {};
  return run;
}

Loss loss_of(const Setup& setup, const Case& given) {
  const Model model(given);
  const auto result = seq::run_sequence(model, model.start());
  return {escaped(result.amounts), to_environment(setup, result.amounts)};
}

std::vector<std::string> notes_of(const Setup& setup, double flow) {
  std::vector<std::string> notes{slow_start(setup)};
  if (!(setup.hose_bore > 0.0)) {
    notes.emplace_back("the velocity in the delivery hose is not determined: its bore is not entered");
  } else if (flow > parts::fill_flow(parts::fill_velocity_limit(setup.hose_bore), setup.hose_bore)) {
    notes.emplace_back("the flow in the delivery hose is above the published limit for static charge");
  }
  const Case& c = setup.everything;
  if (!c.hears_alarm && !(c.restricts_at < never) && !(c.closes_at < never)) {
    notes.emplace_back(
        c.stop_at < never
            ? "nothing tells the driver that the tank is nearly full: the drop goes on until it is stopped"
            : "nothing tells the driver that the tank is nearly full: the drop goes on to its end");
  }
  const bool container = setup.fill != nullptr && setup.fill->spill_container;
  if (container && !setup.fill->spill_container->tested && !setup.container_leaks)
    notes.emplace_back("no test of the spill container is on record: it is counted as tight");
  return notes;
}

}  // namespace forecourse::studies::overfilling
