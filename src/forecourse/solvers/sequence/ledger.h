#pragma once

#include <cstddef>
#include <vector>

namespace forecourse::solvers::sequence {

/// A sum that carries along what rounding takes away.
/// \source [knuth_1997, 4.2.2, theorem B (two-sum)]
struct CompensatedSum {
  double sum = 0.0;
  double carry = 0.0;

  void add(double x) {
    const double next = sum + x;
    const double part = next - sum;
    carry += (sum - (next - part)) + (x - part);
    sum = next;
  }
  [[nodiscard]] double value() const { return sum + carry; }
};

/// The two compartments of a link; flow is positive from the first to the second.
struct LinkEnds {
  int from = 0;
  int to = 0;
};

/// Causes the stepper itself writes; those of the caller are zero and up.
inline constexpr int cause_pack_settles = -1;  ///< leftover pack at the switch to an algebraic pack
inline constexpr int cause_pack_follows = -2;  ///< change of an algebraic pack as its balance shifts

/// What passed from one compartment to another for one cause.
struct LedgerRow {
  int link = -1;  ///< -1: by transfers of events
  int from = 0;
  int to = 0;
  int cause = 0;
  double net = 0.0;    ///< positive from `from` to `to`
  double gross = 0.0;  ///< forth and back added
};

/// Every amount that moved, by link and cause.
class Ledger {
 public:
  /// \param causes of the links at the start; links beyond its end have cause 0
  Ledger(const std::vector<LinkEnds>& ends, const std::vector<int>& causes);

  void pass(std::size_t link, double amount) { put(entries_[current_[link]], amount); }
  void transfer(int from, int to, int cause, double amount);
  /// From here on what passes the link belongs to this cause.
  void set_cause(std::size_t link, int cause);

  [[nodiscard]] std::vector<LedgerRow> rows() const;
  /// Net amount that has passed a link so far, whatever the cause.
  [[nodiscard]] double passed(std::size_t link) const;
  /// Sum of all rows into a compartment less all rows out of it.
  [[nodiscard]] double change_of(int compartment) const;
  [[nodiscard]] double largest() const;  ///< gross of any row

 private:
  struct Entry {
    LedgerRow row;
    CompensatedSum net;
  };
  static void put(Entry& entry, double amount) {
    entry.net.add(amount);
    entry.row.gross += amount < 0.0 ? -amount : amount;
  }
  std::size_t find(int link, LinkEnds ends, int cause);

  std::vector<Entry> entries_;
  std::vector<std::size_t> current_;  ///< entry of each link
};

}  // namespace forecourse::solvers::sequence
