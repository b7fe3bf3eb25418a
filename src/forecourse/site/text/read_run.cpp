#include "forecourse/site/text/read_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "forecourse/base/nearest_word.h"

namespace forecourse::site {

namespace {

constexpr std::size_t longest_written = 60;
constexpr std::size_t most_listed = 30;

struct OutOfScope {
  std::string_view word;
  std::string_view what;
};

constexpr std::array<OutOfScope, 12> all_out_of_scope{{{"suction", "suction systems are"},
                                                       {"suction-pump", "suction systems are"},
                                                       {"suction_pump", "suction systems are"},
                                                       {"lpg", "LPG is"},
                                                       {"autogas", "LPG is"},
                                                       {"propane", "LPG is"},
                                                       {"hydrogen", "hydrogen is"},
                                                       {"charging", "electric charging is"},
                                                       {"charger", "electric charging is"},
                                                       {"cng", "natural gas is"},
                                                       {"lng", "natural gas is"},
                                                       {"natural-gas", "natural gas is"}}};

std::string lower_case(std::string_view word) {
  std::string lower(word);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

}  // namespace

std::string ReadRun::written(const Node& node) const { return shortened(text_of(text, node.where)); }

std::string shortened(std::string_view text) {
  std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
  if (end > longest_written) {
    end = longest_written;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  }
  return std::string(text.substr(0, end)) + (end < text.size() ? " ..." : "");
}

std::string_view noun_of(NodeKind kind) {
  switch (kind) {
    case NodeKind::text:
      return "a text";
    case NodeKind::number:
      return "a number";
    case NodeKind::boolean:
      return "true or false";
    case NodeKind::date:
      return "a date";
    case NodeKind::time:
      return "a time";
    case NodeKind::array:
      return "a list";
    case NodeKind::table:
      return "a table";
  }
  return "";
}

std::string offer(std::string_view word, const std::vector<std::string_view>& known, std::string_view list_intro) {
  if (word.size() > longest_written) return list_of(known, list_intro);
  if (const auto near = nearest_word(word, std::span<const std::string_view>(known))) {
    return fmt::format("did you mean '{}'?", *near);
  }
  return list_of(known, list_intro);
}

std::string list_of(const std::vector<std::string_view>& known, std::string_view intro) {
  if (known.empty()) return {};
  const auto shown = known.begin() + static_cast<std::ptrdiff_t>(std::min(known.size(), most_listed));
  return fmt::format("{}: {}{}", intro, fmt::join(known.begin(), shown, ", "),
                     shown == known.end() ? "" : fmt::format(" ... ({} in all)", known.size()));
}

std::string out_of_scope(std::string_view word) {
  const std::string lower = lower_case(word);
  for (const OutOfScope& entry : all_out_of_scope) {
    if (lower == entry.word) return fmt::format("'{}': {} out of scope of this program", word, entry.what);
  }
  return {};
}

}  // namespace forecourse::site
