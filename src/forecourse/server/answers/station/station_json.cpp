#include <map>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/drawing/tone.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/answers/station/diagnostics_json.h"
#include "forecourse/server/answers/station/station_parts.h"
#include "forecourse/site/describing/value_words.h"
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
};

/// What it is stands in the tables; what it has not is left out.
Json field_json(const StationField& field, const StationPart& part, Around& around) {
  Json out{{"key", field.key}, {"in", field.what == nullptr ? Json(nullptr) : Json(field.what->in)}};
  if (field.path != part.path + "." + field.key) out["path"] = field.path;
  if (field.text) {
    out["text"] = *field.text;
    out["line"] = around.lines.line(field.where.begin);
  }
  if (!field.shown.us.empty()) out["us"] = field.shown.us;
  if (!field.shown.si.empty()) out["si"] = field.shown.si;
  if (const auto problem = around.problems.find(field.path); problem != around.problems.end())
    out["problem"] = problem->second;
  return out;
}

Json part_json(const StationPart& part, Around& around) {
  Json fields = Json::array();
  for (const StationField& field : part.fields) fields.push_back(field_json(field, part, around));
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

Json key_json(const DescribedKey& key) {
  Json out{{"key", key.key},
           {"kind", key.kind},
           {"table", key.below == nullptr ? Json(nullptr) : Json(key.below->name)},
           {"required", key.required},
           {"choices", key.choices.empty() ? Json(nullptr) : Json(key.choices)},
           {"help", key.help}};
  if (key.names) out["names"] = std::string(site::reference_word(*key.names));
  return out;
}

Json all_tables() {
  Json out = Json::object();
  std::vector<const DescribedTable*> tables = described_tables();
  tables.push_back(&described_site_file());
  for (const DescribedTable* table : tables) out[table->name] = report::array_of(table->keys, key_json);
  return out;
}

/// The ids that references may name, by what they name.
Json ids_json(const std::vector<StationPart>& parts) {
  using site::PartKind;
  Json out = Json::object();
  for (const PartKind kind :
       {PartKind::product, PartKind::tank, PartKind::pump, PartKind::hose, PartKind::place, PartKind::pump_or_dispenser,
        PartKind::tripping_part, PartKind::incident_place, PartKind::delivery})
    out[std::string(site::reference_word(kind))] = ids_of(parts, kind);
  return out;
}

}  // namespace

const Json& tables_json() {
  static const Json tables = all_tables();
  return tables;
}

Json station_json(const StationFacts& facts) {
  const Parsed<site::Site> read = site::read_site(facts.text);
  const Parsed<site::Document> document = site::read_document(facts.text, 0);
  const std::vector<StationPart> parts = station_parts(document.value.root, facts.text);
  Around around{site::LineStarts(facts.text), problems_by_path(read.diagnostics, parts)};
  Json listed = Json::array();
  for (const StationPart& part : parts) listed.push_back(part_json(part, around));
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
          {"ids", ids_json(parts)}};
}

}  // namespace forecourse::server
