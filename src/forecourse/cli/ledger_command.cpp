#include <filesystem>
#include <optional>

#include "forecourse/checks/ledger_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/store/read_records.h"

namespace forecourse::cli {
namespace {

bool write_report(const LedgerArguments& arguments, const SiteSource& source, const studies::LedgerResult& result,
                  report::LedgerFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "ledger.html").string();
  const std::string data = (folder / "ledger.json").string();
  facts.written = {page, data};
  const std::string html = report::ledger_report(result, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::ledger_document(result, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "ledger.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit ledger_command(const LedgerArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto options = studies::read_ledger_options(arguments.asked, studies::Asker::command);
  std::vector<Diagnostic> wrong = options.diagnostics;
  const std::vector<Diagnostic> not_there = studies::check_options(source.site, options.value);
  wrong.insert(wrong.end(), not_there.begin(), not_there.end());
  tell_options(wrong);
  if (has_error(wrong)) return Exit::bad_input;
  const auto records = store::read_records(arguments.records, source.texts, &source.site);
  if (!records.ok()) {
    print_error(report::to_text(records.diagnostics, source.texts));
    return Exit::bad_input;
  }
  studies::LedgerResult result = studies::study_ledger(source.site, records.value, options.value);
  result.warnings.insert(result.warnings.begin(), records.diagnostics.begin(), records.diagnostics.end());
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::LedgerFacts facts{today(), arguments.command,  source.texts, checks::check_ledger(result),
                            {},      source.site.display};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::ledger_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::ledger_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(facts.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
