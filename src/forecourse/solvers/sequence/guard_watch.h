#pragma once

#include <algorithm>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

#include "forecourse/solvers/sequence/model.h"

namespace forecourse::solvers::sequence {

/// Keeps which guards wait, and says by how much one is past the point at which it fires.
class GuardWatch {
 public:
  GuardWatch(std::vector<GuardRule> rules, std::vector<std::uint8_t>& waits) : rules_(std::move(rules)), waits_(waits) {
    waits_.resize(rules_.size());
    for (std::size_t g = 0; g < rules_.size(); ++g) waits_[g] = rules_[g].waits ? 1 : 0;
  }

  [[nodiscard]] std::size_t count() const { return rules_.size(); }
  [[nodiscard]] const GuardRule& rule(std::size_t g) const { return rules_[g]; }

  /// A guard of both ways waits for the other side of where it starts. (Its `waits` means: for a rise.)
  void start(std::size_t g, double value) {
    if (rules_[g].crossing == Crossing::either) waits_[g] = value < 0.0 ? 1 : 0;
  }

  /// \return at or above zero if the guard fires; minus infinity if it does not wait
  [[nodiscard]] double excess(std::size_t g, double value) const {
    const GuardRule& rule = rules_[g];
    if (rule.crossing == Crossing::either) return (waits_[g] != 0 ? value : -value) - rule.hysteresis;
    if (waits_[g] == 0) return -std::numeric_limits<double>::infinity();
    return rule.crossing == Crossing::rising ? value : -value;
  }

  void fired(std::size_t g) {
    const bool flips = rules_[g].crossing == Crossing::either && waits_[g] == 0;
    waits_[g] = flips ? 1 : 0;
  }

  /// Lets a guard wait again once its value is back.
  void rearm(std::size_t g, double value) {
    const GuardRule& rule = rules_[g];
    if (waits_[g] != 0 || rule.latched || rule.crossing == Crossing::either) return;
    const double past = rule.crossing == Crossing::rising ? value : -value;
    if (past < -rule.hysteresis) waits_[g] = 1;
  }

 private:
  std::vector<GuardRule> rules_;
  std::vector<std::uint8_t>& waits_;  ///< in the state, so that events may change it
};

/// Closes in on the first moment at which a guard fires, between a time at which none does and one at which some do.
/// Secant on the guard that comes first, an end kept twice weighing half, and each fourth time the middle.
class MomentSearch {
 public:
  MomentSearch(double low, double high, std::size_t guards)
      : low_(low), high_(high), at_low_(guards), at_high_(guards) {}

  [[nodiscard]] double low() const { return low_; }
  [[nodiscard]] double high() const { return high_; }
  [[nodiscard]] std::vector<double>& at_low() { return at_low_; }    ///< excess of each guard there, all below zero
  [[nodiscard]] std::vector<double>& at_high() { return at_high_; }  ///< some at zero or above

  /// Inside the bracket, at least a quarter of `width` from its ends.
  [[nodiscard]] double next(double width) {
    constexpr int middle_each = 4;
    const double span = high_ - low_;
    const double share = ++round_ % middle_each == 0 ? 0.5 : first_share();
    return low_ + std::clamp(share * span, 0.25 * width, span - 0.25 * width);
  }

  /// `excess` at the time tried, which becomes one of the ends.
  void narrow(double time, std::vector<double>& excess, bool fires) {
    if (fires) {
      high_ = time;
      at_high_.swap(excess);
      low_weight_ = kept_ == -1 ? 0.5 * low_weight_ : 1.0;
      high_weight_ = 1.0;
      kept_ = -1;
    } else {
      low_ = time;
      at_low_.swap(excess);
      high_weight_ = kept_ == 1 ? 0.5 * high_weight_ : 1.0;
      low_weight_ = 1.0;
      kept_ = 1;
    }
  }

 private:
  [[nodiscard]] double first_share() const {
    double first = 1.0;
    for (std::size_t g = 0; g < at_low_.size(); ++g) {
      if (!(at_high_[g] >= 0.0)) continue;
      const double before = -low_weight_ * at_low_[g];
      const double share = before / (before + high_weight_ * at_high_[g]);
      first = std::min(first, share >= 0.0 ? share : 0.5);
    }
    return first;
  }

  double low_;
  double high_;
  std::vector<double> at_low_;
  std::vector<double> at_high_;
  double low_weight_ = 1.0;
  double high_weight_ = 1.0;
  int kept_ = 0;  ///< end the last round kept: -1 low, 1 high
  int round_ = 0;
};

}  // namespace forecourse::solvers::sequence
