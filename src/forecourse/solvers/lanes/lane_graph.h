#pragma once

#include <cstdint>

namespace forecourse::solvers {

/// One edge for the solver in lanes; the letters of what it does are those of `SteadySolver`.
struct LaneEdge {
  int from = 0;      ///< node
  int to = 0;        ///< node
  int from_row = 0;  ///< unknown of the node, or the row that nobody reads where its pressure is fixed
  int to_row = 0;
  int slot = 0;          ///< of the entry below the diagonal, or the slot that nobody reads
  int control = -1;      ///< bit that opens the edge, 0-63 of the first word, 64-127 of the second; -1: always open
  int bounded = 0;       ///< not 0 if a bound is finite
  double lowest = 0.0;   ///< [m3/s]
  double highest = 0.0;  ///< [m3/s]
};

struct LanePivot {
  int unknown = 0;
  int column_end = 0;  ///< one past its last entry in `columns`; it begins where the pivot before ends
  int update_end = 0;
};
struct LaneColumn {
  int later, slot;
};
struct LaneUpdate {
  int target, a, b;
};

/// A steady network as plain data, for code in lanes that may not call what other files compile.
struct LaneGraph {
  int unknowns = 0, nodes = 0, edges = 0, slots = 0;
  const LaneEdge* edge = nullptr;
  const LanePivot* pivot = nullptr;  ///< `unknowns` of them
  const LaneColumn* column = nullptr;
  const LaneUpdate* update = nullptr;

  double pressure_tolerance = 0.0;  ///< as in `SteadyOptions`, as all below
  double flow_tolerance = 0.0;
  double slope_floor = 0.0;
  double complementarity_slope = 0.0;
};

/// A point where solves can start, with all edges linearized there, so that the first step needs no law.
struct LaneStart {
  const double* flow = nullptr;         ///< [m3/s] per edge
  const double* conductance = nullptr;  ///< [m3/(s Pa)] per edge
  const double* offset = nullptr;       ///< [m3/s] per edge
  const double* pressure = nullptr;     ///< [Pa] per node; that of a fixed node is its own
  const double* friction = nullptr;     ///< per pipe, as `LaneMemory::friction`
};

/// Memory of one run of blocks, kept from block to block: the next may start where the last ended.
/// All pointers are to 64-byte borders; a "lane array" has `count` doubles an entry, `count` the lanes of the kernel.
struct LaneMemory {
  double* flow = nullptr;         ///< lane array, per edge; of a closed lane, the flow it last had when open
  double* pressure = nullptr;     ///< lane array, per node
  double* conductance = nullptr;  ///< lane array, per edge
  double* offset = nullptr;       ///< lane array, per edge
  double* diagonal = nullptr;     ///< lane array, per unknown and one more
  double* right = nullptr;        ///< lane array, per unknown and one more
  double* below = nullptr;        ///< lane array, per slot and one more
  double* balance = nullptr;      ///< lane array, per unknown and one more
  double* open = nullptr;         ///< room for a mask an edge
  double* friction = nullptr;     ///< lane array, per pipe: what its law keeps from flow to flow
  int* active = nullptr;          ///< edges that are open in some lane
  int active_count = 0;
};

/// States to solve side by side, one a lane.
struct LaneBlock {
  const std::uint64_t* first_word = nullptr;   ///< of open edges, per lane
  const std::uint64_t* second_word = nullptr;  ///< per lane
  const LaneStart* start = nullptr;            ///< null: go on from what the memory holds
  int most_steps = 0;
};

struct LaneReport {
  unsigned settled = 0;  ///< bit per lane
  int steps = 0;
};

}  // namespace forecourse::solvers
