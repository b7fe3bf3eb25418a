#include "forecourse/solvers/sequence/random/draws.h"

#include <cmath>
#include <numbers>

#include "forecourse/solvers/sequence/random/philox.h"

namespace forecourse::solvers::sequence {

namespace {

constexpr std::uint32_t low_word(std::uint64_t x) { return static_cast<std::uint32_t>(x); }
constexpr std::uint32_t high_word(std::uint64_t x) { return static_cast<std::uint32_t>(x >> 32); }

/// Within 4.5e-4 of the quantile of a share up to one half.
double rough_lower_quantile(double share) {
  const double t = std::sqrt(-2.0 * std::log(share));
  const double above = 2.515517 + t * (0.802853 + t * 0.010328);
  const double below = 1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return above / below - t;
}

}  // namespace

double normal_quantile(double share) {
  if (share > 0.5) return -normal_quantile(1.0 - share);
  double x = rough_lower_quantile(share);
  for (int i = 0; i < 2; ++i) {
    const double off = 0.5 * std::erfc(-x / std::numbers::sqrt2) - share;
    const double step = off * std::sqrt(2.0 * std::numbers::pi) * std::exp(0.5 * x * x);
    x -= step / (1.0 + 0.5 * x * step);
  }
  return x;
}

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
