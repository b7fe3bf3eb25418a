#include "forecourse/server/http/body.h"
#include "forecourse/server/http/routes.h"
#include "forecourse/site/read.h"

namespace forecourse::server {
namespace {

using report::Json;

/// The texts of a row, by the names of their columns; what is not typed may be left out or null.
std::vector<EnteredValue> values_of(const Json& body, BodyReader& reader) {
  std::vector<EnteredValue> out;
  if (!body.is_object() || !body.contains("values") || !body["values"].is_object()) {
    reader.refuse("'values' is missing", "write them as texts by the names of their columns");
    return out;
  }
  for (const auto& [column, value] : body["values"].items()) {
    if (value.is_null()) continue;
    if (value.is_string()) {
      out.push_back({column, value.get<std::string>()});
    } else {
      reader.refuse("'" + column + "' is a text", "write it in quotes, with its unit");
    }
  }
  return out;
}

Reply enter(const Desk& desk, StationRecords& records, const Call& call) {
  BodyReader body(call.body);
  const std::string kind = body.text("kind");
  const std::vector<EnteredValue> values = values_of(call.body, body);
  if (!body.good()) return refusal(400, body.error(), body.hint());
  const StationFacts facts = desk.facts();
  const Entered entered = records.enter(facts.path, site::read_site(facts.text).value, kind, values);
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
