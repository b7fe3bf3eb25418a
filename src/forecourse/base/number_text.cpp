#include "forecourse/base/number_text.h"

#include <optional>

#include "forecourse/base/decimal.h"

namespace forecourse {
namespace {

using Why = NumberFault::Why;
using Read = std::variant<NumberText, NumberFault>;

bool is_digit(std::string_view text, std::size_t at) { return at < text.size() && text[at] >= '0' && text[at] <= '9'; }
bool is(std::string_view text, std::size_t at, char c) { return at < text.size() && text[at] == c; }

std::size_t digits_end(std::string_view text, std::size_t at) {
  while (is_digit(text, at)) ++at;
  return at;
}

bool says_not_finite(std::string_view text, std::size_t begin) {
  const auto lower = [&](std::size_t at) { return at < text.size() ? static_cast<char>(text[at] | 0x20) : '\0'; };
  const auto word = [&](std::string_view w) {
    for (std::size_t i = 0; i < w.size(); ++i) {
      if (lower(begin + i) != w[i]) return false;
    }
    const char next = lower(begin + w.size());
    return next < 'a' || next > 'z';
  };
  return word("inf") || word("infinity") || word("nan");
}

/// End of a run of digits, points and commas, for the caret row.
std::size_t figures_end(std::string_view text, std::size_t at) {
  while (is_digit(text, at) || is(text, at, ',') || is(text, at, '.')) ++at;
  return at;
}

Read decimal_at(std::string_view text, std::size_t begin) {
  const bool starts = is_digit(text, begin) || (is(text, begin, '.') && is_digit(text, begin + 1));
  if (!starts) {
    const bool endless = says_not_finite(text, begin);
    return NumberFault{endless ? Why::not_finite : Why::missing, begin, text.size()};
  }
  const auto [value, in_range, size] = leading_decimal(text.substr(begin)).value_or(LeadingDecimal{});
  const std::size_t end = begin + size;
  if (!in_range) return NumberFault{Why::not_finite, begin, end};
  if (is(text, end, ',')) return NumberFault{Why::comma, begin, figures_end(text, end)};
  if (is(text, end, '.') && is_digit(text, end + 1)) return NumberFault{Why::two_points, begin, figures_end(text, end)};
  return NumberText{value, end == digits_end(text, begin), end};
}

/// A whole number, '/', and a whole number: the value of the fraction, if one stands at `begin`.
std::optional<Read> read_fraction(std::string_view text, std::size_t begin) {
  const std::size_t bar = digits_end(text, begin);
  if (bar == begin || !is(text, bar, '/') || !is_digit(text, bar + 1)) return std::nullopt;
  const Read above = decimal_at(text.substr(0, bar), begin);
  const std::size_t end = digits_end(text, bar + 1);
  const Read below = decimal_at(text.substr(0, end), bar + 1);
  if (std::holds_alternative<NumberFault>(above)) return above;
  if (std::holds_alternative<NumberFault>(below)) return below;
  const double divisor = std::get<NumberText>(below).value;
  if (divisor == 0.0) return Read(NumberFault{Why::zero_below, begin, end});
  return Read(NumberText{std::get<NumberText>(above).value / divisor, false, end});
}

/// Whether a unit such as "1/degF" stands here.
bool one_over(std::string_view text, std::size_t at) {
  if (!is(text, at, '1')) return false;
  while (is(text, ++at, ' ')) {
  }
  return is(text, at, '/');
}

}  // namespace

Read read_number(std::string_view text, std::size_t begin) {
  if (std::optional<Read> fraction = read_fraction(text, begin)) return *fraction;
  Read first = decimal_at(text, begin);
  const auto* whole = std::get_if<NumberText>(&first);
  if (whole == nullptr) return first;
  std::size_t next = whole->end;
  if (is(text, next, '-')) ++next;
  while (is(text, next, ' ')) ++next;
  if (next == whole->end || !is_digit(text, next)) return first;
  const std::optional<Read> fraction = read_fraction(text, next);
  if (!fraction) {
    const bool unit_follows = !is(text, whole->end, ' ') || one_over(text, next);
    return unit_follows ? first : Read(NumberFault{Why::blank_inside, begin, figures_end(text, next)});
  }
  const auto* part = std::get_if<NumberText>(&*fraction);
  if (part == nullptr) return *fraction;
  if (!whole->is_whole) return NumberFault{Why::mixed_decimal, begin, part->end};
  return NumberText{whole->value + part->value, false, part->end};
}

}  // namespace forecourse
