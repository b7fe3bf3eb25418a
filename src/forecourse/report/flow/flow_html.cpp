#include "forecourse/report/flow/flow_html.h"

#include "forecourse/report/drawing/plan_view.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/flow/flow_html_course.h"
#include "forecourse/report/flow/flow_html_tables.h"
#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/flow/ladder/ladder_html.h"
#include "forecourse/report/flow/spans/span_html.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {
namespace {

using studies::FlowResult;
using studies::SystemFlow;

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

std::string state(const FlowResult& result, std::size_t index, const SystemFlow& system,
                  const studies::SystemSummary& summary, const site::Site& site, const std::string& id,
                  ProductPieces pieces) {
  if (!pieces.hoses && index > 0) return {};
  std::string out = html::heading(3, "With " + in_words(result.states[index].open_set));
  if (system.status != studies::FlowStatus::determined) {
    out += html::paragraph("Its piping is " + status_in_words(system) + ".");
  } else if (!system.reason.empty()) {
    out += html::paragraph("Nothing reaches some of its hoses: " + system.reason + ".");
  }
  if (system.status == studies::FlowStatus::not_determined) return out;
  if (pieces.hoses) out += state_readings(system, site.display);
  if (pieces.course && index == 0) {
    out += section_figure(site, system, summary.elevations_known, id);
    out += course_figures(system, site, summary.elevations_known, id);
  }
  return pieces.hoses ? out + state_tables(system, site.display) : out;
}

std::string hoses_of(const FlowResult& result, const HoseGroup& hoses, site::Display display, const std::string& id) {
  std::string out = html::paragraph(fluid_in_words(*hoses.system, display), "quiet");
  out += hose_figure(result, hoses, display, id + "-hoses") + hose_table(hoses, display);
  for (const std::string& limit : limits_in_words(result, hoses, display)) out += html::paragraph(limit, "quiet");
  return out;
}

std::string group(const FlowResult& result, const HoseGroup& hoses, const site::Site& site, std::size_t number,
                  ProductPieces pieces) {
  const site::Display display = site.display;
  if (hoses.system == nullptr) {
    if (!pieces.hoses) return {};
    return html::heading(2, "Blended hoses and hoses without piping") + hose_table(hoses, display);
  }
  const std::string id = "piping-" + std::to_string(number);
  std::string out = html::heading(2, pieces.hoses ? hoses.system->id : "Course of the fuel, " + hoses.system->id);
  if (pieces.hoses) out += hoses_of(result, hoses, display, id);
  for (std::size_t i = 0; i < result.states.size(); ++i) {
    const SystemFlow* system = find_system(result.states[i], hoses.system->id);
    if (system != nullptr) out += state(result, i, *system, *hoses.system, site, id, pieces);
  }
  return out;
}

html::Page around(const FlowResult& result, const site::Site& site, const FlowReportFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = "Flow at every hose";
  page.cells = {{"Station", site.name.text}, {"Study", "flow"}};
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + result.version);
  page.caution = flow_cautions().front() + " " + flow_cautions()[1];
  return page;
}

}  // namespace

std::string asked_section(const FlowResult& result, const site::Site& site) {
  std::vector<std::string> items;
  for (const studies::OpenSet& set : result.options.open_sets) {
    items.push_back("Open together, " + in_words(set) + ": " + joined(set.hoses) + ".");
  }
  if (result.options.keep_flow) {
    items.push_back("Every open hose should keep " + with_unit(Measure::flow, site.display, *result.options.keep_flow) +
                    ".");
  }
  if (const std::string text = without_pump(result); !text.empty()) items.insert(items.begin(), text);
  return html::heading(2, "What was asked") +
         html::paragraph(
             "What flows at each hose alone, with one hose of its product open at each dispenser, and with "
             "every hose of the station open; and the pressure everywhere for these sets of open hoses:") +
         html::list(items);
}

std::string reservations_section(const FlowResult& result) {
  const std::vector<std::string> reasons = not_determined(result);
  if (reasons.empty()) return {};
  return html::heading(2, "Not determined, or with a reservation") + html::list(reasons);
}

std::string plan_section(const FlowResult& result, const site::Site& site) {
  if (result.states.empty() || site.dispensers.empty()) return {};
  return html::heading(2, "Plan") + drawing::plan_figure(site, result.states.front(), "plan");
}

std::string product_sections(const FlowResult& result, const site::Site& site, ProductPieces pieces) {
  std::string out;
  std::size_t number = 0;
  for (const HoseGroup& hoses : hose_groups(result)) out += group(result, hoses, site, ++number, pieces);
  return out;
}

std::string defaults_section(const std::vector<DefaultUsed>& defaults, site::Display display) {
  std::string out = html::heading(2, "Values that were not entered");
  if (defaults.empty()) return out + html::paragraph("None: every value that was used was entered.");
  out += html::paragraph("The result rests on " + count_by_status(defaults) +
                         ". Enter a value of your own to replace one.");
  html::Table table{"Defaults used",
                    "",
                    {{"What", "", false, true}, {"Value", "", true}, {"Status", ""}, {"Source", "", false, true}},
                    {},
                    {}};
  for (const DefaultGroup& group : grouped(defaults)) {
    const DefaultUsed& d = *group.first;
    table.rows.push_back({{group.what, default_value(d, display), forecourse::word(d.status), d.source}});
  }
  return out + html::table(table);
}

std::string sources_section(const FlowResult& result) {
  const std::vector<std::string> used = sources_used(result);
  return used.empty() ? std::string() : html::heading(2, "Sources") + html::list(used);
}

std::string warnings_section(const std::vector<Diagnostic>& warnings, const std::vector<SourceText>& texts) {
  if (warnings.empty()) return {};
  return html::heading(2, "About the site file") + "<pre>" + svg::escape(to_text(warnings, texts)) + "</pre>\n";
}

std::string again_section(const std::string& command) {
  if (command.empty()) return {};
  return html::heading(2, "How to make this report again") + "<pre>" + svg::escape(command) + "</pre>\n" +
         html::paragraph("The same site file, the same options and the same version give the same numbers.");
}

std::string site_file_details(const std::vector<SourceText>& texts) {
  if (texts.empty()) return {};
  return "<details class=\"screen\"><summary>The site file as it was read, " + svg::escape(texts.front().name) +
         "</summary>\n<pre>" + svg::escape(texts.front().text) + "</pre></details>\n";
}

std::string flow_report(const FlowResult& result, const site::Site& site, const FlowReportFacts& facts) {
  html::Page page = around(result, site, facts);
  page.body = asked_section(result, site) + reservations_section(result) + findings_html(facts.findings, site.display);
  page.body += plan_section(result, site) + product_sections(result, site);
  page.body += ladder_sections(result, site.display);
  page.body += spans_section(result, site.display) + rest_section(result, site.display);
  page.body += defaults_section(result.defaults, site.display) + sources_section(result);
  page.body += warnings_section(result.warnings, facts.texts);
  page.body += html::heading(2, "Cautions") + html::list(flow_cautions());
  page.body += again_section(facts.command_line) + site_file_details(facts.texts);
  return html::page(page);
}

}  // namespace forecourse::report
