#include "forecourse/cli/compare/compare_incident.h"

#include <algorithm>
#include <filesystem>

#include "forecourse/cli/compare/two_sites.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/incident/incident_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/decide/compare/incident/incident_comparison.h"
#include "forecourse/report/compare/incident/incident_compare_report.h"

namespace forecourse::cli {
namespace {

/// The incident is one for both, so `--set` cannot change it in B alone, and only one set of hoses is open elsewhere.
bool is_one_incident(const CompareArguments& arguments) {
  bool good = true;
  for (const std::string& set : arguments.site.sets) {
    if (!set.starts_with("incident.")) continue;
    print_error("error: --set " + set + " changes the incident in B alone, and it is one for A and B\n" +
                "  hint: change it in both with --set-both, or for this run with --at, --stop-at, --for\n");
    good = false;
  }
  if (arguments.open.size() > 1) {
    print_error("error: --open is given " + std::to_string(arguments.open.size()) +
                " times, and an incident has one set of hoses open elsewhere\n  hint: part them by commas\n");
    good = false;
  }
  return good;
}

/// What is wrong at one of the two is told with the name of its file.
bool tell_objections(const std::vector<decide::Objection>& objections, const TwoSites& sites) {
  for (const decide::Objection& one : objections) {
    const std::size_t own = one.in_a ? 0 : 1;
    Diagnostic told = one.what;
    if (told.where && told.where->text != own) told.where.reset();  // asked by A's file, wrong at B
    const bool needs_name = !told.where && one.in_a != one.in_b;
    print_error((needs_name ? sites.texts[own].name + ": " : std::string()) + report::to_text(told, sites.texts));
  }
  return objections.empty();
}

void add_warnings(const TwoSites& sites, decide::IncidentComparison& comparison) {
  for (const Diagnostic& warning : sites.warnings) {
    const bool of_b = warning.where && warning.where->text == 1;
    (of_b ? comparison.b : comparison.a).warnings.push_back(warning);
  }
}

bool write_report(const CompareArguments& arguments, const decide::IncidentComparison& comparison,
                  site::Display display, report::CompareFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string name = "compare-" + arguments.incident.kind;
  const std::string page = (folder / (name + ".html")).string();
  const std::string data = (folder / (name + ".json")).string();
  facts.written = {page, data};
  return write_file(page, report::incident_compare_report(comparison, display, facts)) &&
         write_file(data, report::to_text(report::incident_compare_document(comparison, display, facts)));
}

}  // namespace

Exit compare_incident(const CompareArguments& arguments) {
  IncidentArguments asked = arguments.incident;
  if (!arguments.open.empty()) asked.open = arguments.open.front();
  studies::IncidentOptions options;
  TwoSites sites;
  if (!is_one_incident(arguments) || !read_incident_request(asked, options)) return Exit::bad_input;
  if (!load_two_sites(arguments, sites)) return Exit::bad_input;
  if (!tell_objections(decide::objections(sites.a, sites.b, options), sites)) return Exit::bad_input;
  const Console console = this_console();
  decide::IncidentComparison comparison =
      decide::compare_incident(sites.a, sites.b, options, incident_context(console));
  add_warnings(sites, comparison);
  comparison.changed = site::differing_values(sites.texts[0].text, sites.texts[1].text);
  report::CompareFacts facts{sites.texts[0].name, sites.texts[1].name, today(), arguments.command, sites.texts, {}};
  const site::Display display = sites.a.display;
  if (!arguments.site.out.empty() && !write_report(arguments, comparison, display, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::incident_compare_document(comparison, display, facts)));
  } else {
    print(report::incident_compare_summary(
        comparison, display,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return comparison.is_determined() ? Exit::fine : Exit::bad_input;
}

}  // namespace forecourse::cli
