#include <filesystem>
#include <optional>

#include "forecourse/checks/station/check_records.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/cli/rule_source.h"
#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/diagnostic_text.h"

namespace forecourse::cli {
namespace {

/// Days from a day to another a stretch later: "90 days", "3 months". Empty, with the reason on standard error, if it
/// is none.
std::optional<int> days_of(const char* option, const std::string& text, const site::Date& from) {
  if (const auto period = checks::read_period(text)) return checks::days_between(from, checks::later(from, *period));
  print_error(std::string("error: ") + option + " is a stretch of time, but '" + text +
              "' is written\n  hint: write \"90 days\", \"3 months\" or \"1 year\"\n");
  return std::nullopt;
}

/// Tells what is wrong with the days and parts of the records, and with the days of the site file; false where any is
/// an error.
bool days_hold(const std::vector<Diagnostic>& told, SiteSource& source) {
  print_error(report::to_text(told, source.texts));  // with its place, which a report does not tell
  if (has_error(told)) return false;
  source.warnings.insert(source.warnings.end(), told.begin(), told.end());
  return true;
}

bool write_calendar(const std::string& path, const handover::Calendar& calendar, const report::IcsFacts& facts) {
  return write_file(path, report::calendar_ics(calendar, facts));
}

bool write_report(const CalendarArguments& arguments, const SiteSource& source, const handover::Calendar& calendar,
                  const report::IcsFacts& ics, report::ReportFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "calendar.html").string();
  const std::string data = (folder / "calendar.json").string();
  const std::string file = (folder / "calendar.ics").string();
  facts.written = {page, data, file};
  const std::string html = report::calendar_report(calendar, source.site, facts);
  if (!write_file(page, html) || !write_calendar(file, calendar, ics) ||
      !write_file(data, report::to_text(report::calendar_document(calendar, facts))))
    return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "calendar.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

/// Everything that the command is told, read.
struct Asked {
  SiteSource source;
  site::Date on;
  std::vector<site::RuleSet> own;
  std::optional<site::records::Records> records;
  handover::CalendarOptions options;
  std::optional<int> remind;
};

bool read_asked(const CalendarArguments& arguments, Asked& asked) {
  if (!load_site(arguments.site, asked.source)) return false;
  const std::optional<site::Date> on = day_of(arguments.on);
  auto own = read_rule_sets(arguments.rules, asked.source.texts);
  if (!on || !own || !read_given_records(arguments.records, asked.source, asked.records)) return false;
  asked.on = *on;
  asked.own = std::move(*own);
  const auto within = days_of("--within", arguments.within, *on);
  if (!within) return false;
  asked.options.within = *within;
  if (arguments.remind.empty()) return true;
  asked.remind = days_of("--remind", arguments.remind, *on);
  return asked.remind.has_value();
}

}  // namespace

Exit calendar_command(const CalendarArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  Asked asked;
  if (!read_asked(arguments, asked)) return Exit::bad_input;
  SiteSource& source = asked.source;
  const site::records::Records* records = asked.records ? &*asked.records : nullptr;
  const checks::Studied studied = checks::study_for_checks(source.site, records);
  const checks::CheckResult checked =
      checks::check_station(checks::facts_of(source.site, studied, asked.on, records), studied, asked.own);
  handover::Calendar calendar = handover::calendar_of(checked, asked.options);
  std::vector<Diagnostic> told = checks::check_days_and_parts(records, source.site, asked.on);
  told.insert(told.end(), calendar.wrong_days.begin(), calendar.wrong_days.end());
  if (!days_hold(told, source)) return Exit::bad_input;
  calendar.version = FORECOURSE_VERSION;
  calendar.warnings.insert(calendar.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::ReportFacts facts{today(), arguments.command, source.texts};
  const report::IcsFacts ics{now_in_utc(), source.site.name.text, asked.remind, source.texts.front().name};
  if (!arguments.site.out.empty() && !write_report(arguments, source, calendar, ics, facts)) return Exit::bad_input;
  if (!arguments.ics.empty() && !write_calendar(arguments.ics, calendar, ics)) return Exit::bad_input;
  if (!arguments.ics.empty()) facts.written.push_back(arguments.ics);
  if (arguments.site.json) {
    print(report::to_text(report::calendar_document(calendar, facts)));
  } else {
    const Console console = this_console();
    print(report::calendar_summary(
        calendar, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return calendar.counts.failed + calendar.counts.overdue > 0 ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
