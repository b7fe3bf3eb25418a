#include "forecourse/solvers/sequence/state.h"

#include <algorithm>
#include <cmath>

namespace forecourse::solvers::sequence {

SequenceState::SequenceState(const SequenceStart& given, const std::vector<LinkEnds>& ends)
    : time(given.time),
      end(given.end),
      start(given.amounts),
      change(given.amounts.size()),
      amounts(given.amounts),
      auxiliaries(given.auxiliaries),
      marks(given.marks),
      flags(given.flags),
      closed(given.closed),
      ledger(ends, given.causes) {
  closed.resize(ends.size(), 0);
  closed_links = static_cast<int>(std::count_if(closed.begin(), closed.end(), [](auto c) { return c != 0; }));
  for (const TimedEvent& event : given.timed) queue.add(event);
}

void SequenceState::transfer(int from, int to, double amount, int cause) {
  const auto f = static_cast<std::size_t>(from), t = static_cast<std::size_t>(to);
  change[f].add(-amount);
  change[t].add(amount);
  amounts[f] = start[f] + change[f].value();
  amounts[t] = start[t] + change[t].value();
  ledger.transfer(from, to, cause, amount);
}

void Mutator::set_flag(int i, bool on) {
  const std::uint64_t bit = std::uint64_t{1} << i;
  state_.flags = on ? state_.flags | bit : state_.flags & ~bit;
}

void Mutator::schedule(const TimedEvent& event) {
  TimedEvent due = event;
  due.time = std::max(due.time, state_.time);
  state_.queue.add(due);
}

void Mutator::stop(int reason) {
  state_.stopped = true;
  state_.stop_reason = reason;
}

void Mutator::set_closed(int link, bool closed) {
  std::uint8_t& now = state_.closed[at(link)];
  if ((now != 0) == closed) return;
  now = closed ? 1 : 0;
  state_.closed_links += closed ? 1 : -1;
}

Balance balance_of(const SequenceState& state) {
  constexpr double share = 1e-12;
  Balance balance;
  balance.largest_moved = state.ledger.largest();
  CompensatedSum total;
  for (std::size_t c = 0; c < state.change.size(); ++c) {
    const double change = state.change[c].value();
    const double off = std::abs(change - state.ledger.change_of(static_cast<int>(c)));
    total.add(change);
    if (!(off <= balance.residual)) {
      balance.residual = off;
      balance.worst_compartment = static_cast<int>(c);
    }
  }
  balance.total = std::abs(total.value());
  const double most = share * balance.largest_moved;
  balance.holds = balance.residual <= most && balance.total <= most;
  return balance;
}

}  // namespace forecourse::solvers::sequence
