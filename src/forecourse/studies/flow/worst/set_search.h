#pragma once

#include <functional>
#include <limits>
#include <span>
#include <vector>

#include "forecourse/studies/flow/worst/distinct_sets.h"

namespace forecourse::studies {

/// The extreme of one quantity among the sets solved so far.
struct Found {
  double value = std::numeric_limits<double>::quiet_NaN();
  network::HoseSet set = 0;
};

/// How slow the slowest open hose of a set is.
struct Slowness {
  double flow = std::numeric_limits<double>::infinity();   ///< [m3/s] of it
  double spare = std::numeric_limits<double>::infinity();  ///< [Pa] least pressure across an open hose
  std::size_t hose = 0;
};

/// By flow; where limiters hold both alike, by the pressure that is left.
[[nodiscard]] bool is_slower(const Slowness& a, const Slowness& b);

/// The slowest set with so many hoses open.
struct SlowestSet {
  Slowness slowness;
  network::HoseSet set = 0;
  double sum = 0.0;   ///< [m3/s] of the slowest hose over the sets of an enumeration
  double sets = 0.0;  ///< that were summed
};

/// Solves sets of open hoses of one group and keeps the extremes over all of them. The same for any number of
/// threads: sets are taken in the order given, and of equals the first is kept.
class SetSearch {
 public:
  using Tell = std::function<void(std::size_t first, const network::SetStates&)>;

  SetSearch(const network::HoseGroup& group, const Context& context);

  /// \param tell hears the states, a stretch at a time; `first` is the index of its first set
  std::vector<Slowness> solve(std::span<const network::HoseSet> sets, const Tell& tell = {});
  /// How slow sets are by systems solved apart: quick, near what `solve` tells, and not kept.
  std::vector<Slowness> estimate(std::span<const network::HoseSet> sets);
  /// Every set that differs, which also gives the means of `SlowestSet`. Done once.
  void enumerate(std::span<const network::HoseSet> sets);

  [[nodiscard]] const network::HoseGroup& group() const { return group_; }
  [[nodiscard]] const DistinctSets& sets() const { return sets_; }
  [[nodiscard]] bool is_batched() const { return states_.is_batched(); }
  /// True where sets are dear to solve and can be estimated.
  [[nodiscard]] bool estimates() const { return !states_.is_batched() && states_.can_solve_apart(); }
  [[nodiscard]] bool is_enumerated() const { return enumerated_; }
  [[nodiscard]] std::size_t solved() const { return solved_; }
  [[nodiscard]] std::size_t failed() const { return failed_; }

  /// By the number of open hoses, from 0.
  [[nodiscard]] const std::vector<SlowestSet>& slowest() const { return slowest_; }
  /// [m3/s] Of a hose while it is open.
  [[nodiscard]] Found least_flow(std::size_t hose) const { return for_hose(least_flow_, hose); }
  [[nodiscard]] Found greatest_flow(std::size_t hose) const { return for_hose(greatest_flow_, hose); }
  /// [m3/s] Greatest in either direction.
  [[nodiscard]] const Found& run_flow(std::size_t system, std::size_t run) const { return run_flow_[system][run]; }
  /// [Pa] Highest, piezometric.
  [[nodiscard]] const Found& pressure(std::size_t system, std::size_t node) const { return pressure_[system][node]; }

 private:
  void fold(const network::SetStates& states, std::size_t i, network::HoseSet set, const Slowness& slowness);
  [[nodiscard]] Slowness slowness_of(const network::SetStates& states, std::size_t i, network::HoseSet set) const;
  [[nodiscard]] Found for_hose(const std::vector<Found>& found, std::size_t hose) const;

  const network::HoseGroup& group_;
  const Context& context_;
  DistinctSets sets_;
  network::HoseStates states_;
  std::vector<std::size_t> class_of_;  ///< per hose
  std::vector<SlowestSet> slowest_;
  std::vector<Found> least_flow_, greatest_flow_;  ///< per class of equal hoses
  std::vector<std::vector<Found>> run_flow_, pressure_;
  std::size_t solved_ = 0;
  std::size_t failed_ = 0;
  bool enumerated_ = false;
};

}  // namespace forecourse::studies
