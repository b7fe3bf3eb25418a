#include "forecourse/site/text/value_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "forecourse/base/unit_text.h"

namespace forecourse::site {

namespace {

bool is_letter_or_digit(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

bool is_digit_at(std::string_view text, std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; }

bool is_clock(std::string_view text) {
  const bool shaped = text.size() == 5 && text[2] == ':' && is_digit_at(text, 0) && is_digit_at(text, 1) &&
                      is_digit_at(text, 3) && is_digit_at(text, 4);
  return shaped && (text.substr(0, 2) < "24" || text == "24:00") && text.substr(3) < "60";
}

bool is_ratio(const QuantityKind& kind) { return &kind == &kinds::Ratio::kind; }

/// The kind with examples that suit the key: runs and heights are written in other units than bores.
QuantityKind as_written_for(std::string_view key, const QuantityKind& kind) {
  QuantityKind suited = kind;
  const std::string_view plain = key.substr(0, key.find('.'));
  const bool long_one = plain == "length" || plain == "lift" || plain == "position" || plain.ends_with("elevation");
  if (&kind == &kinds::Length::kind && long_one) suited.examples = "\"12 ft 6 in\" or \"3.8 m\"";
  return suited;
}

/// The id with '-' for every letter that may not stand in it.
std::string repaired_id(std::string_view text, bool dots) {
  std::string repaired;
  for (const char c : text) {
    const bool inside_letter = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
    const bool good = is_letter_or_digit(c) || c == '-' || c == '_' || (dots && c == '.');
    if (!inside_letter) repaired += good ? c : '-';
  }
  return repaired;
}

constexpr std::size_t longest_id = 60;  // so that it fits into tables and messages
constexpr std::array<std::string_view, 3> spread_keys{"low", "likely", "high"};

}  // namespace

/// How one number is read and where it must lie.
struct ValueReader::ScalarRule {
  const QuantityKind* kind;  ///< null: a number without a unit
  Range range;
};

bool is_spread(const Node& node) {
  if (node.kind != NodeKind::table || node.entries.empty()) return false;
  return std::all_of(node.entries.begin(), node.entries.end(), [](const Entry& entry) {
    return std::find(spread_keys.begin(), spread_keys.end(), entry.key) != spread_keys.end();
  });
}

void ValueReader::wrong_kind(std::string_view key, const Node& node, std::string_view noun, std::string hint) const {
  run_.error(node.where, fmt::format("{} is {}, but {} is {}", key, noun, run_.written(node), noun_of(node.kind)),
             std::move(hint));
}

bool ValueReader::in_range(std::string_view key, const Node& node, double value, const Range& range) const {
  const bool too_low = range.above_low ? value <= range.low : value < range.low;
  if (!too_low && value <= range.high) return true;
  run_.error(node.where, fmt::format("{} must be {}, but {} is written", key, range.words, run_.written(node)));
  return false;
}

std::optional<double> ValueReader::finite(std::string_view key, const Node& node, std::string_view noun) const {
  if (std::isfinite(node.number)) return node.number;
  run_.error(node.where, fmt::format("{} is {}, but {} is not finite", key, noun, run_.written(node)),
             "write a number, or leave the key out when it is not known");
  return std::nullopt;
}

std::optional<double> ValueReader::plain_quantity(std::string_view key, const Node& node,
                                                  const QuantityKind& kind) const {
  if (node.kind == NodeKind::number && is_ratio(kind)) return finite(key, node, kind.noun);
  const QuantityKind suited = as_written_for(key, kind);
  if (node.kind == NodeKind::number) {
    run_.error(node.where, fmt::format("{} is {}, but {} has no unit", key, kind.noun, run_.written(node)),
               fmt::format("write {}", suited.examples));
    return std::nullopt;
  }
  if (node.kind != NodeKind::text) {
    wrong_kind(key, node, kind.noun, fmt::format("write {}", suited.examples));
    return std::nullopt;
  }
  const auto read = read_quantity(node.text, suited);
  if (const auto* trouble = std::get_if<UnitTextError>(&read)) {
    run_.error(node.where, fmt::format("{} {}", key, trouble->message), trouble->hint);
    return std::nullopt;
  }
  return std::get<double>(read);
}

std::optional<double> ValueReader::scalar(std::string_view key, const Node& node, const ScalarRule& rule) const {
  std::optional<double> value;
  if (rule.kind != nullptr) {
    value = plain_quantity(key, node, *rule.kind);
  } else if (node.kind == NodeKind::number) {
    value = finite(key, node, "a number");
  } else {
    wrong_kind(key, node, "a number without a unit", "write it without quotes, as 3.6");
  }
  if (value && !in_range(key, node, *value, rule.range)) return std::nullopt;
  return value;
}

std::optional<Entered<double>> ValueReader::spread(std::string_view key, const Node& node,
                                                   const ScalarRule& rule) const {
  if (node.kind == NodeKind::table) return spread_table(key, node, rule);
  const std::optional<double> value = scalar(key, node, rule);
  if (!value) return std::nullopt;
  return Entered<double>{*value, *value, *value, node.where};
}

std::optional<Entered<double>> ValueReader::spread_table(std::string_view key, const Node& node,
                                                         const ScalarRule& rule) const {
  const std::string hint = "write { low = ..., likely = ..., high = ... }";
  bool good = true;
  for (const Entry& entry : node.entries) {
    if (std::find(spread_keys.begin(), spread_keys.end(), entry.key) != spread_keys.end()) continue;
    run_.error(entry.key_where, fmt::format("'{}' is not a key of an uncertain value", entry.key), hint);
    good = false;
  }
  std::array<std::optional<double>, 3> values;
  for (std::size_t i = 0; i < spread_keys.size(); ++i) {
    const Entry* entry = find_entry(node, spread_keys[i]);
    if (entry == nullptr) {
      run_.error(node.where, fmt::format("the uncertain value of {} has no '{}'", key, spread_keys[i]), hint);
      good = false;
      continue;
    }
    values[i] = scalar(fmt::format("{}.{}", key, spread_keys[i]), entry->node, rule);
    good = good && values[i].has_value();
  }
  if (!good) return std::nullopt;
  if (!(*values[0] <= *values[1] && *values[1] <= *values[2])) {
    run_.error(node.where,
               fmt::format("{} is not ordered: low, likely and high must not fall in {}", key, run_.written(node)),
               "low is the smallest of the three, high the largest");
    return std::nullopt;
  }
  run_.uncertain.push_back(node.where);
  return Entered<double>{*values[1], *values[0], *values[2], node.where};
}

std::optional<Entered<double>> ValueReader::quantity(std::string_view key, const Node& node, const QuantityKind& kind,
                                                     const Range& range) const {
  return spread(key, node, {&kind, range});
}

std::optional<Entered<double>> ValueReader::number(std::string_view key, const Node& node, const Range& range) const {
  return spread(key, node, {nullptr, range});
}

std::optional<double> ValueReader::coefficient(std::string_view key, const Node& node, int power) const {
  if (power == 0) return plain_quantity(key, node, kinds::PressureDifference::kind);
  const std::string raised = power == 1 ? "" : fmt::format("^{}", power);
  const std::string noun = "a pressure per flow" + raised;
  const std::string examples = fmt::format("\"-0.001 psi/gpm{0}\" or \"-0.001 kPa.min{0}/L{0}\"", raised);
  if (node.kind != NodeKind::text) {
    wrong_kind(key, node, noun, "write " + examples);
    return std::nullopt;
  }
  const Dimension dimension = kinds::PressureDifference::kind.dimension + (-power) * kinds::VolumeFlow::kind.dimension;
  const auto read = read_dimensioned(node.text, dimension, noun.c_str(), examples.c_str());
  if (const auto* trouble = std::get_if<UnitTextError>(&read)) {
    run_.error(node.where, fmt::format("{} {}", key, trouble->message), trouble->hint);
    return std::nullopt;
  }
  return std::get<double>(read);
}

std::optional<bool> ValueReader::fact(std::string_view key, const Node& node) const {
  if (node.kind == NodeKind::boolean) return node.truth;
  wrong_kind(key, node, "true or false",
             "write true or false without quotes, or leave the key out when it is not known");
  return std::nullopt;
}

std::optional<Date> ValueReader::date(std::string_view key, const Node& node) const {
  if (node.kind == NodeKind::date) return node.date;
  wrong_kind(key, node, "a date", "write it without quotes, as 2026-03-12");
  return std::nullopt;
}

std::optional<Name> ValueReader::name(std::string_view key, const Node& node) const {
  if (node.kind != NodeKind::text) {
    wrong_kind(key, node, "a text", "write it in double quotes");
    return std::nullopt;
  }
  if (node.text.empty()) {
    run_.error(node.where, fmt::format("{} is empty", key), "write a text, or remove the key");
    return std::nullopt;
  }
  return Name{node.text, node.where};
}

std::optional<Name> ValueReader::id(std::string_view key, const Node& node, IdRule rule) const {
  std::optional<Name> read = name(key, node);
  if (!read) return std::nullopt;
  if (read->text.size() > longest_id) {
    run_.error(node.where, fmt::format("{} is longer than {} letters", key, longest_id), "take a short name");
    return std::nullopt;
  }
  const bool dots = rule == IdRule::dotted;
  const bool good = std::all_of(read->text.begin(), read->text.end(), [dots](char c) {
    return is_letter_or_digit(c) || c == '-' || c == '_' || (dots && c == '.');
  });
  if (good) return read;
  run_.error(node.where,
             fmt::format("{} {} holds other than letters, digits, '-'{} '_'{}", key, run_.written(node),
                         dots ? "," : " and", dots ? " and '.'" : ""),
             fmt::format("write \"{}\"{}", repaired_id(read->text, dots),
                         dots ? "" : ": a dot stands only between a dispenser and what is at it"));
  return std::nullopt;
}

std::optional<Name> ValueReader::clock(std::string_view key, const Node& node) const {
  if (node.kind == NodeKind::text && is_clock(node.text)) return Name{node.text, node.where};
  run_.error(node.where, fmt::format("{} is a time of day, but {} is written", key, run_.written(node)),
             "write \"06:00\"");
  return std::nullopt;
}

std::optional<std::size_t> ValueReader::word(std::string_view key, const Node& node,
                                             const std::vector<std::string_view>& words) const {
  const std::optional<Name> read = name(key, node);
  if (!read) return std::nullopt;
  const auto found = std::find(words.begin(), words.end(), read->text);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  const std::string scope = out_of_scope(read->text);
  if (!scope.empty()) {
    run_.error(node.where, scope, "describe only the liquid fuels with submersible pumps of this station");
  } else {
    run_.error(node.where, fmt::format("{} cannot be {}", key, run_.written(node)),
               offer(read->text, words, "it is one of"));
  }
  return std::nullopt;
}

const std::vector<Node>* ValueReader::list(std::string_view key, const Node& node, std::string_view what) const {
  if (node.kind == NodeKind::array) return &node.items;
  wrong_kind(key, node, fmt::format("a list of {}", what), "write the list in [ ]");
  return nullptr;
}

std::vector<Name> ValueReader::names(std::string_view key, const Node& node) const {
  std::vector<Name> all;
  const auto* items = list(key, node, "texts");
  if (items == nullptr) return all;
  for (const Node& item : *items) {
    if (std::optional<Name> read = name(key, item)) all.push_back(std::move(*read));
  }
  return all;
}

}  // namespace forecourse::site
