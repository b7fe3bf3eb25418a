#pragma once

#include "forecourse/parts/lanes/lane_pipe.h"
#include "forecourse/solvers/lanes/lane_graph.h"

namespace forecourse::network {

/// Controls below this are bits of hoses, from here on bits of pumps; see `LaneEdge`.
inline constexpr int pump_controls = 64;

/// The law of a run for the code in lanes: constant + q (linear + quadratic |q|) + its pipes + others.
struct LaneRun {
  double constant = 0.0, linear = 0.0, quadratic = 0.0;
  int first_pipe = 0, end_pipe = 0;
  int has_others = 0;  ///< not 0: laws that are asked one lane at a time
};

/// A system as plain data: all that a kernel sees.
struct LaneProgram {
  solvers::LaneGraph graph;
  const LaneRun* run = nullptr;  ///< per edge of the graph
  const parts::LanePipe* pipe = nullptr;
  int pipes = 0;
  /// Adds the other laws of a run to `loss` and `slope`, `count` lanes of each.
  void (*add_others)(const void* laws, int run, int count, const double* flow, double* loss, double* slope) = nullptr;
  const void* laws = nullptr;
};

/// Where each lane's answer goes; null: nowhere.
struct LaneRows {
  double* flow[8] = {};      ///< [m3/s] per edge, 0 where closed
  double* pressure[8] = {};  ///< [Pa] per node
};

/// The solver in lanes, compiled for one instruction set.
struct LaneKernel {
  int count = 0;  ///< lanes
  solvers::LaneReport (*solve)(const LaneProgram& program, solvers::LaneMemory& memory,
                               const solvers::LaneBlock& block) = nullptr;
  void (*write)(const LaneProgram& program, const solvers::LaneMemory& memory, const LaneRows& rows) = nullptr;
  /// The law of each edge once at the flows in the memory; for tests. Lane arrays, per edge.
  void (*ask)(const LaneProgram& program, solvers::LaneMemory& memory, double* loss, double* slope) = nullptr;
};

LaneKernel baseline_kernel();
#if defined(__x86_64__)
LaneKernel avx2_kernel();
LaneKernel avx512_kernel();
#endif

}  // namespace forecourse::network
