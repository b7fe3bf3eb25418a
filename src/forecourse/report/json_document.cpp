#include "forecourse/report/json_document.h"

#include <cmath>

namespace forecourse::report {
namespace {

Json defaults(const std::vector<DefaultUsed>& used) {
  Json out = Json::array();
  for (const DefaultUsed& d : used) {
    out.push_back({{"what", d.what},
                   {"value", number_or_null(d.value)},
                   {"unit", d.unit.empty() ? "1" : d.unit},
                   {"status", forecourse::word(d.status)},
                   {"source", d.source}});
  }
  return out;
}

Json warning(const Diagnostic& diagnostic, const std::vector<SourceText>& texts) {
  Json out{{"severity", word(diagnostic.severity)}, {"message", diagnostic.message}};
  out.update(place_json(diagnostic.where, texts));
  out["hint"] = diagnostic.hint;
  out["related"] = Json::array();
  for (const Diagnostic& other : diagnostic.related) out["related"].push_back(warning(other, texts));
  return out;
}

}  // namespace

Json document(const JsonDocument& document, const std::vector<SourceText>& texts) {
  Json warnings = Json::array();
  for (const Diagnostic& diagnostic : document.warnings) warnings.push_back(warning(diagnostic, texts));
  return {{"study", document.study},
          {"version", document.version},
          {"cautions", document.cautions},
          {"options", document.options},
          {"defaults", defaults(document.defaults)},
          {"result", document.result},
          {"findings", document.findings},
          {"warnings", std::move(warnings)}};
}

std::string to_text(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

Json place_json(const std::optional<SourceSpan>& where, const std::vector<SourceText>& texts) {
  if (!where || where->text >= texts.size()) return {{"file", nullptr}, {"line", nullptr}, {"column", nullptr}};
  const SourceText& source = texts[where->text];
  const LineColumn at = line_column(source.text, where->begin);
  return {{"file", source.name}, {"line", at.line}, {"column", at.column}};
}

Json number_or_null(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json number_or_null(const std::optional<double>& value) { return value ? number_or_null(*value) : Json(nullptr); }

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json count_or_null(const std::optional<int>& count) { return count ? Json(*count) : Json(nullptr); }

}  // namespace forecourse::report
