#include "forecourse/site/text/syntax_errors.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace forecourse::site {

namespace {

constexpr std::size_t npos = std::string_view::npos;
constexpr std::size_t longest_quote = 40;

/// At most the first line and 40 bytes of a stretch, cut between letters.
std::string short_form(std::string_view text) {
  const std::size_t line = std::min(text.find_first_of("\r\n"), text.size());
  if (line <= longest_quote) return std::string(text.substr(0, line)) + (line < text.size() ? " ..." : "");
  std::size_t end = longest_quote;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return std::string(text.substr(0, end)) + " ...";
}

/// One statement under examination.
struct Case {
  const ScannedText& scanned;
  std::size_t index;
  const Statement& statement;
  std::string_view key;
  std::string_view value;

  [[nodiscard]] SourceSpan span(std::size_t begin, std::size_t end) const {
    return {scanned.text_index, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(std::max(end, begin))};
  }
  [[nodiscard]] SourceSpan span_of(std::string_view part) const {
    if (part.empty()) return span(statement.begin, statement.end);
    const auto begin = static_cast<std::size_t>(part.data() - scanned.text.data());
    return span(begin, begin + part.size());
  }
  [[nodiscard]] Diagnostic error(std::string message, SourceSpan where, std::string hint) const {
    return {Severity::error, std::move(message), where, std::move(hint), {}};
  }
};

Diagnostic describe_unclosed(const Case& c) {
  const Statement& s = c.statement;
  if (s.quote != npos) {
    return c.error(
        fmt::format("the text {} has no closing quote", short_form(c.scanned.text.substr(s.quote, s.end - s.quote))),
        c.span(s.quote, s.end), fmt::format("end it with {} on the same line", s.unclosed));
  }
  if (s.is_header)
    return c.error(fmt::format("the header of '{}' has no closing ']'", c.key), c.span(s.begin, s.end),
                   "write [name], or [[name]] for one of a list");
  if (s.unclosed == '{') {
    return c.error(fmt::format("the table of '{}' has no closing '}}'", c.key), c.span_of(c.value),
                   "a table in braces stands on one line");
  }
  return c.error(fmt::format("the list of '{}' has no closing ']'", c.key), c.span_of(c.key), "close it with ]");
}

Diagnostic describe_repeated_header(const Case& c) {
  const bool list = c.scanned.text.substr(c.statement.begin, 2) == "[[";
  Diagnostic d =
      c.error(fmt::format("the table '{}' is given twice", c.key), c.span(c.statement.begin, c.statement.end),
              list ? fmt::format("'{}' was opened as one table before: write [[{}]] both times, or once [{}]", c.key,
                                 c.key, c.key)
                   : fmt::format("put its keys under the first one, or write [[{}]] for each of a list", c.key));
  for (std::size_t i = 0; i < c.index; ++i) {
    const Statement& other = c.scanned.statements[i];
    if (!other.is_header || key_of(c.scanned.text, other) != c.key) continue;
    d.related.push_back({Severity::note, "first given here", c.span(other.begin, other.end), "", {}});
    break;
  }
  return d;
}

Diagnostic describe_repeated_key(const Case& c) {
  Diagnostic d = c.error(fmt::format("'{}' is given twice in one table", c.key), c.span_of(c.key), "keep one of them");
  for (std::size_t i = c.index; i-- > 0;) {
    const Statement& other = c.scanned.statements[i];
    if (other.is_header) break;
    const std::string_view key = key_of(c.scanned.text, other);
    if (key == c.key) d.related.push_back({Severity::note, "first given here", c.span_of(key), "", {}});
  }
  return d;
}

std::string quoted(std::string_view value) { return fmt::format("\"{}\"", value); }

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// A value that is no TOML value because its quotes are missing.
Diagnostic describe_bare_value(const Case& c) {
  const std::string shown = short_form(c.value);
  if (is_one_of(c.value, {"yes", "Yes", "YES", "on", "On", "True", "TRUE"})) {
    return c.error(fmt::format("{} is '{}', which is no value", c.key, shown), c.span_of(c.value), "write true");
  }
  if (is_one_of(c.value, {"no", "No", "NO", "off", "Off", "False", "FALSE"})) {
    return c.error(fmt::format("{} is '{}', which is no value", c.key, shown), c.span_of(c.value), "write false");
  }
  return c.error(fmt::format("{} is {}, without quotes", c.key, shown), c.span_of(c.value),
                 c.value.size() <= longest_quote ? "write " + quoted(c.value) : "put the text in double quotes");
}

bool looks_bare(std::string_view value) { return !value.empty() && value.find_first_of("\"'[]{}\n\\") == npos; }

std::string without_prefix(std::string_view description) {
  const std::size_t colon = description.find(": ");
  return std::string(colon == npos ? description : description.substr(colon + 2));
}

Diagnostic describe_plainly(const Case& c, std::string_view description, std::size_t offset) {
  const std::size_t begin = std::clamp(offset, c.statement.begin, c.statement.end);
  const std::size_t end = std::max(c.statement.end, begin);
  if (description.find("escape sequence") != npos) {
    return c.error(fmt::format("{} holds a backslash that begins no escape: {}", c.key, short_form(c.value)),
                   c.span_of(c.value), "write the text in single quotes, or each backslash twice");
  }
  return c.error(fmt::format("this is not TOML: {}", without_prefix(description)), c.span(begin, end), "");
}

}  // namespace

std::size_t statement_at_fault(const ScannedText& scanned, std::size_t offset) {
  const auto& all = scanned.statements;
  std::size_t found = 0;
  while (found + 1 < all.size() && all[found + 1].begin <= offset) ++found;
  if (found == 0 || all[found - 1].unclosed == '\0') return found;
  // The parser took the key of this statement for one more item of the list that was left open before it.
  const std::size_t key_end = all[found].equals != npos ? all[found].equals : all[found].end;
  return offset < key_end ? found - 1 : found;
}

Diagnostic describe_syntax_error(const ScannedText& scanned, std::size_t index, std::string_view description,
                                 std::size_t offset) {
  const Statement& s = scanned.statements[index];
  const Case c{scanned, index, s, key_of(scanned.text, s), value_of(scanned.text, s)};
  if (s.unclosed != '\0') return describe_unclosed(c);
  if (description.find("cannot redefine") != npos) {
    return s.is_header ? describe_repeated_header(c) : describe_repeated_key(c);
  }
  if (s.is_header) return describe_plainly(c, description, offset);
  if (s.equals == npos) {
    return c.error(fmt::format("'{}' has no '='", short_form(c.key)), c.span(s.begin, s.end), "write key = value");
  }
  if (c.value.empty())
    return c.error(fmt::format("'{}' has no value", c.key), c.span_of(c.key),
                   "write one after the '=', or remove the line");
  if (looks_bare(c.value)) return describe_bare_value(c);
  return describe_plainly(c, description, offset);
}

Diagnostic describe_bare_letter(const ScannedText& scanned, std::size_t index) {
  const Statement& s = scanned.statements[index];
  const std::size_t begin = s.bare_non_ascii;
  std::size_t end = begin + 1;
  while (end < scanned.text.size() && (static_cast<unsigned char>(scanned.text[end]) & 0xC0U) == 0x80U) ++end;
  const Case c{scanned, index, s, key_of(scanned.text, s), value_of(scanned.text, s)};
  const bool in_key = s.is_header || s.equals == npos || begin < s.equals;
  return c.error(fmt::format("the letter '{}' stands outside quotes", scanned.text.substr(begin, end - begin)),
                 c.span(begin, end),
                 in_key ? "keys of a site file are plain English words" : "put the text in double quotes");
}

}  // namespace forecourse::site
