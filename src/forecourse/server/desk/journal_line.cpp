#include "forecourse/server/desk/journal_line.h"

#include <fmt/format.h>

#include <cstdint>
#include <nlohmann/json.hpp>

namespace forecourse::server {
namespace {

/// FNV-1a, 64 bits: tells a torn line from a whole one.
std::string checksum(std::string_view bytes) {
  std::uint64_t sum = 0xcbf29ce484222325U;
  for (const char c : bytes) sum = (sum ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  return fmt::format("{:016x}", sum);
}

std::string line_of(const nlohmann::json& json) {
  const std::string text = json.dump();
  return checksum(text) + ' ' + text + '\n';
}

/// Each byte as the code point of the same number, as UTF-8.
std::string code_points(const std::string& bytes) {
  std::string out;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 0x80U) out += static_cast<char>(0xC0U | (byte >> 6U));
    out += static_cast<char>(byte >= 0x80U ? 0x80U | (byte & 0x3FU) : byte);
  }
  return out;
}

std::string bytes_of(const std::string& code_points) {
  std::string out;
  for (std::size_t i = 0; i < code_points.size(); ++i) {
    const auto byte = static_cast<unsigned char>(code_points[i]);
    const bool two = byte >= 0x80U && i + 1 < code_points.size();
    const unsigned second = two ? static_cast<unsigned char>(code_points[++i]) & 0x3FU : 0U;
    out += static_cast<char>(two ? ((byte & 0x03U) << 6U) | second : byte);
  }
  return out;
}

nlohmann::json step_json(const Step& step) {
  return {{"label", code_points(step.label)},
          {"at", step.change.at},
          {"out", code_points(step.change.out)},
          {"in", code_points(step.change.in)}};
}

std::string bytes_at(const nlohmann::json& json, const char* key) { return bytes_of(json.at(key).get<std::string>()); }

Step step_of(const nlohmann::json& json) {
  return {bytes_at(json, "label"), {json.at("at").get<std::size_t>(), bytes_at(json, "out"), bytes_at(json, "in")}};
}

KeptText kept_of(const nlohmann::json& json) {
  KeptText kept{bytes_at(json, "text"), json.at("revision").get<int>(), {}, json.at("done").get<std::size_t>()};
  for (const nlohmann::json& step : json.at("steps")) kept.steps.push_back(step_of(step));
  kept.done = std::min(kept.done, kept.steps.size());
  return kept;
}

Move move_of(const nlohmann::json& json) {
  if (json.contains("undo")) return {Move::Kind::undo, {}};
  if (json.contains("redo")) return {Move::Kind::redo, {}};
  return {Move::Kind::step, step_of(json.at("step"))};
}

/// The JSON of the first line, which is taken off; a torn or changed one gives a discarded value.
nlohmann::json next_line(std::string_view& journal) {
  nlohmann::json torn(nlohmann::json::value_t::discarded);
  const std::size_t end = journal.find('\n');
  const std::size_t blank = journal.find(' ');
  if (end == std::string_view::npos || blank > end) return torn;
  const std::string_view sum = journal.substr(0, blank);
  const std::string_view text = journal.substr(blank + 1, end - blank - 1);
  journal.remove_prefix(end + 1);
  return sum == checksum(text) ? nlohmann::json::parse(text, nullptr, false) : torn;
}

/// Reads one line into the kept text: the first is the whole, the others are moves.
bool take_line(const nlohmann::json& line, std::optional<KeptText>& kept) {
  try {
    if (kept) return make(*kept, move_of(line));
    kept = kept_of(line.at("whole"));
    return true;
  } catch (const nlohmann::json::exception&) {  // whole, but no line of ours
    return false;
  }
}

}  // namespace

std::string journal_line(const KeptText& kept) {
  nlohmann::json steps = nlohmann::json::array();
  for (const Step& step : kept.steps) steps.push_back(step_json(step));
  return line_of({{"whole",
                   {{"text", code_points(kept.text)},
                    {"revision", kept.revision},
                    {"done", kept.done},
                    {"steps", std::move(steps)}}}});
}

std::string journal_line(const Move& move) {
  if (move.kind == Move::Kind::undo) return line_of({{"undo", true}});
  if (move.kind == Move::Kind::redo) return line_of({{"redo", true}});
  return line_of({{"step", step_json(move.step)}});
}

std::optional<KeptText> read_journal(std::string_view journal) {
  std::optional<KeptText> kept;
  while (!journal.empty()) {
    const nlohmann::json line = next_line(journal);
    if (line.is_discarded() || !take_line(line, kept)) break;
  }
  return kept;
}

}  // namespace forecourse::server
