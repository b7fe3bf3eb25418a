#include "forecourse/server/pages/handover_files.h"

#include <utility>

#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/report/kit/kit_report.h"
#include "forecourse/server/answers/wants/handover_told.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/pages/day.h"
#include "forecourse/server/pages/workbook_file.h"

namespace forecourse::server {
namespace {

using report::Json;

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
  const report::IcsFacts facts{now_in_utc(), told.opened->site.name.text, {}};
  return {200, report::calendar_ics(told.calendar, facts), "text/calendar; charset=utf-8", {}};
}

}  // namespace

Reply handover_file(const std::string& name, const StationFacts& facts, const RecordsOf& records, const Json& asked) {
  const bool of_kit = name == "kit.csv" || name == "kit.xlsx";
  if (!of_kit && name != "calendar.ics") {
    return refusal(404, "there is no file '" + name + "'", "there are: kit.csv, kit.xlsx, calendar.ics");
  }
  constexpr auto members = std::to_array<WantMember>({{"units", "Units"}});
  WantReader reader(asked, members);
  const std::string units = read_units(reader);
  if (!reader.good()) return json_reply(reader.problem(), 400);
  Json want{{"study", of_kit ? "kit" : "calendar"}};
  if (!units.empty()) want["units"] = units;
  SharedStudies shared(facts.text, facts.file);
  const Context context;
  const Asked of{facts.text, facts.file, want, context, shared, records};
  return of_kit ? kit_file(of, name == "kit.xlsx") : calendar_file(of);
}

}  // namespace forecourse::server
