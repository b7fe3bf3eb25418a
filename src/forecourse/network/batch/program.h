#pragma once

#include <vector>

#include "forecourse/base/lanes/instruction_set.h"
#include "forecourse/network/batch/lane_program.h"
#include "forecourse/network/batch/starts.h"
#include "forecourse/network/run_laws.h"

namespace forecourse::network {

/// A system written down for the solver in lanes, with the point where its cold solves start.
class BatchProgram {
 public:
  /// \pre the system has a graph; both outlive this
  BatchProgram(const PipingSystem& system, const RunLaws& laws, const solvers::SteadyOptions& options);
  BatchProgram(const BatchProgram&) = delete;
  BatchProgram& operator=(const BatchProgram&) = delete;

  [[nodiscard]] const LaneProgram& view() const { return view_; }
  [[nodiscard]] const BatchStarts& starts() const { return starts_; }

 private:
  void add_edges(const PipingSystem& system);
  void add_laws(const RunLaws& laws);
  void add_schedule(const solvers::Elimination& elimination);

  void make_view(const RunLaws& laws);

  const solvers::SteadyGraph& graph_;
  solvers::SteadyOptions options_;
  std::vector<solvers::LaneEdge> edges_;
  std::vector<LaneRun> runs_;
  std::vector<parts::LanePipe> pipes_;
  std::vector<solvers::LanePivot> pivots_;
  std::vector<solvers::LaneColumn> columns_;
  std::vector<solvers::LaneUpdate> updates_;
  BatchStarts starts_;
  LaneProgram view_;
};

/// Memory for one run of blocks of a program.
class BatchMemory {
 public:
  BatchMemory(const LaneProgram& program, int lanes);
  [[nodiscard]] solvers::LaneMemory& view() { return view_; }

 private:
  std::vector<double> numbers_;
  std::vector<int> active_;
  solvers::LaneMemory view_;
};

[[nodiscard]] LaneKernel kernel_for(lanes::InstructionSet set);

}  // namespace forecourse::network
