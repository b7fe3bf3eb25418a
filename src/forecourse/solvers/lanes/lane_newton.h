#pragma once

#include "forecourse/base/lanes/baseline.h"
#include "forecourse/solvers/lanes/lane_graph.h"

namespace forecourse::solvers {
namespace {

/// The Newton steps of `SteadySolver` on the states of all lanes at once, each accepted by the tests made there.
///
/// `Laws` has `Answer loss(int edge, Real flow, Mask open) const` with members `loss`, `slope` and `trusted`: a mask of
/// the lanes in which the law is exact. No bounds are left out in the first step, no search is made along a step, and
/// a state at rest is not seen: what does not settle is for the scalar solver.
template <class I, class Laws>
class LaneNewton {
 public:
  using Real = typename I::Real;
  using Mask = typename I::Mask;

  /// Copies of what is asked all the time: stores of lanes may alias whatever is behind a reference.
  LaneNewton(const LaneGraph& graph, const LaneMemory& memory, const Laws& laws)
      : graph_(graph), memory_(memory), laws_(laws), open_(reinterpret_cast<Mask*>(memory.open)) {}

  LaneReport solve(const LaneBlock& block) {
    open_edges(block);
    LaneReport report;
    bool linearized = block.start != nullptr;
    if (linearized) start_at(*block.start);
    for (;; ++report.steps) {
      if (!linearized) {
        const bool last = report.steps == block.most_steps;
        const unsigned settled = I::bits(evaluate());
        if (last || settled == every) {
          report.settled = settled & I::bits(finish());
          if (last || report.settled == every) return report;
        }
      }
      linearized = false;
      eliminate();
      step();
    }
  }

 private:
  static constexpr unsigned every = (1U << static_cast<unsigned>(I::count)) - 1U;

  /// As in `SteadySolver`: a node that every bound has cut off keeps its last pressure.
  static constexpr double hold = 1e-16;  // [m3/(s Pa)]

  FORECOURSE_LANE Real at(const double* array, int i) { return I::load(array + i * I::count); }
  FORECOURSE_LANE void put(double* array, int i, Real value) { I::store(array + i * I::count, value); }
  FORECOURSE_LANE void add(double* array, int i, Real value) { put(array, i, at(array, i) + value); }

  void open_edges(const LaneBlock& block) {
    const auto first = I::load_words(block.first_word), second = I::load_words(block.second_word);
    memory_.active_count = 0;
    for (int e = 0; e < graph_.edges; ++e) {
      const int control = graph_.edge[e].control;
      const Mask open = control < 0    ? I::every_lane()
                        : control < 64 ? I::has_bit(first, control)
                                       : I::has_bit(second, control - 64);
      open_[e] = open;
      if (control < 0 || I::bits(open) != 0) memory_.active[memory_.active_count++] = e;
    }
  }

  void start_at(const LaneStart& start) {
    for (int e = 0; e < graph_.edges; ++e) put(memory_.flow, e, I::all(start.flow[e]));
    for (int n = 0; n < graph_.nodes; ++n) put(memory_.pressure, n, I::all(start.pressure[n]));
    laws_.start_at(start);
    clear();
    for (int i = 0; i < memory_.active_count; ++i) {
      const int e = memory_.active[i];
      const LaneEdge& edge = graph_.edge[e];
      assemble(e, edge, I::keep(open_[e], I::all(start.conductance[e])), I::keep(open_[e], I::all(start.offset[e])));
    }
  }

  void clear() {
    for (int n = 0; n <= graph_.unknowns; ++n) {
      put(memory_.diagonal, n, I::all(hold));
      put(memory_.right, n, I::all(0.0));
    }
    for (int s = 0; s <= graph_.slots; ++s) put(memory_.below, s, I::all(0.0));
  }

  [[gnu::always_inline]] inline void assemble(int e, const LaneEdge& edge, Real conductance, Real offset) {
    put(memory_.conductance, e, conductance);
    put(memory_.offset, e, offset);
    if (edge.from_row < graph_.unknowns) {
      add(memory_.diagonal, edge.from_row, conductance);
      put(memory_.right, edge.from_row, at(memory_.right, edge.from_row) - offset);
    }
    if (edge.to_row < graph_.unknowns) {
      add(memory_.diagonal, edge.to_row, conductance);
      add(memory_.right, edge.to_row, offset);
    }
    if (edge.slot < graph_.slots) put(memory_.below, edge.slot, at(memory_.below, edge.slot) - conductance);
  }

  /// Asks the laws and linearizes. The lanes in which every law holds, or its bound.
  Mask evaluate() {
    clear();
    Mask good = I::every_lane();
    for (int i = 0; i < memory_.active_count; ++i) {
      const int e = memory_.active[i];
      const LaneEdge& edge = graph_.edge[e];
      good = edge.bounded != 0 ? I::both(good, linearize_bounded(e, edge)) : I::both(good, linearize_free(e, edge));
    }
    return good;
  }

  [[gnu::always_inline]] inline Mask linearize_free(int e, const LaneEdge& edge) {
    const Mask open = open_[e];
    const Real flow = at(memory_.flow, e);
    const auto law = laws_.loss(e, flow, open);
    const Real off = at(memory_.pressure, edge.from) - at(memory_.pressure, edge.to) - law.loss;
    const Real conductance = I::rough_inverse(I::max(law.slope, I::all(graph_.slope_floor)));
    if (edge.control < 0) {
      assemble(e, edge, conductance, flow + conductance * off);
    } else {
      assemble(e, edge, I::keep(open, conductance), I::keep(open, flow + conductance * off));
    }
    return accepted(open, law.trusted, I::abs(off));
  }

  [[gnu::always_inline]] inline Mask linearize_bounded(int e, const LaneEdge& edge) {
    const Mask open = open_[e];
    const Real flow = at(memory_.flow, e);
    const auto law = laws_.loss(e, flow, open);
    const Real off = at(memory_.pressure, edge.from) - at(memory_.pressure, edge.to) - law.loss;
    const Real conductance = I::rough_inverse(I::max(law.slope, I::all(graph_.slope_floor)));
    const Real trial = flow + off * I::min(conductance, I::all(1.0 / graph_.complementarity_slope));
    const Real bound = I::max(I::min(trial, I::all(edge.highest)), I::all(edge.lowest));
    const Mask inside = I::both(I::less(I::all(edge.lowest), trial), I::less(trial, I::all(edge.highest)));
    const Real offset = I::select(inside, flow + conductance * off, bound);
    assemble(e, edge, I::keep(I::both(open, inside), conductance), I::keep(open, offset));
    const Real scale = I::max(law.slope, I::all(graph_.complementarity_slope));
    return accepted(open, law.trusted, I::abs(flow - bound) * scale);
  }

  /// A number that is none passes nothing.
  [[nodiscard, gnu::always_inline]] inline Mask accepted(Mask open, Mask trusted, Real residual) const {
    const Mask good = I::both(trusted, I::at_most(residual, I::all(graph_.pressure_tolerance)));
    return I::either(good, I::without(open, I::every_lane()));
  }

  /// Replays the elimination; `right` becomes the changes of pressure.
  void eliminate() {
    const LanePivot* pivot = graph_.pivot;
    int entry = 0, update = 0;
    for (int k = 0; k < graph_.unknowns; ++k) {
      const int unknown = pivot[k].unknown;
      const Real inverse = I::rough_inverse(at(memory_.diagonal, unknown));
      const Real right = at(memory_.right, unknown);
      put(memory_.diagonal, unknown, inverse);
      for (; entry < pivot[k].column_end; ++entry) {
        const LaneColumn column = graph_.column[entry];
        const Real below = at(memory_.below, column.slot);
        const Real factor = below * inverse;
        add(memory_.diagonal, column.later, -(factor * below));
        add(memory_.right, column.later, -(factor * right));
      }
      for (; update < pivot[k].update_end; ++update) {
        const LaneUpdate u = graph_.update[update];
        add(memory_.below, u.target, -(at(memory_.below, u.a) * at(memory_.below, u.b) * inverse));
      }
    }
    for (int k = graph_.unknowns - 1; k >= 0; --k) {
      const int begin = k > 0 ? pivot[k - 1].column_end : 0;
      Real sum = at(memory_.right, pivot[k].unknown);
      for (int i = begin; i < pivot[k].column_end; ++i) {
        sum = sum - at(memory_.below, graph_.column[i].slot) * at(memory_.right, graph_.column[i].later);
      }
      put(memory_.right, pivot[k].unknown, sum * at(memory_.diagonal, pivot[k].unknown));
    }
  }

  void step() {
    put(memory_.right, graph_.unknowns, I::all(0.0));
    for (int i = 0; i < memory_.active_count; ++i) {
      const int e = memory_.active[i];
      const LaneEdge& edge = graph_.edge[e];
      const Real change = at(memory_.right, edge.from_row) - at(memory_.right, edge.to_row);
      const Real flow = at(memory_.offset, e) + at(memory_.conductance, e) * change;
      put(memory_.flow, e, edge.control < 0 ? flow : I::select(open_[e], flow, at(memory_.flow, e)));
    }
    for (int n = 0; n < graph_.unknowns; ++n) add(memory_.pressure, n, at(memory_.right, n));
  }

  /// Puts the flows within their bounds and tells the lanes whose nodes then balance.
  Mask finish() {
    double* balance = memory_.balance;
    for (int n = 0; n <= graph_.unknowns; ++n) put(balance, n, I::all(0.0));
    for (int i = 0; i < memory_.active_count; ++i) {
      const int e = memory_.active[i];
      const LaneEdge& edge = graph_.edge[e];
      Real flow = at(memory_.flow, e);
      if (edge.bounded != 0) flow = I::max(I::min(flow, I::all(edge.highest)), I::all(edge.lowest));
      put(memory_.flow, e, flow);
      flow = I::keep(open_[e], flow);
      add(balance, edge.from_row, flow);
      add(balance, edge.to_row, -flow);
    }
    Mask good = I::every_lane();
    for (int n = 0; n < graph_.unknowns; ++n) {
      good = I::both(good, I::at_most(I::abs(at(balance, n)), I::all(graph_.flow_tolerance)));
    }
    return good;
  }

  const LaneGraph graph_;
  LaneMemory memory_;
  const Laws laws_;
  Mask* open_;
};

}  // namespace
}  // namespace forecourse::solvers
