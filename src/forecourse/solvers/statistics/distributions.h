#pragma once

namespace forecourse::solvers::statistics {

/// Probability that a standard normal value is at most z. \source closed form (the complementary error function)
[[nodiscard]] double normal_probability(double z);

/// The z that a standard normal value is at most with a probability.
/// \param probability above 0 and below 1; else NaN
/// \error 4e-15 of the probability it stands for
/// \source [abramowitz_stegun, 26.2.23] as first guess, from memory, not verified; then Halley steps on
///         normal_probability, which do not depend on it
[[nodiscard]] double normal_quantile(double probability);

/// Probability that Student's t is at most a value.
/// \param degrees of freedom, above 0
/// \error 1e-13
/// \source [abramowitz_stegun, 26.5.8 continued fraction of the incomplete beta function, 26.7.1]
[[nodiscard]] double student_probability(double t, double degrees);

/// The t that Student's t is at most with a probability.
/// \param probability above 0 and below 1; else NaN
/// \error 1e-11 of t
/// \source closed form (bisection of student_probability)
[[nodiscard]] double student_quantile(double probability, double degrees);

/// Largest share of events that is still held possible when none was seen in a number of trials.
/// \param confidence e.g. 0.95
/// \source closed form: (1 - p)^n = 1 - confidence
[[nodiscard]] double share_when_none_seen(int trials, double confidence);

/// Probability that a test that measures a rate calls a leak.
/// \param threshold  measured rate above which it calls one
/// \param rate       true rate
/// \param bias       of the measured rate
/// \param deviation  of the measured rate, from a number of tests
/// \param tests      that the deviation was found from, at least 2
/// \source from memory, not verified: P(t > (C - R - B) / S), the form of published performance protocols
[[nodiscard]] double alarm_probability(double threshold, double rate, double bias, double deviation, int tests);

}  // namespace forecourse::solvers::statistics
