#include "forecourse/server/answers/wants/handover_told.h"

#include <algorithm>
#include <iterator>

#include "forecourse/checks/station/check_records.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/site/has_parts.h"

namespace forecourse::server {
namespace {

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
  const checks::Studied studied = study(site, asked.context);
  out.calendar =
      handover::calendar_of(checks::check_station(checks::facts_of(site, studied, on, read), studied), options);
  out.calendar.version = FORECOURSE_VERSION;
  add_wrong_days(read, out.calendar);
  return out;
}

}  // namespace forecourse::server
