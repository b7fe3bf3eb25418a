#include "forecourse/server/pages/handover_files.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "forecourse/checks/rules/period.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/handover/drawings/drawings.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/draw/draw_report.h"
#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/sheets/sheets_report.h"
#include "forecourse/server/answers/wants/handover_told.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/pages/day.h"
#include "forecourse/server/pages/workbook_file.h"

namespace forecourse::server {
namespace {

using report::Json;

constexpr const char* html_type = "text/html; charset=utf-8";
constexpr auto units_members = std::to_array<WantMember>({{"units", "Units"}});
constexpr const char* xlsx_type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

Reply kit_file(const Asked& asked, bool as_workbook) {
  const ToldKit told = told_kit(asked);
  if (!told.problem.is_null()) return json_reply(told.problem, 422);
  const std::vector<report::CellTable> tables = report::kit_tables(told.kit, told.opened->site.display);
  if (!as_workbook) return {200, report::to_csv(tables.front()), "text/csv; charset=utf-8", {}};
  std::string bytes;
  if (const std::string why = make_workbook(bytes, tables); !why.empty()) {
    return refusal(500, "no table was made: " + why, "take it as CSV");
  }
  return {200, std::move(bytes), xlsx_type, {}};
}

Reply calendar_file(const Asked& asked) {
  const ToldCalendar told = told_calendar(asked);
  if (!told.problem.is_null()) return json_reply(told.problem, 422);
  const report::IcsFacts facts{now_in_utc(), told.opened->site.name.text, {}, asked.file};
  return {200, report::calendar_ics(told.calendar, facts), "text/calendar; charset=utf-8", {}};
}

/// The station of a file that is made from the site alone, or the refusal of one that cannot be studied.
const OpenedSite* opened_for(const Asked& asked, Reply& refused) {
  WantReader want(asked.want, units_members);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (opened.problem.is_null()) return &opened;
  refused = json_reply(opened.problem, 422);
  return nullptr;
}

Reply sheets_file(const Asked& asked) {
  Reply refused;
  const OpenedSite* opened = opened_for(asked, refused);
  if (opened == nullptr) return refused;
  const auto records = asked.records ? asked.records(opened->site) : nullptr;
  const site::records::Records* read = records && records->read.ok() ? &records->read.value : nullptr;
  const checks::Studied studied = checks::study_for_checks(opened->site, read, asked.context);
  const checks::Facts facts = checks::facts_of(opened->site, studied, today(), read);
  const handover::SheetPack pack = handover::make_sheets(facts, studied, {});
  return {200, report::sheets_page(pack, opened->site, {checks::text(today()), {}, opened->texts}), html_type, {}};
}

Reply drawing_file(const Asked& asked, const std::string& which, bool as_svg) {
  Reply refused;
  const OpenedSite* opened = opened_for(asked, refused);
  if (opened == nullptr) return refused;
  handover::DrawingOptions options;
  options.which = which;
  options.date = checks::text(today());
  const auto wrong = handover::check_drawing_options(opened->site, options);
  if (!wrong.empty()) return refusal(422, wrong.front().message, wrong.front().hint);
  const handover::DrawingSet set = handover::draw_station(opened->site, options);
  const auto drawing =
      std::find_if(set.drawings.begin(), set.drawings.end(), [&](const auto& one) { return one.id == which; });
  if (as_svg) return {200, report::draw_svg(*drawing), "image/svg+xml", {}};
  return {200, report::draw_dxf(*drawing, opened->site.display), "image/vnd.dxf", {}};
}

/// A file that is handed over, by its name.
struct HandoverFile {
  std::string_view name;
  std::string_view study;  ///< of the want that it answers; empty: none
  Reply (*make)(const Asked&);
};

constexpr auto files = std::to_array<HandoverFile>({
    {"kit.csv", "kit", [](const Asked& asked) { return kit_file(asked, false); }},
    {"kit.xlsx", "kit", [](const Asked& asked) { return kit_file(asked, true); }},
    {"calendar.ics", "calendar", calendar_file},
    {"sheets.html", "", sheets_file},
    {"plan.svg", "", [](const Asked& asked) { return drawing_file(asked, "plan", true); }},
    {"plan.dxf", "", [](const Asked& asked) { return drawing_file(asked, "plan", false); }},
    {"section.svg", "", [](const Asked& asked) { return drawing_file(asked, "section", true); }},
    {"section.dxf", "", [](const Asked& asked) { return drawing_file(asked, "section", false); }},
    {"tank.svg", "", [](const Asked& asked) { return drawing_file(asked, "tank", true); }},
    {"tank.dxf", "", [](const Asked& asked) { return drawing_file(asked, "tank", false); }},
    {"dispenser.svg", "", [](const Asked& asked) { return drawing_file(asked, "dispenser", true); }},
    {"dispenser.dxf", "", [](const Asked& asked) { return drawing_file(asked, "dispenser", false); }},
});

std::string names_of_files() {
  std::string out;
  for (const HandoverFile& one : files) out += (out.empty() ? "" : ", ") + std::string(one.name);
  return out;
}

}  // namespace

Reply handover_file(const std::string& name, const StationFacts& facts, const RecordsOf& records, const Json& asked) {
  const auto file = std::find_if(files.begin(), files.end(), [&](const HandoverFile& one) { return one.name == name; });
  if (file == files.end()) return refusal(404, "there is no file '" + name + "'", "there are: " + names_of_files());
  WantReader reader(asked, units_members);
  const std::string units = read_units(reader);
  if (!reader.good()) return json_reply(reader.problem(), 400);
  Json want = Json::object();
  if (!file->study.empty()) want["study"] = file->study;
  if (!units.empty()) want["units"] = units;
  SharedStudies shared(facts.text, facts.file);
  const Context context;
  return file->make({facts.text, facts.file, want, context, shared, records});
}

}  // namespace forecourse::server
