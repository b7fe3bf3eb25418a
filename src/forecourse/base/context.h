#pragma once

#include <cstddef>
#include <functional>

namespace forecourse {

/// What a long study may ask of the outside: to tell how far it is, to learn that it should stop, and to do
/// independent pieces side by side. Empty members mean: nobody listens, never cancelled, one thread.
/// Results are the same for any number of threads: pieces are fixed and sums are taken in their order.
struct Context {
  std::function<void(double share)> progress;
  std::function<bool()> cancelled;
  std::function<void(std::size_t count, const std::function<void(std::size_t)>& piece)> parallel_for;

  void each(std::size_t count, const std::function<void(std::size_t)>& piece) const {
    if (parallel_for) return parallel_for(count, piece);
    for (std::size_t i = 0; i < count; ++i) piece(i);
  }
};

}  // namespace forecourse
