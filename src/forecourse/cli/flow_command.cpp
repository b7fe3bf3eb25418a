#include <algorithm>
#include <chrono>
#include <ctime>
#include <filesystem>
#include <system_error>

#include "forecourse/checks/flow_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/report/flow/flow_html.h"
#include "forecourse/report/flow/flow_json.h"
#include "forecourse/report/flow/flow_terminal.h"

namespace forecourse::cli {
namespace {

/// "25 Nov 2026", in the time zone of the machine.
std::string today() {
  const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  std::tm local{};
  localtime_r(&now, &local);
  static constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return std::to_string(local.tm_mday) + " " + months[local.tm_mon] + " " + std::to_string(local.tm_year + 1900);
}

bool make_folder(const std::string& folder) {
  std::error_code trouble;
  std::filesystem::create_directories(folder, trouble);
  if (trouble) print_error(folder + ": error: cannot be made: " + trouble.message() + "\n");
  return !trouble;
}

bool falls_short(const std::vector<checks::Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const checks::Finding& finding) { return finding.state == checks::FindingState::falls_short; });
}

/// Tells of a station without hoses: there is no flow to compute.
bool has_hose(const SiteSource& source) {
  const auto& dispensers = source.site.dispensers;
  if (std::any_of(dispensers.begin(), dispensers.end(), [](const auto& d) { return !d.hoses.empty(); })) return true;
  const Diagnostic none{Severity::error,
                        "the station has no hose, so there is no flow to compute",
                        SourceSpan{0, 0, 0},
                        "add a [[dispenser]] with a [[dispenser.inlet]] and a [[dispenser.hose]]",
                        {}};
  print_error(report::to_text(std::vector<Diagnostic>{none}, source.texts));
  return false;
}

/// What keeps a product from being computed; the others are still told.
std::vector<Diagnostic> errors_of(const std::vector<Diagnostic>& all) {
  std::vector<Diagnostic> errors;
  for (const Diagnostic& one : all) {
    if (one.severity == Severity::error) errors.push_back(one);
  }
  return errors;
}

/// Writes report.html and flow.json into the folder; the paths written, empty if one could not be.
std::vector<std::string> write_report(const FlowArguments& arguments, const SiteSource& source,
                                      const studies::FlowResult& result, const std::vector<checks::Finding>& findings) {
  const std::string& folder = arguments.site.out;
  if (!make_folder(folder)) return {};
  const std::string page = (std::filesystem::path(folder) / "report.html").string();
  const std::string data = (std::filesystem::path(folder) / "flow.json").string();
  const report::FlowReportFacts facts{today(), arguments.command, source.texts, findings};
  const bool written = write_file(page, report::flow_report(result, source.site, facts)) &&
                       write_file(data, report::to_text(report::flow_document(result, source.texts, findings)));
  return written ? std::vector<std::string>{page, data} : std::vector<std::string>{};
}

}  // namespace

Exit flow_command(const FlowArguments& arguments) {
  SiteSource source;
  if (!load_site(arguments.site, source) || !has_hose(source)) return Exit::bad_input;
  const auto options = flow_options(arguments, source.site);
  if (!options) return Exit::bad_input;
  studies::FlowResult result = studies::study_flow(source.site, *options);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_flow(source.site, result);
  std::vector<std::string> written;
  if (!arguments.site.out.empty()) {
    written = write_report(arguments, source, result, findings);
    if (written.empty()) return Exit::bad_input;
  }
  if (arguments.site.json) {
    print(report::to_text(report::flow_document(result, source.texts, findings)));
  } else {
    const Console console = this_console();
    const report::TerminalStyle style{static_cast<std::size_t>(console.width), console.color, console.utf8,
                                      arguments.site.verbose};
    print(report::flow_summary(result, source.site, style, {source.texts, written, findings}));
  }
  const std::vector<Diagnostic> errors = errors_of(result.warnings);
  if (!errors.empty()) {
    print_error(report::to_text(errors, source.texts));
    return Exit::bad_input;
  }
  return falls_short(findings) ? Exit::falls_short : Exit::fine;
}

Exit study_command(const FlowArguments& arguments) {
  FlowArguments all = arguments;
  if (all.site.out.empty() && !all.site.json) {
    all.site.out = (std::filesystem::path("out") / std::filesystem::path(all.site.path).stem()).string();
  }
  return flow_command(all);
}

}  // namespace forecourse::cli
