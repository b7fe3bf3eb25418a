#include <filesystem>
#include <optional>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/cli/rule_source.h"
#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::cli {
namespace {

/// What a figure is of, as a rule set writes its limit.
std::string form_of(const checks::Figure& figure) {
  if (figure.kind == checks::FigureKind::fact) return "is = true or false";
  if (figure.kind == checks::FigureKind::day) return "every = \"1 year\"";
  return figure.quantity == nullptr ? "a count" : figure.quantity->noun;
}

Exit list_figures() {
  const Console console = this_console();
  report::terminal::Page page({static_cast<std::size_t>(console.width), console.color, console.utf8, false});
  page.title("Figures that a requirement can be set on");
  report::terminal::Table table{{{"Figure"}, {"Of", false, true}, {"Limit", false, true}}, {}};
  for (const checks::Figure& one : checks::figures()) {
    table.rows.push_back({std::string(one.id), std::string(one.words), form_of(one)});
  }
  page.table(table);
  print(page.text());
  return Exit::fine;
}

bool write_report(const ChecksArguments& arguments, const SiteSource& source, const checks::CheckResult& result,
                  report::ChecksFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "checks.html").string();
  const std::string data = (folder / "checks.json").string();
  facts.written = {page, data};
  const std::string html = report::checks_report(result, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::checks_document(result, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "checks.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit checks_command(const ChecksArguments& arguments) {
  if (arguments.figures) return list_figures();
  if (arguments.site.path.empty() || (arguments.pdf && arguments.site.out.empty())) {
    print_error(arguments.site.path.empty() ? "error: checks needs a site file, or --figures\n"
                                            : "error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const std::optional<site::Date> on = day_of(arguments.on);
  const auto own = read_rule_sets(arguments.rules, source.texts);
  std::optional<site::records::Records> records;
  if (!on || !own || !read_given_records(arguments.records, source, records)) return Exit::bad_input;
  const site::records::Records* given = records ? &*records : nullptr;
  const checks::Studied studied = checks::study_for_checks(source.site, given);
  checks::CheckResult result = checks::check_station(checks::facts_of(source.site, studied, *on, given), studied, *own);
  result.version = FORECOURSE_VERSION;
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::ChecksFacts facts{today(), arguments.command, source.texts, {}};
  if (arguments.mend) {
    facts.mends = decide::mend_station({source.texts.front().text, *on, given, *own}).mends;
  }
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::checks_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::checks_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(checks::all_findings(result)) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
