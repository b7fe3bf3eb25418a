#include "forecourse/checks/ledger_checks.h"

#include <algorithm>
#include <cmath>

#include "forecourse/checks/clause.h"

namespace forecourse::checks {
namespace {

using studies::LedgerBook;
using studies::LedgerMonth;
using studies::ManualGauging;

Finding begin(const char* rule, const char* requirement, std::string subject, const char* clause,
              site::ClauseSeen seen = site::ClauseSeen::text) {
  Finding out;
  out.rule = rule;
  out.requirement = requirement;
  out.subject = std::move(subject);
  cite({clause, seen == site::ClauseSeen::text ? tank_rule : older_tank_rule, seen}, out);
  out.unit = "m3";
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  constexpr std::size_t most = 3;
  std::string out;
  for (std::size_t i = 0; i < std::min(words.size(), most); ++i) out += (i == 0 ? "" : "; ") + words[i];
  if (words.size() > most) out += "; and " + std::to_string(words.size() - most) + " more";
  return out;
}

SourceSpan first_row(const LedgerBook& book, const LedgerMonth& month) {
  const auto found = std::find_if(book.rows.begin(), book.rows.end(),
                                  [&](const studies::LedgerRow& row) { return month_of(row.day) == month.first; });
  return found == book.rows.end() ? SourceSpan{} : found->where;
}

constexpr const char* mend = "mend these rows of the records";

/// True where the rule is not for this book, or the records do not tell; the finding then says why.
bool left_open(const LedgerBook& book, const LedgerMonth& month, Finding& out) {
  out.where = first_row(book, month);
  if (!book.buried) {
    out.state = FindingState::does_not_apply;
    out.reason = "it stands above ground";
    return true;
  }
  if (month.unsettled.empty()) return false;
  out.reason = joined(month.unsettled);
  out.change = mend;
  return true;
}

/// \source [cfr_280, 43(a)]
Finding of_month(const LedgerBook& book, const LedgerMonth& month) {
  Finding out = begin("inventory-month", "over and short of a month stay within 1.0 % of throughput and 130 gal",
                      book.name + ", " + studies::month_text(month.first), "40 CFR 280.43(a)");
  if (left_open(book, month, out)) return out;
  out.value = std::abs(month.over_short);
  out.limit = month.limit;
  out.margin = month.limit - *out.value;
  if (!month.whole && !month.exceeds) {
    out.reason = "its readings do not go from its first day to its last; value and limit are those so far";
    out.change = "read on, or enter the readings that are missing";
    return out;
  }
  out.state = state_of(*out.margin, month.limit);
  if (*out.margin >= 0.0 && month.deviation && *out.margin < *month.deviation) out.state = FindingState::close;
  if (out.state == FindingState::falls_short) {
    out.change = month.confirmed
                     ? "report a suspected release within 24 hours (280.50), and look for it"
                     : "check entries, meters and the reading of the stick now; a second month like it is to "
                       "be reported within 24 hours (280.50)";
  }
  return out;
}

/// \source [cfr_280, 43(a)(1)]
Finding of_days(const LedgerBook& book, const LedgerMonth& month) {
  Finding out = begin("inventory-days", "the tank is read on each day of business",
                      book.name + ", " + studies::month_text(month.first), "40 CFR 280.43(a)");
  out.unit = "";
  if (left_open(book, month, out)) return out;
  if (month.missing_days == 0 && month.whole) {
    out.state = FindingState::meets;
    return out;
  }
  out.reason = month.missing_days == 0
                   ? "its readings do not go from its first day to its last"
                   : std::to_string(month.missing_days) +
                         " of its days have no reading; whether they were days of business is not told";
  out.change = "enter what was read on them";
  return out;
}

/// \source [cfr_280, 280.50(c)] in the edition of 2015
Finding of_confirmation(const LedgerBook& book, const LedgerMonth& month) {
  Finding out =
      begin("inventory-confirmed", "no second month in a row falls short",
            book.name + ", " + studies::month_text(month.first), "40 CFR 280.50(c)(2)", site::ClauseSeen::older_text);
  out.unit = "";
  if (left_open(book, month, out)) return out;
  if (month.confirmed) {
    out.state = FindingState::falls_short;
    out.change = "report a suspected release within 24 hours; explaining it does not cancel that";
  } else if (month.follows_excess && !month.whole) {
    out.reason = "the month before falls short, and this one is not read to its end";
    out.change = "read on; a second month like it is to be reported within 24 hours";
  } else if ((month.whole && !month.exceeds) || (month.follows_whole && !month.follows_excess)) {
    out.state = FindingState::meets;
  } else {
    out.reason = "the month before is not on record to its end";
    out.change = "enter the readings of the month before";
  }
  return out;
}

/// \source [cfr_280, 43(b)(4)]
void of_gauging(const ManualGauging& gauging, std::vector<Finding>& out) {
  const auto one = [&](const char* rule, const char* words, const std::optional<double>& change, double limit) {
    Finding f = begin(rule, words, gauging.tank, "40 CFR 280.43(b)(4)");
    if (change) {
      f.value = std::abs(*change);
      f.limit = limit;
      f.margin = limit - *f.value;
      f.state = state_of(*f.margin, limit);
      if (f.state == FindingState::falls_short) f.change = "report a suspected release within 24 hours (280.50)";
    } else {
      f.reason = gauging.words.empty() ? "fewer than four tests are on record" : gauging.words;
      f.change = "read twice, leave the tank quiet, read twice again, each week";
    }
    out.push_back(std::move(f));
  };
  const std::optional<double> last = gauging.tests.empty() ? std::nullopt : std::optional(gauging.tests.back().change);
  one("gauging-week", "the last weekly test stays within its limit", last, gauging.rule->weekly);
  one("gauging-month", "the mean of the last four tests stays within its limit", gauging.mean, gauging.rule->monthly);
}

}  // namespace

std::vector<Finding> check_ledger(const studies::LedgerResult& result) {
  std::vector<Finding> out;
  for (const LedgerBook& book : result.books) {
    if (!book.problem.empty()) {
      Finding f = begin("inventory-month", "over and short of a month stay within 1.0 % of throughput and 130 gal",
                        book.name, "40 CFR 280.43(a)");
      f.reason = book.problem;
      f.change = "enter readings, deliveries and sales of it";
      out.push_back(std::move(f));
    }
    for (const LedgerMonth& month : book.months) {
      out.push_back(of_month(book, month));
      out.push_back(of_days(book, month));
    }
    if (!book.months.empty()) out.push_back(of_confirmation(book, book.months.back()));
  }
  for (const ManualGauging& gauging : result.gauging) {
    if (gauging.rule->alone || !gauging.tests.empty()) of_gauging(gauging, out);
  }
  return out;
}

}  // namespace forecourse::checks
