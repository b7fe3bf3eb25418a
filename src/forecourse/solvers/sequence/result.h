#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "forecourse/solvers/sequence/state.h"
#include "forecourse/solvers/sequence/trace.h"

namespace forecourse::solvers::sequence {

/// How a run ended. Whatever it is, the result holds what there was until then.
enum class SequenceStatus {
  finished,          ///< the end time was reached
  stopped,           ///< an event stopped it
  cascade_limit,     ///< events at one instant made each other happen without end
  step_limit,        ///< too many steps
  step_too_small,    ///< no step was small enough for the tolerance, or a law gave no number
  balance_violated,  ///< the ledger does not explain the amounts: a fault, never hidden
  cancelled,
  bad_start,  ///< start and model do not fit: counts, a link's ends, a number that is none, an end before the start
};

/// Tolerances hold for each step, per compartment and auxiliary: absolute + relative * |value|.
struct SequenceOptions {
  double absolute = 1e-9;            ///< unit of the amounts
  double relative = 2e-6;            ///< [1], of amounts and auxiliaries
  double auxiliary_absolute = 1e-5;  ///< unit of the auxiliaries
  double first_step = 1e-3;          ///< after the start and after each event that changed a flow [s]
  double longest_step = std::numeric_limits<double>::infinity();
  double event_time = 1e-8;  ///< width within which the moment of a guard is found [s]
  std::size_t step_limit = 200'000;
  int cascade_limit = 64;              ///< events at one instant
  double quiet_ratio = 100.0;          ///< time to the next timed event over relaxation time of an algebraic pack
  double leftover = 1e-5;              ///< share of the pack by which it may be off its balance at the switch
  double leftover_absolute = 1e-9;     ///< the same, unit of the amounts
  double pack_flow_tolerance = 1e-14;  ///< net flow that counts as balanced, beside 1e-10 of what passes
  bool keep_events = true;             ///< event records in the trace
  bool keep_steps = true;              ///< step records in the trace
  bool keep_states = false;            ///< amounts, auxiliaries and flows at each step, for charts
};

struct SequenceResult {
  SequenceStatus status = SequenceStatus::finished;
  int stop_reason = 0;          ///< of the event that stopped it
  std::vector<Event> cascade;   ///< the events at the instant that reached the cascade limit
  double time = 0.0;            ///< reached [s]
  std::vector<double> amounts;  ///< there
  std::vector<double> auxiliaries;
  std::vector<double> marks;
  std::uint64_t flags = 0;
  std::vector<LedgerRow> ledger;
  Balance balance;
  std::size_t steps = 0;
  std::size_t rejected = 0;
  std::size_t evaluations = 0;  ///< of the model's flows
  std::size_t events = 0;
  double algebraic_time = 0.0;  ///< spent with an algebraic pack [s]
  std::uint64_t hash = 0;       ///< of the whole run
  Trace trace;

  /// Net amount through a link, whatever the cause.
  [[nodiscard]] double passed(int link) const;
  /// Net amount through a link for one cause; link -1 for transfers.
  [[nodiscard]] double passed(int link, int cause) const;
};

}  // namespace forecourse::solvers::sequence
