#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "forecourse/solvers/sequence/event.h"
#include "forecourse/solvers/sequence/ledger.h"

namespace forecourse::solvers::sequence {

/// What a model is shown of the state. Only links, `transfer` and the setters of a `Mutator` change it.
struct SequenceView {
  std::span<const double> amounts;      ///< per compartment, m3 at reference density or kg
  std::span<const double> auxiliaries;  ///< states that are not conserved: radius of a pool, temperature of a link
  std::span<const double> marks;        ///< numbers that only events change: when a valve began to close
  std::uint64_t flags = 0;              ///< yes or no, only events change them

  [[nodiscard]] bool flag(int i) const { return (flags >> i & 1U) != 0; }
};

/// Where a run begins. A line is held as its pack: the EXCESS over what it holds without pressure. The whole content
/// would bury the few milliliters that drive a leak under its own rounding and tolerance.
struct SequenceStart {
  double time = 0.0;                 ///< [s]
  double end = 0.0;                  ///< [s]
  std::vector<double> amounts;       ///< one per compartment
  std::vector<double> auxiliaries;   ///< one per auxiliary
  std::vector<double> marks;         ///< as many as the model likes
  std::uint64_t flags = 0;           ///< bit i is flag i
  std::vector<TimedEvent> timed;     ///< set before the start
  std::vector<int> causes;           ///< per link, for the ledger; missing ones are 0
  std::vector<std::uint8_t> closed;  ///< per link, not 0: shut; missing ones are open
};

/// The whole state of a run. Amounts are start + change, and the change is a compensated sum, so that milliliters out
/// of a tank of cubic meters keep their digits.
struct SequenceState {
  SequenceState(const SequenceStart& given, const std::vector<LinkEnds>& ends);

  double time = 0.0;
  double end = 0.0;
  std::vector<double> start;
  std::vector<CompensatedSum> change;
  std::vector<double> amounts;
  std::vector<double> auxiliaries;
  std::vector<double> marks;
  std::uint64_t flags = 0;
  std::vector<std::uint8_t> closed;
  int closed_links = 0;
  EventQueue queue;
  Ledger ledger;
  std::vector<std::uint8_t> armed;  ///< per guard, kept by the watch over the guards
  bool stopped = false;
  int stop_reason = 0;

  [[nodiscard]] SequenceView view() const { return {amounts, auxiliaries, marks, flags}; }

  /// Moves an amount from one compartment to another: the same rounded number out and in.
  void transfer(int from, int to, double amount, int cause);
};

/// What an event may do.
class Mutator {
 public:
  explicit Mutator(SequenceState& state) : state_(state) {}

  [[nodiscard]] double time() const { return state_.time; }
  [[nodiscard]] SequenceView view() const { return state_.view(); }
  [[nodiscard]] double amount(int compartment) const { return state_.amounts[at(compartment)]; }
  [[nodiscard]] bool flag(int i) const { return (state_.flags >> i & 1U) != 0; }
  [[nodiscard]] double mark(int i) const { return state_.marks[at(i)]; }
  /// Net amount that has passed a link so far.
  [[nodiscard]] double passed(int link) const { return state_.ledger.passed(at(link)); }

  void set_flag(int i, bool on);
  void set_mark(int i, double value) { state_.marks[at(i)] = value; }
  void set_auxiliary(int i, double value) { state_.auxiliaries[at(i)] = value; }

  /// The only way for an event to change an amount.
  void transfer(int from, int to, double amount, int cause) { state_.transfer(from, to, amount, cause); }
  /// From now on what passes the link is written down under this cause.
  void set_cause(int link, int cause) { state_.ledger.set_cause(at(link), cause); }
  /// A closed link passes nothing, whatever its law says: the end of a dry compartment. Nothing is clipped.
  void close(int link) { set_closed(link, true); }
  void open(int link) { set_closed(link, false); }

  /// An event for a time to come; one in the past happens now.
  void schedule(const TimedEvent& event);
  std::size_t cancel(int kind, int id) { return state_.queue.cancel(kind, id); }
  /// A guard that has fired waits again, or one that waits no longer does.
  void arm(int guard, bool waits = true) { state_.armed[at(guard)] = waits ? 1 : 0; }
  /// Ends the run after this event with status `stopped`.
  void stop(int reason);

 private:
  static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  void set_closed(int link, bool closed);

  SequenceState& state_;
};

/// How well the ledger explains the amounts.
struct Balance {
  bool holds = false;
  double largest_moved = 0.0;  ///< gross amount of the largest ledger row
  double residual = 0.0;       ///< largest |change of a compartment - sum of its ledger|
  int worst_compartment = 0;
  double total = 0.0;  ///< |sum of all changes|, zero in a world where nothing is lost
};

/// \return holds if both residuals are within 1e-12 of the largest amount moved
Balance balance_of(const SequenceState& state);

}  // namespace forecourse::solvers::sequence
