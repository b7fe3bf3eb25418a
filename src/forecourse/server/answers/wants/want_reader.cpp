#include "forecourse/server/answers/wants/want_reader.h"

#include <algorithm>
#include <span>

#include "forecourse/base/nearest_word.h"

namespace forecourse::server {
namespace {

using report::Json;

std::string joined(const std::vector<std::string>& words, const char* between) {
  std::string out;
  for (const std::string& word : words) out.append(out.empty() ? "" : between).append(word);
  return out;
}

std::string offered(const std::string& word, const std::vector<std::string>& known) {
  const auto near = nearest_word(word, std::span<const std::string>(known));
  return (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + joined(known, ", ");
}

bool are_texts(const Json& list) {
  return list.is_array() && std::all_of(list.begin(), list.end(), [](const Json& one) { return one.is_string(); });
}

}  // namespace

Json refused(const std::string& error, const std::string& hint) { return {{"error", error}, {"hint", hint}}; }

Json refused(const std::vector<Diagnostic>& problems) {
  std::vector<const Diagnostic*> errors;
  for (const Diagnostic& one : problems) {
    if (one.severity == Severity::error) errors.push_back(&one);
  }
  if (errors.empty()) return refused("there is no answer");
  const std::size_t more = errors.size() - 1;
  const std::string others = more == 0 ? "" : " (and " + std::to_string(more) + " more)";
  return refused(errors.front()->message + others, errors.front()->hint);
}

WantReader::WantReader(const Json& want, std::span<const WantMember> known) : want_(want) {
  if (!want.is_object()) {
    refuse("a want is an object", "write {\"study\": \"flow\"}");
    return;
  }
  std::vector<std::string> all;
  for (const WantMember& member : known) all.emplace_back(member.name);
  for (const auto& [key, value] : want.items()) {
    if (std::find(all.begin(), all.end(), key) == all.end()) {
      refuse("a want of this kind has no '" + key + "'", offered(key, all));
    }
  }
}

const Json* WantReader::find(std::string_view key) const {
  if (!want_.is_object()) return nullptr;
  const auto found = want_.find(key);
  return found == want_.end() || found->is_null() ? nullptr : &*found;
}

void WantReader::refuse(const std::string& error, const std::string& hint) {
  if (good()) problem_ = refused(error, hint);
}

void WantReader::wrong_kind(std::string_view key, const char* wanted, const char* example) {
  refuse("'" + std::string(key) + "' is " + wanted, std::string("write ") + example);
}

std::string WantReader::text(std::string_view key) {
  const Json* found = find(key);
  if (found == nullptr) return {};
  if (found->is_string()) return found->get<std::string>();
  wrong_kind(key, "a text", "it in quotes");
  return {};
}

std::string WantReader::word(std::string_view key, const std::vector<std::string>& words) {
  std::string out = text(key);
  if (out.empty() || std::find(words.begin(), words.end(), out) != words.end()) return out;
  refuse("'" + std::string(key) + "' cannot be '" + out + "'", offered(out, words));
  return {};
}

std::vector<std::string> WantReader::texts(std::string_view key) {
  const Json* found = find(key);
  if (found == nullptr) return {};
  if (found->is_string()) return {found->get<std::string>()};
  if (are_texts(*found)) return found->get<std::vector<std::string>>();
  wrong_kind(key, "a list of texts", "[\"...\", \"...\"]");
  return {};
}

std::optional<std::uint64_t> WantReader::count(std::string_view key) {
  const Json* found = find(key);
  if (found == nullptr) return std::nullopt;
  if (found->is_number_unsigned()) return found->get<std::uint64_t>();
  wrong_kind(key, "a whole number, zero or more", "it without quotes");
  return std::nullopt;
}

std::optional<double> WantReader::number(std::string_view key, double low, double high) {
  const Json* found = find(key);
  if (found == nullptr) return std::nullopt;
  if (found->is_number() && found->get<double>() >= low && found->get<double>() <= high) return found->get<double>();
  refuse("'" + std::string(key) + "' is a number from " + Json(low).dump() + " to " + Json(high).dump(), "");
  return std::nullopt;
}

std::vector<std::string> WantReader::id_sets(std::string_view key) {
  const Json* found = find(key);
  if (found == nullptr) return {};
  if (found->is_string()) return {found->get<std::string>()};
  if (are_texts(*found)) return {joined(found->get<std::vector<std::string>>(), ",")};
  if (!found->is_array() || !std::all_of(found->begin(), found->end(), are_texts)) {
    wrong_kind(key, "\"all\", \"each\", a list of hoses, or a list of such lists", "[\"D1.a\", \"D2.a\"]");
    return {};
  }
  std::vector<std::string> out;
  for (const Json& set : *found) out.push_back(joined(set.get<std::vector<std::string>>(), ","));
  return out;
}

}  // namespace forecourse::server
