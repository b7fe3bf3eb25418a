#include <algorithm>
#include <map>

#include "forecourse/handover/sheets/source.h"

// Flow of hoses, pressure of pumps, leak detectors, lines: figures of the flow study and of the line tests.

namespace forecourse::handover {
namespace {

constexpr const char* all_open = "all hoses open";

/// Ids of the systems of piping that a hose draws from.
std::vector<std::string> systems_of(const studies::FlowResult& flow, const std::string& hose) {
  std::vector<std::string> out;
  if (flow.states.empty()) return out;
  for (const studies::SystemFlow& system : flow.states.front().systems) {
    const bool there =
        std::any_of(system.hoses.begin(), system.hoses.end(), [&](const auto& one) { return one.id == hose; });
    if (there) out.push_back(system.system);
  }
  return out;
}

Tolerance flow_tolerance(const studies::SummaryFlow& flow, const AgreedTolerances& agreed) {
  if (flow.low && flow.high) return {flow.low, flow.high, "spread of the values entered as low, likely and high"};
  if (agreed.flow) return {flow.flow * (1.0 - *agreed.flow), flow.flow * (1.0 + *agreed.flow), "agreed"};
  return {std::nullopt, std::nullopt, to_be_agreed};
}

class FlowRows {
 public:
  FlowRows(const SheetSource& source, const studies::FlowResult& flow) : source_(source), flow_(flow) {}

  void add(const studies::HoseSummary& hose, SheetSection& out) const {
    out.rows.push_back(row(hose, "flow-alone", "flow of the hose alone", hose.alone));
    const char* open =
        blended_ ? "flow with every hose of the station open" : "flow with every hose of its product open";
    out.rows.push_back(row(hose, "flow-all-open", open, hose.all_open));
    out.rows[out.rows.size() - 2].test = site::records::TestKind::flow;
  }

 private:
  [[nodiscard]] SheetRow row(const studies::HoseSummary& hose, const char* id, const char* what,
                             const std::optional<studies::SummaryFlow>& flow) const {
    SheetRow out = amount_row(id, what, hose.id, "hose." + hose.id, Amount::flow);
    set_value(out, flow ? std::optional(flow->flow) : std::nullopt, "flow study",
              "not determined: see the flow study for what to enter");
    out.tolerance = flow ? flow_tolerance(*flow, source_.agreed) : Tolerance{{}, {}, to_be_agreed};
    out.limit = source_.at_most("nozzle-flow-cap", hose.id);
    if (flow && flow->at_limit) out.words = "its limiter holds it";
    for (const std::string& system : systems_of(flow_, hose.id)) {
      if (out.rests_on.empty()) out.rests_on = source_.unfirm_of(system, false);
    }
    return out;
  }

  static bool is_blended(const site::Site& site) {
    for (const site::Dispenser& dispenser : site.dispensers) {
      for (const site::Hose& hose : dispenser.hoses) {
        if (!hose.blend.empty()) return true;
      }
    }
    return false;
  }

  const SheetSource& source_;
  const studies::FlowResult& flow_;
  bool blended_ = is_blended(source_.site);
};

/// The state in which all hoses are open, else the first that was studied.
const studies::FlowState* full_state(const studies::FlowResult& flow) {
  for (const studies::FlowState& state : flow.states) {
    if (state.open_set.name == all_open) return &state;
  }
  return flow.states.empty() ? nullptr : &flow.states.front();
}

struct PumpAt {
  const studies::PumpDuty* duty = nullptr;
  const studies::SystemFlow* system = nullptr;
};

PumpAt duty_of(const studies::FlowState& state, const std::string& pump) {
  for (const studies::SystemFlow& system : state.systems) {
    for (const studies::PumpDuty& duty : system.pumps) {
      if (duty.id == pump) return {&duty, &system};
    }
  }
  return {};
}

const studies::RestPlace* rest_of(const studies::FlowResult& flow, const std::string& place) {
  for (const studies::LineAtRest& line : flow.lines_at_rest) {
    for (const studies::RestPlace& one : line.places) {
      if (one.id == place) return &one;
    }
  }
  return nullptr;
}

bool heights_known(const studies::FlowResult& flow, const std::string& system) {
  return std::any_of(flow.systems.begin(), flow.systems.end(),
                     [&](const auto& one) { return one.id == system && one.elevations_known; });
}

class PumpRows {
 public:
  PumpRows(const SheetSource& source, const studies::FlowResult& flow, const site::Pump& pump)
      : source_(source), flow_(flow), pump_(pump), rest_(rest_of(flow, pump.id.text)) {
    if (const studies::FlowState* state = full_state(flow)) {
      open_ = state->open_set.name;
      at_ = duty_of(*state, pump.id.text);
    }
  }

  void add(SheetSection& out) const {
    out.rows.push_back(row("pump-stopped-flow", "pressure at the discharge, the pump running, every hose shut",
                           rest_ != nullptr ? rest_->shutoff_gauge : std::nullopt));
    out.rows.push_back(row("pump-at-flow", "pressure at the discharge, " + open_, at_flow()));
    if (at_.duty != nullptr) out.rows.back().figures.push_back({"flow of the pump", Amount::flow, at_.duty->flow});
    out.rows.push_back(row("pump-held", "pressure held in the line, the pump stopped, every hose shut",
                           rest_ != nullptr ? rest_->held_gauge : std::nullopt));
  }

 private:
  [[nodiscard]] std::optional<double> at_flow() const {
    if (at_.duty == nullptr || at_.system->status != studies::FlowStatus::determined) return std::nullopt;
    if (!heights_known(flow_, at_.system->system)) return std::nullopt;
    return at_.duty->discharge_pressure_gauge;
  }

  [[nodiscard]] SheetRow row(const char* id, std::string what, const std::optional<double>& value) const {
    SheetRow out = amount_row(id, std::move(what), pump_.id.text, "pump." + pump_.id.text, Amount::pressure);
    set_value(out, value, "flow study", "not determined: enter the curve of the pump and the heights of its line");
    out.tolerance = around(value, source_.agreed.pressure);
    if (at_.system != nullptr) out.rests_on = source_.unfirm_of(at_.system->system, true);
    return out;
  }

  const SheetSource& source_;
  const studies::FlowResult& flow_;
  const site::Pump& pump_;
  const studies::RestPlace* rest_;
  std::string open_ = all_open;
  PumpAt at_;
};

const site::Pump* pump_named(const site::Site& site, const std::string& id) {
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text == id) return &pump;
  }
  return nullptr;
}

std::string detector_words(const site::LeakDetector& detector) {
  if (!detector.kind) return "its kind is not entered";
  return detector.kind->value == site::LeakDetectorKind::mechanical ? "mechanical" : "electronic";
}

class DetectorRows {
 public:
  DetectorRows(const SheetSource& source, const studies::DetectorTold& told, const site::LeakDetector& entered)
      : source_(source), told_(told), entered_(entered) {}

  void add(SheetSection& out) const {
    out.rows.push_back(rate());
    for (const studies::CatchTold& one : told_.catches) out.rows.push_back(caught(one));
    SheetRow acts = row(yes_no_row("detector-acts", "with that leak running it restricts, stops or alarms", {}, {}));
    acts.test = site::records::TestKind::leak_detector;
    acts.limit = source_.clause("leak-detector-yearly", told_.pump);
    acts.words = entered_.tested_at.empty() ? "at the highest dispenser, or at the farthest where they are level"
                                            : "last tested at " + entered_.tested_at.text;
    acts.who = "a qualified tester";
    out.rows.push_back(std::move(acts));
    SheetRow time = row(amount_row("detector-time", "time until it acts", {}, {}, Amount::time));
    set_value(time, told_.acts_within, "entered", "not entered: acts_within of the leak detector");
    if (told_.acts_within) time.tolerance = {0.0, told_.acts_within, "entered"};
    time.limit = source_.at_most("leak-detector-time", told_.pump);
    time.reading_of = site::records::TestKind::leak_detector;
    out.rows.push_back(std::move(time));
    out.rows.push_back(row(yes_no_row("detector-opens", "with the leak shut it opens to full flow again", {}, {})));
    out.rows.back().reading_of = site::records::TestKind::leak_detector;
  }

 private:
  [[nodiscard]] SheetRow row(SheetRow out) const {
    out.part = told_.pump;
    out.path = "pump." + told_.pump + ".leak_detector";
    out.where = told_.where;
    return out;
  }

  [[nodiscard]] SheetRow rate() const {
    SheetRow out = row(told_row("detector-rate", "leak that it must find"));
    out.amount = Amount::leak;
    set_value(out, told_.detects, "entered", "not entered: detects and at of the leak detector");
    if (told_.at) out.figures.push_back({"at", Amount::pressure, *told_.at});
    out.words = detector_words(entered_);
    out.limit = source_.at_most("leak-detector-rate", told_.pump);
    return out;
  }

  [[nodiscard]] SheetRow caught(const studies::CatchTold& one) const {
    SheetRow out = row(amount_row("detector-caught", "simulated leak at " + one.where + ", caught in a minute", {}, {},
                                  Amount::caught));
    set_value(out, one.minute, "line tests, by the published rate", {});
    out.figures = {{"at", Amount::pressure, one.pressure}, {"rate", Amount::leak, one.rate}};
    out.limit = source_.clause("leak-detector-rate", told_.pump);
    out.limit.at_most = one.minute;  // a larger leak is found more easily
    out.tolerance.source = the_limit_alone;
    out.reading_of = site::records::TestKind::leak_detector;
    return out;
  }

  const SheetSource& source_;
  const studies::DetectorTold& told_;
  const site::LeakDetector& entered_;
};

}  // namespace

SheetSection flow_section(const SheetSource& source) {
  if (!source.studied.flow) return section("flow", "Flow of each hose", "No hose is entered.");
  SheetSection out =
      section("flow", "Flow of each hose",
              "Draw into a test measure and time it. With the hoses of its product open, read all of them at once.");
  out.rows.reserve(2 * source.studied.flow->hoses.size() + 1);
  const FlowRows rows(source, *source.studied.flow);
  for (const studies::HoseSummary& hose : source.studied.flow->hoses) rows.add(hose, out);
  out.rows.push_back(signature_row("flow measured by"));
  return out;
}

SheetSection pump_section(const SheetSource& source) {
  if (!source.studied.flow || source.site.pumps.empty()) {
    return section("pump", "Pumps", "No pump with a hose is entered.");
  }
  SheetSection out =
      section("pump", "Pumps", "Read the gauge at the discharge head; note its height where it stands elsewhere.");
  for (const site::Pump& pump : source.site.pumps) PumpRows(source, *source.studied.flow, pump).add(out);
  out.rows.push_back(signature_row("pressure read by"));
  return out;
}

SheetSection leak_detector_section(const SheetSource& source) {
  SheetSection out = section("leak-detector", "Line leak detectors", "No leak detector is entered.");
  if (!source.studied.line_test) return out;
  for (const studies::LineTest& line : source.studied.line_test->lines) {
    for (const studies::DetectorTold& told : line.detectors) {
      const site::Pump* pump = pump_named(source.site, told.pump);
      if (pump != nullptr && pump->leak_detector) DetectorRows(source, told, *pump->leak_detector).add(out);
    }
  }
  if (out.rows.empty()) return out;
  out.notes = {
      "The leak is simulated at the pressure beside it. What a detector finds at one pressure says nothing of "
      "another."};
  out.rows.push_back(signature_row("leak detectors tested by"));
  return out;
}

SheetSection line_section(const SheetSource& source) {
  SheetSection out = section("line", "Lines: tightness", "No line is entered.");
  if (!source.studied.line_test) return out;
  out.notes.clear();
  for (const studies::LineTest& line : source.studied.line_test->lines) {
    const std::string part = line.lines.empty() ? line.system : line.lines.front();
    SheetRow pressure = amount_row("line-pressure", "pressure of the test", part, "line." + part, Amount::pressure);
    const bool known = line.held && line.pressure_test.pressure > 0.0;
    set_value(pressure, known ? std::optional(line.pressure_test.pressure) : std::nullopt, "line tests",
              "not determined: the pressure at which the line is held is not known");
    pressure.limit = source.clause("line-yearly", part);
    pressure.limit.words = "one and a half times the operating pressure";
    if (known) pressure.limit.at_least = studies::tightness_pressure_factor * *line.held;
    pressure.tolerance = around(pressure.value, source.agreed.pressure);
    SheetRow wait =
        amount_row("line-wait", "time waited before it, since fuel last came", part, "line." + part, Amount::time);
    const bool waits = line.thermal.problem.empty() && line.thermal.firm;
    set_value(wait, waits ? std::optional(line.thermal.wait) : std::nullopt, "line tests",
              line.thermal.problem.empty() ? "not determined: it rests on a default that is not published"
                                           : line.thermal.problem);
    if (wait.value) wait.limit.at_least = wait.value;
    wait.tolerance.source = the_limit_alone;
    SheetRow tight = yes_no_row("line-tight", "tight, as the tester states", part, "line." + part);
    tight.test = site::records::TestKind::line_tightness;
    for (SheetRow* row : {&pressure, &wait}) row->reading_of = tight.test;
    tight.who = "a certified tester";
    out.rows.push_back(std::move(pressure));
    out.rows.push_back(std::move(wait));
    out.rows.push_back(std::move(tight));
  }
  out.rows.push_back(signature_row("lines tested by"));
  return out;
}

}  // namespace forecourse::handover
