#include "forecourse/network/batch/program.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "forecourse/solvers/steady.h"

namespace forecourse::network {
namespace {

int as_int(std::size_t i) { return static_cast<int>(i); }

void add_others(const void* laws, int run, int count, const double* flow, double* loss, double* slope) {
  const GatheredRun& gathered = static_cast<const RunLaws*>(laws)->runs()[static_cast<std::size_t>(run)];
  for (int l = 0; l < count; ++l) {
    const parts::Loss sum = gathered.loss_of_others(flow[l]);
    loss[l] += sum.pressure_loss;
    slope[l] += sum.slope;
  }
}

parts::LanePipe lane_pipe(const parts::PipeLaw& pipe) {
  parts::LanePipe out{.reynolds_per_flow = pipe.reynolds_per_flow,
                      .quadratic = pipe.quadratic,
                      .laminar = pipe.laminar,
                      .roughness_term = pipe.friction.roughness_term};
  std::copy(pipe.friction.transition.begin(), pipe.friction.transition.end(), out.transition);
  return out;
}

}  // namespace

BatchProgram::BatchProgram(const PipingSystem& system, const RunLaws& laws, const solvers::SteadyOptions& options)
    : graph_(*system.graph), options_(options), starts_(system, laws, options) {
  add_edges(system);
  add_schedule(graph_.elimination());

  add_laws(laws);

  make_view(laws);
}

void BatchProgram::add_edges(const PipingSystem& system) {
  const int unknowns = graph_.unknowns();
  for (std::size_t e = 0; e < graph_.edges().size(); ++e) {
    const solvers::SteadyEdge& edge = graph_.edges()[e];
    const int slot = graph_.slots()[e];
    edges_.push_back({.from = edge.from,
                      .to = edge.to,
                      .from_row = std::min(edge.from, unknowns),
                      .to_row = std::min(edge.to, unknowns),
                      .slot = slot >= 0 ? slot : as_int(graph_.elimination().slots()),
                      .bounded = std::isfinite(edge.lowest) || std::isfinite(edge.highest) ? 1 : 0,
                      .lowest = edge.lowest,
                      .highest = edge.highest});
  }
  for (std::size_t h = 0; h < system.hoses.size(); ++h) {
    edges_[static_cast<std::size_t>(system.hoses[h].run)].control = as_int(h);
  }
  for (std::size_t p = 0; p < system.pumps.size(); ++p) {
    edges_[static_cast<std::size_t>(system.pumps[p].run)].control = pump_controls + as_int(p);
  }
}

void BatchProgram::add_schedule(const solvers::Elimination& elimination) {
  for (const solvers::Elimination::Pivot& pivot : elimination.pivots()) {
    for (const auto& [later, slot] : pivot.column) columns_.push_back({later, slot});
    for (const auto& u : pivot.updates) updates_.push_back({u.target, u.a, u.b});
    pivots_.push_back({pivot.unknown, as_int(columns_.size()), as_int(updates_.size())});
  }
}

void BatchProgram::add_laws(const RunLaws& laws) {
  for (const GatheredRun& run : laws.runs()) {
    const int first = as_int(pipes_.size());
    for (const parts::PipeLaw& pipe : run.pipes) pipes_.push_back(lane_pipe(pipe));
    runs_.push_back({run.constant, run.quadratic.linear, run.quadratic.quadratic, first, as_int(pipes_.size()),
                     run.others.empty() ? 0 : 1});
  }
}

void BatchProgram::make_view(const RunLaws& laws) {
  view_ = {.graph = {.unknowns = graph_.unknowns(),
                     .nodes = graph_.nodes(),
                     .edges = as_int(edges_.size()),
                     .slots = as_int(graph_.elimination().slots()),
                     .edge = edges_.data(),
                     .pivot = pivots_.data(),
                     .column = columns_.data(),
                     .update = updates_.data(),

                     .pressure_tolerance = options_.pressure_tolerance,
                     .flow_tolerance = options_.flow_tolerance,
                     .slope_floor = options_.slope_floor,
                     .complementarity_slope = options_.complementarity_slope},
           .run = runs_.data(),
           .pipe = pipes_.data(),
           .pipes = as_int(pipes_.size()),
           .add_others = add_others,
           .laws = &laws};
}

BatchMemory::BatchMemory(const LaneProgram& program, int lanes) {
  constexpr std::size_t border = 8;  // doubles in 64 bytes
  const auto entry = static_cast<std::size_t>(lanes);
  const auto padded = [&](int count) {
    return (static_cast<std::size_t>(count) * entry + border - 1) / border * border;
  };
  const solvers::LaneGraph& graph = program.graph;
  const std::size_t edges = padded(graph.edges), nodes = padded(graph.nodes), rows = padded(graph.unknowns + 1);
  const std::size_t slots = padded(graph.slots + 1), pipes = padded(program.pipes);
  numbers_.resize(4 * edges + nodes + 3 * rows + slots + pipes + border);
  active_.resize(static_cast<std::size_t>(graph.edges));
  constexpr std::uintptr_t bytes = 64;
  double* next = numbers_.data();
  while (reinterpret_cast<std::uintptr_t>(next) % bytes != 0) ++next;
  const auto take = [&](std::size_t size) {
    double* const here = next;
    next += size;
    return here;
  };
  view_ = {.flow = take(edges),
           .pressure = take(nodes),
           .conductance = take(edges),
           .offset = take(edges),
           .diagonal = take(rows),
           .right = take(rows),
           .below = take(slots),
           .balance = take(rows),
           .open = take(edges),
           .friction = take(pipes),
           .active = active_.data()};
}

LaneKernel kernel_for(lanes::InstructionSet set) {
#if defined(__x86_64__)
  if (set == lanes::InstructionSet::avx512) return avx512_kernel();
  if (set == lanes::InstructionSet::avx2) return avx2_kernel();
#endif
  static_cast<void>(set);
  return baseline_kernel();
}

}  // namespace forecourse::network
