#include "forecourse/report/diagnostic_text.h"

#include <algorithm>
#include <optional>
#include <tuple>

#include "forecourse/report/utf8.h"

namespace forecourse::report {
namespace {

constexpr std::size_t longest_line = 160;     // code points
constexpr std::size_t shown_of_longer = 154;  // leaves room for "..." on both sides
constexpr std::size_t shown_before_caret = 60;

std::size_t count_code_points(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); at += character_at(text, at).length) ++count;
  return count;
}

/// The byte where code point number `count` starts, or the end.
std::size_t skip_code_points(std::string_view text, std::size_t count) {
  std::size_t at = 0;
  while (count-- > 0 && at < text.size()) at += character_at(text, at).length;
  return std::min(at, text.size());
}

/// One visible character for each code point.
std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    if (!c.valid) {
      out += '?';
    } else if (is_hidden(c.value) || c.value == U'\t' || c.value == U'\n') {
      out += ' ';
    } else {
      out += text.substr(at, c.length);
    }
    at += c.length;
  }
  return out;
}

std::size_t line_start(std::string_view text, std::size_t offset) {
  const std::size_t newline = offset == 0 ? std::string_view::npos : text.rfind('\n', offset - 1);
  return newline == std::string_view::npos ? 0 : newline + 1;
}

std::size_t line_stop(std::string_view text, std::size_t offset) {
  std::size_t stop = std::min(text.find('\n', offset), text.size());
  if (stop > offset && text[stop - 1] == '\r') --stop;
  return stop;
}

/// What is shown of a line: code points [begin, end), and the marks for what is left out.
struct Window {
  std::size_t begin = 0;
  std::size_t end = 0;
  const char* before = "";
  const char* behind = "";
};

Window window_around(std::size_t caret, std::size_t length) {
  if (length <= longest_line) return {0, length};
  const std::size_t last_begin = length - shown_of_longer;
  const std::size_t begin = std::min(caret > shown_before_caret ? caret - shown_before_caret : 0, last_begin);
  const std::size_t end = begin + shown_of_longer;
  return {begin, end, begin > 0 ? "..." : "", end < length ? "..." : ""};
}

std::string excerpt(std::string_view text, SourceSpan span) {
  const std::size_t begin = std::min<std::size_t>(span.begin, text.size());
  const std::size_t start = line_start(text, begin);
  const std::size_t stop = line_stop(text, begin);
  const std::size_t end = std::clamp<std::size_t>(span.end, begin, stop);
  const std::string_view line = text.substr(start, stop - start);
  const std::size_t caret = count_code_points(text.substr(start, begin - start));
  const std::size_t width = count_code_points(text.substr(begin, end - begin));
  const Window window = window_around(caret, count_code_points(line));
  const std::size_t from = skip_code_points(line, window.begin);
  const std::size_t length = skip_code_points(line.substr(from), window.end - window.begin);
  const std::string before = window.before;
  const std::string indent(2 + before.size() + caret - window.begin, ' ');
  const std::size_t room = window.end > caret ? window.end - caret : 1;
  const std::string carets(std::clamp<std::size_t>(width, 1, room), '^');
  return "  " + before + printable(line.substr(from, length)) + window.behind + "\n" + indent + carets + "\n";
}

/// Before everything that has a place; then text by text, from top to bottom.
std::tuple<bool, std::uint32_t, std::uint32_t> place_of(const Diagnostic& diagnostic) {
  const SourceSpan span = diagnostic.where.value_or(SourceSpan{});
  return {diagnostic.where.has_value(), span.text, span.begin};
}

std::string counted(std::size_t count, const std::string& noun) {
  return std::to_string(count) + " " + noun + (count == 1 ? "" : "s");
}

}  // namespace

LineColumn line_column(std::string_view text, std::size_t offset) {
  offset = std::min(offset, text.size());
  const auto newlines =
      static_cast<std::size_t>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(offset), '\n'));
  const std::size_t start = line_start(text, offset);
  return {newlines + 1, count_code_points(text.substr(start, offset - start)) + 1};
}

std::string to_text(const Diagnostic& diagnostic, const std::vector<SourceText>& texts) {
  const bool has_place = diagnostic.where && diagnostic.where->text < texts.size();
  std::string out;
  if (has_place) {
    const SourceText& source = texts[diagnostic.where->text];
    const LineColumn at = line_column(source.text, diagnostic.where->begin);
    out += source.name + ":" + std::to_string(at.line) + ":" + std::to_string(at.column) + ": ";
  }
  out += std::string(word(diagnostic.severity)) + ": " + printable(diagnostic.message) + "\n";
  if (has_place) out += excerpt(texts[diagnostic.where->text].text, *diagnostic.where);
  if (!diagnostic.hint.empty()) out += "  hint: " + printable(diagnostic.hint) + "\n";
  for (const Diagnostic& other : diagnostic.related) out += to_text(other, texts);
  return out;
}

std::string to_text(const std::vector<Diagnostic>& diagnostics, const std::vector<SourceText>& texts) {
  std::vector<const Diagnostic*> sorted;
  sorted.reserve(diagnostics.size());
  for (const Diagnostic& diagnostic : diagnostics) sorted.push_back(&diagnostic);
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Diagnostic* a, const Diagnostic* b) { return place_of(*a) < place_of(*b); });
  std::string out;
  for (const Diagnostic* diagnostic : sorted) out += to_text(*diagnostic, texts);
  const std::string count = count_text(diagnostics);
  return count.empty() ? out : out + count + "\n";
}

std::string count_text(const std::vector<Diagnostic>& diagnostics) {
  const auto count = [&](Severity severity) {
    return static_cast<std::size_t>(std::count_if(diagnostics.begin(), diagnostics.end(),
                                                  [&](const Diagnostic& one) { return one.severity == severity; }));
  };
  const std::size_t errors = count(Severity::error);
  const std::size_t warnings = count(Severity::warning);
  std::string out;
  if (errors > 0) out += counted(errors, "error");
  if (errors > 0 && warnings > 0) out += ", ";
  if (warnings > 0) out += counted(warnings, "warning");
  return out;
}

}  // namespace forecourse::report
