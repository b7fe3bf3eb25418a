#include "forecourse/solvers/sequence/recorder.h"

#include <utility>

namespace forecourse::solvers::sequence {

namespace {

void append(std::vector<double>& to, const std::vector<double>& values) {
  to.insert(to.end(), values.begin(), values.end());
}

}  // namespace

Recorder::Recorder(const SequenceOptions& options, const SequenceStart& start, std::size_t links)
    : keep_events_(options.keep_events), keep_steps_(options.keep_steps), keep_states_(options.keep_states) {
  trace_.compartments = start.amounts.size();
  trace_.auxiliaries = start.auxiliaries.size();
  trace_.links = links;
  trace_.marks = start.marks.size();
}

void Recorder::add_step(const SequenceState& state, double length, const std::vector<double>& flows) {
  hash_.add(state.time);
  hash_.add(state.amounts);
  hash_.add(state.auxiliaries);
  if (keep_steps_) trace_.steps.push_back({state.time, length, hash_.value});
  if (!keep_states_) return;
  append(trace_.states, state.amounts);
  append(trace_.states, state.auxiliaries);
  append(trace_.states, flows);
}

void Recorder::add_event(const Event& event, std::uint64_t flags_before, const SequenceState& state,
                         const std::vector<double>& flows) {
  ++events_;
  hash_.add(event.time);
  hash_.add((static_cast<std::uint64_t>(static_cast<std::uint32_t>(event.kind)) << 32) |
            static_cast<std::uint32_t>(event.id));
  hash_.add(event.value);
  hash_.add(state.flags);
  hash_.add(state.amounts);
  hash_.add(flows);
  if (!keep_events_) return;
  trace_.events.push_back({event, flags_before, state.flags, hash_.value});
  append(trace_.values, state.amounts);
  append(trace_.values, state.auxiliaries);
  append(trace_.values, flows);
  for (std::size_t l = 0; l < trace_.links; ++l) trace_.values.push_back(state.ledger.passed(l));
  append(trace_.values, state.marks);
}

Trace Recorder::take(TraceHeader header) {
  trace_.header = std::move(header);
  return std::move(trace_);
}

}  // namespace forecourse::solvers::sequence
