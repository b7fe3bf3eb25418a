#include "forecourse/report/station/station_sections.h"

#include <algorithm>

#include "forecourse/base/nearest_word.h"
#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flow/flow_html.h"
#include "forecourse/report/flow/ladder/ladder_html.h"
#include "forecourse/report/flow/spans/span_html.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/vapor/vapor_report.h"

namespace forecourse::report {
namespace {

using Source = StationSource;

/// A writer of a section of the flow study; nothing where there is no flow.
template <class Write>
std::function<std::string(const Source&)> of_flow(Write write) {
  return [write](const Source& s) { return s.studies.flow ? write(*s.studies.flow, s.site) : std::string(); };
}

bool is_same(const DefaultUsed& a, const DefaultUsed& b) {
  return a.what == b.what && a.value == b.value && a.unit == b.unit && a.status == b.status && a.source == b.source;
}

/// None twice: the liquid in a line serves its flow and its test.
std::vector<DefaultUsed> all_defaults(const StationStudies& studies) {
  std::vector<DefaultUsed> out;
  const auto add = [&](const auto& study) {
    if (!study) return;
    for (const DefaultUsed& used : study->defaults) {
      if (std::none_of(out.begin(), out.end(), [&](const DefaultUsed& d) { return is_same(d, used); }))
        out.push_back(used);
    }
  };
  add(studies.flow);
  add(studies.containment);
  add(studies.tank);
  add(studies.flotation);
  add(studies.vapor);
  add(studies.line_test);
  add(studies.ledger);
  add(studies.meter);
  add(studies.kit);
  return out;
}

/// Warnings of the reader and of the studies; those of an incident stand in its section.
std::vector<Diagnostic> all_warnings(const Source& s) {
  std::vector<Diagnostic> out = s.before;
  const auto add = [&](const auto& study) {
    if (study) out.insert(out.end(), study->warnings.begin(), study->warnings.end());
  };
  add(s.studies.flow);
  add(s.studies.containment);
  add(s.studies.tank);
  add(s.studies.flotation);
  add(s.studies.vapor);
  add(s.studies.line_test);
  add(s.studies.ledger);
  add(s.studies.meter);
  return out;
}

std::string findings(const Source& s) {
  std::vector<checks::Finding> all = s.studies.findings;
  for (const auto* more : {&s.studies.flotation_findings, &s.studies.vapor_findings, &s.studies.line_test_findings,
                           &s.studies.ledger_findings}) {
    all.insert(all.end(), more->begin(), more->end());
  }
  all.insert(all.end(), s.studies.meter_findings.begin(), s.studies.meter_findings.end());
  return findings_html(all, s.site.display);
}

/// What the rule sets leave open, a table for each set; what is met is counted.
std::string rule_sets(const Source& s) {
  std::string out;
  for (const checks::FindingSet& set : s.studies.rule_sets) {
    std::vector<checks::Finding> open = set.findings;
    std::erase_if(open, [](const checks::Finding& one) {
      return one.state == checks::FindingState::meets || one.state == checks::FindingState::does_not_apply;
    });
    out += html::heading(3, set.title) + html::paragraph("Of the findings, " + count_by_state(set.findings) + ".");
    if (!open.empty()) out += findings_table("Open requirements", set.edition + ".", open, s.site.display);
  }
  if (!out.empty()) out += html::paragraph("What is met and what does not apply is listed by `forecourse checks`.");
  return out.empty() ? out : html::heading(2, "Rule sets") + out;
}

std::string calendar(const Source& s) {
  return s.studies.calendar ? calendar_section(*s.studies.calendar) : std::string();
}

std::string containment(const Source& s) {
  return s.studies.containment ? containment_section(*s.studies.containment, s.site) : std::string();
}

std::string tanks(const Source& s) { return s.studies.tank ? tank_section(*s.studies.tank, s.site) : std::string(); }

std::string flotation(const Source& s) {
  return s.studies.flotation ? flotation_section(*s.studies.flotation, s.site) : std::string();
}

/// Incidents tell of their inputs themselves; without the other studies nothing rests on a default.
std::string defaults(const Source& s) {
  if (!s.studies.flow && !s.studies.containment && !s.studies.tank && !s.studies.flotation && !s.studies.vapor &&
      !s.studies.line_test)
    return {};
  return defaults_section(all_defaults(s.studies), s.site.display);
}

std::string vapor(const Source& s) { return s.studies.vapor ? vapor_section(*s.studies.vapor, s.site) : std::string(); }

std::string line_test(const Source& s) {
  return s.studies.line_test ? line_test_section(*s.studies.line_test, s.site) : std::string();
}

std::string ledger(const Source& s) {
  return s.studies.ledger ? ledger_section(*s.studies.ledger, s.site) : std::string();
}

std::string kit(const Source& s) { return s.studies.kit ? kit_section(*s.studies.kit, s.site.display) : std::string(); }

std::string meter(const Source& s) { return s.studies.meter ? meter_section(*s.studies.meter, s.site) : std::string(); }

StationSection incident(const site::IncidentRequest& request, std::size_t number) {
  const std::string at = request.at.text.empty() ? "" : " at " + request.at.text;
  return {"incident-" + std::to_string(number), "Incident: " + request.kind.text + at, "the incident was not studied",
          [number](const Source& s) {
            const auto& all = s.studies.incidents;
            return number <= all.size() ? incident_section(all[number - 1], s.site, number) : std::string();
          }};
}

StationSection delivery(const site::Delivery& asked, std::size_t number) {
  return {"delivery-" + std::to_string(number), "Delivery " + asked.id.text, "the delivery was not studied",
          [number](const Source& s) {
            const auto& all = s.studies.deliveries;
            return number <= all.size() ? delivery_section(all[number - 1], s.site, number) : std::string();
          }};
}

std::vector<StationSection> of_the_course() {
  using studies::FlowResult;
  const std::string no_hose = "the station has no hose, so there is no flow to compute";
  return {
      {"asked", "What was asked", no_hose, of_flow(asked_section)},
      {"not-determined", "Not determined, or with a reservation", "nothing is left undetermined",
       of_flow([](const FlowResult& flow, const site::Site&) { return reservations_section(flow); })},
      {"findings", "Findings", "no rule that is checked applies", findings},
      {"rule-sets", "Rule sets", "the site names no rule set under rules", rule_sets},
      {"calendar", "Test calendar", "no duty comes back under the rules of the station", calendar},
      {"plan", "Plan", "there is no dispenser with a flow to draw", of_flow(plan_section)},
      {"course", "Course of the fuel, drawn", no_hose, of_flow([](const FlowResult& flow, const site::Site& site) {
         return product_sections(flow, site, {.hoses = false, .course = true});
       })},
      {"flow", "Hoses and flows", no_hose, of_flow([](const FlowResult& flow, const site::Site& site) {
         return product_sections(flow, site, {.hoses = true, .course = false});
       })},
      {"ladders", "How many hoses at once, and worst states", no_hose,
       of_flow([](const FlowResult& flow, const site::Site& site) { return ladder_sections(flow, site.display); })},
      {"spans", "What moves the flow", "no set of open hoses has a flow that a value could move",
       of_flow([](const FlowResult& flow, const site::Site& site) { return spans_section(flow, site.display); })},
      {"rest", "The line at rest", "there is no piping to stand at rest",
       of_flow([](const FlowResult& flow, const site::Site& site) { return rest_section(flow, site.display); })},
  };
}

std::vector<StationSection> at_the_end() {
  return {
      {"defaults", "Values that were not entered", "no study rests on them", defaults},
      {"sources", "Sources", "nothing published was used",
       of_flow([](const studies::FlowResult& flow, const site::Site&) { return sources_section(flow); })},
      {"warnings", "About the site file", "there is nothing to say about it",
       [](const Source& s) { return warnings_section(all_warnings(s), s.texts); }},
      {"again", "How to make this report again", "no command makes it",
       [](const Source& s) { return again_section(s.command); }},
      {"site-file", "The site file, on a screen", "its text is not at hand",
       [](const Source& s) { return site_file_details(s.texts); }},
  };
}

}  // namespace

std::vector<StationSection> station_sections(const site::Site& site) {
  std::vector<StationSection> out = of_the_course();
  out.push_back({"tank", "Tanks", "no tank has a shape or a chart", tanks});
  out.push_back({"containment", "Containment", "no sump is entered", containment});
  out.push_back(
      {"flotation", "Tanks against the ground water", "of no tank anything is entered under flotation", flotation});
  out.push_back({"vapor", "Vapor and product care", "no tank is entered", vapor});
  out.push_back({"line-test", "Line tests and leak detectors", "no line is entered", line_test});
  out.push_back({"ledger", "Ledger", "no records are given: --records names their folder", ledger});
  out.push_back({"meter", "Meters", "no draw of a meter is on record: --records names the folder", meter});
  out.push_back({"kit", "Equipment", "no part is entered", kit});
  for (std::size_t i = 0; i < site.deliveries.size(); ++i) out.push_back(delivery(site.deliveries[i], i + 1));
  for (std::size_t i = 0; i < site.incidents.size(); ++i) out.push_back(incident(site.incidents[i], i + 1));
  std::vector<StationSection> end = at_the_end();
  std::move(end.begin(), end.end(), std::back_inserter(out));
  return out;
}

std::vector<Diagnostic> check_sections(const std::vector<std::string>& ids, const site::Site& site) {
  std::vector<std::string> known;
  std::string all;
  for (StationSection& section : station_sections(site)) {
    all.append(all.empty() ? "" : ", ").append(section.id);
    known.push_back(std::move(section.id));
  }
  std::vector<Diagnostic> out;
  for (const std::string& id : ids) {
    if (std::find(known.begin(), known.end(), id) != known.end()) continue;
    const auto near = nearest_word(id, std::span<const std::string>(known));
    out.push_back({Severity::error,
                   "the report has no section '" + id + "'",
                   SourceSpan{},
                   (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all,
                   {}});
  }
  return out;
}

}  // namespace forecourse::report
