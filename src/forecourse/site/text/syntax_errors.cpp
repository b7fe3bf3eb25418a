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

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

Diagnostic describe_repeated_header(const Case& c) {
  const bool list = c.scanned.text.substr(c.statement.begin, 2) == "[[";
  Diagnostic d =
      c.error(fmt::format("the table '{}' is given twice", c.key), c.span(c.statement.begin, c.statement.end),
              list ? fmt::format("'{}' was opened as one table before: write [[{}]] both times, or once [{}]", c.key,
                                 c.key, c.key)
              : is_one_of(c.key, {"site", "operations", "flow"})
                  ? "put its keys under the first one"
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

/// Three numbers with '-', '/' or '.' between them: "2026-02-30", "3/12/2026".
bool looks_like_date(std::string_view value) {
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  const auto marks = std::count_if(value.begin(), value.end(), [](char c) { return c == '-' || c == '/' || c == '.'; });
  const auto digits = std::count_if(value.begin(), value.end(), is_digit);
  return marks == 2 && digits >= 4 && static_cast<std::size_t>(marks + digits) == value.size() &&
         is_digit(value.front()) && is_digit(value.back());
}

/// "1.5" for "1,5", "0.5" for ".5", "1" for "01"; empty where no number can be meant.
std::string repaired_number(std::string_view value) {
  if (value.size() > longest_quote || value.find_first_not_of("0123456789.,") != npos) return {};
  const std::size_t mark = value.find_first_of(".,");
  if (mark != npos && value.find_first_of(".,", mark + 1) != npos) return {};
  std::string_view whole = value.substr(0, mark);
  while (whole.size() > 1 && whole.front() == '0') whole.remove_prefix(1);
  const std::string_view part = mark == npos ? std::string_view() : value.substr(mark + 1);
  if (whole.empty() && part.empty()) return {};
  return std::string(whole.empty() ? "0" : whole) + (part.empty() ? "" : "." + std::string(part));
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
  if (const std::string number = repaired_number(c.value); !number.empty()) {
    return c.error(fmt::format("{} is {}, which is no number of TOML", c.key, shown), c.span_of(c.value),
                   fmt::format("write {}", number));
  }
  if (looks_like_date(c.value)) {
    return c.error(fmt::format("{} is {}, which is no date", c.key, shown), c.span_of(c.value),
                   "write year-month-day without quotes, as 2026-03-12");
  }
  return c.error(fmt::format("{} is {}, without quotes", c.key, shown), c.span_of(c.value),
                 c.value.size() <= longest_quote ? "write " + quoted(c.value) : "put the text in double quotes");
}

bool looks_bare(std::string_view value) { return !value.empty() && value.find_first_of("\"'[]{}\n\\") == npos; }

std::string without_prefix(std::string_view description) {
  const std::size_t colon = description.find(": ");
  return std::string(colon == npos ? description : description.substr(colon + 2));
}

/// What the parser says and what that means in a site file; "{}" is the key.
struct Saying {
  std::string_view parser;
  const char* message;
  std::string_view hint;
};

constexpr std::array<Saying, 5> sayings{{
    {"dangling comma", "the table of '{}' ends with a comma", "remove the comma before '}'"},
    {"expected comma or closing ']'", "a comma is missing in the list of '{}'", "write a comma between two values"},
    {"expected comma or closing '}'", "a comma is missing in the table of '{}'", "write a comma between two keys"},
    {"expected a comment or whitespace", "something stands behind the end of '{}'",
     "put a text into one pair of quotes, and each key on a line of its own"},
    {"nested value depth", "the value of '{}' has too many brackets in brackets", "is this a site file?"},
}};

Diagnostic describe_plainly(const Case& c, std::string_view description, std::size_t offset) {
  const std::size_t begin = std::clamp(offset, c.statement.begin, c.statement.end);
  const std::size_t end = std::max(c.statement.end, begin);
  if (description.find("escape sequence") != npos) {
    return c.error(fmt::format("{} holds a backslash that begins no escape: {}", c.key, short_form(c.value)),
                   c.span_of(c.value), "write the text in single quotes, or each backslash twice");
  }
  for (const Saying& saying : sayings) {
    if (description.find(saying.parser) == npos) continue;
    return c.error(fmt::format(fmt::runtime(saying.message), short_form(c.key)), c.span(begin, end),
                   std::string(saying.hint));
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
  if (c.key.empty()) return c.error("a value has no key", c.span(s.begin, s.end), "write key = value");
  if (c.value.starts_with('=')) {
    return c.error(fmt::format("'{}' has two '='", short_form(c.key)), c.span_of(c.value), "write one");
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
  const std::string_view letter = scanned.text.substr(begin, end - begin);
  if (is_one_of(letter, {"“", "”", "„", "‘", "’", "«", "»"})) {
    return c.error(fmt::format("{} is no plain quote", letter), c.span(begin, end), "write \" on both sides of a text");
  }
  return c.error(fmt::format("the letter '{}' stands outside quotes", letter), c.span(begin, end),
                 in_key ? "keys of a site file are plain English words" : "put the text in double quotes");
}

}  // namespace forecourse::site
