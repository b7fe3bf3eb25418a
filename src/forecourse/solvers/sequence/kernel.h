#pragma once

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "forecourse/solvers/bracket.h"
#include "forecourse/solvers/sequence/model.h"
#include "forecourse/solvers/sequence/result.h"

namespace forecourse::solvers::sequence {

/// Tries steps from the state as it is, and makes the last one tried the new state.
///
/// Explicit Runge-Kutta pair of orders 3 and 2 with four stages, the last of which is the first of the next step. All
/// of it is done on flows of links: a step gives each link one amount, which one compartment loses and the other gains.
/// \source [bogacki_shampine_1989, the pair and its tableau] as printed by public integrators that cite it
/// \error local error by the options' tolerances; amounts balance to rounding whatever the tolerance
template <SequenceModel M>
class StepKernel {
 public:
  StepKernel(const M& model, SequenceState& state, const SequenceOptions& options)
      : model_(model), state_(state), options_(options) {
    const std::size_t links = at(model.links()), rates = state.auxiliaries.size();
    for (auto* flow : {&flow1_, &flow2_, &flow3_, &flow4_, &moved_}) flow->resize(links);
    for (auto* rate : {&rate1_, &rate2_, &rate3_, &rate4_}) rate->resize(rates);
    for (auto* amounts : {&amounts_, &error_}) amounts->resize(state.amounts.size());
    auxiliaries_.resize(rates);
    change_.resize(state.change.size());
  }

  /// Flows of the state as it is now: at the start and after events.
  void refresh() { evaluate_as_is(state_.time, state_.amounts, state_.auxiliaries, flow1_, rate1_); }

  /// \return the largest error over its tolerance; the state itself does not change
  double attempt(double until) {
    if constexpr (HasAnalytic<M>) {
      if (analytic_) return attempt_analytic(until);
    }
    const double error = attempt_stages(until);
    if (!lost_) return error;
    lost_ = algebraic_ = false;  // no balance within its bounds any more: step with the pack as it is
    refresh();
    return attempt_stages(until);
  }

  /// Makes the last attempt, to `until`, the state.
  void accept(double until) {
    each_link([&](std::size_t l, LinkEnds) {
      if (moved_[l] != 0.0) state_.ledger.pass(l, moved_[l]);
    });
    if (follow_ != 0.0) state_.ledger.transfer(pack_.peer, pack_.compartment, cause_pack_follows, follow_);
    state_.change.swap(change_);
    state_.amounts.swap(amounts_);
    state_.auxiliaries.swap(auxiliaries_);
    flow1_.swap(flow4_);
    rate1_.swap(rate4_);
    state_.time = until;
  }

  /// Asks the model, at the start of a step, whether it knows the way to the next event.
  void look_for_quiet() {
    if constexpr (HasAnalytic<M>) analytic_ = !algebraic_ && model_.quiet(state_.time, state_.view());
  }

  /// Makes the pack algebraic if the time to the next timed event allows it; see `HasPack`.
  void try_algebraic(double until) {
    if constexpr (HasPack<M>) {
      if (algebraic_) return;
      pack_ = model_.pack(state_.time, state_.view());
      if (!pack_.allowed || !relaxes_fast(until)) return;
      amounts_ = state_.amounts;
      if (!balance_pack(state_.time, amounts_, state_.auxiliaries, flow2_, rate2_)) return;
      const double balanced = amounts_[pack()];
      const double left_over = state_.amounts[pack()] - balanced;
      if (std::abs(left_over) > options_.leftover_absolute + options_.leftover * std::abs(balanced)) return;
      state_.transfer(pack_.compartment, pack_.peer, left_over, cause_pack_settles);
      algebraic_ = true;
      refresh();
    }
  }

  /// Flows after an event; a pack whose balance the event has upset is dynamic again.
  /// \return true if the event changed a flow or a rate
  bool refresh_after_event() {
    flow2_.swap(flow1_);
    rate2_.swap(rate1_);
    const bool was = algebraic_;
    algebraic_ = lost_ = false;
    refresh();
    if (was) {
      const double net = net_into(pack_.compartment, flow1_);
      algebraic_ = std::abs(net) <= upset_share * gross_through_pack(flow1_) + options_.pack_flow_tolerance;
    }
    return flow1_ != flow2_ || rate1_ != rate2_;
  }

  [[nodiscard]] const std::vector<double>& flows() const { return flow1_; }
  [[nodiscard]] const std::vector<double>& tried_flows() const { return flow4_; }
  [[nodiscard]] SequenceView tried() const { return {amounts_, auxiliaries_, state_.marks, state_.flags}; }
  [[nodiscard]] bool analytic() const { return analytic_; }
  [[nodiscard]] bool algebraic() const { return algebraic_; }
  [[nodiscard]] std::size_t evaluations() const { return evaluations_; }

 private:
  using Values = std::vector<double>;
  static constexpr double balanced_share = 1e-10;  ///< of the flow through a pack that its root may leave
  static constexpr double upset_share = 1e-9;      ///< of that flow: more than a root leaves
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  /// act(index, ends) for each link. Asks the model each time: where its answers are constants the loop unrolls.
  template <class Act>
  void each_link(const Act& act) const {
    for (int l = 0; l < model_.links(); ++l) act(at(l), LinkEnds(model_.ends(l)));
  }
  [[nodiscard]] std::size_t pack() const { return at(pack_.compartment); }

  // ---- laws ----------------------------------------------------------------------------------------

  void evaluate(double t, Values& amounts, const Values& auxiliaries, Values& flow, Values& rate) {
    if constexpr (HasPack<M>) {
      if (algebraic_) {
        if (!balance_pack(t, amounts, auxiliaries, flow, rate)) lost_ = true;
        return;
      }
    }
    evaluate_as_is(t, amounts, auxiliaries, flow, rate);
  }

  void evaluate_as_is(double t, const Values& amounts, const Values& auxiliaries, Values& flow, Values& rate) {
    ++evaluations_;
    model_.flows(t, SequenceView{amounts, auxiliaries, state_.marks, state_.flags}, std::span<double>(flow),
                 std::span<double>(rate));
    if (state_.closed_links == 0) return;
    for (std::size_t l = 0; l < flow.size(); ++l) flow[l] = state_.closed[l] != 0 ? 0.0 : flow[l];
  }

  // ---- one step ------------------------------------------------------------------------------------

  double attempt_stages(double until) {
    const double t = state_.time;
    const double h = until - t;
    place(h * 0.5, flow1_, rate1_);
    evaluate(t + 0.5 * h, amounts_, auxiliaries_, flow2_, rate2_);
    place(h * 0.75, flow2_, rate2_);
    evaluate(t + 0.75 * h, amounts_, auxiliaries_, flow3_, rate3_);
    each_link([&](std::size_t l, LinkEnds) {
      moved_[l] = h * (2.0 / 9.0 * flow1_[l] + 1.0 / 3.0 * flow2_[l] + 4.0 / 9.0 * flow3_[l]);
    });
    for (std::size_t a = 0; a < auxiliaries_.size(); ++a) {
      auxiliaries_[a] =
          state_.auxiliaries[a] + h * (2.0 / 9.0 * rate1_[a] + 1.0 / 3.0 * rate2_[a] + 4.0 / 9.0 * rate3_[a]);
    }
    finish(until);
    return largest_error(h);
  }

  double attempt_analytic(double until) {
    if constexpr (HasAnalytic<M>) {
      auxiliaries_ = state_.auxiliaries;
      std::fill(moved_.begin(), moved_.end(), 0.0);
      model_.advance_analytically(state_.time, until, state_.view(), std::span<double>(moved_),
                                  std::span<double>(auxiliaries_));
      finish(until);
    }
    return 0.0;
  }

  /// State of a stage: the start and `length` times one set of flows.
  void place(double length, const Values& flow, const Values& rate) {
    std::copy(state_.amounts.begin(), state_.amounts.end(), amounts_.begin());
    each_link([&](std::size_t l, LinkEnds ends) {
      const double amount = length * flow[l];
      amounts_[at(ends.from)] -= amount;
      amounts_[at(ends.to)] += amount;
    });
    for (std::size_t a = 0; a < rate.size(); ++a) auxiliaries_[a] = state_.auxiliaries[a] + length * rate[a];
  }

  /// The end of a step from what has moved, with its flows.
  void finish(double until) {
    std::copy(state_.change.begin(), state_.change.end(), change_.begin());
    each_link([&](std::size_t l, LinkEnds ends) {
      change_[at(ends.from)].add(-moved_[l]);
      change_[at(ends.to)].add(moved_[l]);
    });
    for (std::size_t c = 0; c < change_.size(); ++c) amounts_[c] = state_.start[c] + change_[c].value();
    follow_ = 0.0;
    const double as_moved = algebraic_ ? amounts_[pack()] : 0.0;
    evaluate(until, amounts_, auxiliaries_, flow4_, rate4_);
    if (algebraic_) follow(amounts_[pack()] - as_moved);
  }

  /// The pack has gone along with its balance: its peer makes up for it.
  void follow(double amount) {
    follow_ = amount;
    change_[at(pack_.peer)].add(-amount);
    change_[pack()].add(amount);
    for (const std::size_t c : {at(pack_.peer), pack()}) amounts_[c] = state_.start[c] + change_[c].value();
  }

  // ---- error ---------------------------------------------------------------------------------------

  /// Difference of the two orders.
  static double difference(double first, double second, double third, double fourth) {
    return -5.0 / 72.0 * first + 1.0 / 12.0 * second + 1.0 / 9.0 * third - 1.0 / 8.0 * fourth;
  }

  double largest_error(double h) {
    std::fill(error_.begin(), error_.end(), 0.0);
    each_link([&](std::size_t l, LinkEnds ends) {
      const double off = difference(flow1_[l], flow2_[l], flow3_[l], flow4_[l]);
      error_[at(ends.from)] -= off;
      error_[at(ends.to)] += off;
    });
    double largest = 0.0;
    for (std::size_t c = 0; c < error_.size(); ++c) {
      worse(largest, h * error_[c], options_.absolute + options_.relative * std::abs(amounts_[c]));
    }
    for (std::size_t a = 0; a < auxiliaries_.size(); ++a) {
      const double off = h * difference(rate1_[a], rate2_[a], rate3_[a], rate4_[a]);
      worse(largest, off, options_.auxiliary_absolute + options_.relative * std::abs(auxiliaries_[a]));
    }
    return largest;
  }

  /// Keeps the larger ratio, and divides only for that. What is no number is worse than any, and stays.
  static void worse(double& largest, double off, double allowed) {
    if (std::isnan(largest)) return;
    if (!(std::abs(off) <= largest * allowed)) largest = std::abs(off) / allowed;
  }

  // ---- algebraic pack --------------------------------------------------------------------------------

  [[nodiscard]] double net_into(int compartment, const Values& flow) const {
    double net = 0.0;
    each_link([&](std::size_t l, LinkEnds ends) {
      if (ends.to == compartment) net += flow[l];
      if (ends.from == compartment) net -= flow[l];
    });
    return net;
  }

  [[nodiscard]] double gross_through_pack(const Values& flow) const {
    double gross = 0.0;
    each_link([&](std::size_t l, LinkEnds ends) {
      const bool touches = ends.to == pack_.compartment || ends.from == pack_.compartment;
      gross += touches ? std::abs(flow[l]) : 0.0;
    });
    return gross;
  }

  /// Relaxation time of the pack, by a difference, against the time left.
  bool relaxes_fast(double until) {
    amounts_ = state_.amounts;
    const double nudge = 1e-7 * (pack_.high - pack_.low);
    amounts_[pack()] += nudge;
    evaluate_as_is(state_.time, amounts_, state_.auxiliaries, flow2_, rate2_);
    const double slope = (net_into(pack_.compartment, flow1_) - net_into(pack_.compartment, flow2_)) / nudge;
    return slope * (until - state_.time) >= options_.quiet_ratio;
  }

  /// Puts the pack where its net flow is zero, near where it was first. \return false if there is no such amount
  bool balance_pack(double t, Values& amounts, const Values& auxiliaries, Values& flow, Values& rate) {
    double& amount = amounts[pack()];
    const auto net = [&](double x) {
      amount = x;
      evaluate_as_is(t, amounts, auxiliaries, flow, rate);
      return net_into(pack_.compartment, flow);
    };
    const double first = std::clamp(amount, pack_.low, pack_.high);
    const double off = net(first);
    const double small = options_.pack_flow_tolerance + balanced_share * gross_through_pack(flow);
    if (std::abs(off) <= small) return true;
    const Bracket bracket = bracket_of(net, first, off);
    if (!(bracket.off_low >= 0.0 && bracket.off_high <= 0.0)) return false;
    const BracketEnd end{1e-15 * (pack_.high - pack_.low), small};
    net(bracketed_root(net, bracket, end));
    return true;
  }

  /// From a guess outward, in growing strides, towards where the net flow changes sign.
  template <class Net>
  [[nodiscard]] Bracket bracket_of(const Net& net, double first, double off) const {
    double near = first, at_near = off, stride = 1e-7 * (pack_.high - pack_.low);
    const double way = off > 0.0 ? 1.0 : -1.0;
    while (true) {
      const double far = std::clamp(near + way * stride, pack_.low, pack_.high);
      const double at_far = net(far);
      const bool turned = (at_far > 0.0) != (off > 0.0);
      const bool inside = far > pack_.low && far < pack_.high;  // not so for what is no number
      if (turned || !inside) {
        return off > 0.0 ? Bracket{near, at_near, far, at_far} : Bracket{far, at_far, near, at_near};
      }
      near = far;
      at_near = at_far;
      stride *= 16.0;
    }
  }

  const M& model_;
  SequenceState& state_;
  const SequenceOptions& options_;
  Values flow1_, flow2_, flow3_, flow4_, moved_;
  Values rate1_, rate2_, rate3_, rate4_;
  Values amounts_, auxiliaries_, error_;
  std::vector<CompensatedSum> change_;
  Pack pack_;
  double follow_ = 0.0;
  bool algebraic_ = false;
  bool analytic_ = false;
  bool lost_ = false;  ///< the last attempt did not find the balance of the pack
  std::size_t evaluations_ = 0;
};

}  // namespace forecourse::solvers::sequence
