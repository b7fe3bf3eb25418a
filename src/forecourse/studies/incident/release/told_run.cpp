#include "forecourse/studies/incident/release/told_run.h"

#include <algorithm>

#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/release/state_told.h"
#include "forecourse/studies/incident/release/told_chart.h"

namespace forecourse::studies::release {
namespace {

std::string cause_words(int cause, const Names& names) {
  switch (cause) {
    case cause_drains:
      return "runs out of " + names.above;
    case seq::cause_pack_settles:
    case seq::cause_pack_follows:
    case cause_line_settles:
      return "the line comes to its pressure";
    case cause_open:
      return "while nothing had shut it";
    case cause_closing:
      return "while the shear valve was closing";
    case cause_seat:
      return "past the shut valve";
    case cause_after_stop:
      return "the line springs back after the pump stopped";
    case cause_crack:
      return "through the leak";
    case cause_pumped:
      return "pumped";
    case cause_elsewhere:
      return "delivered at hoses open elsewhere";
    case cause_overflow:
      return "over the brim of the sump";
    case cause_seals:
      return "out of the sump through its seals";
    case cause_runs_to_drain:
      return "runs to the drain";
    case cause_evaporates:
      return "evaporates";
    case cause_burns:
      return "burns";
    case cause_relief:
      return "through the pump's pressure relief";
    default:
      return "runs back through the pump, which has no check valve";
  }
}

struct Told {
  Happening what = Happening::begins;
  std::string owner;
  std::string words;
};

class Teller {
 public:
  Teller(const Case& given, const Names& names)
      : c_(given), n_(names), layout_{static_cast<int>(given.broken.size())} {}

  /// What an event is to a reader; empty for one of the computation's own.
  [[nodiscard]] std::optional<Told> tell(const seq::EventRecord& record) const {
    const seq::Event& e = record.event;
    if (e.source == seq::EventSource::timed) return timed(e, record);
    const int own = Layout::guards_of_end * layout_.ends;
    if (e.id < own) return of_end(e.id / Layout::guards_of_end, e.id % Layout::guards_of_end, record);
    if (e.id < own + Layout::shared_guards) return shared(e.id - own, record);
    if (e.id == layout_.unseen())
      return Told{Happening::sensor_dead, n_.sensor, "fuel stands at the sump sensor, which is dead"};
    const int of_tank = e.id - own - Layout::shared_guards;
    return tank(of_tank / Layout::guards_of_tank, of_tank % Layout::guards_of_tank);
  }

 private:
  static bool rose(const seq::EventRecord& r, int flag) {
    const std::uint64_t bit = std::uint64_t{1} << flag;
    return (r.flags_before & bit) == 0 && (r.flags_after & bit) != 0;
  }
  /// Whether the sensor was dead until this moment: it may have been wet for long.
  [[nodiscard]] bool woke(const seq::EventRecord& r) const {
    return c_.stops.sensor_dead_until > 0.0 && r.event.time <= c_.stops.sensor_dead_until * (1.0 + 1e-9);
  }
  static bool fell(const seq::EventRecord& r, int flag) {
    const std::uint64_t bit = std::uint64_t{1} << flag;
    return (r.flags_before & bit) != 0 && (r.flags_after & bit) == 0;
  }

  [[nodiscard]] std::optional<Told> timed(const seq::Event& e, const seq::EventRecord& r) const {
    const int f = end_of(e.id);
    const std::string& place = n_.places[at(f)];
    const bool stops = fell(r, Layout::flag(f, Layout::pump_on));
    switch (timed_of(e.id)) {
      case Timed::triggers:
        return Told{Happening::valve_trips, place, "the shear valve of " + place + " trips and begins to close"};
      case Timed::shuts:
        return Told{Happening::valve_shut, place, "the shear valve of " + place + " is shut"};
      case Timed::pump_starts:
        if (!rose(r, Layout::flag(f, Layout::pump_on))) return std::nullopt;
        return Told{Happening::pump_starts, n_.products[at(f)], "the pump of " + n_.products[at(f)] + " starts"};
      case Timed::pump_stops:
        if (!stops) return std::nullopt;
        return Told{Happening::pump_stops, n_.products[at(f)], "the pump of " + n_.products[at(f)] + " stops"};
      case Timed::emergency_stop:
        return Told{Happening::emergency_stop, n_.stop,
                    n_.stop.empty() ? "the pumps are stopped" : "the pumps are stopped: " + n_.stop};
      case Timed::sensor_acts:
        return Told{Happening::sensor_stops, n_.sensor, "the sump sensor stops the pumps"};
      case Timed::detector:
        return Told{Happening::detector_due, n_.products[at(f)], "the leak detector must have acted by now"};
      case Timed::sensor_wakes:
        return Told{Happening::sensor_dead, n_.sensor, "the sump sensor works again"};
      case Timed::settles:
      case Timed::begins_at_rest:
        break;
    }
    return std::nullopt;
  }

  [[nodiscard]] Told tank(int f, int which) const {
    const std::string& tank = n_.tanks[at(f)];
    if (which == Layout::tank_empty)
      return {Happening::tank_empty, tank, "tank " + tank + " is empty to the inlet of its pump"};
    return {Happening::level_down, tank, "the liquid in tank " + tank + " has come down to the opening"};
  }

  [[nodiscard]] std::optional<Told> of_end(int f, int which, const seq::EventRecord& r) const {
    const std::string& place = n_.places[at(f)];
    if (which == Layout::runs_dry) return Told{Happening::above_drained, place, n_.above + " has run out"};
    const bool emptied = (r.flags_after >> layout_.dry(f) & 1U) != 0;
    if (which == Layout::runs_spent && c_.broken[at(f)].stopped.supplied && !emptied)
      return Told{Happening::line_spent, place,
                  "the line is down to the pressure of the tank, which feeds it from here"};
    if (which == Layout::runs_spent)
      return Told{Happening::line_spent, place, "the line has no pressure left at the opening"};
    if (which == Layout::check_shuts)
      return Told{Happening::check_valve_shuts, place, "the check valve shuts behind the line"};
    return Told{Happening::crack_trips, place, "the crack trip of " + place + " acts"};
  }

  [[nodiscard]] std::optional<Told> shared(int which, const seq::EventRecord& r) const {
    switch (static_cast<Layout::Shared>(which)) {
      case Layout::sensor:
        return Told{Happening::sensor_wet, n_.sensor,
                    woke(r) ? "the sump sensor finds itself wet" : "the sump sensor gets wet"};
      case Layout::seal:
        return Told{Happening::lowest_seal, n_.sump,
                    "fuel stands at the lowest entry seal: from here the sump is not assured to hold"};
      case Layout::brim:
        return Told{Happening::sump_full, n_.sump, "the sump is full and runs over"};
      case Layout::drain:
        return Told{Happening::reaches_drain, {}, "the pool reaches the drain"};
      case Layout::interceptor_full:
        return Told{Happening::interceptor_full, {}, "the interceptor is full"};
      case Layout::reportable:
        return Told{Happening::reportable, {}, "more than the reportable quantity is outside the containment"};
      case Layout::link_parts:
        return Told{Happening::link_parts, n_.places.front(), "the fusible link parts"};
      case Layout::shared_guards:
        break;
    }
    return std::nullopt;
  }

  const Case& c_;
  const Names& n_;
  Layout layout_;
};

/// A pump that starts and stops all day is told for its first cycles only.
class CycleFilter {
 public:
  bool keeps(Happening what) {
    constexpr int told_cycles = 2;
    if (what == Happening::pump_starts) return ++starts_ <= told_cycles;
    if (what == Happening::pump_stops) return ++stops_ <= told_cycles || starts_ <= told_cycles;
    return what != Happening::line_spent || ++spent_ <= told_cycles;
  }

 private:
  int starts_ = 0;
  int stops_ = 0;
  int spent_ = 0;
};

/// What still escapes when counting ends: that of the last step [m3/s].
double still_escaping(const Layout& layout, const seq::SequenceResult& result) {
  if (result.trace.steps.empty()) return 0.0;
  const auto state = result.trace.state(result.trace.steps.size() - 1);
  return escaping(layout, state.subspan(at(layout.compartments() + layout.auxiliaries())));
}

void tell_timeline(const Case& given, const Names& names, const seq::SequenceResult& result,
                   const seq::SequenceStart& start, IncidentRun& run) {
  const Model model(given);
  const Layout& layout = model.layout();
  const Teller teller(given, names);
  run.timeline.push_back({0.0, Happening::begins, names.sump.empty() ? names.places.front() : names.sump, "it happens",
                          0.0, 0.0, model.pressure_before(), held(layout, start.amounts)});
  CycleFilter cycles;
  for (std::size_t i = 0; i < result.trace.events.size(); ++i) {
    const seq::EventRecord& record = result.trace.events[i];
    const auto told = teller.tell(record);
    if (!told || !cycles.keeps(told->what)) continue;
    const auto amounts = result.trace.amounts(i);
    const auto flows = result.trace.flows(i);
    const seq::SequenceView state{amounts, result.trace.auxiliary_values(i), result.trace.mark_values(i),
                                  record.flags_after};
    run.timeline.push_back({record.event.time, told->what, told->owner, told->words, escaped_of(layout, amounts),
                            escaping(layout, flows), model.line_pressure(record.event.time, state),
                            held(layout, amounts)});
    const auto first = [&](Happening what, std::optional<double>& time) {
      if (told->what == what && !time) time = record.event.time;
    };
    first(Happening::sensor_wet, run.sensor_at);
    first(Happening::lowest_seal, run.seal_at);
    first(Happening::sump_full, run.brim_at);
    if (told->what == Happening::reportable) run.reportable = true;
  }
  std::vector<double> last(result.amounts);
  run.timeline.push_back({result.time,
                          Happening::counting_ends,
                          {},
                          "counting ends",
                          escaped_of(layout, last),
                          still_escaping(layout, result),
                          model.line_pressure(result.time, {last, result.auxiliaries, result.marks, result.flags}),
                          held(layout, last)});
}

/// The greatest flow, and from when on nothing flows out of the line any more.
void tell_course(const Model& model, const seq::SequenceResult& result, IncidentRun& run) {
  constexpr double still = 1e-9;  // [m3/s] what counts as no flow: 1 mL in a quarter of an hour
  const Layout& layout = model.layout();
  for (std::size_t i = 0; i < result.trace.steps.size(); ++i) {
    const double out =
        out_of_line(layout, result.trace.state(i).subspan(at(layout.compartments() + layout.auxiliaries())));
    run.peak_flow = std::max(run.peak_flow, out);
    if (out > still) {
      run.isolated_at.reset();
    } else if (!run.isolated_at) {
      run.isolated_at = result.trace.steps[i].time - result.trace.steps[i].length;
    }
  }
}

std::vector<LedgerLine> tell_ledger(const Layout& layout, const Names& names, const seq::SequenceResult& result) {
  std::vector<LedgerLine> out;
  for (const seq::LedgerRow& row : result.ledger) {
    if (row.net == 0.0) continue;
    LedgerLine line{holder_of(layout, row.from), holder_of(layout, row.to), {}, cause_words(row.cause, names), row.net};
    if (row.from < 3 * layout.ends) line.product = names.products[at(row.from / 3)];
    if (line.amount < 0.0) {
      std::swap(line.from, line.to);
      line.amount = -line.amount;
    }
    out.push_back(std::move(line));
  }
  return out;
}

void tell_status(const seq::SequenceResult& result, IncidentRun& run) {
  switch (result.status) {
    case seq::SequenceStatus::finished:
    case seq::SequenceStatus::stopped:
      return;
    case seq::SequenceStatus::step_limit:
      run.status = RunStatus::cut_short;
      run.reason = "it would not end within the steps allowed; this is what it had by then";
      return;
    case seq::SequenceStatus::cancelled:
      run.status = RunStatus::cut_short;
      run.reason = "cancelled; this is what it had by then";
      return;
    case seq::SequenceStatus::cascade_limit:
      run.status = RunStatus::cut_short;
      run.reason = "events set each other off without end; this is what it had by then";
      return;
    default:
      run.status = RunStatus::failed;
      run.reason = "the computation did not hold its balance or found no step; nothing of it can be used";
  }
}

}  // namespace

seq::SequenceOptions told_options() {
  seq::SequenceOptions options;
  options.absolute = 1e-10;
  options.auxiliary_absolute = 1e-6;
  options.relative = 1e-6;
  return options;
}

seq::SequenceOptions many_options() {
  seq::SequenceOptions options;
  options.absolute = 5e-8;
  options.auxiliary_absolute = 5e-5;
  options.relative = 1e-5;
  options.keep_events = options.keep_steps = false;
  return options;
}

Outcome outcome_of(const Case& given, const seq::SequenceResult& result) {
  const Layout layout{static_cast<int>(given.broken.size())};
  const bool finished = result.status == seq::SequenceStatus::finished;
  const double escaped = escaped_of(layout, result.amounts);
  return {finished, escaped, escaped - result.amounts[at(layout.sump())]};
}

IncidentRun tell_run(const Case& given, const Names& names, bool charts, const Context& context) {
  const Model model(given);
  const seq::SequenceStart start = model.start();
  seq::SequenceOptions options = told_options();
  options.keep_states = true;
  const seq::SequenceResult result = seq::run_sequence(model, start, options, {}, context);
  IncidentRun run;
  tell_status(result, run);
  run.counted = result.time;
  const Outcome outcome = outcome_of(given, result);
  run.escaped = outcome.escaped;
  run.to_environment = outcome.to_environment;
  for (const Broken& b : given.broken) run.steady_flow += balance(b, feeding(b), 1.0).out;
  run.holders.assign(all_holders.begin(), all_holders.end());
  const std::vector<double> before = held(model.layout(), start.amounts), after = held(model.layout(), result.amounts);
  for (std::size_t h = 0; h < all_holders.size(); ++h) run.amounts.push_back({all_holders[h], before[h], after[h]});
  run.ledger = tell_ledger(model.layout(), names, result);
  tell_timeline(given, names, result, start, run);
  tell_course(model, result, run);
  if (charts) run.chart = tell_chart(given, model, start, result);
  const double moved = std::max(result.balance.largest_moved, 1e-300);
  run.balance = std::max(result.balance.residual, result.balance.total) / moved;
  run.hash = result.hash;
  run.steps = result.steps;
  return run;
}

}  // namespace forecourse::studies::release
