#include <algorithm>
#include <filesystem>

#include "forecourse/checks/delivery_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/studies/delivery/read_delivery_options.h"

namespace forecourse::cli {
namespace {

using Findings = std::vector<checks::Finding>;

bool write_report(const DeliveryArguments& arguments, const SiteSource& source, const studies::DeliveryResult& result,
                  const Findings& findings, report::DeliveryFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "delivery.html").string();
  const std::string data = (folder / "delivery.json").string();
  facts.written = {page, data};
  const std::string html = report::delivery_report(result, findings, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::delivery_document(result, findings, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "delivery.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

Exit exit_of(const studies::DeliveryResult& result, const Findings& findings) {
  if (!result.problem.empty()) return Exit::bad_input;
  const bool short_of = std::any_of(findings.begin(), findings.end(), [](const checks::Finding& f) {
    return f.state == checks::FindingState::falls_short;
  });
  return short_of ? Exit::falls_short : Exit::fine;
}

}  // namespace

Exit delivery_command(const DeliveryArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  Parsed<studies::DeliveryOptions> read = studies::read_delivery_options(arguments.texts, studies::Asker::command);
  tell_options(read.diagnostics);
  if (has_error(read.diagnostics)) return Exit::bad_input;
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const std::vector<Diagnostic> wrong = studies::check_options(source.site, read.value);
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  studies::DeliveryResult result = studies::study_delivery(source.site, read.value);
  const Findings findings = checks::check_delivery(source.site, result);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::DeliveryFacts facts{today(), arguments.command, source.texts, {}};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, findings, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::delivery_document(result, findings, facts)));
  } else {
    const Console console = this_console();
    print(report::delivery_summary(
        result, findings, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return exit_of(result, findings);
}

}  // namespace forecourse::cli
