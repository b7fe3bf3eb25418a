#include "forecourse/report/line_test/line_test_view.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"

namespace forecourse::report {
namespace {

using studies::LineTest;

class Shown {
 public:
  Shown(site::Display display, Glyphs glyphs) : display_(display), glyphs_(glyphs) {}

  [[nodiscard]] std::string value(Measure measure, const std::optional<double>& si) const {
    return number(measure, display_, si.value_or(NAN), glyphs_);
  }
  [[nodiscard]] std::string unit(Measure measure, double si) const { return with_unit(measure, display_, si, glyphs_); }
  [[nodiscard]] std::string leak(double si) const { return unit(Measure::small_leak, si); }
  [[nodiscard]] std::string pressure(double si) const { return unit(Measure::pressure, si); }
  [[nodiscard]] std::string time(double seconds) const { return time_span(seconds, glyphs_); }
  [[nodiscard]] std::string time(const std::optional<double>& seconds) const {
    return seconds ? time_span(*seconds, glyphs_) : number(NAN, 0, glyphs_);
  }
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }
  [[nodiscard]] std::string range(Measure measure, const parts::Estimate& e) const {
    const std::string low = number(measure, display_, e.low, glyphs_);
    const std::string high = number(measure, display_, e.high, glyphs_);
    return low == high ? low : low + " to " + high;
  }

 private:
  site::Display display_;
  Glyphs glyphs_;
};

std::string warmer_words(const studies::Between& warmer, const Shown& show) {
  const auto one = [&](double kelvin) {
    const char* side = kelvin < 0.0 ? " colder" : " warmer";
    return kelvin == 0.0 ? std::string("as warm as")
                         : show.unit(Measure::temperature_difference, std::abs(kelvin)) + side;
  };
  if (warmer.low == warmer.high) return one(warmer.low) + (warmer.low == 0.0 ? "" : " than");
  return one(warmer.low) + " to " + one(warmer.high) + " than";
}

std::string thermal_sentence(const LineTest& line, const Shown& show) {
  const studies::ThermalTold& t = line.thermal;
  if (!t.problem.empty()) return "What temperature does is not determined: " + t.problem + ".";
  std::string out = "Fuel " + warmer_words(t.warmer, show) + " the ground (" + t.warmer_by + ")";
  if (t.at_start && *t.at_start != 0.0) {
    out += *t.at_start > 0.0 ? " looks like a leak of " + show.leak(*t.at_start) + " at the beginning"
                             : " looks like a gain of " + show.leak(-*t.at_start) + " at the beginning";
  }
  out += t.wait > 0.0 ? "; after " + show.time(t.wait) + " it looks like no more than " + show.leak(t.limit)
                      : "; it never looks like more than " + show.leak(t.limit);
  out += t.by_time_constant ? ", with the time constant of " + show.time(t.time_constant) + " that was entered."
                            : ". In the ground, a lower bound: a third of the difference is left after " +
                                  show.time(t.time_constant) + ".";
  return out;
}

void add_masking(const LineTest& line, const Shown& show, std::vector<std::string>& out) {
  const studies::VolumeTestTold& v = line.volume_test;
  const std::string rule =
      "A volume test that is to find " + show.leak(v.find) + " calls a leak above " + show.leak(v.threshold) + ".";
  if (v.false_until && *v.false_until > 0.0) {
    out.push_back(rule + " Before " + show.time(*v.false_until) + " it calls one in a tight line.");
  } else {
    out.push_back(rule);
  }
  if (!v.leak || *v.leak <= 0.0) return;
  if (v.cancels_at && *v.cancels_at > 0.0) {
    out.push_back("A leak of " + show.leak(*v.leak) + " and the warming fuel cancel at " + show.time(*v.cancels_at) +
                  ": a test at that time reads nothing, and before it reads a gain.");
  }
  if (v.hidden_until && *v.hidden_until > 0.0) {
    out.push_back("That leak is hidden from it until " + show.time(*v.hidden_until) + ".");
  } else if (v.hidden_always) {
    out.push_back("A leak of " + show.leak(*v.leak) + " is below what it calls, at any time.");
  }
}

void add_pressure(const LineTest& line, const Shown& show, std::vector<std::string>& out) {
  const studies::PressureTestTold& p = line.pressure_test;
  if (p.per_degree) {
    out.push_back("Shut and full, the line gains " + show.unit(Measure::per_degree, *p.per_degree) +
                  " of fuel temperature.");
  }
  if (!p.problem.empty()) out.push_back("The pressure test is not determined: " + p.problem + ".");
  if (p.points.empty()) return;
  const std::string within = " within " + show.time(p.duration);
  if (p.leak && *p.leak > 0.0) {
    out.push_back("From " + show.pressure(p.pressure) + ", a leak of " + show.leak(*p.leak) + " alone takes " +
                  show.pressure(p.leak_drop) + within + ".");
  }
  if (!line.thermal.problem.empty()) return;
  out.push_back((p.tight_drop >= 0.0 ? "Temperature alone takes " + show.pressure(p.tight_drop)
                                     : "Temperature alone adds " + show.pressure(-p.tight_drop)) +
                within + (p.wait > 0.0 ? ", begun after a wait of " + show.time(p.wait) : ", begun at once") + ".");
  if (p.leak && *p.leak > 0.0) {
    out.push_back("Both together: " + std::string(p.drop >= 0.0 ? "a drop of " : "a rise of ") +
                  show.pressure(std::abs(p.drop)) + ".");
  }
  if (p.to_air_at) out.push_back("No pressure is left after " + show.time(*p.to_air_at) + ".");
}

std::string band(const studies::DropProof& proof, const Shown& show) {
  return show.leak(proof.leak.low) + " to " + show.leak(proof.leak.high);
}

double hours(double seconds) { return hours_from_seconds(seconds); }

}  // namespace

std::vector<std::string> line_test_answer(const LineTest& line, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  std::vector<std::string> out;
  const std::string name = "Line of " + line.system;
  if (!line.problem.empty()) return {name + ": not determined: " + line.problem + "."};
  const std::string place = line.held_at.empty() ? "" : " at the discharge of pump " + line.held_at;
  out.push_back(name + ": " + show.unit(Measure::volume, line.volume) + " to the dispensers; held at " +
                (line.held ? show.pressure(*line.held) + place + " by " : std::string("nothing known: ")) +
                line.held_by + ".");
  out.push_back(thermal_sentence(line, show));
  if (line.thermal.problem.empty()) add_masking(line, show, out);
  add_pressure(line, show, out);
  for (std::string& sentence : proof_sentences(line, display, glyphs)) out.push_back(std::move(sentence));
  return out;
}

std::vector<std::string> proof_sentences(const LineTest& line, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  const studies::PressureTestTold& p = line.pressure_test;
  std::vector<std::string> out;
  const std::string at = " at " + show.pressure(p.pressure);
  if (p.passed && p.passed->only_tight) {
    out.push_back("Temperature alone takes more than " + show.pressure(p.passed->drop) +
                  " from a tight line: a test that passes contradicts the temperatures entered, and one that fails "
                  "proves no leak.");
    return out;
  }
  if (p.passed && !p.passed->none) {
    out.push_back("A test that passes with a drop of up to " + show.pressure(p.passed->drop) +
                  " proves no more than this: the leak is below " + show.leak(p.passed->leak.high) + at + ".");
  } else if (p.passed) {
    out.push_back("A test that passes with a drop of up to " + show.pressure(p.passed->drop) +
                  " proves nothing here: warming fuel outweighs any leak of " + show.leak(p.passed->leak.high) + ".");
  }
  if (p.failed && p.failed->tight_line_drops) {
    out.push_back("A test that fails proves no leak: temperature alone can take as much from a tight line.");
  } else if (p.failed && !p.failed->none) {
    out.push_back("A test that fails proves a leak of at least " + show.leak(p.failed->leak.low) + at + ".");
  }
  if (p.measured) {
    out.push_back("The measured change of " + show.pressure(p.measured->drop) +
                  (p.measured->none ? " fits no leak here: warming fuel outweighs it."
                                    : " fits leaks of " + band(*p.measured, show) + at +
                                          (p.measured->tight_line_drops ? ", and a tight line." : ".")));
  }
  return out;
}

std::vector<std::string> detector_answer(const studies::DetectorTold& d, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  std::vector<std::string> out;
  std::string first = "Leak detector of pump " + d.pump + (d.kind.empty() ? "" : ", " + d.kind) + ": ";
  if (d.detects && d.at && d.limit) {
    first += "finds " + show.leak(*d.detects) + " at " + show.pressure(*d.at) +
             "; the published 3 gal/h at 10 psi is " + show.range(Measure::small_leak, *d.limit) + " " +
             unit_label(Measure::small_leak, display, glyphs) + " there.";
  } else {
    first += "what it detects, and at which pressure, is not entered.";
  }
  out.push_back(first);
  for (const studies::DetectionTold& told : d.detections) {
    if (told.false_until && *told.false_until > 0.0) {
      out.push_back("Its " + told.name + (told.name == "hourly" ? " test" : "") + " can trip falsely within " +
                    show.time(*told.false_until) + " after the pump stopped: cooling fuel looks like the leak.");
    }
  }
  if (d.restart) {
    const studies::RestartTold& r = *d.restart;
    out.push_back(
        "After the pump stood for " + show.time(r.stopped) + " the line has lost " + show.pressure(r.lost) +
        (r.refill_time ? "; it takes " + show.time(*r.refill_time) + " at the restricted flow to fill it: " : "; ") +
        r.words + ".");
  }
  for (const std::string& note : d.notes) out.push_back(note + ".");
  return out;
}

WordTable lines_table(const studies::LineTestResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Line", show.head("Volume", Measure::volume), show.head("Held", Measure::pressure),
                   show.head("Shut", Measure::per_degree), show.head("Looks like at first", Measure::small_leak),
                   "Wait", show.head("until", Measure::small_leak)},
                  {false, true, true, true, true, true, true},
                  {}};
  for (const LineTest& line : result.lines) {
    const bool known = line.problem.empty() && line.thermal.problem.empty();
    table.rows.push_back(
        {line.system, show.value(Measure::volume, line.volume), show.value(Measure::pressure, line.held),
         show.value(Measure::per_degree, line.pressure_test.per_degree),
         show.value(Measure::small_leak, line.thermal.at_start),
         known ? show.time(line.thermal.wait) : "not determined", show.value(Measure::small_leak, line.thermal.limit)});
  }
  return table;
}

WordTable detection_table(const studies::DetectorTold& detector, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Test", show.head("Finds", Measure::small_leak), show.head("at", Measure::pressure),
                   show.head("At the pressure held", Measure::small_leak), "Trips falsely until", "Quiet time needed",
                   "Quiet times enough", "What follows"},
                  {false, true, true, true, true, true, true, false},
                  {}};
  for (const studies::DetectionTold& told : detector.detections) {
    table.rows.push_back({told.name, show.value(Measure::small_leak, told.detects),
                          show.value(Measure::pressure, told.at),
                          told.at_held ? show.range(Measure::small_leak, *told.at_held) : number(NAN, 0, glyphs),
                          show.time(told.false_until), show.time(told.quiet_needed),
                          told.quiet_enough ? std::to_string(*told.quiet_enough) : number(NAN, 0, glyphs), told.words});
  }
  return table;
}

WordTable catch_table(const studies::DetectorTold& detector, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{
      {"At", show.head("Pressure", Measure::pressure), show.head("Sharp hole", Measure::small_leak),
       show.head("Narrow crack", Measure::small_leak), show.head("Caught in a minute, sharp hole", Measure::caught)},
      {false, true, true, true, true},
      {}};
  for (const studies::CatchTold& c : detector.catches) {
    table.rows.push_back({c.where, show.value(Measure::pressure, c.pressure), show.value(Measure::small_leak, c.rate),
                          show.value(Measure::small_leak, c.laminar), show.value(Measure::caught, c.minute)});
  }
  return table;
}

svg::CurveChart rate_chart(const LineTest& line, site::Display display, const std::string& id) {
  svg::CurveChart chart;
  chart.id = id;
  chart.title = "What a volume test reads, line of " + line.system;
  chart.description = "Seeming rate of a test at constant pressure against the time since the fuel came.";
  chart.x_axis = "hours since the fuel came";
  chart.y_axis = unit_label(Measure::small_leak, display) + ", positive like a leak";
  const bool with_leak = line.volume_test.leak.value_or(0.0) > 0.0;
  svg::Curve thermal{with_leak ? "temperature alone" : "", {}, {}, 0};
  svg::Curve both{"with the leak", {}, {}, 1};
  for (const studies::RatePoint& point : line.volume_test.points) {
    thermal.x.push_back(hours(point.time));
    thermal.y.push_back(shown_value(Measure::small_leak, display, point.thermal));
    both.x.push_back(hours(point.time));
    both.y.push_back(shown_value(Measure::small_leak, display, point.measured));
  }
  chart.curves.push_back(std::move(thermal));
  if (with_leak) chart.curves.push_back(std::move(both));
  chart.limits.push_back(
      {shown_value(Measure::small_leak, display, line.volume_test.threshold), "calls a leak above", false});
  if (line.thermal.wait > 0.0) chart.marks.push_back({hours(line.thermal.wait), "wait", false});
  return chart;
}

svg::CurveChart shut_pressure_chart(const LineTest& line, site::Display display, const std::string& id) {
  svg::CurveChart chart;
  chart.id = id;
  chart.title = "Pressure of the shut line, " + line.system;
  chart.description = "Gauge pressure against the time since the test began.";
  chart.x_axis = "minutes since the test began";
  chart.y_axis = "gauge, " + unit_label(Measure::pressure, display);
  svg::Curve both{"both", {}, {}, 0}, tight{"temperature alone", {}, {}, 1}, leak{"leak alone", {}, {}, 2};
  for (const studies::PressurePoint& point : line.pressure_test.points) {
    for (svg::Curve* curve : {&both, &tight, &leak}) curve->x.push_back(minutes_from_seconds(point.time));
    both.y.push_back(shown_value(Measure::pressure, display, point.pressure));
    tight.y.push_back(shown_value(Measure::pressure, display, point.tight));
    leak.y.push_back(shown_value(Measure::pressure, display, point.leak_alone));
  }
  const bool with_leak = line.pressure_test.leak.value_or(0.0) > 0.0;
  const bool with_temperature = line.thermal.problem.empty();
  if (with_leak && with_temperature) chart.curves.push_back(std::move(both));
  if (with_temperature) chart.curves.push_back(std::move(tight));
  if (with_leak) chart.curves.push_back(std::move(leak));
  if (line.pressure_test.passed) {
    const double least = line.pressure_test.pressure - line.pressure_test.passed->drop;
    chart.limits.push_back({shown_value(Measure::pressure, display, least), "passes above", true, true});
  }
  return chart;
}

std::string quiet_sentence(const studies::LineTestResult& result, Glyphs glyphs) {
  if (result.quiet.empty()) return "Quiet times of the lines: " + result.quiet_by + ".";
  std::string out = "The lines stand still for ";
  for (std::size_t i = 0; i < result.quiet.size(); ++i) {
    out += (i == 0 ? "" : ", ") + time_span(result.quiet[i], glyphs);
  }
  return out + " in a day (" + result.quiet_by + ").";
}

}  // namespace forecourse::report
