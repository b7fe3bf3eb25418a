#pragma once

#include <array>
#include <optional>
#include <span>

#include "forecourse/network/batch/core.h"
#include "forecourse/network/batch_solver.h"
#include "forecourse/solvers/steady.h"

namespace forecourse::network {

/// Solves one chunk of cases, eight after eight, each lane going on from where it stands while neighbors are alike.
class BatchWorker {
 public:
  explicit BatchWorker(const BatchCore& core);

  /// \param first  state of `out` that the first case becomes
  BatchCounts solve(std::span<const BatchCase> cases, BatchStates& out, std::size_t first);

 private:
  static constexpr std::size_t most_lanes = 8;

  /// The words of a case as the kernel takes them.
  struct Words {
    std::array<std::uint64_t, most_lanes> hoses{}, pumps{};
  };
  /// One sequence of blocks: for narrow lanes several take turns, so that each goes on from states like its own.
  struct Track {
    BatchMemory memory;
    Words last;
    bool usable = false;
  };

  void put_in_order(std::span<const BatchCase> cases);
  [[nodiscard]] BatchCase masked(const BatchCase& asked) const;
  [[nodiscard]] std::optional<double> rest_pressure(const BatchCase& one) const;
  void set_at_rest(double pressure, BatchStates& out, std::size_t state) const;
  void solve_block(Track& track, std::span<const BatchCase> cases, std::span<const std::size_t> order, BatchStates& out,
                   std::size_t first);
  void solve_scalar(const BatchCase& one, BatchStates& out, std::size_t state);

  const BatchCore& core_;
  std::vector<Track> tracks_;
  std::vector<std::size_t> order_;  ///< in which the cases are solved
  std::optional<solvers::SteadySolver<RunLaws>> scalar_;
  BatchCounts counts_;
};

}  // namespace forecourse::network
