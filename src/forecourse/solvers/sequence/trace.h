#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "forecourse/base/bit_cast.h"
#include "forecourse/solvers/sequence/event.h"

namespace forecourse::solvers::sequence {

/// A running hash over 64-bit words: h ^= word; h *= 1099511628211; h ^= h >> 32. It is FNV-1a taken word by word, with
/// a shift that lets high bits act on low ones. It tells runs apart; it does not keep secrets.
/// \source [fnv_draft, FNV-1a] offset and prime, from memory, not verified
struct ChainHash {
  std::uint64_t value = 14695981039346656037U;

  void add(std::uint64_t word) {
    value = (value ^ word) * 1099511628211U;
    value ^= value >> 32;
  }
  void add(double number) { add(bit_cast<std::uint64_t>(number)); }
  void add(std::span<const double> numbers) {
    for (const double x : numbers) add(x);
  }
};

/// What a run depends on, told by the caller.
struct TraceHeader {
  std::uint64_t model_hash = 0;
  std::vector<double> parameters;
  std::uint64_t seed = 0;
  std::uint64_t run = 0;
  std::string build;  ///< compiler, options, version: bits may differ between builds

  bool operator==(const TraceHeader&) const = default;
};

/// An event that happened. Its amounts, flows, passed amounts and marks are in the trace's `values`.
struct EventRecord {
  Event event;
  std::uint64_t flags_before = 0;
  std::uint64_t flags_after = 0;
  std::uint64_t hash = 0;  ///< of everything up to and including this event
};

/// A step that was accepted.
struct StepRecord {
  double time = 0.0;  ///< at its end [s]
  double length = 0.0;
  std::uint64_t hash = 0;  ///< of everything up to and including this step

  bool operator==(const StepRecord&) const = default;
};

/// What happened in a run, in order. Plain numbers: to write it to a file and read it back is left to others.
struct Trace {
  TraceHeader header;
  std::size_t compartments = 0;
  std::size_t auxiliaries = 0;
  std::size_t links = 0;
  std::size_t marks = 0;
  std::vector<EventRecord> events;
  std::vector<double>
      values;  ///< per event: amounts, auxiliaries, link flows, net passed per link, marks; all after it
  std::vector<StepRecord> steps;
  std::vector<double> states;  ///< per step, if asked for: amounts, auxiliaries, link flows

  [[nodiscard]] std::span<const double> amounts(std::size_t event) const { return of_event(event, 0, compartments); }
  [[nodiscard]] std::span<const double> auxiliary_values(std::size_t event) const {
    return of_event(event, compartments, auxiliaries);
  }
  [[nodiscard]] std::span<const double> flows(std::size_t event) const {
    return of_event(event, compartments + auxiliaries, links);
  }
  [[nodiscard]] std::span<const double> passed(std::size_t event) const {
    return of_event(event, compartments + auxiliaries + links, links);
  }
  [[nodiscard]] std::span<const double> mark_values(std::size_t event) const {
    return of_event(event, compartments + auxiliaries + 2 * links, marks);
  }
  /// \return amounts, then auxiliaries, then link flows at the end of a step; empty if states were not kept
  [[nodiscard]] std::span<const double> state(std::size_t step) const;

 private:
  [[nodiscard]] std::span<const double> of_event(std::size_t event, std::size_t offset, std::size_t count) const {
    return std::span(values).subspan(event * (compartments + auxiliaries + 2 * links + marks) + offset, count);
  }
};

/// Where two traces part.
enum class TraceDifference { none, header, event, step, length };

struct TraceComparison {
  TraceDifference difference = TraceDifference::none;
  std::size_t index = 0;  ///< of the first event or step that differs
  [[nodiscard]] bool same() const { return difference == TraceDifference::none; }
};

/// Bit for bit, as a replay on the same build must be.
TraceComparison compare(const Trace& a, const Trace& b);

/// How far apart two builds may be: other roundings may accept other steps, so this follows the tolerance of steps.
struct TraceTolerance {
  double time = 1e-3;           ///< [s]
  double relative_time = 1e-6;  ///< [1]
  double amount = 1e-7;         ///< absolute, unit of the amounts
  double relative_amount = 1e-6;
};

/// The same events in the same order, times and amounts within tolerance: for traces of different builds.
TraceComparison compare_events(const Trace& a, const Trace& b, const TraceTolerance& tolerance = {});

}  // namespace forecourse::solvers::sequence
