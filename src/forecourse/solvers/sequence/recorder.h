#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "forecourse/solvers/sequence/result.h"
#include "forecourse/solvers/sequence/state.h"
#include "forecourse/solvers/sequence/trace.h"

namespace forecourse::solvers::sequence {

/// Writes the trace of a run and carries its hash along. The hash is the same whatever of the trace is kept.
class Recorder {
 public:
  Recorder(const SequenceOptions& options, const SequenceStart& start, std::size_t links);

  void add_step(const SequenceState& state, double length, const std::vector<double>& flows);
  void add_event(const Event& event, std::uint64_t flags_before, const SequenceState& state,
                 const std::vector<double>& flows);

  [[nodiscard]] std::uint64_t hash() const { return hash_.value; }
  [[nodiscard]] std::size_t events() const { return events_; }
  Trace take(TraceHeader header);

 private:
  bool keep_events_;
  bool keep_steps_;
  bool keep_states_;
  std::size_t events_ = 0;
  ChainHash hash_;
  Trace trace_;
};

}  // namespace forecourse::solvers::sequence
