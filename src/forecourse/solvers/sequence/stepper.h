#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <type_traits>
#include <utility>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/solvers/sequence/guard_watch.h"
#include "forecourse/solvers/sequence/kernel.h"
#include "forecourse/solvers/sequence/model.h"
#include "forecourse/solvers/sequence/recorder.h"
#include "forecourse/solvers/sequence/result.h"
#include "forecourse/solvers/sequence/stiff/stiff_kernel.h"

namespace forecourse::solvers::sequence {

/// The kernel that steps a model: implicit for a model that says that it is stiff.
template <SequenceModel M>
using KernelOf = std::conditional_t<IsStiff<M>, StiffKernel<M>, StepKernel<M>>;

/// One run of a sequence: steps between events, events in their order, a record of both.
///
/// A step ends at the next timed event at the latest, and the time is then set to the event's own. If a guard fires
/// within a step, its moment is found by taking shorter steps from the same start, never by interpolation, so that
/// every amount lies on a true step. The order of events at one instant stands at `Event` and in
/// docs/theory/sequence-solver.md.
template <SequenceModel M, class Kernel = KernelOf<M>>
class SequenceRun {
 public:
  SequenceRun(const M& model, const SequenceStart& start, const SequenceOptions& options, const Context& context)
      : model_(model),
        options_(options),
        context_(context),
        state_(start, ends_of(model)),
        watch_(rules_of(model), state_.armed),
        kernel_(model, state_, options_),
        recorder_(options_, start, static_cast<std::size_t>(model.links())),
        values_(watch_.count()),
        excess_(watch_.count()) {}

  SequenceResult go(TraceHeader header) {
    begin();
    while (!status_) advance();
    return result(std::move(header));
  }

 private:
  static std::vector<LinkEnds> ends_of(const M& model) {
    std::vector<LinkEnds> ends;
    ends.reserve(static_cast<std::size_t>(model.links()));
    for (int l = 0; l < model.links(); ++l) ends.push_back(model.ends(l));
    return ends;
  }
  static std::vector<GuardRule> rules_of(const M& model) {
    std::vector<GuardRule> rules;
    rules.reserve(static_cast<std::size_t>(model.guard_count()));
    for (int g = 0; g < model.guard_count(); ++g) rules.push_back(model.guard_rule(g));
    return rules;
  }

  void begin() {
    step_ = options_.first_step;
    kernel_.refresh();
    look_at_guards();
    for (std::size_t g = 0; g < watch_.count(); ++g) watch_.start(g, values_[g]);
    settle();
  }

  // ---- between events ------------------------------------------------------------------------------

  void advance() {
    if (state_.time >= state_.end) return finish(SequenceStatus::finished);
    if (steps_ + rejected_ >= options_.step_limit) return finish(SequenceStatus::step_limit);
    if (cancelled()) return finish(SequenceStatus::cancelled);
    kernel_.look_for_quiet();
    if (since_event_ % algebraic_each == algebraic_each - 1) kernel_.try_algebraic(limit());
    step();
  }

  [[nodiscard]] bool cancelled() const {
    constexpr std::size_t each = 256;
    return context_.cancelled && (steps_ + rejected_) % each == each - 1 && context_.cancelled();
  }

  [[nodiscard]] double limit() const { return std::min(state_.end, state_.queue.next_time()); }

  /// The end of the next step: the limit itself where it is within reach, not a sum that misses it by a rounding.
  [[nodiscard]] double target() const {
    const double most = limit();
    if (kernel_.analytic()) return most;
    const double until = state_.time + std::min(step_, options_.longest_step);
    constexpr double sliver = 1.01;  // no tiny last step
    return state_.time + sliver * (until - state_.time) >= most ? most : until;
  }

  void step() {
    const double from = state_.time;
    double until = target();
    const double error = kernel_.attempt(until);
    if (!(error <= 1.0)) return reject(until - from, error);
    const double tried = until - from;
    const bool fires = tried_guards_fire(until);
    if (fires) until = moment_between(from, until);
    kernel_.accept(until);
    ++steps_;
    ++since_event_;
    if (kernel_.algebraic()) algebraic_time_ += until - from;
    recorder_.add_step(state_, until - from, kernel_.flows());
    if (!kernel_.analytic()) step_ = std::max(step_ > tried ? step_ : 0.0, tried * growth(error));
    if (fires || state_.queue.next_time() <= until) return settle();
    rearm();  // the values are those of the attempt, which is the state now
  }

  /// Power 3/8 of the error, near the third that the order asks for: square roots are the same on every machine.
  /// An error of exactly zero makes the step grow as far as any.
  static double growth(double error) {
    constexpr double safety = 0.9, most = 5.0, least = 0.2;
    const double fourth = std::sqrt(std::sqrt(error));
    const double factor = safety / (fourth * std::sqrt(fourth));  // infinite at zero
    return factor > least ? std::min(factor, most) : least;       // no number: least
  }

  void reject(double tried, double error) {
    ++rejected_;
    constexpr double shrink = 0.9;
    step_ = tried * std::min(growth(error), shrink);
    const double least = 4.0 * std::numeric_limits<double>::epsilon() * std::max(1.0, std::abs(state_.time));
    if (!(step_ > least)) finish(SequenceStatus::step_too_small);
  }

  // ---- guards --------------------------------------------------------------------------------------

  void look_at_guards() {
    if (watch_.count() == 0) return;
    model_.guards(state_.time, state_.view(), std::span<const double>(kernel_.flows()), std::span<double>(values_));
  }

  void rearm() {
    for (std::size_t g = 0; g < watch_.count(); ++g) watch_.rearm(g, values_[g]);
  }

  /// Excess of each guard at the end of the last attempt. \return true if one fires there
  bool tried_guards_fire(double until) {
    if (watch_.count() == 0) return false;
    model_.guards(until, kernel_.tried(), std::span<const double>(kernel_.tried_flows()), std::span<double>(values_));
    bool fires = false;
    for (std::size_t g = 0; g < excess_.size(); ++g) {
      excess_[g] = watch_.excess(g, values_[g]);
      fires = fires || excess_[g] >= 0.0;
    }
    return fires;
  }

  /// First moment of a step at which a guard fires; the last attempt ends there.
  double moment_between(double from, double until) {
    MomentSearch search(from, until, watch_.count());
    search.at_high().swap(excess_);
    look_at_guards();
    for (std::size_t g = 0; g < watch_.count(); ++g) search.at_low()[g] = watch_.excess(g, values_[g]);
    excess_.resize(watch_.count());
    const double width = options_.event_time + 8.0 * std::numeric_limits<double>::epsilon() * std::abs(until);
    double last = until;
    while (search.high() - search.low() > width) {
      last = search.next(width);
      kernel_.attempt(last);
      search.narrow(last, excess_, tried_guards_fire(last));
      excess_.resize(watch_.count());
    }
    if (last != search.high()) kernel_.attempt(search.high());
    return search.high();
  }

  // ---- events --------------------------------------------------------------------------------------

  /// Carries out what is due now, one at a time, and looks at all guards after each.
  void settle() {
    cascade_.clear();
    while (!state_.stopped) {
      look_at_guards();
      rearm();
      const std::optional<Event> due = first_due();
      if (!due) return;
      cascade_.push_back(*due);
      if (static_cast<int>(cascade_.size()) > options_.cascade_limit) return finish(SequenceStatus::cascade_limit);
      carry_out(*due);
    }
    finish(SequenceStatus::stopped);
  }

  [[nodiscard]] std::optional<Event> first_due() const {
    std::optional<Event> first;
    const auto offer = [&](const Event& event) {
      if (!first || comes_before(event, *first)) first = event;
    };
    if (state_.queue.next_time() <= state_.time) {
      const TimedEvent& next = state_.queue.next();
      offer({state_.time, next.kind, next.id, EventSource::timed, next.value});
    }
    for (std::size_t g = 0; g < watch_.count(); ++g) {
      if (!(watch_.excess(g, values_[g]) >= 0.0)) continue;
      offer({state_.time, watch_.rule(g).kind, static_cast<int>(g), EventSource::guard, values_[g]});
    }
    return first;
  }

  void carry_out(const Event& event) {
    if (event.source == EventSource::timed) {
      state_.queue.drop_next();
    } else {
      watch_.fired(static_cast<std::size_t>(event.id));
    }
    const std::uint64_t before = state_.flags;
    Mutator mutator(state_);
    model_.on_event(event, mutator);
    if (kernel_.refresh_after_event()) {
      since_event_ = 0;
      step_ = std::min(step_, options_.first_step);
    }
    recorder_.add_event(event, before, state_, kernel_.flows());
  }

  // ---- the end -------------------------------------------------------------------------------------

  void finish(SequenceStatus status) { status_ = status; }

  SequenceResult result(TraceHeader header) {
    SequenceResult result;
    result.balance = balance_of(state_);
    result.status = result.balance.holds ? *status_ : SequenceStatus::balance_violated;
    result.stop_reason = state_.stop_reason;
    if (*status_ == SequenceStatus::cascade_limit) result.cascade = std::move(cascade_);
    result.time = state_.time;
    result.amounts = std::move(state_.amounts);
    result.auxiliaries = std::move(state_.auxiliaries);
    result.marks = std::move(state_.marks);
    result.flags = state_.flags;
    result.ledger = state_.ledger.rows();
    result.steps = steps_;
    result.rejected = rejected_;
    result.evaluations = kernel_.evaluations();
    result.events = recorder_.events();
    result.algebraic_time = algebraic_time_;
    result.hash = recorder_.hash();
    result.trace = recorder_.take(std::move(header));
    return result;
  }

  static constexpr std::size_t algebraic_each = 8;  ///< steps without an event between looks at the pack

  const M& model_;
  SequenceOptions options_;
  const Context& context_;
  SequenceState state_;
  GuardWatch watch_;
  Kernel kernel_;
  Recorder recorder_;
  std::vector<double> values_;  ///< of the guards
  std::vector<double> excess_;
  std::vector<Event> cascade_;
  std::optional<SequenceStatus> status_;
  double step_ = 0.0;
  double algebraic_time_ = 0.0;
  std::size_t steps_ = 0;
  std::size_t rejected_ = 0;
  std::size_t since_event_ = 0;
};

/// Whether a start gives a model what it needs.
template <SequenceModel M>
bool fits(const M& model, const SequenceStart& start) {
  const auto is_compartment = [&](int c) { return c >= 0 && c < model.compartments(); };
  const auto all_finite = [](const std::vector<double>& x) {
    return std::all_of(x.begin(), x.end(), [](double v) { return std::isfinite(v); });
  };
  for (int l = 0; l < model.links(); ++l) {
    const LinkEnds ends = model.ends(l);
    if (!is_compartment(ends.from) || !is_compartment(ends.to) || ends.from == ends.to) return false;
  }
  return start.amounts.size() == static_cast<std::size_t>(model.compartments()) &&
         start.auxiliaries.size() == static_cast<std::size_t>(model.auxiliaries()) && all_finite(start.amounts) &&
         all_finite(start.auxiliaries) && std::isfinite(start.time) && std::isfinite(start.end) &&
         start.end >= start.time && start.closed.size() <= static_cast<std::size_t>(model.links());
}

/// Runs a sequence to its end.
/// \param model is not changed; what a run changes is in its state
/// \param header what the caller wants to stand in the trace
/// \return how it ended and what it had, whatever the status
template <SequenceModel M>
SequenceResult run_sequence(const M& model, const SequenceStart& start, const SequenceOptions& options = {},
                            TraceHeader header = {}, const Context& context = {}) {
  if (!fits(model, start)) {
    SequenceResult nothing;
    nothing.status = SequenceStatus::bad_start;
    nothing.trace.header = std::move(header);
    return nothing;
  }
  return SequenceRun<M>(model, start, options, context).go(std::move(header));
}

/// Runs it again and holds the trace against one of before, bit for bit.
template <SequenceModel M>
TraceComparison replay(const M& model, const SequenceStart& start, const SequenceOptions& options, const Trace& trace) {
  return compare(trace, run_sequence(model, start, options, trace.header).trace);
}

}  // namespace forecourse::solvers::sequence
