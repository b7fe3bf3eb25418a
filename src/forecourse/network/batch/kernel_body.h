#pragma once

#include "forecourse/network/batch/lane_program.h"
#include "forecourse/parts/lanes/pipe.h"
#include "forecourse/solvers/lanes/lane_newton.h"

/// What each kernel_*.cpp compiles for its instruction set `I`. Nothing here or below may have external linkage but
/// the function that hands out the kernel, nor call anything of the library or of std::.
namespace forecourse::network {
namespace {

/// The laws of all runs over lanes.
template <class I>
class RunLanes {
 public:
  using Real = typename I::Real;
  using Mask = typename I::Mask;
  struct Answer {
    Real loss, slope;
    Mask trusted;
  };

  RunLanes(const LaneProgram& program, double* friction) : program_(program), friction_(friction) {}

  void start_at(const solvers::LaneStart& start) const {
    for (int p = 0; p < program_.pipes; ++p) I::store(friction_ + p * I::count, I::all(start.friction[p]));
  }

  [[nodiscard, gnu::always_inline]] inline Answer loss(int edge, Real flow, Mask open) const {
    const LaneRun& run = program_.run[edge];
    const Real size = I::abs(flow);
    const Real per_flow = run.quadratic * size;
    Real ratio = run.linear + per_flow;
    Real slope = ratio + per_flow;
    Mask trusted = I::every_lane();
    for (int p = run.first_pipe; p < run.end_pipe; ++p) {
      double* kept = friction_ + p * I::count;
      Real x = I::load(kept);
      const auto wall = parts::PipeLanes<I>::loss(program_.pipe[p], size, x);
      I::store(kept, x);
      ratio = ratio + wall.per_flow;
      slope = slope + wall.slope;
      trusted = I::both(trusted, I::at_most(wall.step, I::all(parts::trusted_friction_step)));
    }
    Answer answer{run.constant + flow * ratio, slope, trusted};
    if (run.has_others != 0) add_others(edge, flow, open, answer);
    return answer;
  }

 private:
  void add_others(int edge, Real flow, Mask open, Answer& answer) const {
    double flows[8], losses[8], slopes[8];
    I::store(flows, I::keep(open, flow));
    I::store(losses, answer.loss);
    I::store(slopes, answer.slope);
    program_.add_others(program_.laws, edge, I::count, flows, losses, slopes);
    answer.loss = I::load(losses);
    answer.slope = I::load(slopes);
  }

  const LaneProgram& program_;
  double* friction_;
};

template <class I>
solvers::LaneReport solve_block(const LaneProgram& program, solvers::LaneMemory& memory,
                                const solvers::LaneBlock& block) {
  const RunLanes<I> laws(program, memory.friction);
  return solvers::LaneNewton<I, RunLanes<I>>(program.graph, memory, laws).solve(block);
}

/// `count` numbers a lane of a lane array into rows, eight at a time.
template <class I>
void write_rows(const double* array, int size, double* const* rows) {
  for (int l = 0; l < I::count; ++l) {
    double* row = rows[l];
    if (row == nullptr) continue;
    for (int i = 0; i < size; ++i) row[i] = array[i * I::count + l];
  }
}

template <class I>
void write_block(const LaneProgram& program, const solvers::LaneMemory& memory, const LaneRows& rows) {
  const auto* open = reinterpret_cast<const typename I::Mask*>(memory.open);
  double* flow = memory.offset;  // no longer needed
  for (int e = 0; e < program.graph.edges; ++e) {
    I::store(flow + e * I::count, I::keep(open[e], I::load(memory.flow + e * I::count)));
  }
  write_rows<I>(flow, program.graph.edges, rows.flow);
  write_rows<I>(memory.pressure, program.graph.nodes, rows.pressure);
}

template <class I>
void ask_laws(const LaneProgram& program, solvers::LaneMemory& memory, double* loss, double* slope) {
  const RunLanes<I> laws(program, memory.friction);
  for (int e = 0; e < program.graph.edges; ++e) {
    const auto answer = laws.loss(e, I::load(memory.flow + e * I::count), I::every_lane());
    I::store(loss + e * I::count, answer.loss);
    I::store(slope + e * I::count, answer.slope);
  }
}

template <class I>
LaneKernel kernel() {
  return {I::count, solve_block<I>, write_block<I>, ask_laws<I>};
}

}  // namespace
}  // namespace forecourse::network
