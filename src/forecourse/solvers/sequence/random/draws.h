#pragma once

#include <cstdint>

namespace forecourse::solvers::sequence {

/// Draws of what is not certain, made before a run. A draw belongs to (seed, run, parameter): it does not depend on
/// what else was drawn, so two choices of equipment are compared with the same luck, and a run is drawn again alone.
/// Each draw is a rising function of one uniform number, so ranks of inputs are ranks of numbers drawn.
class Draws {
 public:
  Draws(std::uint64_t seed, std::uint64_t run) : seed_(seed), run_(run) {}

  /// The uniform number that every other draw of this parameter is made from.
  /// \param parameter the caller's number for what is drawn
  /// \return [1], inside (0, 1), in steps of 2^-52
  [[nodiscard]] double uniform(std::uint32_t parameter) const;

  /// \return between low and high, each value as likely
  [[nodiscard]] double uniform(std::uint32_t parameter, double low, double high) const;

  /// \return normal, by mean and standard deviation
  [[nodiscard]] double normal(std::uint32_t parameter, double mean, double deviation) const;

  /// \param sigma standard deviation of the natural logarithm [1]
  [[nodiscard]] double lognormal(std::uint32_t parameter, double median, double sigma) const;

  /// \pre low <= likely <= high
  [[nodiscard]] double triangular(std::uint32_t parameter, double low, double likely, double high) const;

  /// \return true with the given probability
  [[nodiscard]] bool happens(std::uint32_t parameter, double probability) const;

 private:
  std::uint64_t seed_;
  std::uint64_t run_;
};

}  // namespace forecourse::solvers::sequence
