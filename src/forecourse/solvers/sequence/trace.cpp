#include "forecourse/solvers/sequence/trace.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace forecourse::solvers::sequence {

namespace {

bool same_bits(double a, double b) { return bit_cast<std::uint64_t>(a) == bit_cast<std::uint64_t>(b); }

bool same_event(const EventRecord& a, const EventRecord& b) {
  return same_bits(a.event.time, b.event.time) && a.event.kind == b.event.kind && a.event.id == b.event.id &&
         a.event.source == b.event.source && same_bits(a.event.value, b.event.value) &&
         a.flags_before == b.flags_before && a.flags_after == b.flags_after && a.hash == b.hash;
}

bool near(double a, double b, double absolute, double relative) {
  return std::abs(a - b) <= absolute + relative * std::max(std::abs(a), std::abs(b));
}

bool near_event(const Trace& a, const Trace& b, std::size_t i, const TraceTolerance& t) {
  const Event& x = a.events[i].event;
  const Event& y = b.events[i].event;
  if (x.kind != y.kind || x.id != y.id || x.source != y.source) return false;
  if (a.events[i].flags_after != b.events[i].flags_after || !near(x.time, y.time, t.time, t.relative_time))
    return false;
  const std::span<const double> p = a.amounts(i);
  const std::span<const double> q = b.amounts(i);
  return std::equal(p.begin(), p.end(), q.begin(), q.end(),
                    [&](double one, double other) { return near(one, other, t.amount, t.relative_amount); });
}

/// First index at which two lists differ by `same`, or the shorter length.
template <class Same>
std::size_t first_difference(std::size_t count, const Same& same) {
  for (std::size_t i = 0; i < count; ++i) {
    if (!same(i)) return i;
  }
  return count;
}

}  // namespace

std::span<const double> Trace::state(std::size_t step) const {
  const std::size_t width = compartments + auxiliaries + links;
  if ((step + 1) * width > states.size()) return {};
  return std::span(states).subspan(step * width, width);
}

TraceComparison compare(const Trace& a, const Trace& b) {
  if (!(a.header == b.header)) return {TraceDifference::header, 0};
  const std::size_t events = std::min(a.events.size(), b.events.size());
  const std::size_t event =
      first_difference(events, [&](std::size_t i) { return same_event(a.events[i], b.events[i]); });
  if (event < events) return {TraceDifference::event, event};
  const std::size_t steps = std::min(a.steps.size(), b.steps.size());
  const std::size_t step = first_difference(steps, [&](std::size_t i) { return a.steps[i] == b.steps[i]; });
  if (step < steps) return {TraceDifference::step, step};
  if (a.events.size() != b.events.size()) return {TraceDifference::length, events};
  if (a.steps.size() != b.steps.size()) return {TraceDifference::length, steps};
  const std::size_t values = std::min(a.values.size(), b.values.size());
  const std::size_t value =
      first_difference(values, [&](std::size_t i) { return same_bits(a.values[i], b.values[i]); });
  if (value < values) return {TraceDifference::event, value / (values / std::max<std::size_t>(events, 1))};
  return {};
}

TraceComparison compare_events(const Trace& a, const Trace& b, const TraceTolerance& tolerance) {
  const std::size_t events = std::min(a.events.size(), b.events.size());
  const std::size_t event = first_difference(events, [&](std::size_t i) { return near_event(a, b, i, tolerance); });
  if (event < events) return {TraceDifference::event, event};
  if (a.events.size() != b.events.size()) return {TraceDifference::length, events};
  return {};
}

}  // namespace forecourse::solvers::sequence
