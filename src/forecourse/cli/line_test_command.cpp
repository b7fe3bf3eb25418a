#include <filesystem>
#include <optional>

#include "forecourse/checks/line_test_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/line_test/line_test_report.h"

namespace forecourse::cli {
namespace {

bool write_report(const LineTestArguments& arguments, const SiteSource& source, const studies::LineTestResult& result,
                  report::LineTestFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "line-test.html").string();
  const std::string data = (folder / "line-test.json").string();
  facts.written = {page, data};
  return write_file(page, report::line_test_report(result, source.site, facts)) &&
         write_file(data, report::to_text(report::line_test_document(result, facts)));
}

}  // namespace

Exit line_test_command(const LineTestArguments& arguments) {
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto options = studies::read_line_test_options(arguments.texts, studies::Asker::command);
  tell_options(options.diagnostics);
  const std::optional<site::Date> on = day_of(arguments.on);
  if (!options.ok() || !on) return Exit::bad_input;
  studies::LineTestResult result = studies::study_line_test(source.site, options.value);
  if (!result.errors.empty()) {
    print_error(report::to_text(result.errors, source.texts));
    return Exit::bad_input;
  }
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::LineTestFacts facts{today(),      arguments.command,
                              source.texts, checks::check_line_test(source.site, result, on),
                              {},           source.site.display};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::line_test_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::line_test_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(facts.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
