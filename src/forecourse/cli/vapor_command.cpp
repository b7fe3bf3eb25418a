#include <filesystem>
#include <optional>

#include "forecourse/checks/vapor_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::cli {
namespace {

bool write_report(const VaporArguments& arguments, const SiteSource& source, const studies::VaporResult& result,
                  report::VaporFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "vapor.html").string();
  const std::string data = (folder / "vapor.json").string();
  facts.written = {page, data};
  const std::string html = report::vapor_report(result, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::vapor_document(result, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "vapor.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit vapor_command(const VaporArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto temperature =
      studies::read_option<Temperature>("temperature", arguments.temperature, studies::Asker::command);
  tell_options(temperature.diagnostics);
  const std::optional<site::Date> on = day_of(arguments.on);
  if (!temperature.ok() || !on) return Exit::bad_input;
  studies::VaporOptions options;
  if (temperature.value) options.temperature = temperature.value->likely.si();
  studies::VaporResult result = studies::study_vapor(source.site, options);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::VaporFacts facts{today(), arguments.command, source.texts, checks::check_vapor(source.site, result, on), {}};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::vapor_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::vapor_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(facts.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
