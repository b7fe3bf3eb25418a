#include "forecourse/checks/line_test_checks.h"

#include <algorithm>

#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/tested.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;
using studies::DetectorTold;
using studies::LineTest;

class Checker {
 public:
  Checker(const site::Site& site, const studies::LineTestResult& result, const std::optional<site::Date>& on,
          const site::records::Records* records)
      : site_(site), result_(result), on_(on), facts_{site, on.value_or(site::Date{}), records} {}

  std::vector<Finding> check() {
    for (const LineTest& line : result_.lines) {
      for (const DetectorTold& detector : line.detectors) {
        check_rate(detector);
        check_time(detector);
        check_yearly(detector);
      }
      check_test(line);
      check_lines(line);
    }
    check_missing();
    if (!is_federal()) leave_out();
    return std::move(out_);
  }

 private:
  /// A station that names no rules is held against these; one that names others is not.
  [[nodiscard]] bool is_federal() const { return site_.rules.empty() || site::is_under(site_, "us-federal"); }

  /// What was found stays, as information.
  void leave_out() {
    for (Finding& finding : out_) {
      finding.state = FindingState::does_not_apply;
      finding.reason = "by the rules of the site file";
      finding.change.clear();
      finding.recurrence.reset();
    }
  }

  static Finding begin(const char* rule, const char* requirement, std::string subject, const char* clause,
                       site::ClauseSeen seen = site::ClauseSeen::text) {
    Finding f;
    f.rule = rule;
    f.requirement = requirement;
    f.subject = std::move(subject);
    cite({clause, seen == site::ClauseSeen::text ? tank_rule : older_tank_rule, seen}, f);
    return f;
  }

  /// What it detects at its own pressure, against the published rate carried over to there by either form of a leak.
  void check_rate(const DetectorTold& detector) {
    Finding f =
        begin("leak-detector-rate", "a line leak detector finds 3 gal/h at 10 psi", detector.pump, "40 CFR 280.44(a)");
    f.where = detector.where;
    f.unit = "m3/s";
    f.of = Measured::leak;
    if (!detector.detects || !detector.limit) {
      f.reason = "what it detects, and at which pressure, is not entered";
      f.change = "enter detects and at of the leak detector";
      return out_.push_back(std::move(f));
    }
    f.value = detector.detects;
    const parts::Estimate& limit = *detector.limit;
    constexpr double rounding = 1e-9;
    if (*f.value <= limit.low * (1.0 + rounding)) {
      f.limit = limit.low;
      f.state = FindingState::meets;
    } else if (*f.value > limit.high * (1.0 + rounding)) {
      f.limit = limit.high;
      f.state = FindingState::falls_short;
      f.change = "a detector that finds 3 gal/h at 10 psi";
    } else {
      f.limit = limit.low;
      f.reason = "whether it does depends on the form of the leak: its own pressure is not 10 psi";
      f.change = "have its figure at 10 psi stated";
    }
    f.margin = *f.limit - *f.value;
    out_.push_back(std::move(f));
  }

  void check_time(const DetectorTold& detector) {
    Finding f = begin("leak-detector-time", "it acts within 1 h of such a leak", detector.pump, "40 CFR 280.44(a)");
    f.where = detector.where;
    f.unit = "s";
    f.limit = studies::hourly_time;
    if (!detector.acts_within) {
      f.reason = "within what time it acts is not entered";
      f.change = "enter acts_within of the leak detector";
      return out_.push_back(std::move(f));
    }
    f.value = detector.acts_within;
    f.margin = *f.limit - *f.value;
    f.state = *f.margin >= 0.0 ? FindingState::meets : FindingState::falls_short;
    if (f.state == FindingState::falls_short) f.change = "a detector that acts within an hour";
    out_.push_back(std::move(f));
  }

  /// Judges a day that must not lie further back than a year.
  void judge_year(const FigureAt& last, Finding& f) const {
    constexpr Period year{1, 0, 0};
    const std::optional<site::Date>& tested = last.day;
    f.recurrence = {f.requirement, year, tested, {}, "a qualified tester", "annual", last.enter, {}};
    f.recurrence->failed = last.failed;
    f.recurrence->figure = f.rule;
    f.recurrence->clause = f.clause;
    f.recurrence->edition = f.edition;
    f.recurrence->clause_verified = f.clause_verified;
    if (tested) f.recurrence->due = later(*tested, year);
    if (last.failed) {
      f.reason = "its last test failed on " + text(*last.failed);
      f.change = "mend it, and test again";
    } else if (!tested) {
      f.reason = "the day of the last test is not entered";
      f.change = last.enter;
    } else if (!on_) {
      f.reason = "the day to judge by is not known";
    } else if (days_between(*tested, *on_) < 0) {
      f.reason = "it is dated " + text(*tested) + ", which is yet to come";
      f.change = "correct the date";
    } else if (is_before(*f.recurrence->due, *on_)) {
      f.state = FindingState::falls_short;
      f.reason = "the last test is older than a year";
      f.change = "test it by a simulated leak";
    } else {
      f.state = FindingState::meets;
    }
  }

  void check_yearly(const DetectorTold& detector) {
    Finding f = begin("leak-detector-yearly", "a line leak detector is tested each year by a simulated leak",
                      detector.pump, "40 CFR 280.40(a)(3)");
    f.where = detector.where;
    judge_year(last_tested(facts_, detector.pump, detector.where, detector.tested,
                           {TestKind::leak_detector, {detector.pump}}, "enter tested of the leak detector"),
               f);
    out_.push_back(std::move(f));
  }

  /// The test that was asked, against the rate that a tightness test must find.
  void check_test(const LineTest& line) {
    const studies::PressureTestTold& test = line.pressure_test;
    if (!result_.options.drop) return;
    Finding f = begin("line-tightness-test",
                      "a line tightness test finds 0.1 gal/h at one and a half times the operating pressure",
                      line.product, "40 CFR 280.44(b)");
    f.unit = "m3/s";
    f.of = Measured::leak;
    f.limit = studies::tightness_rate();
    if (!test.passed) {
      f.reason = test.problem.empty() ? line.problem : test.problem;
      f.change = "enter what is named";
      return out_.push_back(std::move(f));
    }
    f.value = test.passed->leak.high;
    f.margin = *f.limit - *f.value;
    const bool strong = line.held && test.pressure >= studies::tightness_pressure_factor * *line.held * (1.0 - 1e-9);
    if (test.passed->tight_line_drops) {
      f.reason = "temperature alone can fail a tight line: what the test says is not to be told";
      f.change = "wait longer before it";
    } else if (!line.thermal.firm) {
      f.reason = "the ground about the line was not entered";
      f.change = "give --time-constant, or --ground-conductivity and --ground-heat";
    } else if (!strong) {
      f.reason = line.held ? "its pressure is below one and a half times the operating pressure"
                           : "the operating pressure is not known: " + line.held_by;
      f.change = "test at the pressure of the rule";
    } else {
      f.state = state_of(*f.margin, *f.limit);
      if (f.state == FindingState::falls_short) {
        f.change = "wait longer before it, test for longer, or allow a smaller drop of pressure";
      }
    }
    out_.push_back(std::move(f));
  }

  [[nodiscard]] const site::Line* find_line(const std::string& id) const {
    const auto found =
        std::find_if(site_.lines.begin(), site_.lines.end(), [&](const site::Line& l) { return l.id.text == id; });
    return found == site_.lines.end() ? nullptr : &*found;
  }

  [[nodiscard]] static bool monitored_monthly(const LineTest& line) {
    for (const DetectorTold& detector : line.detectors) {
      for (const studies::DetectionTold& d : detector.detections) {
        if (d.detects && *d.detects <= studies::monthly_rate() * (1.0 + 1e-9) && d.quiet_enough.value_or(0) > 0)
          return true;
      }
    }
    return false;
  }

  /// An alarm watches its interstice, and was not entered as last seen longer ago than a month.
  [[nodiscard]] bool watched(const site::Line& line) const {
    if (!line.interstice || !line.interstice->alarm.value_or(false)) return false;
    if (!line.interstice->monitored || !on_) return true;
    constexpr int monthly = 30;  // [d] \source [cfr_280, 280.41(b)]
    const int ago = days_between(*line.interstice->monitored, *on_);
    return ago >= 0 && ago <= monthly;
  }

  void check_lines(const LineTest& line) {
    for (const std::string& id : line.lines) {
      const site::Line* entered = find_line(id);
      if (entered == nullptr) continue;
      Finding f = begin("line-yearly", "a pressurized line is tested for tightness each year, or monitored each month",
                        id, "40 CFR 280.41(b), 280.44(b)", site::ClauseSeen::older_text);
      f.where = entered->where;
      const bool alarm = watched(*entered);
      if (alarm || monitored_monthly(line)) {
        f.state = FindingState::meets;
        f.reason = alarm ? "its interstice is watched" : "its leak detector finds 0.2 gal/h in the quiet times";
      } else {
        judge_year(last_tested(facts_, id, entered->where, entered->tested, {TestKind::line_tightness, {id}},
                               "enter tested of the line, or how its interstice is watched"),
                   f);
        if (f.state == FindingState::falls_short) f.change = "a line tightness test";
      }
      out_.push_back(std::move(f));
    }
  }

  void check_missing() {
    for (const site::Pump& pump : site_.pumps) {
      if (pump.leak_detector) continue;
      Finding f = begin("leak-detector", "a pressurized line has an automatic line leak detector", pump.id.text,
                        "40 CFR 280.41(b)", site::ClauseSeen::older_text);
      f.where = pump.where;
      f.reason = "none is entered";
      f.change = "enter leak_detector of the pump if there is one; else one is to be fitted";
      out_.push_back(std::move(f));
    }
  }

  const site::Site& site_;
  const studies::LineTestResult& result_;
  const std::optional<site::Date>& on_;
  Facts facts_;  ///< what tests are on record
  std::vector<Finding> out_;
};

}  // namespace

std::vector<Finding> check_line_test(const site::Site& site, const studies::LineTestResult& result,
                                     const std::optional<site::Date>& on, const site::records::Records* records) {
  return Checker(site, result, on, records).check();
}

}  // namespace forecourse::checks
