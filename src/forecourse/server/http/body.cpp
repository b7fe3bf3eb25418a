#include "forecourse/server/http/body.h"

#include <limits>

namespace forecourse::server {
namespace {

using report::Json;

constexpr std::size_t longest_label = 200;  // bytes
constexpr std::size_t most_items = 1000;

/// Brackets in brackets, those in texts not counted.
bool too_deep(std::string_view text) {
  int depth = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted && c == '\\') ++i;
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '[' || c == '{') ++depth;
    if (c == ']' || c == '}') --depth;
    if (depth > deepest_body) return true;
  }
  return false;
}

/// The text cut at a letter.
std::string shortened(std::string text) {
  if (text.size() <= longest_label) return text;
  std::size_t end = longest_label;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  text.resize(end);
  return text;
}

}  // namespace

std::optional<Json> read_body(std::string_view text) {
  if (too_deep(text)) return std::nullopt;
  Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) return std::nullopt;
  return json;
}

BodyReader::BodyReader(const Json& body) : body_(body) {
  if (!body.is_object()) refuse("the body is no JSON object", "send {...}");
}

void BodyReader::refuse(const std::string& error, const std::string& hint) {
  if (!good()) return;
  error_ = error;
  hint_ = hint;
}

const Json* BodyReader::find(const char* key) {
  if (!body_.is_object()) return nullptr;
  const auto found = body_.find(key);
  return found == body_.end() ? nullptr : &*found;
}

std::string BodyReader::text(const char* key) {
  const Json* found = find(key);
  if (found != nullptr && found->is_string()) return found->get<std::string>();
  refuse(std::string("'") + key + "' is missing or is no text", "it is a text in quotes");
  return {};
}

std::string BodyReader::label(const char* key) { return shortened(text(key)); }

int BodyReader::revision() {
  const Json* found = find("revision");
  if (found != nullptr && found->is_number_unsigned()) {
    const auto number = found->get<std::uint64_t>();
    if (number <= static_cast<std::uint64_t>(std::numeric_limits<int>::max())) return static_cast<int>(number);
  }
  refuse("'revision' is missing or is no revision", "it is the number that came with the station");
  return 0;
}

std::vector<Json> BodyReader::list(const char* key, bool may_be_missing) {
  const Json* found = find(key);
  if (found == nullptr && may_be_missing) return {};
  if (found == nullptr || !found->is_array()) {
    refuse(std::string("'") + key + "' is missing or is no list", "it is a list in square brackets");
    return {};
  }
  if (found->size() > most_items) refuse(std::string("'") + key + "' holds more than 1000 items", "send fewer");
  return {found->begin(), found->end()};
}

Edit BodyReader::edit(const Json& json) {
  const char* const shapes =
      R"(an edit is {"path", "value"}, {"path", "remove": true} or {"append"}, with texts in quotes)";
  const auto text_of = [&](const char* key) -> std::optional<std::string> {
    if (!json.is_object() || !json.contains(key)) return std::nullopt;
    if (!json[key].is_string()) refuse(std::string("'") + key + "' of an edit is no text", shapes);
    return json[key].is_string() ? std::optional(json[key].get<std::string>()) : std::nullopt;
  };
  Edit edit{text_of("path").value_or(""), text_of("value"), false, text_of("append").value_or("")};
  if (json.is_object() && json.contains("remove")) {
    if (!json["remove"].is_boolean()) refuse("'remove' of an edit is neither true nor false", shapes);
    edit.remove = json["remove"].is_boolean() && json["remove"].get<bool>();
  }
  const int ways = (edit.value ? 1 : 0) + (edit.remove ? 1 : 0) + (edit.append.empty() ? 0 : 1);
  if (ways != 1 || edit.path.empty() == edit.append.empty()) refuse("an edit does not say one thing to do", shapes);
  return edit;
}

std::vector<Edit> BodyReader::edits(bool may_be_missing) {
  std::vector<Edit> out;
  for (const Json& each : list("edits", may_be_missing)) out.push_back(edit(each));
  return out;
}

}  // namespace forecourse::server
