#include "forecourse/solvers/sequence/ledger.h"

#include <algorithm>

namespace forecourse::solvers::sequence {

Ledger::Ledger(const std::vector<LinkEnds>& ends, const std::vector<int>& causes) {
  entries_.reserve(2 * ends.size() + 4);
  current_.reserve(ends.size());
  for (std::size_t link = 0; link < ends.size(); ++link) {
    const int cause = link < causes.size() ? causes[link] : 0;
    current_.push_back(entries_.size());
    entries_.push_back({{static_cast<int>(link), ends[link].from, ends[link].to, cause}, {}});
  }
}

std::size_t Ledger::find(int link, LinkEnds ends, int cause) {
  const auto hit = std::find_if(entries_.begin(), entries_.end(), [&](const Entry& e) {
    return e.row.link == link && e.row.cause == cause && e.row.from == ends.from && e.row.to == ends.to;
  });
  const auto found = static_cast<std::size_t>(hit - entries_.begin());
  if (hit == entries_.end()) entries_.push_back({{link, ends.from, ends.to, cause}, {}});
  return found;
}

void Ledger::transfer(int from, int to, int cause, double amount) {
  put(entries_[find(-1, {from, to}, cause)], amount);
}

void Ledger::set_cause(std::size_t link, int cause) {
  const LedgerRow& row = entries_[current_[link]].row;
  current_[link] = find(row.link, {row.from, row.to}, cause);
}

std::vector<LedgerRow> Ledger::rows() const {
  std::vector<LedgerRow> rows;
  rows.reserve(entries_.size());
  for (const Entry& e : entries_) {
    rows.push_back(e.row);
    rows.back().net = e.net.value();
  }
  return rows;
}

double Ledger::passed(std::size_t link) const {
  double sum = 0.0;
  for (const Entry& e : entries_) {
    if (e.row.link == static_cast<int>(link)) sum += e.net.value();
  }
  return sum;
}

double Ledger::change_of(int compartment) const {
  CompensatedSum change;
  for (const Entry& e : entries_) {
    if (e.row.to == compartment) change.add(e.net.value());
    if (e.row.from == compartment) change.add(-e.net.value());
  }
  return change.value();
}

double Ledger::largest() const {
  double largest = 0.0;
  for (const Entry& e : entries_) largest = std::max(largest, e.row.gross);
  return largest;
}

}  // namespace forecourse::solvers::sequence
