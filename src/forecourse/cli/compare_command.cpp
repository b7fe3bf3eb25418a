#include <charconv>
#include <filesystem>
#include <variant>

#include "forecourse/base/unit_text.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/compare/compare_html.h"
#include "forecourse/report/compare/compare_json.h"
#include "forecourse/report/compare/compare_terminal.h"
#include "forecourse/site/editing/differences.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::cli {
namespace {

/// Two stations with the texts they were read from: A's is the first.
struct TwoSites {
  site::Site a;
  site::Site b;
  std::vector<report::SourceText> texts;
  std::vector<Diagnostic> warnings;
};

std::string with_sets(const std::string& name, const std::vector<std::string>& sets) {
  std::string out;
  for (const std::string& set : sets) out += (out.empty() ? " with " : ", ") + set;
  return name + out;
}

/// How A and B are told in a report.
std::string label_of_a(const CompareArguments& arguments) { return with_sets(arguments.site.path, arguments.both); }

std::string label_of_b(const CompareArguments& arguments) {
  if (arguments.other.empty()) {
    return arguments.site.sets.empty() ? label_of_a(arguments) : with_sets("A", arguments.site.sets);
  }
  std::vector<std::string> sets = arguments.both;
  sets.insert(sets.end(), arguments.site.sets.begin(), arguments.site.sets.end());
  return with_sets(arguments.other, sets);
}

/// The texts of A and of B, B's with what `--set` asks. False if one could not be had; all that is wrong is told.
bool load_texts(const CompareArguments& arguments, std::vector<report::SourceText>& texts) {
  texts = {{label_of_a(arguments), {}}, {label_of_b(arguments), {}}};
  bool good = read_site_file(arguments.site.path, texts[0].text);
  const bool has_other = !arguments.other.empty();
  if (has_other) good = read_site_file(arguments.other, texts[1].text) && good;
  if (!good) return false;
  good = apply_sets(arguments.both, texts[0].text, "--set-both");
  if (!has_other) {
    texts[1].text = texts[0].text;
  } else if (good) {  // else the same trouble may be told twice
    good = apply_sets(arguments.both, texts[1].text, "--set-both");
  }
  return apply_sets(arguments.site.sets, texts[1].text) && good;
}

void choose_units(const std::string& units, site::Site& site) {
  if (units == "us") site.display = site::Display::us;
  if (units == "si") site.display = site::Display::si;
}

/// Reads both; what is wrong with either is told in one list.
bool load(const CompareArguments& arguments, TwoSites& sites) {
  if (!load_texts(arguments, sites.texts)) return false;
  Parsed<site::Site> a = site::read_site(sites.texts[0].text, 0);
  Parsed<site::Site> b = site::read_site(sites.texts[1].text, 1);
  sites.warnings = std::move(a.diagnostics);
  const bool own_text = !arguments.other.empty() || !has_error(sites.warnings);  // else the same trouble twice
  if (own_text) sites.warnings.insert(sites.warnings.end(), b.diagnostics.begin(), b.diagnostics.end());
  sites.a = std::move(a.value);
  sites.b = std::move(b.value);
  choose_units(arguments.site.units, sites.a);
  if (!has_error(sites.warnings)) return true;
  print_error(report::to_text(sites.warnings, sites.texts));
  return false;
}

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
  double number = 0.0;
  const auto [end, trouble] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (trouble == std::errc() && end == text.data() + text.size()) return number;
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
         write_file(data, report::to_text(report::compare_document(comparison, facts)));
}

}  // namespace

Exit compare_command(const CompareArguments& arguments) {
  TwoSites sites;
  if (!load(arguments, sites) || !have_hoses(sites)) return Exit::bad_input;
  const auto options = options_of(arguments, sites);
  if (!options) return Exit::bad_input;
  decide::Comparison comparison = decide::compare(sites.a, sites.b, *options);
  comparison.a.flow.warnings.insert(comparison.a.flow.warnings.begin(), sites.warnings.begin(), sites.warnings.end());
  comparison.changed = site::differing_values(sites.texts[0].text, sites.texts[1].text);
  report::CompareFacts facts{sites.texts[0].name, label_of_b(arguments), today(), arguments.command, sites.texts, {}};
  const site::Display display = sites.a.display;
  if (!arguments.site.out.empty() && !write_report(arguments, comparison, display, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::compare_document(comparison, facts)));
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
