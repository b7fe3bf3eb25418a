#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/report/diagnostic_text.h"

namespace forecourse::report {

using Json = nlohmann::ordered_json;

/// What `--json` prints for a study. Values are in SI with the unit in the key, plain pressures of a place end in
/// `pressure_gauge_pa`, and what is not determined is null.
struct JsonDocument {
  std::string study;
  std::string version;
  std::vector<std::string> cautions;
  Json options = Json::object();
  std::vector<DefaultUsed> defaults;
  Json result = Json::object();
  Json findings = Json::array();  ///< of findings_json in findings.h
  std::vector<Diagnostic> warnings;
};

/// One object with the keys `study`, `version`, `cautions`, `options`, `defaults`, `result`, `findings`, `warnings`.
///
/// \param texts the texts that the spans of the warnings point into; without them a warning has no place
[[nodiscard]] Json document(const JsonDocument& document, const std::vector<SourceText>& texts = {});

/// As printed: two blanks a level, a line end behind it; bytes that are no UTF-8 as U+FFFD.
[[nodiscard]] std::string to_text(const Json& json);

/// `file`, `line` and `column` of a span; all null for no place or one outside the texts.
[[nodiscard]] Json place_json(const std::optional<SourceSpan>& where, const std::vector<SourceText>& texts);

/// A number, or null where it is not finite.
[[nodiscard]] Json number_or_null(double value);
[[nodiscard]] Json number_or_null(const std::optional<double>& value);

/// A text, or null where it is empty.
[[nodiscard]] Json text_or_null(const std::string& text);

/// A count, or null where it is not known.
[[nodiscard]] Json count_or_null(const std::optional<int>& count);

/// One value for each item, in their order.
template <class Item, class ToJson>
[[nodiscard]] Json array_of(const std::vector<Item>& items, ToJson to_json) {
  Json out = Json::array();
  for (const Item& item : items) out.push_back(to_json(item));
  return out;
}

}  // namespace forecourse::report
