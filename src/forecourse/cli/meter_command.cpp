#include <filesystem>
#include <optional>

#include "forecourse/checks/meter_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/store/read_draw.h"
#include "forecourse/store/read_records.h"
#include "forecourse/studies/ledger/ledger.h"

namespace forecourse::cli {
namespace {

bool write_report(const MeterArguments& arguments, const SiteSource& source, const studies::MeterResult& result,
                  report::MeterFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "meter.html").string();
  const std::string data = (folder / "meter.json").string();
  facts.written = {page, data};
  const std::string html = report::meter_report(result, source.site, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::meter_document(result, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "meter.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

/// "2026-11-30"
std::string today_written() {
  const std::optional<site::Date> day = day_of("");
  return day ? studies::text(studies::day_of(*day)) : std::string();
}

void add(const std::vector<Diagnostic>& more, std::vector<Diagnostic>& all) {
  all.insert(all.end(), more.begin(), more.end());
}

/// The draws on the command line and those on record; everything that is wrong with either is told at once.
std::optional<site::records::Records> records_of(const MeterArguments& arguments, SiteSource& source) {
  Parsed<site::records::Records> out;
  if (!arguments.records.empty()) out = store::read_records(arguments.records, source.texts, &source.site);
  const auto draws =
      store::read_draws(arguments.draws, arguments.texts.hose, today_written(), source.texts, source.site);
  add(draws.diagnostics, out.diagnostics);
  if (draws.ok()) add(studies::check_draws(source.site, draws.value), out.diagnostics);
  print_error(report::to_text(out.diagnostics, source.texts));
  if (!out.ok()) return std::nullopt;
  out.value.provings.insert(out.value.provings.end(), draws.value.begin(), draws.value.end());
  return std::move(out.value);
}

}  // namespace

Exit meter_command(const MeterArguments& arguments) {
  std::vector<Diagnostic> wrong;
  const auto refuse = [&](const char* message, const char* hint) {
    wrong.push_back({Severity::error, message, std::nullopt, hint, {}});
  };
  if (arguments.pdf && arguments.site.out.empty()) refuse("--pdf needs --out, the folder to write into", "");
  if (arguments.records.empty() && arguments.draws.empty()) {
    refuse("there is no draw to judge",
           "give --records, or --hose and --draw \"indicated=5 gal, measure=5 gal, scale=-7 in3\"");
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto options = studies::read_meter_options(arguments.texts, studies::Asker::command);
  add(options.diagnostics, wrong);
  add(studies::check_options(source.site, options.value), wrong);
  tell_options(wrong);
  const auto records = records_of(arguments, source);
  if (has_error(wrong) || !records) return Exit::bad_input;
  studies::MeterResult result = studies::study_meter(
      source.site, *records, options.value,
      studies::book_meters(source.site, *records, options.value.from, options.value.to, options.value.expansion));
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::MeterFacts facts{today(), arguments.command,  source.texts, checks::check_meter(result),
                           {},      source.site.display};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::meter_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::meter_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return falls_short(facts.findings) ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
