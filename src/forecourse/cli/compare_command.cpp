#include <filesystem>
#include <variant>

#include "forecourse/base/decimal.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/compare/compare_incident.h"
#include "forecourse/cli/compare/two_sites.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/compare/compare_html.h"
#include "forecourse/report/compare/compare_json.h"
#include "forecourse/report/compare/compare_terminal.h"
#include "forecourse/site/editing/differences.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::cli {
namespace {

bool has_hose(const site::Site& site) { return !studies::all_hoses(site).hoses.empty(); }

bool have_hoses(const TwoSites& sites) {
  bool good = true;
  for (const auto& [site, text] : {std::pair(&sites.a, 0U), std::pair(&sites.b, 1U)}) {
    if (has_hose(*site)) continue;
    print_error(sites.texts[text].name + ": error: the station has no hose, so there is no flow to compare\n" +
                "  hint: add a [[dispenser]] with a [[dispenser.inlet]] and a [[dispenser.hose]]\n");
    good = false;
  }
  return good;
}

/// A ratio with its unit or, as in a site file, a bare number.
std::variant<double, UnitTextError> read_share(const std::string& text) {
  if (const std::optional<double> number = read_decimal(text)) return *number;
  return read_quantity(text, Ratio::kind());
}

bool read_gain(const std::string& text, double& gain) {
  if (text.empty()) return true;
  const auto read = read_share(text);
  if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
    print_error("error: --gain " + wrong->message + "\n" +
                (wrong->hint.empty() ? "" : "  hint: " + wrong->hint + "\n"));
    return false;
  }
  gain = std::get<double>(read);
  if (gain >= 0.0 && gain <= 1.0) return true;
  const bool bare = text.find_first_not_of("0123456789.") == std::string::npos;
  print_error("error: --gain is a share from 0 to 100 %, but '" + text + "' is written" +
              (bare ? ", which is " + text + " times A's flow\n  hint: write \"" + text + " %\"\n" : "\n"));
  return false;
}

/// The sets that are asked for beside all, one each and alone, of any hoses of the two.
std::optional<decide::CompareOptions> options_of(const CompareArguments& arguments, const TwoSites& sites) {
  decide::CompareOptions options;
  for (const std::string& set : arguments.open) {
    if (set != "all" && set != "each") options.flow.open_sets.push_back(open_set(set, sites.a));
  }
  const bool keep_read = read_keep(arguments.keep, options.flow.keep_flow);
  const bool gain_read = read_gain(arguments.gain, options.least_gain);
  const std::vector<Diagnostic> problems = decide::check_options(sites.a, sites.b, options);
  if (!problems.empty()) print_error(report::to_text(problems, sites.texts));
  if (!keep_read || !gain_read || !problems.empty()) return std::nullopt;
  return options;
}

/// Writes compare.html and compare.json into the folder; false if one could not be.
bool write_report(const CompareArguments& arguments, const decide::Comparison& comparison, site::Display display,
                  report::CompareFacts& facts) {
  const std::filesystem::path folder(arguments.site.out);
  if (!make_folder(arguments.site.out)) return false;
  const std::string page = (folder / "compare.html").string();
  const std::string data = (folder / "compare.json").string();
  facts.written = {page, data};
  return write_file(page, report::compare_report(comparison, display, facts)) &&
         write_file(data, report::to_text(report::compare_document(comparison, display, facts)));
}

}  // namespace

Exit compare_command(const CompareArguments& arguments) {
  if (!arguments.incident.kind.empty()) return compare_incident(arguments);
  TwoSites sites;
  if (!load_two_sites(arguments, sites) || !have_hoses(sites)) return Exit::bad_input;
  const auto options = options_of(arguments, sites);
  if (!options) return Exit::bad_input;
  decide::Comparison comparison = decide::compare(sites.a, sites.b, *options);
  comparison.a.flow.warnings.insert(comparison.a.flow.warnings.begin(), sites.warnings.begin(), sites.warnings.end());
  comparison.changed = site::differing_values(sites.texts[0].text, sites.texts[1].text);
  report::CompareFacts facts{sites.texts[0].name, sites.texts[1].name, today(), arguments.command, sites.texts, {}};
  const site::Display display = sites.a.display;
  if (!arguments.site.out.empty() && !write_report(arguments, comparison, display, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::compare_document(comparison, display, facts)));
  } else {
    const Console console = this_console();
    print(report::compare_summary(
        comparison, display,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  std::vector<Diagnostic> trouble = comparison.a.flow.warnings;
  trouble.insert(trouble.end(), comparison.b.flow.warnings.begin(), comparison.b.flow.warnings.end());
  std::erase_if(trouble, [](const Diagnostic& d) { return d.severity != Severity::error; });
  if (!trouble.empty()) {
    print_error(report::to_text(trouble, sites.texts));
    return Exit::bad_input;
  }
  return falls_short(comparison.a.findings) || falls_short(comparison.b.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
