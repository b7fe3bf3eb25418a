#include "forecourse/studies/incident/barriers/proofs.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <compare>
#include <tuple>
#include <utility>

#include "forecourse/base/flow_coefficient.h"
#include "forecourse/studies/incident/barriers/barrier_states.h"

namespace forecourse::studies {
namespace {

std::tuple<int, int, int> order_of(const site::Date& date) { return {date.year, date.month, date.day}; }

std::string two_digits(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::string iso(const site::Date& date) {
  return std::to_string(date.year) + "-" + two_digits(date.month) + "-" + two_digits(date.day);
}

bool older_than_a_year(const site::Date& date, const site::Date& today) {
  return order_of({date.year + 1, date.month, date.day, {}}) < order_of(today);
}

/// A length in inches to a hundredth, never nearer to the band than it is: "0.8 in".
std::string inches_up(double length) {
  constexpr double rounding = 1e-6;
  const double hundredths = std::ceil(in_inches(length) * 100.0 - rounding);
  return fmt::format("{} in", hundredths / 100.0);
}

}  // namespace

Fault test_on_record(const std::string& what, const std::optional<site::Date>& tested,
                     const std::optional<site::Date>& today) {
  if (!tested) return "no " + what + " is on record";
  if (today && order_of(*today) < order_of(*tested)) return what + " of " + iso(*tested) + " lies ahead";
  return {};
}

Fault test_within_a_year(const std::string& what, const std::optional<site::Date>& tested,
                         const std::optional<site::Date>& today) {
  Fault fault = test_on_record(what, tested, today);
  if (!fault.empty() || !today || !older_than_a_year(*tested, *today)) return fault;
  return what + " of " + iso(*tested) + " is older than a year";
}

Fault groove_in_band(const site::Dispenser& dispenser, const site::ShearValve& valve) {
  if (!valve.groove_elevation || !dispenser.elevation) {
    return "the height of its groove against the island's top is not known";
  }
  const double lowest = valve.groove_elevation->low.si() - dispenser.elevation->high.si();
  const double highest = valve.groove_elevation->high.si() - dispenser.elevation->low.si();
  const double farthest = highest >= -lowest ? highest : lowest;
  if (std::abs(farthest) <= groove_band * (1.0 + 1e-9)) return {};
  const char* may = lowest < highest ? "groove may lie " : "groove ";
  return may + inches_up(std::abs(farthest)) + (farthest > 0.0 ? " above" : " below") +
         " the island's top: outside the band of 1/2 in";
}

StateBuilder::StateBuilder(Barrier barrier, std::string owner, std::string does) {
  state_.barrier = barrier;
  state_.owner = std::move(owner);
  state_.does = std::move(does);
}

StateBuilder& StateBuilder::at(SourceSpan where) {
  state_.where = where;
  return *this;
}

StateBuilder& StateBuilder::needs(const Fault& fault) {
  if (!fault.empty()) state_.reasons.push_back(fault);
  return *this;
}

StateBuilder& StateBuilder::needs(bool proof, const char* reason) { return needs(proof ? Fault() : Fault(reason)); }

StateBuilder& StateBuilder::needs(const site::Fact& fact, const char* unknown, const char* no) {
  return fact ? needs(*fact, no) : needs(false, unknown);
}

BarrierState StateBuilder::done() const {
  BarrierState state = state_;
  state.assurance = state.reasons.empty() ? Assurance::assured : Assurance::not_assured;
  return state;
}

BarrierState StateBuilder::absent(std::string reason) const {
  BarrierState state = state_;
  state.assurance = Assurance::absent;
  state.reasons = {std::move(reason)};
  return state;
}

BarrierState StateBuilder::not_asked(std::string reason) const {
  BarrierState state = state_;
  state.assurance = Assurance::not_asked;
  state.reasons = {std::move(reason)};
  return state;
}

}  // namespace forecourse::studies
