#include <algorithm>
#include <filesystem>
#include <system_error>

#include "forecourse/checks/flow_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/flow/flow_html.h"
#include "forecourse/report/flow/flow_json.h"
#include "forecourse/report/flow/flow_terminal.h"

namespace forecourse::cli {
namespace {

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

report::html::Paper paper_of(const FlowArguments& arguments, site::Display display) {
  const bool letter = arguments.paper.empty() ? display == site::Display::us : arguments.paper == "letter";
  return letter ? report::html::Paper::letter : report::html::Paper::a4;
}

/// Writes report.html and flow.json into the folder, and report.pdf if asked; the paths written, empty if one could
/// not be.
std::vector<std::string> write_report(const FlowArguments& arguments, const SiteSource& source,
                                      const studies::FlowResult& result, const std::vector<checks::Finding>& findings) {
  const std::string& folder = arguments.site.out;
  if (!make_folder(folder)) return {};
  const std::string page = (std::filesystem::path(folder) / "report.html").string();
  const std::string data = (std::filesystem::path(folder) / "flow.json").string();
  const report::FlowReportFacts facts{today(), arguments.command, source.texts, findings};
  const std::string html = report::flow_report(result, source.site, facts);
  if (!write_file(page, html) ||
      !write_file(data, report::to_text(report::flow_document(result, source.texts, findings)))) {
    return {};
  }
  if (!arguments.pdf) return {page, data};
  const std::string pages = (std::filesystem::path(folder) / "report.pdf").string();
  if (!write_pdf(pages, html, paper_of(arguments, source.site.display))) return {};
  return {page, pages, data};
}

}  // namespace

Exit flow_command(const FlowArguments& arguments) {
  SiteSource source;
  if (!load_site(arguments.site, source) || !has_hose(source)) return Exit::bad_input;
  const auto options = flow_options(arguments, source);
  if (!options) return Exit::bad_input;
  studies::FlowResult result = studies::study_flow(source.site, *options);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_flow(source.site, result);
  std::vector<std::string> written;
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
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
