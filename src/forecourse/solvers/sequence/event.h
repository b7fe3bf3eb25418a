#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace forecourse::solvers::sequence {

/// What makes an event happen: a time that was set, or a guard value that passed zero.
enum class EventSource : std::uint8_t { timed, guard };

/// One thing that happens.
///
/// Order of events at one instant: the lower `kind` first, then the lower `id`, then timed before guard, then the one
/// scheduled first. One event is carried out at a time; after it every guard is looked at again, so that the next one
/// is the first of those that are due then. Kinds and ids are the caller's: numbers for "safety", "relays" and so on,
/// in the order in which they shall act.
struct Event {
  double time = 0.0;  ///< [s]
  int kind = 0;
  int id = 0;  ///< of the guard, or as scheduled
  EventSource source = EventSource::timed;
  double value = 0.0;  ///< of the guard, or as scheduled
};

/// An event that was set for a time.
struct TimedEvent {
  double time = 0.0;  ///< [s]
  int kind = 0;
  int id = 0;
  double value = 0.0;  ///< whatever the caller wants to find again
};

/// The order above, less the order of scheduling.
bool comes_before(const Event& a, const Event& b);

/// Timed events in their order.
class EventQueue {
 public:
  void add(const TimedEvent& event);

  /// \return how many events of this kind and id were taken out
  std::size_t cancel(int kind, int id);

  [[nodiscard]] bool empty() const { return waiting_.empty(); }
  [[nodiscard]] const TimedEvent& next() const { return waiting_.back(); }
  [[nodiscard]] double next_time() const {
    return empty() ? std::numeric_limits<double>::infinity() : waiting_.back().time;
  }
  void drop_next() { waiting_.pop_back(); }

  /// \return all that wait, the first to come last
  [[nodiscard]] const std::vector<TimedEvent>& waiting() const { return waiting_; }

 private:
  std::vector<TimedEvent> waiting_;  ///< last one first
};

}  // namespace forecourse::solvers::sequence
