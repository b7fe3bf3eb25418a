#include <filesystem>

#include "forecourse/checks/flotation_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/studies/flotation/read_flotation_options.h"

namespace forecourse::cli {
namespace {

bool write_report(const FlotationArguments& arguments, const SiteSource& source, const studies::FlotationResult& result,
                  report::FlotationFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "flotation.html").string();
  const std::string data = (folder / "flotation.json").string();
  facts.written = {page, data};
  const std::string html = report::flotation_report(result, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::flotation_document(result, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "flotation.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit flotation_command(const FlotationArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto options = studies::read_flotation_options(
      {arguments.tank, arguments.water_level, arguments.filled, arguments.factor}, studies::Asker::command);
  tell_options(options.diagnostics);
  if (!options.ok()) return Exit::bad_input;
  studies::FlotationResult result = studies::study_flotation(source.site, options.value);
  if (!result.errors.empty()) {
    print_error(report::to_text(result.errors, source.texts));
    return Exit::bad_input;
  }
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::FlotationFacts facts{today(), arguments.command, source.texts, checks::check_flotation(result), {}};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::flotation_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::flotation_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(facts.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
