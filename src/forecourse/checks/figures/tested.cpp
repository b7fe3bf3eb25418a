#include "forecourse/checks/figures/tested.h"

#include <algorithm>

#include "forecourse/base/unit_text.h"

namespace forecourse::checks {

MaybeDay later_of(const MaybeDay& a, const MaybeDay& b) {
  if (!a || !b) return a ? a : b;
  return is_before(*a, *b) ? b : a;
}

namespace {

std::vector<const site::records::Test*> recorded_tests(const Facts& facts, const Recorded& which) {
  std::vector<const site::records::Test*> out;
  if (facts.records == nullptr) return out;
  for (const site::records::Test& test : facts.records->tests) {
    const bool of_part = std::find(which.parts.begin(), which.parts.end(), test.part.text) != which.parts.end();
    if (test.kind == which.kind && of_part) out.push_back(&test);
  }
  return out;
}

/// Whether a test that was passed came after one that failed; of one day it did where the times of both are known, as
/// records are in the order of time.
bool came_after(const site::records::Moment& passed, const site::records::Moment& failed) {
  const int days = days_between(failed.day, passed.day);
  return days > 0 || (days == 0 && passed.time && failed.time);
}

/// The day of the last test that failed and that no later one overtook.
MaybeDay last_failed(const std::vector<const site::records::Test*>& tests) {
  const site::records::Test* failed = nullptr;
  for (const site::records::Test* test : tests) {
    if (!test->passed) continue;
    if (!*test->passed) failed = test;
    if (*test->passed && failed != nullptr && came_after(test->at, failed->at)) failed = nullptr;
  }
  return failed == nullptr ? MaybeDay() : MaybeDay(failed->at.day);
}

}  // namespace

std::vector<site::Date> recorded_days(const Facts& facts, const Recorded& which) {
  std::vector<site::Date> out;
  for (const site::records::Test* test : recorded_tests(facts, which)) {
    if (test->passed.value_or(false)) out.push_back(test->at.day);
  }
  return out;
}

FigureAt last_tested(const Facts& facts, std::string subject, SourceSpan where, const MaybeDay& entered,
                     const Recorded& which, std::string enter) {
  MaybeDay last = entered;
  for (const site::Date& day : recorded_days(facts, which)) last = later_of(last, day);
  MaybeDay failed = last_failed(recorded_tests(facts, which));
  if (failed && entered && is_before(*failed, *entered)) failed.reset();
  if (failed) {
    last.reset();
    enter = "its last test failed; mend it and test again";
  }
  FigureAt out = entered_day(std::move(subject), where, last, std::move(enter));
  out.failed = failed;
  return out;
}

namespace {

bool names_one_of(const std::vector<std::string>& parts, const site::Name& part) {
  return std::find(parts.begin(), parts.end(), part.text) != parts.end();
}

/// Whether a walk-through looked at a part as asked.
bool looked_at(const site::records::Inspection& inspection, const Looked& which) {
  return inspection.kind.text == which.kind &&
         std::any_of(inspection.items.begin(), inspection.items.end(), [&](const site::records::Inspected& item) {
           return names_one_of(which.parts, item.part) && (item.in_order.value_or(false) || !which.must_be_in_order);
         });
}

}  // namespace

FigureAt last_looked(const Facts& facts, std::string subject, SourceSpan where, const MaybeDay& entered,
                     const Looked& which, std::string enter) {
  MaybeDay last = entered;
  if (facts.records != nullptr) {
    for (const site::records::Inspection& one : facts.records->inspections) {
      if (looked_at(one, which)) last = later_of(last, one.at.day);
    }
  }
  return entered_day(std::move(subject), where, last, std::move(enter));
}

FigureAt shear_valve_trip(const Facts& facts, const std::string& inlet, const site::ShearValve& valve) {
  return last_tested(facts, inlet, valve.where, valve.tested, {site::records::TestKind::shear_valve_trip, {inlet}},
                     "enter tested of the shear valve");
}

double seconds_of_days(int days) { return to_si(days, "d"); }

FigureAt time_to_first(const Facts& facts, std::string subject, const site::Date& from,
                       const std::vector<MaybeDay>& others, const Period& allowed, std::string enter) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = from.where;
  MaybeDay first;
  bool any = false;
  for (const MaybeDay& other : others) {
    any = any || other;
    if (other && !is_before(*other, from) && !is_before(facts.today, *other) && (!first || is_before(*other, *first)))
      first = other;
  }
  if (first) {
    out.value = seconds_of_days(days_between(from, *first));
  } else if (any && is_before(later(from, allowed), facts.today)) {
    out.value = seconds_of_days(days_between(from, facts.today));
  } else {
    out.enter = std::move(enter);
  }
  return out;
}

}  // namespace forecourse::checks
