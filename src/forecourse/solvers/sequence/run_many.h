#pragma once

#include <algorithm>
#include <cstddef>
#include <type_traits>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/solvers/sequence/stepper.h"

namespace forecourse::solvers::sequence {

/// One run of many.
template <SequenceModel M>
struct Member {
  M model;
  SequenceStart start;
};

/// Runs many sequences side by side. What run i gives depends on i alone: it stands at place i whatever the number of
/// threads; sums over the answer are to be taken in its order.
/// \param make make(i) gives the `Member` of run i, its draws made from the seed and i
/// \param keep keep(i, member, result) gives what shall be kept of a run, a small plain value
/// \return what was kept, in the order of runs; after a cancel, runs that did not take place are as constructed
template <class Make, class Keep>
auto run_many(std::size_t count, const Make& make, const Keep& keep, const SequenceOptions& options = {},
              const Context& context = {}) {
  constexpr std::size_t chunk = 32;           // runs of a piece
  constexpr std::size_t pieces_a_wave = 128;  // between two words about progress
  using Kept = decltype(keep(std::size_t{0}, make(std::size_t{0}), SequenceResult{}));
  static_assert(!std::is_same_v<Kept, bool>, "threads would share the words of a vector of bool");
  std::vector<Kept> kept(count);
  const auto piece = [&](std::size_t p) {
    for (std::size_t i = p * chunk; i < std::min(count, (p + 1) * chunk); ++i) {
      const auto member = make(i);
      kept[i] = keep(i, member, run_sequence(member.model, member.start, options));
    }
  };
  const std::size_t pieces = (count + chunk - 1) / chunk;
  for (std::size_t p = 0; p < pieces; p += pieces_a_wave) {
    if (context.cancelled && context.cancelled()) break;
    const std::size_t wave = std::min(pieces_a_wave, pieces - p);
    context.each(wave, [&](std::size_t i) { piece(p + i); });
    if (context.progress) context.progress(static_cast<double>(p + wave) / static_cast<double>(pieces));
  }
  return kept;
}

}  // namespace forecourse::solvers::sequence
