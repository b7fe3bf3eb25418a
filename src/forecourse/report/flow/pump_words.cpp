#include "forecourse/report/flow/pump_words.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"

namespace forecourse::report {
namespace {

using network::PressureHeld;
using studies::ControlStepTold;
using studies::ControlTold;
using studies::PumpDuty;

/// "P1", "P1 and P2", "P1, P2 and P3".
std::string listed(const std::vector<std::string>& names) {
  std::string out;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) out += i + 1 == names.size() ? " and " : ", ";
    out += names[i];
  }
  return out;
}

std::string run(const std::vector<std::string>& names) {
  return listed(names) + (names.size() == 1 ? " runs" : " run");
}

/// Tells one control in one state.
class ControlWords {
 public:
  ControlWords(const ControlTold& control, site::Display display, Glyphs glyphs)
      : control_(control), display_(display), glyphs_(glyphs) {}

  std::vector<std::string> tell() {
    switch (control_.kind) {
      case site::ControlKind::lead_lag:
        control_.hoses_calling ? tell_calling() : tell_pressure();
        break;
      case site::ControlKind::alternating:
        tell_turns();
        break;
      case site::ControlKind::variable_speed:
        tell_speed();
        break;
      case site::ControlKind::off:
      case site::ControlKind::all:
        break;
    }
    if (control_.hoses_open == 0) tell_none_calling();
    tell_range();
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string pressure(double si) const {
    return with_unit(Measure::pressure, display_, si, glyphs_) + " gauge";
  }
  [[nodiscard]] std::string flow(double si) const { return with_unit(Measure::flow, display_, si, glyphs_); }
  [[nodiscard]] std::string percent(double share) const {
    return number(100.0 * share, 1, glyphs_) + (glyphs_ == Glyphs::ascii ? " %" : "\u00A0%");
  }
  [[nodiscard]] std::string running_time(double seconds) const {
    const char* space = glyphs_ == Glyphs::ascii ? " " : "\u00A0";
    const double hours = hours_from_seconds(seconds);
    if (hours >= 2.0) return number(hours, 1, glyphs_) + space + "h";
    const double minutes = minutes_from_seconds(seconds);
    return number(minutes, minutes < 10.0 ? 1 : 0, glyphs_) + space + "min";
  }
  [[nodiscard]] std::string name() const { return "Control " + control_.id; }
  [[nodiscard]] const ControlStepTold& taken() const { return control_.steps[control_.taken]; }
  [[nodiscard]] std::string what_flows(const ControlStepTold& step) const {
    return flow(step.total_flow) + " in total at " + pressure(step.line_pressure_gauge);
  }

  void tell_calling() {
    out_.push_back(name() + ", lead and lag by hoses calling: " + listed(control_.order) +
                   " start in this order, the next when more than " + number(*control_.hoses_calling, 0, glyphs_) +
                   " hoses call for each pump that runs." + who_calls());
  }

  [[nodiscard]] std::string who_calls() const {
    if (control_.hoses_open == 0) return {};
    return " " + std::to_string(control_.hoses_open) + (control_.hoses_open == 1 ? " calls: " : " call: ") +
           run(taken().pumps) + ".";
  }

  /// The station is solved with the pumps on and every hose shut.
  void tell_none_calling() {
    const bool one = taken().pumps.size() == 1;
    out_.push_back("No hose calls, so " + std::string(one ? "the pump is" : "the pumps are") +
                   " switched off: what is told here is the moment before, with " + listed(taken().pumps) +
                   " against shut hoses.");
  }

  void tell_pressure() {
    std::string text = name() + ", lead and lag by line pressure: " + listed(control_.order) + " start in this order";
    if (control_.starts_below) text += ", the next below " + pressure(*control_.starts_below);
    if (control_.stops_above) text += "; the last stops above " + pressure(*control_.stops_above);
    out_.push_back(text + ".");
    control_.hunts_with ? tell_hunting() : tell_rest();
  }

  void tell_rest() {
    std::string text = run(taken().pumps) + ", at a line pressure of " + pressure(taken().line_pressure_gauge);
    if (control_.taken > 0) {
      const ControlStepTold& before = control_.steps[control_.taken - 1];
      text += "; with " + listed(before.pumps) + (before.pumps.size() == 1 ? " alone" : " only") + " it would be " +
              pressure(before.line_pressure_gauge);
    }
    out_.push_back(text + ".");
    for (std::size_t i = 0; i < control_.steps.size(); ++i) {
      const ControlStepTold& step = control_.steps[i];
      if (i == control_.taken || !step.rests || !step.determined) continue;
      out_.push_back("If " + listed(step.pumps) + (step.pumps.size() == 1 ? " runs" : " run") +
                     " from what went before, that rests too: " + what_flows(step) + ".");
    }
  }

  void tell_hunting() {
    const ControlStepTold& more = control_.steps[*control_.hunts_with];
    const std::string& lag = more.pumps.back();
    out_.push_back("Pump " + lag + " short-cycles: it starts and stops in turn. Without it " + what_flows(taken()) +
                   ", which starts it; with it " + what_flows(more) +
                   ", which stops it. What is told here is the station without it.");
  }

  void tell_turns() {
    std::string text = name() + ", alternating: one pump at a time";
    if (control_.alternates_after) {
      text += ", the next after " + running_time(*control_.alternates_after) + " of running";
    }
    out_.push_back(text + ". What is told here is the station with " + listed(taken().pumps) + ": " +
                   what_flows(taken()) + ".");
    for (std::size_t i = 0; i < control_.steps.size(); ++i) {
      const ControlStepTold& step = control_.steps[i];
      if (i == control_.taken) continue;
      out_.push_back("In its turn " + listed(step.pumps) + ": " +
                     (step.determined ? what_flows(step) : std::string("not determined")) + ".");
    }
  }

  void tell_speed() {
    const std::string pumps = listed(control_.order) + (control_.order.size() == 1 ? " turns" : " turn");
    const std::string at = percent(control_.speed) + " of full speed";
    const std::string is = pressure(taken().line_pressure_gauge);
    std::string text = name() + ", variable speed: " + pumps + " at " + at;
    switch (control_.held) {
      case PressureHeld::held:
        text += " and " + std::string(control_.order.size() == 1 ? "holds " : "hold ") + pressure(*control_.holds);
        break;
      case PressureHeld::not_reached:
        text += ", the most it may, and the line pressure is " + is + ": the " + pressure(*control_.holds) +
                " to hold is not reached";
        break;
      case PressureHeld::passed:
        text += ", the least it may, and the line pressure is still " + is + ", above the " +
                pressure(*control_.holds) + " to hold";
        break;
      case PressureHeld::not_asked:
      case PressureHeld::not_determined:
        text += "; whether it holds " + pressure(*control_.holds) + " is not determined";
        break;
    }
    out_.push_back(text + ".");
  }

  /// The hose that feels most which pumps run.
  void tell_range() {
    const auto spread = [](const studies::HoseRange& hose) { return hose.most - hose.least; };
    const auto widest = std::max_element(control_.hoses.begin(), control_.hoses.end(),
                                         [&](const auto& a, const auto& b) { return spread(a) < spread(b); });
    if (widest == control_.hoses.end()) return;
    const double shown_step = std::pow(10.0, -decimals(Measure::flow, display_));
    const double low = shown_value(Measure::flow, display_, widest->least);
    if (shown_value(Measure::flow, display_, widest->most) - low < shown_step) return;
    out_.push_back("By which pumps run, the flow of hose " + widest->id + " moves most: " +
                   number(Measure::flow, display_, widest->least, glyphs_) + " to " + flow(widest->most) + ".");
  }

  const ControlTold& control_;
  site::Display display_;
  Glyphs glyphs_;
  std::vector<std::string> out_;
};

/// A difference of temperature with its unit: no zero of the scale enters.
std::string difference(double kelvin, site::Display display, Glyphs glyphs) {
  const double zero = shown_value(Measure::temperature, display, 0.0);
  return number(shown_value(Measure::temperature, display, kelvin) - zero, 1, glyphs) +
         (glyphs == Glyphs::ascii ? " " : "\u00A0") + unit_label(Measure::temperature, display, glyphs);
}

std::string heat_in_words(const PumpDuty& pump, site::Display display, Glyphs glyphs) {
  const studies::PumpHeat& heat = *pump.heat;
  if (!heat.rate) {
    return "How fast the liquid in pump " + pump.id +
           (pump.running ? " warms while it delivers nothing" : " would warm, run while held shut,") +
           " is not determined: enter " + heat.missing + ".";
  }
  const double minute = seconds_from_minutes(1.0);
  std::string text = (pump.running ? "While pump " + pump.id + " delivers nothing, its liquid warms by at most "
                                   : "Run while held shut, pump " + pump.id + " would warm its liquid by at most ") +
                     difference(*heat.rate * minute, display, glyphs) + " a minute";
  if (heat.rate_high > heat.rate_low) {
    text += " (" + difference(heat.rate_low * minute, display, glyphs) + " to " +
            difference(heat.rate_high * minute, display, glyphs) + " over what is uncertain)";
  }
  return text + ", with all of the motor's power in it: " + difference(heat.rise, display, glyphs) +
         " in no less than " + number(minutes_from_seconds(heat.time_to_rise), 1, glyphs) + " min.";
}

const char* bypass_in_words(const std::optional<bool>& bypass) {
  if (!bypass) return " Whether it has a bypass is not known.";
  return *bypass ? " It has a bypass." : " It has no bypass.";
}

}  // namespace

std::vector<std::string> control_in_words(const studies::SystemFlow& system, site::Display display, Glyphs glyphs) {
  return system.control ? ControlWords(*system.control, display, glyphs).tell() : std::vector<std::string>{};
}

std::vector<std::string> pumps_in_words(const studies::SystemFlow& system, site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  for (const PumpDuty& pump : system.pumps) {
    if (pump.opening) {
      out.push_back("Pump " + pump.id + (pump.running ? " is" : " would be") + " held shut by its check valve until " +
                    with_unit(Measure::flow, display, pump.opening->total_flow, glyphs) +
                    " flow in total, drawn from " + pump.opening->drawn_at + "." + bypass_in_words(pump.bypass));
    }
    if (pump.heat && (pump.opening || pump.heat->rate)) out.push_back(heat_in_words(pump, display, glyphs));
    if (pump.share_of_best_efficiency_flow) {
      out.push_back("Pump " + pump.id + " runs at " + number(100.0 * *pump.share_of_best_efficiency_flow, 0, glyphs) +
                    (glyphs == Glyphs::ascii ? " %" : "\u00A0%") + " of its flow of best efficiency.");
    }
  }
  return out;
}

std::string pumps_of(const studies::ControlStepTold& step) {
  std::string out;
  for (const std::string& pump : step.pumps) out += (out.empty() ? "" : " + ") + pump;
  return out;
}

std::string step_note(const ControlTold& control, std::size_t step) {
  if (!control.steps[step].determined) return "not determined";
  const bool alternating = control.kind == site::ControlKind::alternating;
  if (step == control.taken) return control.hunts_with ? "told here; starts the next" : "told here";
  if (control.hunts_with && step == *control.hunts_with) return "stops the last";
  if (alternating) return "in its turn";
  return control.steps[step].rests ? "rests too" : step < control.taken ? "starts the next" : "stops the last";
}

}  // namespace forecourse::report
