#include <algorithm>
#include <iterator>

#include "forecourse/checks/station/check_records.h"
#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {
namespace {

using report::Json;

/// Of the studies those with duties that come back.
checks::Studied study(const site::Site& site, const Context& context) {
  checks::Studied out;
  if (!site.tanks.empty()) out.vapor = studies::study_vapor(site, {}, context);
  if (!site.lines.empty()) out.line_test = studies::study_line_test(site, {}, context);
  return out;
}

/// Days that are yet to come stand first; the command refuses them.
void add_wrong_days(const site::records::Records* records, handover::Calendar& calendar) {
  std::vector<Diagnostic> told = std::move(calendar.wrong_days);
  std::erase_if(told, [](const Diagnostic& one) { return one.where && one.where->text != 0; });
  if (records != nullptr) {
    std::vector<Diagnostic> more = checks::check_records(*records, calendar.today);
    std::move(more.begin(), more.end(), std::back_inserter(told));
  }
  calendar.warnings.insert(calendar.warnings.begin(), told.begin(), told.end());
}

}  // namespace

Json calendar_answer(const Asked& asked) {
  constexpr double longest = 36525.0;  // [d]
  WantReader want(asked.want, calendar_members);
  const site::Date on = read_day(want);
  const std::optional<double> within = want.number("within", 0.0, longest);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  std::vector<SourceText> texts = opened.texts;
  // Records that cannot be read prove nothing; their sheet tells why.
  const std::shared_ptr<const ReadRecords> records = asked.records ? asked.records(opened.site) : nullptr;
  const site::records::Records* read = records && records->read.ok() ? &records->read.value : nullptr;
  if (read != nullptr) texts.insert(texts.end(), records->texts.begin(), records->texts.end());
  const checks::Studied studied = study(opened.site, asked.context);
  const checks::CheckResult checked = checks::check_station(checks::facts_of(opened.site, studied, on, read), studied);
  handover::CalendarOptions options;
  if (within) options.within = static_cast<int>(*within);
  handover::Calendar calendar = handover::calendar_of(checked, options);
  calendar.version = FORECOURSE_VERSION;
  add_wrong_days(read, calendar);
  return {{"document", report::calendar_document(calendar, {{}, {}, texts, {}})}};
}

}  // namespace forecourse::server
