#include "forecourse/server/answers/wants/handover_told.h"

#include "forecourse/checks/station/check_records.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/site/has_parts.h"

namespace forecourse::server {
namespace {

void append(const std::vector<Diagnostic>& more, std::vector<Diagnostic>& out) {
  out.insert(out.end(), more.begin(), more.end());
}

/// What stands above the warnings of a calendar's studies, as the command tells it: of the site file, of the records,
/// and of their days and parts. The command refuses days that are yet to come; here they stand among the rest.
std::vector<Diagnostic> told_first(const ToldCalendar& told, const site::records::Records* records) {
  std::vector<Diagnostic> out = told.opened->warnings;
  if (records != nullptr) append(told.records->read.diagnostics, out);
  append(checks::check_days_and_parts(records, told.opened->site, told.calendar.today), out);
  append(told.calendar.wrong_days, out);
  return out;
}

}  // namespace

ToldKit told_kit(const Asked& asked) {
  ToldKit out;
  WantReader want(asked.want, kit_members);
  out.opened = &asked.shared.opened(read_units(want));
  out.problem = want.good() ? out.opened->problem : want.problem();
  if (!out.problem.is_null()) return out;
  const site::Site& site = out.opened->site;
  studies::FlowOptions options;
  options.spans = options.ladders = false;  // no pressure without flow rests on them
  const studies::FlowResult* flow =
      site::has_hose(site) ? &asked.shared.flow(*out.opened, options, asked.context) : nullptr;
  out.kit = handover::make_kit(site, {}, flow);
  out.kit.version = FORECOURSE_VERSION;
  out.kit.warnings.insert(out.kit.warnings.begin(), out.opened->warnings.begin(), out.opened->warnings.end());
  return out;
}

ToldCalendar told_calendar(const Asked& asked) {
  constexpr double longest = 36525.0;  // [d]
  ToldCalendar out;
  WantReader want(asked.want, calendar_members);
  const site::Date on = read_day(want);
  handover::CalendarOptions options;
  if (const auto within = want.number("within", 0.0, longest)) options.within = static_cast<int>(*within);
  out.opened = &asked.shared.opened(read_units(want));
  out.problem = want.good() ? out.opened->problem : want.problem();
  if (!out.problem.is_null()) return out;
  const site::Site& site = out.opened->site;
  out.texts = out.opened->texts;
  out.records = asked.records ? asked.records(site) : nullptr;
  const site::records::Records* read = out.records && out.records->read.ok() ? &out.records->read.value : nullptr;
  if (out.records) out.texts.insert(out.texts.end(), out.records->texts.begin(), out.records->texts.end());
  const checks::Studied studied = checks::study_for_checks(site, read, asked.context);
  out.calendar =
      handover::calendar_of(checks::check_station(checks::facts_of(site, studied, on, read), studied), options);
  out.calendar.version = FORECOURSE_VERSION;
  std::vector<Diagnostic> warnings = told_first(out, read);
  append(out.calendar.warnings, warnings);
  out.calendar.warnings = std::move(warnings);
  return out;
}

}  // namespace forecourse::server
