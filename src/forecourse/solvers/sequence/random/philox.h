#pragma once

#include <array>
#include <cstdint>

namespace forecourse::solvers::sequence {

using PhiloxCounter = std::array<std::uint32_t, 4>;
using PhiloxKey = std::array<std::uint32_t, 2>;

/// Philox 4x32-10: four random words that belong to a counter and a key. There is no state: the same pair gives the
/// same words on any machine, in any order, on any thread.
/// \source [salmon_2011, Philox-4x32-10]; constants and known answers as random123 carries them.
/// \error exact.
constexpr PhiloxCounter philox(PhiloxCounter counter, PhiloxKey key) {
  constexpr int rounds = 10;
  constexpr std::uint64_t multiplier0 = 0xD2511F53, multiplier1 = 0xCD9E8D57;
  constexpr std::uint32_t weyl0 = 0x9E3779B9, weyl1 = 0xBB67AE85;
  for (int i = 0; i < rounds; ++i) {
    const std::uint64_t product0 = multiplier0 * counter[0];
    const std::uint64_t product1 = multiplier1 * counter[2];
    counter = {static_cast<std::uint32_t>(product1 >> 32) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(product1),
               static_cast<std::uint32_t>(product0 >> 32) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(product0)};
    key = {key[0] + weyl0, key[1] + weyl1};
  }
  return counter;
}

}  // namespace forecourse::solvers::sequence
