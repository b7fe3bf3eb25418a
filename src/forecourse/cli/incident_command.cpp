#include <filesystem>
#include <optional>

#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/incident/incident_request.h"
#include "forecourse/cli/incident/incident_trace.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/incident/incident_report.h"

namespace forecourse::cli {
namespace {

bool write_report(const IncidentArguments& arguments, const SiteSource& source, const studies::IncidentResult& result,
                  report::IncidentFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string name = "incident-" + arguments.kind;
  const std::string page = (folder / (name + ".html")).string();
  const std::string data = (folder / (name + ".json")).string();
  const std::string pages = (folder / (name + ".pdf")).string();
  const std::string html = report::incident_report(result, source.site, facts);
  facts.written = {page, data};
  if (!write_file(page, html) || !write_file(data, report::to_text(report::incident_document(result, facts)))) {
    return false;
  }
  if (!arguments.pdf) return true;
  facts.written.push_back(pages);
  return write_pdf(pages, html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit incident_command(const IncidentArguments& arguments) {
  studies::IncidentOptions options;
  if (!read_incident_request(arguments, options)) return Exit::bad_input;
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteArguments asked = arguments.site;
  std::optional<IncidentTrace> trace;
  if (!arguments.replay.empty()) {
    trace = read_trace(arguments.replay, options.kind);
    if (!trace) return Exit::bad_input;
    fill(options, *trace);
    if (asked.sets.empty()) asked.sets = trace->sets;
  }
  SiteSource source;
  if (!load_site(asked, source)) return Exit::bad_input;
  const std::vector<Diagnostic> wrong = studies::check_options(source.site, options);
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  const Console console = this_console();
  studies::IncidentResult result = studies::study_incident(source.site, options, incident_context(console));
  if (trace) return compare_with(*trace, result);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::IncidentFacts facts{today(), arguments.command, source.texts, {}, arguments.site.sets};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::incident_document(result, facts)));
  } else {
    print(report::incident_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return result.problem.empty() ? Exit::fine : Exit::bad_input;
}

}  // namespace forecourse::cli
