#include <filesystem>

#include "forecourse/checks/tank_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/cli/workbook.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/studies/tank/read_tank_options.h"

namespace forecourse::cli {
namespace {

bool write_report(const TankArguments& arguments, const SiteSource& source, const studies::TankResult& result,
                  const std::vector<checks::Finding>& findings, report::TankFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const auto in_folder = [&](const std::string& name) { return (folder / name).string(); };
  const std::string html = report::tank_report(result, findings, source.site, facts);
  facts.written = {in_folder("tank.html"), in_folder("tank.json")};
  if (!write_file(facts.written[0], html) ||
      !write_file(facts.written[1], report::to_text(report::tank_document(result, findings, facts))))
    return false;
  std::vector<report::NumberTable> charts;
  for (const studies::TankTold& tank : result.tanks) {
    if (!tank.problem.empty()) continue;
    charts.push_back(report::tank_chart_numbers(tank, source.site.display));
    facts.written.push_back(in_folder("chart-" + tank.id + ".csv"));
    if (!write_file(facts.written.back(), report::to_csv(charts.back()))) return false;
  }
  if (!charts.empty()) {
    facts.written.push_back(in_folder("charts.xlsx"));
    if (!write_workbook(facts.written.back(), charts)) return false;
  }
  if (!arguments.pdf) return true;
  facts.written.push_back(in_folder("tank.pdf"));
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit tank_command(const TankArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto read = studies::read_tank_options(arguments.asked, studies::Asker::command);
  const studies::TankOptions& options = read.value;
  const std::vector<Diagnostic> wrong = read.ok() ? studies::check_options(source.site, options) : read.diagnostics;
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  studies::TankResult result = studies::study_tank(source.site, options);
  const std::vector<checks::Finding> findings = checks::check_tanks(source.site, result);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::TankFacts facts{today(), arguments.command, source.texts, {}};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, findings, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::tank_document(result, findings, facts)));
  } else {
    const Console console = this_console();
    print(report::tank_summary(
        result, findings, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
