#include <map>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/drawing/tone.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/answers/station/diagnostics_json.h"
#include "forecourse/server/answers/station/station_parts.h"
#include "forecourse/site/read.h"
#include "forecourse/site/text/line_starts.h"

namespace forecourse::server {
namespace {

using report::Json;
using report::text_or_null;

/// What the fields of one station share.
struct Around {
  site::LineStarts lines;
  std::map<std::string, std::string> problems;  ///< by path
  std::map<site::PartKind, std::vector<std::string>> ids;
};

/// The words of a closed list, or the ids that a reference may name.
Json choices(const StationField& field, Around& around, const std::vector<StationPart>& parts) {
  if (field.what == nullptr) return nullptr;
  if (!field.what->choices.empty()) return field.what->choices;
  if (!field.what->names) return nullptr;
  auto [found, fresh] = around.ids.try_emplace(*field.what->names);
  if (fresh) found->second = ids_of(parts, *field.what->names);
  return found->second;
}

Json field_json(const StationField& field, Around& around, const std::vector<StationPart>& parts) {
  const auto problem = around.problems.find(field.path);
  return {
      {"path", field.path},
      {"key", field.key},
      {"kind", field.what == nullptr ? "unknown" : field.what->kind},
      {"table", field.what == nullptr || field.what->below == nullptr ? Json(nullptr) : Json(field.what->below->name)},
      {"required", field.what != nullptr && field.what->required},
      {"text", field.text ? Json(*field.text) : Json(nullptr)},
      {"us", text_or_null(field.shown.us)},
      {"si", text_or_null(field.shown.si)},
      {"choices", choices(field, around, parts)},
      {"help", field.what == nullptr ? std::string() : field.what->help},
      {"line", field.text ? Json(around.lines.line(field.where.begin)) : Json(nullptr)},
      {"problem", problem == around.problems.end() ? Json(nullptr) : Json(problem->second)}};
}

Json part_json(const StationPart& part, Around& around, const std::vector<StationPart>& parts) {
  Json fields = Json::array();
  for (const StationField& field : part.fields) fields.push_back(field_json(field, around, parts));
  Json position;
  if (part.position) position = {{"x_m", part.position->first}, {"y_m", part.position->second}};
  return {{"path", part.path},
          {"kind", part.kind},
          {"id", part.id},
          {"stop", part.stop == 0 ? Json(nullptr) : Json(part.stop)},
          {"product", text_or_null(part.product)},
          {"of", text_or_null(part.of)},
          {"position", std::move(position)},
          {"fields", std::move(fields)}};
}

Json products_json(const site::Site& site) {
  return report::array_of(site.products, [&](const site::Product& product) {
    return Json{{"id", product.id.text}, {"tone", report::drawing::tone_of(site, product.id.text)}};
  });
}

/// The keys of every table, for forms that add one.
Json tables_json() {
  Json out = Json::object();
  for (const DescribedTable* table : described_tables()) {
    Json keys = Json::array();
    for (const DescribedKey& key : table->keys) {
      keys.push_back({{"key", key.key},
                      {"kind", key.kind},
                      {"table", key.below == nullptr ? Json(nullptr) : Json(key.below->name)},
                      {"required", key.required},
                      {"choices", key.choices.empty() ? Json(nullptr) : Json(key.choices)},
                      {"help", key.help}});
    }
    out[table->name] = std::move(keys);
  }
  return out;
}

}  // namespace

Json station_json(const StationFacts& facts) {
  static const Json tables = tables_json();
  const Parsed<site::Site> read = site::read_site(facts.text);
  const Parsed<site::Document> document = site::read_document(facts.text, 0);
  const std::vector<StationPart> parts = station_parts(document.value.root, facts.text);
  Around around{site::LineStarts(facts.text), problems_by_path(read.diagnostics, parts), {}};
  Json listed = Json::array();
  for (const StationPart& part : parts) listed.push_back(part_json(part, around, parts));
  return {{"revision", facts.revision},
          {"file", facts.file},
          {"name", read.value.name.text},
          {"display", read.value.display == site::Display::us ? "us" : "si"},
          {"text", facts.text},
          {"editable", facts.editable},
          {"undo", text_or_null(facts.undo)},
          {"redo", text_or_null(facts.redo)},
          {"diagnostics", diagnostics_json(read.diagnostics, facts.text, parts)},
          {"products", products_json(read.value)},
          {"parts", std::move(listed)},
          {"tables", tables}};
}

}  // namespace forecourse::server
