#include "forecourse/report/flow/pump_html.h"

#include <utility>

#include "forecourse/report/flow/pump_words.h"
#include "forecourse/report/html/parts.h"

namespace forecourse::report {
namespace {

/// The ways in which the pumps can run; one way needs no table.
std::string steps(const studies::ControlTold& control, site::Display display) {
  if (control.steps.size() < 2) return {};
  html::Table table{"Ways in which the pumps of control " + control.id + " can run",
                    "",
                    {{"Pumps that run", ""},
                     {"Flow in total", unit_label(Measure::flow, display), true},
                     {"Line pressure", unit_label(Measure::pressure, display) + " gauge", true},
                     {"The control", "", false, true}},
                    {},
                    {}};
  for (std::size_t i = 0; i < control.steps.size(); ++i) {
    const studies::ControlStepTold& step = control.steps[i];
    const bool hunts = control.hunts_with && (i == control.taken || i == *control.hunts_with);
    table.rows.push_back({{pumps_of(step), number(Measure::flow, display, step.total_flow),
                           number(Measure::pressure, display, step.line_pressure_gauge), step_note(control, i)},
                          hunts});
  }
  return html::table(table);
}

}  // namespace

std::string pump_details(const studies::SystemFlow& system, site::Display display) {
  std::string out;
  if (system.control) {
    for (const std::string& text : control_in_words(system, display)) out += html::paragraph(text);
    out += steps(*system.control, display);
  }
  for (const std::string& text : pumps_in_words(system, display)) out += html::paragraph(text, "quiet");
  return out;
}

}  // namespace forecourse::report
