#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/network/batch_solver.h"
#include "forecourse/network/sets/hose_group.h"
#include "forecourse/network/solve.h"

namespace forecourse::network {

/// A set of open hoses of a group: a bit for each.
using HoseSet = std::uint64_t;

inline constexpr std::size_t most_hoses_of_a_group = 64;

/// The states of a group for many sets of open hoses, in the order asked.
struct SetStates {
  std::vector<BatchStates> systems;  ///< per system of the group
  std::vector<double> hose_flow;     ///< [m3/s] of the whole hose, sets x hoses; 0 for a closed one
  std::vector<char> solved;          ///< per set; 0: no solution was found

  [[nodiscard]] std::size_t size() const { return solved.size(); }
};

/// Solves one group for many sets of open hoses: all at once where its states are independent of each other, one by
/// one where blended hoses tie systems together or a control starts, stops or turns pumps.
class HoseStates {
 public:
  /// \pre at most 64 hoses; the group outlives this
  explicit HoseStates(const HoseGroup& group);

  /// True where a set costs microseconds: one system with fixed pumps.
  [[nodiscard]] bool is_batched() const { return batch_ != nullptr; }

  /// One by one, a set that was solved before is not solved again.
  void solve(std::span<const HoseSet> sets, SetStates& out, const Context& context = {});

  /// True where the systems of a group can be solved apart, in microseconds a set: pumps are fixed.
  [[nodiscard]] bool can_solve_apart() const;

  /// The same with each system solved by itself, as if a blended hose took from each product what that can give. A
  /// blended hose's flow is then what its scarcest product allows: near what `solve` tells, and quick, so good to
  /// search with.
  void solve_apart(std::span<const HoseSet> sets, SetStates& out, const Context& context = {});

 private:
  void solve_batched(std::span<const HoseSet> sets, SetStates& out, const Context& context) const;
  void solve_one_by_one(std::span<const HoseSet> sets, SetStates& out, const Context& context);
  [[nodiscard]] std::vector<std::string> ids(HoseSet set) const;
  /// Every system of the group by itself.
  void solve_systems(std::span<const HoseSet> sets, std::vector<BatchStates>& out, const Context& context);
  [[nodiscard]] std::vector<std::uint64_t> open_in(std::size_t system, std::span<const HoseSet> sets) const;
  void gather(SetStates& out) const;
  void gather_apart(SetStates& out) const;

  const HoseGroup& group_;
  StationNetwork network_;  ///< of the group alone; empty where batched
  std::shared_ptr<const BatchSolver> batch_;
  std::vector<std::shared_ptr<const BatchSolver>> apart_;  ///< per system, made when first asked for
  std::unordered_map<HoseSet, StationState> known_;        ///< solved one by one
};

}  // namespace forecourse::network
