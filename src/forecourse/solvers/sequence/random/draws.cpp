#include "forecourse/solvers/sequence/random/draws.h"

#include <cmath>

#include "forecourse/solvers/sequence/random/philox.h"
#include "forecourse/solvers/statistics/distributions.h"

namespace forecourse::solvers::sequence {

using statistics::normal_quantile;

namespace {

constexpr std::uint32_t low_word(std::uint64_t x) { return static_cast<std::uint32_t>(x); }
constexpr std::uint32_t high_word(std::uint64_t x) { return static_cast<std::uint32_t>(x >> 32); }

}  // namespace

double Draws::uniform(std::uint32_t parameter) const {
  const PhiloxCounter words =
      philox({low_word(run_), high_word(run_), parameter, 0}, {low_word(seed_), high_word(seed_)});
  const std::uint64_t joined = (std::uint64_t{words[0]} << 32) | words[1];
  return (static_cast<double>(joined >> 12) + 0.5) * 0x1p-52;  // 52 bits, so that the half is not rounded away
}

double Draws::uniform(std::uint32_t parameter, double low, double high) const {
  return low + (high - low) * uniform(parameter);
}

double Draws::normal(std::uint32_t parameter, double mean, double deviation) const {
  return mean + deviation * normal_quantile(uniform(parameter));
}

double Draws::lognormal(std::uint32_t parameter, double median, double sigma) const {
  return median * std::exp(sigma * normal_quantile(uniform(parameter)));
}

double Draws::triangular(std::uint32_t parameter, double low, double likely, double high) const {
  const double u = uniform(parameter);
  const double span = high - low;
  if (!(span > 0.0)) return low;
  const double turn = (likely - low) / span;
  if (u < turn) return low + std::sqrt(u * span * (likely - low));
  return high - std::sqrt((1.0 - u) * span * (high - likely));
}

bool Draws::happens(std::uint32_t parameter, double probability) const { return uniform(parameter) < probability; }

}  // namespace forecourse::solvers::sequence
