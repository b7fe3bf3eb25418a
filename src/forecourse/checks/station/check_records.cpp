#include "forecourse/checks/station/check_records.h"

#include <iterator>

#include "forecourse/checks/rules/period.h"
#include "forecourse/checks/station/check_record_parts.h"

namespace forecourse::checks {
namespace {

using site::records::Moment;
using site::records::Test;

void tell_future(const Moment& at, const char* what, const site::Date& today, std::vector<Diagnostic>& out) {
  if (!is_before(today, at.day)) return;
  out.push_back({Severity::error,
                 std::string(what) + " is dated " + text(at.day) + ", which is after " + text(today),
                 at.day.where,
                 "correct the day, or ask for a later one with --on",
                 {}});
}

bool contradict(const Test& a, const Test& b) {
  const bool same = a.kind == b.kind && a.part == b.part && days_between(a.at.day, b.at.day) == 0;
  return same && a.passed && b.passed && *a.passed != *b.passed && !(a.at.time && b.at.time);
}

void tell_contradictions(const std::vector<Test>& tests, std::vector<Diagnostic>& out) {
  for (std::size_t i = 0; i < tests.size(); ++i) {
    // They are in the order of time.
    for (std::size_t j = i + 1; j < tests.size() && days_between(tests[i].at.day, tests[j].at.day) == 0; ++j) {
      if (!contradict(tests[i], tests[j])) continue;
      out.push_back({Severity::warning,
                     tests[j].part.text + " was passed and failed on " + text(tests[j].at.day) +
                         ", and which came last is not told: the day proves nothing",
                     tests[j].at.day.where,
                     "delete the wrong one, or enter the times of both",
                     {{Severity::note, "the other", tests[i].at.day.where, {}, {}}}});
    }
  }
}

}  // namespace

std::vector<Diagnostic> check_records(const site::records::Records& records, const site::Date& today) {
  std::vector<Diagnostic> out;
  for (const Test& one : records.tests) tell_future(one.at, "a test", today, out);
  for (const auto& one : records.inspections) tell_future(one.at, "an inspection", today, out);
  for (const auto& one : records.provings) tell_future(one.at, "a proving", today, out);
  for (const auto& one : records.dips) tell_future(one.at, "a dip", today, out);
  tell_contradictions(records.tests, out);
  return out;
}

std::vector<Diagnostic> check_days_and_parts(const site::records::Records* records, const site::Site& site,
                                             const site::Date& today) {
  if (records == nullptr) return {};
  std::vector<Diagnostic> out = check_records(*records, today);
  std::vector<Diagnostic> of_parts = check_record_parts(*records, site);
  std::move(of_parts.begin(), of_parts.end(), std::back_inserter(out));
  return out;
}

}  // namespace forecourse::checks
