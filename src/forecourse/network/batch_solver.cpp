#include "forecourse/network/batch_solver.h"

#include <algorithm>

#include "forecourse/network/batch/core.h"
#include "forecourse/network/batch/worker.h"

namespace forecourse::network {
namespace {

// States of one piece of work. Each piece starts cold, so that answers do not depend on who does it.
constexpr std::size_t chunk_size = 1024;
// Pieces done side by side between two looks at the context.
constexpr std::size_t chunks_at_once = 16;

/// All sets of `hoses`, eight neighbors after eight in the order of a reflected binary (Gray) code.
BatchCase gray_case(std::uint64_t index, std::uint64_t pumps) {
  const std::uint64_t group = index >> 3U;
  return {(group ^ group >> 1U) << 3U | (index & 7U), pumps};
}

BatchCounts operator+(BatchCounts a, const BatchCounts& b) {
  return {a.by_scalar + b.by_scalar, a.blocks + b.blocks, a.steps + b.steps};
}

bool is_cancelled(const Context& context) { return context.cancelled && context.cancelled(); }

void shape(BatchStates& out, const PipingSystem& system, std::size_t count) {
  out.runs = system.runs.size();
  out.nodes = system.places.size() + system.openings.size();
  out.flow.resize(count * out.runs);
  out.pressure.resize(count * out.nodes);
  out.status.resize(count);
}

/// Calls `work(chunk)` for a range of chunks side by side and sums what it counts in their order.
template <class Work>
BatchCounts side_by_side(const Context& context, std::size_t first, std::size_t end, const Work& work) {
  std::vector<BatchCounts> counts(end - first);
  context.each(counts.size(), [&](std::size_t i) { counts[i] = work(first + i); });
  BatchCounts sum;
  for (const BatchCounts& one : counts) sum = sum + one;
  return sum;
}

}  // namespace

struct BatchSolver::Core : BatchCore {
  using BatchCore::BatchCore;
};

BatchSolver::BatchSolver(const PipingSystem& system, lanes::InstructionSet instructions,
                         const solvers::SteadyOptions& options)
    : core_(std::make_shared<const Core>(system, instructions, options)) {}

BatchCounts BatchSolver::solve(std::span<const BatchCase> cases, BatchStates& out, const Context& context) const {
  shape(out, core_->system, cases.size());
  std::fill(out.status.begin(), out.status.end(), solvers::SteadyStatus::not_converged);
  const std::size_t chunks = (cases.size() + chunk_size - 1) / chunk_size;
  BatchCounts counts;
  for (std::size_t done = 0; done < chunks && !is_cancelled(context); done += chunks_at_once) {
    const std::size_t end = std::min(chunks, done + chunks_at_once);
    counts = counts + side_by_side(context, done, end, [&](std::size_t chunk) {
               const std::size_t first = chunk * chunk_size;
               const auto part = cases.subspan(first, std::min(chunk_size, cases.size() - first));
               return BatchWorker(*core_).solve(part, out, first);
             });
    if (context.progress) context.progress(static_cast<double>(end) / static_cast<double>(chunks));
  }
  return counts;
}

void BatchSolver::solve_all(std::uint64_t pumps, const Tell& tell, const Context& context, BatchCounts* counts) const {
  struct Piece {
    std::vector<BatchCase> cases;
    BatchStates states;
  };
  const std::uint64_t count = std::uint64_t{1} << core_->system.hoses.size();
  const std::size_t chunks = (count + chunk_size - 1) / chunk_size;
  const std::size_t at_once = context.parallel_for ? chunks_at_once : 1;
  std::vector<Piece> pieces(std::min(at_once, chunks));
  BatchCounts sum;
  for (std::size_t done = 0; done < chunks && !is_cancelled(context); done += at_once) {
    const std::size_t end = std::min(chunks, done + at_once);
    sum = sum + side_by_side(context, done, end, [&](std::size_t chunk) {
            Piece& piece = pieces[chunk - done];
            const std::uint64_t first = chunk * chunk_size;
            piece.cases.clear();
            for (std::uint64_t i = first; i < std::min(count, first + chunk_size); ++i) {
              piece.cases.push_back(gray_case(i, pumps));
            }
            shape(piece.states, core_->system, piece.cases.size());
            return BatchWorker(*core_).solve(piece.cases, piece.states, 0);
          });
    for (std::size_t chunk = done; chunk < end; ++chunk) tell(pieces[chunk - done].cases, pieces[chunk - done].states);
    if (context.progress) context.progress(static_cast<double>(end) / static_cast<double>(chunks));
  }
  if (counts != nullptr) *counts = sum;
}

}  // namespace forecourse::network
