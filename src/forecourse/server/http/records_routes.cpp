#include "forecourse/server/http/body.h"
#include "forecourse/server/http/routes.h"
#include "forecourse/site/read.h"

namespace forecourse::server {
namespace {

using report::Json;

/// The texts of a row, by the names of their columns; what is not typed may be left out or null.
EnteredRow row_of(const Json& values, BodyReader& reader) {
  EnteredRow out;
  if (!values.is_object()) {
    reader.refuse("the values of a row are missing", "write them as texts by the names of their columns");
    return out;
  }
  for (const auto& [column, value] : values.items()) {
    if (value.is_null()) continue;
    if (value.is_string()) {
      out.push_back({column, value.get<std::string>()});
    } else {
      reader.refuse("'" + column + "' is a text", "write it in quotes, with its unit");
    }
  }
  return out;
}

/// One row, "values", or several of one kind, "rows".
std::vector<EnteredRow> rows_of(const Json& body, BodyReader& reader) {
  std::vector<EnteredRow> out;
  if (body.is_object() && !body.contains("rows")) return {row_of(body.value("values", Json()), reader)};
  for (const Json& values : reader.list("rows", false)) out.push_back(row_of(values, reader));
  if (out.empty()) reader.refuse("'rows' holds none", "write one at least");
  return out;
}

Reply enter(const Desk& desk, StationRecords& records, const Call& call) {
  BodyReader body(call.body);
  const std::string kind = body.text("kind");
  const std::vector<EnteredRow> rows = rows_of(call.body, body);
  if (!body.good()) return refusal(400, body.error(), body.hint());
  const StationFacts facts = desk.facts();
  const Entered entered = records.enter(facts.path, site::read_site(facts.text).value, kind, rows);
  if (entered.stored) return json_reply({{"stored", true}});
  return refusal(entered.read_only ? 403 : 422, entered.error, entered.hint);
}

Reply take_back(const Desk& desk, StationRecords& records) {
  std::string taken;
  const Entered done = records.take_back(desk.facts().path, taken);
  if (done.stored) return json_reply({{"taken", taken}});
  return refusal(done.read_only ? 403 : 422, done.error, done.hint);
}

}  // namespace

std::vector<Route> records_routes(const Desk& desk, StationRecords& records) {
  return {
      {"POST", "/api/records", Route::Access::keyed, [&](const Call& call) { return enter(desk, records, call); }},
      {"POST", "/api/records/take-back", Route::Access::keyed, [&](const Call&) { return take_back(desk, records); }}};
}

}  // namespace forecourse::server
