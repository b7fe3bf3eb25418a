#include "forecourse/handover/calendar/calendar.h"

#include <algorithm>
#include <map>

#include "forecourse/checks/rules/bound_rules.h"

namespace forecourse::handover {
namespace {

using checks::Finding;
using checks::FindingSet;
using checks::Recurrence;

constexpr int strip_months = 12;

Month month_of(const site::Date& day) { return {day.year, day.month}; }

std::vector<Month> twelve_months(const site::Date& today) {
  std::vector<Month> out;
  out.reserve(strip_months);
  const site::Date first{today.year, today.month, 1, {}};
  for (int i = 0; i < strip_months; ++i) out.push_back(month_of(checks::later(first, {0, i, 0})));
  return out;
}

checks::Period times(const checks::Period& period, int count) {
  return {count * period.years, count * period.months, count * period.days};
}

/// The state of a day on which something falls due.
DutyState state_of(int days_left, int within) {
  if (days_left < 0) return DutyState::overdue;
  return days_left <= within ? DutyState::due_soon : DutyState::later;
}

class Maker {
 public:
  Maker(const checks::CheckResult& checked, const CalendarOptions& options) : checked_(checked) {
    out_.version = checked.version;
    out_.today = checked.today;
    out_.options = options;
    out_.months = twelve_months(checked.today);
    out_.warnings = checked.warnings;
  }

  Calendar make() {
    for (const FindingSet& set : checked_.sets) {
      for (const Finding& one : set.findings) {
        if (one.recurrence) add(set, one);
      }
    }
    add_papers();
    std::stable_sort(out_.duties.begin(), out_.duties.end(), [](const Duty& a, const Duty& b) {
      if (a.state != b.state) return a.state < b.state;
      return a.days_left && b.days_left && *a.days_left < *b.days_left;
    });
    return std::move(out_);
  }

 private:
  void add(const FindingSet& set, const Finding& finding) {
    const Recurrence& recurrence = *finding.recurrence;
    Duty duty;
    duty.id = own_id(set.id + "/" + finding.rule + "/" + finding.subject);
    duty.set = set.id;
    duty.set_title = set.title;
    duty.rule = finding.rule;
    duty.subject = finding.subject;
    duty.figure = recurrence.figure;
    duty.what = recurrence.what;
    duty.instead = recurrence.instead;
    duty.clause = recurrence.clause;
    duty.edition = recurrence.edition;
    duty.clause_verified = recurrence.clause_verified;
    duty.every = recurrence.every;
    duty.by_whom = recurrence.who;
    duty.sheet = recurrence.sheet;
    duty.where = finding.where;
    tell_days(recurrence, duty);
    duty.strip = strip_of(duty);
    count(duty.state);
    out_.duties.push_back(std::move(duty));
  }

  /// An id that several have, as of two vents of one tank without ids, is numbered.
  std::string own_id(const std::string& id) {
    const int number = ++seen_[id];
    return number == 1 ? id : id + " " + std::to_string(number);
  }

  void tell_days(const Recurrence& recurrence, Duty& duty) {
    duty.last_done = recurrence.last;
    if (duty.last_done && checks::is_before(out_.today, *duty.last_done)) return tell_future(duty);
    if (recurrence.failed) {
      tell_failed(*recurrence.failed, duty);
    } else if (!recurrence.open.empty()) {
      duty.state = DutyState::not_determined;
      duty.reason = "whether it applies rests on what is not known: " + recurrence.open;
      duty.enter = recurrence.enter;
    } else if (!recurrence.due) {
      duty.state = DutyState::no_record;
      duty.reason = "when it was last done is not known";
      duty.enter = recurrence.enter;
    }
    if (recurrence.failed || !recurrence.due) return;
    duty.due = recurrence.due;
    duty.days_left = checks::days_between(out_.today, *duty.due);
    if (recurrence.open.empty()) duty.state = state_of(*duty.days_left, out_.options.within);
  }

  static void tell_failed(const site::Date& day, Duty& duty) {
    duty.state = DutyState::failed;
    duty.failed = day;
    duty.reason = "failed on " + checks::text(day);
    duty.enter = "mend it and test again";
  }

  void tell_future(Duty& duty) {
    const std::string day = checks::text(*duty.last_done);
    duty.state = DutyState::no_record;
    duty.reason = "it is dated " + day + ", which is yet to come";
    duty.enter = "correct the date";
    if (duty.last_done->where.text != 0) return;  // the check of the records tells it
    out_.wrong_days.push_back({Severity::error,
                               duty.subject + ": done on " + day + ", which is after " + checks::text(out_.today),
                               duty.last_done->where,
                               "correct the date, or ask for a later day with --on: " + duty.what,
                               {}});
  }

  void count(DutyState state) {
    switch (state) {
      case DutyState::failed:
        ++out_.counts.failed;
        return;
      case DutyState::overdue:
        ++out_.counts.overdue;
        return;
      case DutyState::due_soon:
        ++out_.counts.due_soon;
        return;
      case DutyState::no_record:
        ++out_.counts.no_record;
        return;
      case DutyState::later:
        ++out_.counts.later;
        return;
      case DutyState::not_determined:
        ++out_.counts.not_determined;
        return;
    }
  }

  /// What is overdue or was never done is taken as done today, and falls due again from there.
  [[nodiscard]] std::vector<StripMonth> strip_of(const Duty& duty) const {
    std::vector<StripMonth> out;
    out.reserve(out_.months.size());
    for (const Month& month : out_.months) out.push_back({month, {}, {}});
    const bool at_once = !duty.due || *duty.days_left < 0;
    const site::Date start = at_once ? out_.today : *duty.due;
    for (int i = 0;; ++i) {
      const site::Date day = checks::later(start, times(duty.every, i));
      const auto at =
          std::find_if(out.begin(), out.end(), [&](const StripMonth& one) { return one.month == month_of(day); });
      if (at == out.end()) return out;
      at->days.push_back(day);
      if (!at->state) at->state = i == 0 || duty.state == DutyState::not_determined ? duty.state : state_on(day);
    }
  }

  [[nodiscard]] DutyState state_on(const site::Date& day) const {
    return state_of(checks::days_between(out_.today, day), out_.options.within);
  }

  void add_papers() {
    for (const std::vector<checks::BoundRequirement>& rules : checks::built_in_rules()) {
      for (const checks::BoundRequirement& rule : rules) {
        if (rule.figure->id.starts_with("kept-")) add_paper(rule);
      }
    }
  }

  void add_paper(const checks::BoundRequirement& rule) {
    for (const FindingSet& set : checked_.sets) {
      if (set.id != rule.set->id.text) continue;
      for (const Finding& one : set.findings) {
        if (one.rule != rule.entered->id.text || one.state == checks::FindingState::does_not_apply) continue;
        out_.papers.push_back({set.id, one.requirement, one.clause, one.edition, one.clause_verified, one.state,
                               rule.at_least, one.value, one.change, one.where});
      }
    }
  }

  const checks::CheckResult& checked_;
  Calendar out_;
  std::map<std::string, int> seen_;
};

}  // namespace

const char* word(DutyState state) {
  switch (state) {
    case DutyState::failed:
      return "failed";
    case DutyState::overdue:
      return "overdue";
    case DutyState::due_soon:
      return "due soon";
    case DutyState::no_record:
      return "no record";
    case DutyState::later:
      return "later";
    case DutyState::not_determined:
      return "not determined";
  }
  return "not determined";
}

const char* word(DoneBy by) {
  switch (by) {
    case DoneBy::nothing:
      return "";
    case DoneBy::site_file:
      return "site file";
    case DoneBy::records:
      return "records";
  }
  return "";
}

const site::Date* last_test(const Duty& duty) {
  const std::optional<site::Date>& day = duty.failed ? duty.failed : duty.last_done;
  return day ? &*day : nullptr;
}

DoneBy done_by(const Duty& duty) {
  const site::Date* day = last_test(duty);
  if (day == nullptr) return DoneBy::nothing;
  return day->where.text == 0 ? DoneBy::site_file : DoneBy::records;
}

Calendar calendar_of(const checks::CheckResult& checked, const CalendarOptions& options) {
  return Maker(checked, options).make();
}

}  // namespace forecourse::handover
