#include "forecourse/base/unit_expression.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace forecourse {
namespace {

using Why = UnitExpressionFault::Why;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

constexpr auto blanks = std::to_array<std::string_view>({" ", "\t", "\u00a0", "\u2009", "\u202f"});
constexpr auto products = std::to_array<std::string_view>({".", "*", "·", "⋅", "-"});
constexpr auto lone_symbols = std::to_array<std::string_view>({"%", "'", "\"", "′", "″"});
constexpr auto signs_in_symbols = std::to_array<std::string_view>({"°", "µ", "μ"});

/// Length of the word of `words` that stands at `at`, 0 if none does.
template <std::size_t n>
std::size_t match(const std::array<std::string_view, n>& words, std::string_view text, std::size_t at) {
  for (const std::string_view word : words) {
    if (text.substr(at).starts_with(word)) return word.size();
  }
  return 0;
}

class Reader {
 public:
  Reader(std::string_view text, std::size_t begin) : text_(text), at_(begin) { unit_.begin = begin; }

  std::variant<UnitExpression, UnitExpressionFault> read() {
    if (!reads_one_above_line()) read_factor();
    while (!fault_ && next_operator()) read_factor();
    if (!fault_ && in_parentheses_) fail(Why::unfinished, at_, text_.size());
    if (fault_) return *fault_;
    if (factors_ > 1) unit_.single = nullptr;
    return unit_;
  }

 private:
  void fail(Why why, std::size_t begin, std::size_t end) {
    if (!fault_) fault_ = UnitExpressionFault{why, begin, end};
  }

  /// The length of the symbol at `at`: letters with their signs, and the digits between letters and behind them.
  [[nodiscard]] std::size_t symbol_end(std::size_t at) const {
    if (const std::size_t lone = match(lone_symbols, text_, at)) return at + lone;
    std::size_t end = at;
    while (end < text_.size()) {
      const std::size_t sign = match(signs_in_symbols, text_, end);
      if (sign == 0 && !is_letter(text_[end]) && !(end > at && is_digit(text_[end]))) break;
      end += sign == 0 ? 1 : sign;
    }
    return end;
  }

  bool reads_one_above_line() {
    if (!text_.substr(at_).starts_with("1")) return false;
    const std::size_t next = skip_blanks(text_, at_ + 1);
    if (next >= text_.size() || text_[next] != '/') return false;
    at_ = next;
    ++factors_;  // so that what is below the line is not taken for a single unit
    return true;
  }

  /// Goes past an operator if another symbol is joined on; false at the end of the unit.
  bool next_operator() {
    const std::size_t next = skip_blanks(text_, at_);
    if (next >= text_.size()) return false;
    if (text_[next] == '/') return go_below_line(next);
    if (in_parentheses_ && text_[next] == ')') return close(next);
    if (const std::size_t sign = match(products, text_, next)) return join(next, sign);
    const bool blank_between = next > at_;
    if (!blank_between || symbol_end(next) == next) return false;
    at_ = next;
    return true;
  }

  bool go_below_line(std::size_t slash) {
    below_line_ = true;
    at_ = skip_blanks(text_, slash + 1);
    if (at_ < text_.size() && text_[at_] == '(' && !in_parentheses_) {
      in_parentheses_ = true;
      below_line_ = false;  // a line of its own
      outside_ = unit_;
      unit_.factor = 1.0;
      unit_.dimension = {};
      at_ = skip_blanks(text_, at_ + 1);
    }
    return true;
  }

  bool close(std::size_t parenthesis) {
    in_parentheses_ = false;
    at_ = parenthesis + 1;
    const int power = -read_power();  // of all that stands between the parentheses, below the line
    unit_.factor = outside_.factor * std::pow(unit_.factor, power);
    unit_.dimension.powers = outside_.dimension.powers + power * unit_.dimension.powers;
    unit_.dimension.angle = outside_.dimension.angle + power * unit_.dimension.angle;
    unit_.end = at_;
    return false;
  }

  bool join(std::size_t sign_at, std::size_t sign_length) {
    const std::size_t next = skip_blanks(text_, sign_at + sign_length);
    const bool symbol_follows = symbol_end(next) > next;
    if (symbol_follows) at_ = next;
    const bool abbreviates = !symbol_follows && text_[sign_at] == '.' && sign_at == at_;
    if (abbreviates) {
      at_ = unit_.end = sign_at + 1;
      return next_operator();
    }
    return symbol_follows;
  }

  void read_factor() {
    const std::size_t begin = at_;
    const std::size_t end = symbol_end(begin);
    if (end == begin) return fail(factors_ == 0 ? Why::missing : Why::unfinished, begin, text_.size());
    std::size_t letters = end;
    const Unit* unit = find_unit(text_.substr(begin, end - begin));
    if (unit == nullptr && is_digit(text_[end - 1])) unit = find_unit(text_.substr(begin, --letters - begin));
    if (unit == nullptr) return fail(Why::unknown_symbol, begin, end);
    at_ = letters;
    multiply(*unit, read_power());
    if (unit->stands_alone() && (factors_ > 1 || unit_.single == nullptr)) fail(Why::stands_alone, begin, letters);
    if (factors_ > 1 && first_stands_alone_) fail(Why::stands_alone, unit_.begin, first_end_);
  }

  void multiply(const Unit& unit, int power) {
    if (++factors_ == 1) {
      first_stands_alone_ = unit.stands_alone();
      first_end_ = at_;
    }
    unit_.single = factors_ == 1 && power == 1 ? &unit : nullptr;
    if (below_line_) power = -power;
    unit_.factor *= std::pow(unit.factor, power);
    unit_.dimension.powers = unit_.dimension.powers + power * unit.dimension.powers;
    unit_.dimension.angle += power * unit.dimension.angle;
    unit_.end = at_;
  }

  int read_power() {
    const std::size_t begin = at_;
    const std::string_view rest = text_.substr(at_);
    if (rest.starts_with("²")) return take_power(2, std::string_view("²").size());
    if (rest.starts_with("³")) return take_power(3, std::string_view("³").size());
    const bool behind_letter = begin > 0 && is_letter(text_[begin - 1]);  // not so in 12'6"
    if (behind_letter && !rest.empty() && is_digit(rest[0])) return take_power(rest[0] - '0', 1);
    if (!rest.starts_with("^")) return 1;
    const bool negative = rest.starts_with("^-");
    const std::size_t digit = begin + (negative ? 2 : 1);
    const bool one_digit = digit < text_.size() && is_digit(text_[digit]) && text_[digit] != '0' &&
                           (digit + 1 == text_.size() || !is_digit(text_[digit + 1]));
    if (!one_digit) fail(Why::bad_power, begin, std::min(digit + 1, text_.size()));
    const int power = one_digit ? text_[digit] - '0' : 1;
    return take_power(negative ? -power : power, digit + 1 - begin);
  }

  int take_power(int power, std::size_t length) {
    if (power == 0) fail(Why::bad_power, at_, at_ + length);
    at_ = std::min(at_ + length, text_.size());
    return power;
  }

  std::string_view text_;
  std::size_t at_;
  UnitExpression unit_;
  UnitExpression outside_;  ///< what stands before a parenthesis
  std::optional<UnitExpressionFault> fault_;
  int factors_ = 0;
  bool below_line_ = false;
  bool in_parentheses_ = false;
  bool first_stands_alone_ = false;
  std::size_t first_end_ = 0;
};

}  // namespace

std::size_t skip_blanks(std::string_view text, std::size_t begin) {
  while (begin < text.size()) {
    const std::size_t blank = match(blanks, text, begin);
    if (blank == 0) break;
    begin += blank;
  }
  return begin;
}

std::variant<UnitExpression, UnitExpressionFault> read_unit(std::string_view text, std::size_t begin) {
  return Reader(text, begin).read();
}

}  // namespace forecourse
