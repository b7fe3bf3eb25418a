#include <algorithm>

#include "forecourse/handover/calendar/proofs.h"
#include "forecourse/handover/parts/station_parts.h"
#include "forecourse/report/calendar/calendar_report.h"
#include "forecourse/server/answers/station/station_parts.h"
#include "forecourse/server/answers/wants/handover_told.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/records_told.h"
#include "forecourse/site/records/test_words.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {
namespace {

using report::Json;

Json proof_json(const handover::Duty& duty) {
  const auto proof = handover::proof_of(duty);
  if (!proof) return {};
  const std::string kind = proof->test ? std::string(word(*proof->test)) : proof->inspection;
  return {{"records", proof->test ? "tests" : "inspections"}, {"kind", kind}, {"part", proof->part}};
}

/// The path of the value, else of the part, that a duty's place lies in; where the text tells none, of the part that
/// stands there.
std::string path_of(const std::vector<StationPart>& parts, const std::vector<handover::StationPart>& listed,
                    SourceSpan where) {
  std::string path = path_at(parts, where);
  const auto part = std::ranges::find(listed, where, &handover::StationPart::where);
  return path.empty() && part != listed.end() ? part->path : path;
}

/// Each duty with the path of the part that it is of, or of the day that is entered, and with the record that moves its
/// day.
void add_parts(const std::string& text, const site::Site& site, const handover::Calendar& calendar, Json& duties) {
  const std::vector<StationPart> parts = station_parts(site::read_document(text, 0).value.root, text);
  const std::vector<handover::StationPart> listed = handover::parts_of_station(site);
  for (std::size_t i = 0; i < calendar.duties.size(); ++i) {
    const SourceSpan& where = calendar.duties[i].where;
    const bool known = where.text == 0 && where.end > where.begin;
    duties[i]["proof"] = proof_json(calendar.duties[i]);
    duties[i]["path"] = known ? report::text_or_null(path_of(parts, listed, where)) : Json();
  }
}

}  // namespace

Json calendar_answer(const Asked& asked) {
  const ToldCalendar told = told_calendar(asked);
  if (!told.problem.is_null()) return told.problem;
  Json document = report::calendar_document(told.calendar, {{}, {}, told.texts});
  add_parts(asked.text, told.opened->site, told.calendar, document["result"]["duties"]);
  const bool bad = told.records && !told.records->read.ok();
  return {{"document", std::move(document)},
          {"records", told.records ? records_json(*told.records) : Json()},
          {"wrong", bad ? unreadable(*told.records, told.texts)["wrong"] : Json::array()}};
}

}  // namespace forecourse::server
