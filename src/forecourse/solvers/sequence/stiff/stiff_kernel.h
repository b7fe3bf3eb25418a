#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "forecourse/solvers/sequence/model.h"
#include "forecourse/solvers/sequence/result.h"
#include "forecourse/solvers/sequence/stiff/dense_solve.h"

namespace forecourse::solvers::sequence {

/// Tries implicit steps from the state as it is, and makes the last one tried the new state: for a model whose
/// compartments settle at very different speeds.
///
/// A linearly implicit method of order 3 with an embedded one of order 2, L-stable, four stages. Its unknowns are the
/// amounts that pass the links, so that what one compartment loses another gains, to the rounding, at any step.
/// \source [sandu_1997, RODAS3] tableau from memory, not verified; tests hold its order and its damping
/// \error local error by the options' tolerances; amounts balance to rounding whatever the tolerance
template <SequenceModel M>
class StiffKernel {
 public:
  StiffKernel(const M& model, SequenceState& state, const SequenceOptions& options)
      : model_(model), state_(state), options_(options) {
    const auto links = static_cast<std::size_t>(model.links());
    const std::size_t count = state.amounts.size();
    for (auto* flow : {&flow_, &end_flow_, &stage_flow_, &moved_, &right_, &nudged_}) flow->resize(links);
    for (Values& k : stage_) k.resize(links);
    for (auto* amounts : {&amounts_, &settled_, &trial_}) amounts->resize(count);
    slopes_.resize(links * count);
    matrix_.resize(count * count);
    change_.resize(count);
    for (int l = 0; l < model.links(); ++l) ends_.push_back(model.ends(l));
  }

  /// Flows of the state as it is now: at the start and after events.
  void refresh() {
    evaluate(state_.time, state_.amounts, flow_);
    has_slopes_ = false;
  }

  /// \return the largest error over its tolerance; the state itself does not change
  double attempt(double until) {
    const double h = until - state_.time;
    if (!has_slopes_) find_slopes();
    if (!factor(h)) return std::numeric_limits<double>::quiet_NaN();
    for (std::size_t s = 0; s < 4; ++s) find_stage(s, h);
    for (std::size_t l = 0; l < moved_.size(); ++l) moved_[l] = 2.0 * stage_[0][l] + stage_[2][l] + stage_[3][l];
    finish(until);
    return largest_error();
  }

  /// Makes the last attempt, to `until`, the state.
  void accept(double until) {
    for (std::size_t l = 0; l < moved_.size(); ++l) {
      if (moved_[l] != 0.0) state_.ledger.pass(l, moved_[l]);
    }
    state_.change.swap(change_);
    state_.amounts.swap(amounts_);
    flow_.swap(end_flow_);
    state_.time = until;
    has_slopes_ = false;
  }

  void look_for_quiet() {}
  void try_algebraic(double /*until*/) {}

  /// \return true if the event changed a flow
  bool refresh_after_event() {
    end_flow_.swap(flow_);
    refresh();
    return flow_ != end_flow_;
  }

  [[nodiscard]] const std::vector<double>& flows() const { return flow_; }
  [[nodiscard]] const std::vector<double>& tried_flows() const { return end_flow_; }
  [[nodiscard]] SequenceView tried() const { return {amounts_, state_.auxiliaries, state_.marks, state_.flags}; }
  [[nodiscard]] static bool analytic() { return false; }
  [[nodiscard]] static bool algebraic() { return false; }
  [[nodiscard]] std::size_t evaluations() const { return evaluations_; }

 private:
  using Values = std::vector<double>;
  static constexpr double gamma = 0.5;
  /// Weights of the stages before, in the state and over the step in the right side, row by row.
  static constexpr std::array<std::array<double, 3>, 4> in_state{
      {{0.0, 0.0, 0.0}, {0.0, 0.0, 0.0}, {2.0, 0.0, 0.0}, {2.0, 0.0, 1.0}}};
  static constexpr std::array<std::array<double, 3>, 4> in_right{
      {{0.0, 0.0, 0.0}, {4.0, 0.0, 0.0}, {1.0, -1.0, 0.0}, {1.0, -1.0, -8.0 / 3.0}}};
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }

  void evaluate(double t, const Values& amounts, Values& flow) {
    ++evaluations_;
    model_.flows(t, SequenceView{amounts, state_.auxiliaries, state_.marks, state_.flags}, std::span<double>(flow),
                 std::span<double>());
    if (state_.closed_links == 0) return;
    for (std::size_t l = 0; l < flow.size(); ++l) flow[l] = state_.closed[l] != 0 ? 0.0 : flow[l];
  }

  [[nodiscard]] bool is_read(std::size_t compartment) const {
    if constexpr (TellsReaders<M>) return model_.is_read(static_cast<int>(compartment));
    return true;
  }

  /// How each flow answers to each amount, by differences; once for all attempts from one state.
  void find_slopes() {
    constexpr double share = 1e-7, least = 1e-4;
    std::fill(slopes_.begin(), slopes_.end(), 0.0);
    trial_ = state_.amounts;
    for (std::size_t c = 0; c < trial_.size(); ++c) {
      if (!is_read(c)) continue;
      const double kept = trial_[c];
      trial_[c] = kept + share * std::max(least, std::abs(kept));
      evaluate(state_.time, trial_, nudged_);
      const double nudge = trial_[c] - kept;
      for (std::size_t l = 0; l < flow_.size(); ++l) slopes_[l * trial_.size() + c] = (nudged_[l] - flow_[l]) / nudge;
      trial_[c] = kept;
    }
    has_slopes_ = true;
  }

  /// 1 / (gamma h) less the slopes of what each compartment gains.
  bool factor(double h) {
    const std::size_t count = state_.amounts.size();
    std::fill(matrix_.begin(), matrix_.end(), 0.0);
    for (std::size_t c = 0; c < count; ++c) matrix_[c * count + c] = 1.0 / (gamma * h);
    for (std::size_t l = 0; l < ends_.size(); ++l) {
      for (std::size_t c = 0; c < count; ++c) {
        const double slope = slopes_[l * count + c];
        matrix_[at(ends_[l].from) * count + c] += slope;
        matrix_[at(ends_[l].to) * count + c] -= slope;
      }
    }
    return solve_.factor(matrix_, count);
  }

  void find_stage(std::size_t s, double h) {
    if (s < 2) {
      right_ = flow_;
    } else {
      place(s);
      evaluate(state_.time + h, trial_, stage_flow_);
      right_ = stage_flow_;
    }
    for (std::size_t before = 0; before < s; ++before) {
      const double weight = in_right[s][before] / h;
      if (weight == 0.0) continue;
      for (std::size_t l = 0; l < right_.size(); ++l) right_[l] += weight * stage_[before][l];
    }
    gather(right_, settled_);
    solve_.solve(settled_);
    const std::size_t count = settled_.size();
    for (std::size_t l = 0; l < right_.size(); ++l) {
      double follows = 0.0;
      for (std::size_t c = 0; c < count; ++c) follows += slopes_[l * count + c] * settled_[c];
      stage_[s][l] = gamma * h * (right_[l] + follows);
    }
  }

  /// State of a stage.
  void place(std::size_t s) {
    trial_ = state_.amounts;
    for (std::size_t before = 0; before < s; ++before) {
      const double weight = in_state[s][before];
      if (weight == 0.0) continue;
      for (std::size_t l = 0; l < ends_.size(); ++l) {
        const double amount = weight * stage_[before][l];
        trial_[at(ends_[l].from)] -= amount;
        trial_[at(ends_[l].to)] += amount;
      }
    }
  }

  /// What each compartment gains by what passes the links.
  void gather(const Values& through, Values& gained) const {
    std::fill(gained.begin(), gained.end(), 0.0);
    for (std::size_t l = 0; l < ends_.size(); ++l) {
      gained[at(ends_[l].from)] -= through[l];
      gained[at(ends_[l].to)] += through[l];
    }
  }

  void finish(double until) {
    std::copy(state_.change.begin(), state_.change.end(), change_.begin());
    for (std::size_t l = 0; l < ends_.size(); ++l) {
      change_[at(ends_[l].from)].add(-moved_[l]);
      change_[at(ends_[l].to)].add(moved_[l]);
    }
    for (std::size_t c = 0; c < change_.size(); ++c) amounts_[c] = state_.start[c] + change_[c].value();
    evaluate(until, amounts_, end_flow_);
  }

  double largest_error() {
    gather(stage_[3], settled_);
    double largest = 0.0;
    for (std::size_t c = 0; c < settled_.size(); ++c) {
      const double ratio = std::abs(settled_[c]) / (options_.absolute + options_.relative * std::abs(amounts_[c]));
      if (!(ratio <= largest)) largest = ratio;
      if (std::isnan(ratio)) return ratio;
    }
    return largest;
  }

  const M& model_;
  SequenceState& state_;
  const SequenceOptions& options_;
  std::vector<LinkEnds> ends_;
  Values flow_, end_flow_, stage_flow_, moved_, right_, nudged_;
  std::array<Values, 4> stage_;
  Values amounts_, settled_, trial_;
  Values slopes_, matrix_;
  std::vector<CompensatedSum> change_;
  DenseSolve solve_;
  bool has_slopes_ = false;
  std::size_t evaluations_ = 0;
};

}  // namespace forecourse::solvers::sequence
