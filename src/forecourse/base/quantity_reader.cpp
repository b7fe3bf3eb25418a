#include "forecourse/base/quantity_reader.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "forecourse/base/nearest_word.h"
#include "forecourse/base/number_text.h"
#include "forecourse/base/unit_expression.h"

namespace forecourse {
namespace {

using Trouble = QuantityTrouble;
using Outcome = std::variant<double, Trouble>;

/// A piece of the user's text for a message: in quotes, on one line, not too long.
std::string shown(std::string_view piece) {
  constexpr std::size_t longest = 48;
  std::string out = "'";
  for (const char c : piece) {
    const bool starts_code_point = (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    if (out.size() > longest && starts_code_point) return out + "...'";
    const bool control = static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
    out += control ? ' ' : c;
  }
  return out + "'";
}

std::string_view without_blanks_behind(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

/// Symbols that may have been meant by one that is not known, the likeliest first.
std::vector<std::string_view> similar_symbols(std::string_view symbol) {
  std::vector<std::pair<std::size_t, std::string_view>> ranked;
  for (const UnitSpelling& spelling : other_spellings()) {
    if (spelling.seen == symbol) ranked.emplace_back(0, spelling.meant);
  }
  const std::size_t most = symbol.size() <= 3 ? 1 : 2;
  for (const Unit& unit : known_units()) {
    const bool same_but_case = nearest_word(symbol, std::span(&unit.symbol, 1)) && unit.symbol.size() == symbol.size();
    const std::size_t distance = edit_distance(symbol, unit.symbol);
    const bool near = distance <= most && distance < symbol.size();
    if (near || same_but_case) ranked.emplace_back(1 + distance, unit.symbol);
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string_view> symbols;
  symbols.reserve(ranked.size());
  for (const auto& entry : ranked) symbols.push_back(entry.second);
  return symbols;
}

class QuantityReader {
 public:
  QuantityReader(std::string_view text, const QuantityKind& kind) : text_(without_blanks_behind(text)), kind_(kind) {
    // An angle and a ratio have one dimension in the SI; here they are kept apart.
    expected_ = {kind.dimension, std::string_view(kind.noun) == kinds::Angle::kind.noun ? 1 : 0};
  }

  Outcome read() {
    std::size_t at = skip_blanks(text_, 0);
    start_ = at;
    if (at == text_.size()) return trouble(", but the text is empty", 0, text_.size());
    const double sign = read_sign(at);
    double sum = 0.0;
    while (true) {
      const auto number = read_number(text_, at);
      if (const auto* fault = std::get_if<NumberFault>(&number)) return explain(*fault);
      const NumberText& figures = std::get<NumberText>(number);
      const auto unit = read_unit(text_, skip_blanks(text_, figures.end));
      if (const auto* fault = std::get_if<UnitExpressionFault>(&unit)) return explain(*fault);
      const UnitExpression& expression = std::get<UnitExpression>(unit);
      if (auto fault = unfit(expression)) return *fault;
      if (auto fault = does_not_fall(figures, expression, at)) return *fault;
      at = next_part(expression.end);
      const bool last = at == text_.size();
      if (last && larger_ == nullptr) return finish(sign * figures.value, expression);
      sum += figures.value * expression.factor;
      if (last) return sign * sum;
      if (!may_go_on(figures, expression, at)) return rubbish(at);
      larger_ = expression.single;
    }
  }

 private:
  [[nodiscard]] Trouble trouble(std::string message, std::size_t begin, std::size_t end) const {
    return Trouble{std::move(message), begin, end, {}};
  }
  [[nodiscard]] std::string piece(std::size_t begin, std::size_t end) const {
    return shown(text_.substr(begin, end - begin));
  }
  [[nodiscard]] std::string with(std::size_t begin, std::size_t end, std::string_view other) const {
    return std::string(text_.substr(0, begin)).append(other).append(text_.substr(end));
  }

  double read_sign(std::size_t& at) const {
    constexpr std::string_view minus = "−";
    const std::string_view rest = text_.substr(at);
    const bool negative = rest.starts_with('-') || rest.starts_with(minus);
    if (negative) at += rest.starts_with('-') ? 1 : minus.size();
    if (rest.starts_with('+')) ++at;
    at = skip_blanks(text_, at);
    return negative ? -1.0 : 1.0;
  }

  /// The start of a further part, behind blanks or the hyphen of "12'-6\"".
  [[nodiscard]] std::size_t next_part(std::size_t at) const {
    const bool hyphen = at + 1 < text_.size() && text_[at] == '-' && text_[at + 1] >= '0' && text_[at + 1] <= '9';
    return hyphen ? at + 1 : skip_blanks(text_, at);
  }

  [[nodiscard]] bool may_go_on(const NumberText& figures, const UnitExpression& unit, std::size_t at) const {
    const bool digit = text_[at] >= '0' && text_[at] <= '9';
    return digit && figures.is_whole && unit.single != nullptr && unit.single->takes_smaller_unit();
  }

  [[nodiscard]] Trouble rubbish(std::size_t at) const {
    return trouble(", but " + piece(at, text_.size()) + " makes no sense after " + piece(start_, at), at, text_.size());
  }

  [[nodiscard]] std::optional<Trouble> does_not_fall(const NumberText& figures, const UnitExpression& unit,
                                                     std::size_t at) const {
    if (larger_ == nullptr) return std::nullopt;
    const std::string larger = shown(larger_->symbol);
    if (unit.single == nullptr || unit.single->factor >= larger_->factor) {
      return trouble(", but " + piece(unit.begin, unit.end) + " is not a smaller unit than " + larger, at, unit.end);
    }
    if (figures.value * unit.factor >= larger_->factor) {
      return trouble(", but " + piece(at, unit.end) + " is no less than one " + larger, at, unit.end);
    }
    return std::nullopt;
  }

  /// Why a unit is not one of what was asked for.
  [[nodiscard]] std::optional<Trouble> unfit(const UnitExpression& unit) const {
    const std::string said = ", but " + piece(unit.begin, unit.end) + " is ";
    const bool thermometer = kind_.datum == Datum::thermometer;
    if (unit.dimension != expected_ || (thermometer && unit.single == nullptr)) {
      const std::string_view noun = noun_of(unit.dimension);
      Trouble fault = trouble(said + (noun.empty() ? "something else" : std::string(noun)), unit.begin, unit.end);
      add_other_spellings(fault);
      return fault;
    }
    const Datum datum = unit.single == nullptr ? Datum::none : unit.single->datum;
    if (datum == Datum::none || datum == kind_.datum) return std::nullopt;
    const char* noun = datum == Datum::gauge ? kinds::GaugePressure::kind.noun : kinds::AbsolutePressure::kind.noun;
    return trouble(said + noun, unit.begin, unit.end);
  }

  void add_other_spellings(Trouble& fault) const {
    const std::string_view symbol = text_.substr(fault.begin, fault.end - fault.begin);
    for (const UnitSpelling& spelling : other_spellings()) {
      if (spelling.seen == symbol) fault.rewrites.push_back(with(fault.begin, fault.end, spelling.meant));
    }
  }

  [[nodiscard]] Outcome finish(double number, const UnitExpression& unit) const {
    double value = number * unit.factor;
    if (unit.single != nullptr && unit.single->is_gravity) value = density_from_degrees_api(number);
    if (kind_.datum == Datum::thermometer) {
      value += unit.single->zero;
      if (value < 0.0)
        return trouble(", but " + piece(start_, text_.size()) + " is below absolute zero", start_, text_.size());
    }
    const bool sensible = std::isfinite(value) && (unit.single == nullptr || !unit.single->is_gravity || value > 0.0);
    if (sensible) return value;
    return trouble(", but " + piece(start_, text_.size()) + " is out of range", start_, text_.size());
  }

  [[nodiscard]] Trouble explain(const NumberFault& fault) const {
    using Why = NumberFault::Why;
    Trouble out = trouble("", fault.begin, fault.end);
    const std::string said = piece(fault.begin, fault.end);
    switch (fault.why) {
      case Why::missing:
        out.message = ", but " + said + " has no number";
        break;
      case Why::not_finite:
        out.message = ", but " + said + " is not a finite number";
        break;
      case Why::comma:
        out.message = ", but " + said + " has a comma";
        break;
      case Why::blank_inside:
        out.message = ", but " + said + " has a blank in the number";
        break;
      case Why::two_points:
        out.message = ", but " + said + " has two decimal points";
        break;
      case Why::zero_below:
        out.message = ", but " + said + " divides by zero";
        break;
      case Why::mixed_decimal:
        out.message = ", but " + said + " mixes a decimal and a fraction";
        break;
    }
    if (fault.why == Why::missing && fault.begin == text_.size()) {
      out.message = ", but " + piece(start_, text_.size()) + " has no number";
      out.begin = start_;
    }
    if (fault.why == Why::comma || fault.why == Why::blank_inside) add_plain_numbers(out);
    return out;
  }

  /// "2.5" for "2,5"; both "8000" and "8.000" for "8,000"; "8000" for "8 000".
  void add_plain_numbers(Trouble& out) const {
    const std::string_view figures = text_.substr(out.begin, out.end - out.begin);
    const std::size_t mark = figures.find_first_of(", ");
    const std::string_view behind = figures.substr(mark + 1);
    std::string joined(figures);
    std::erase_if(joined, [](char c) { return c == ',' || c == ' '; });
    std::string pointed(figures);
    pointed[mark] = '.';
    const bool thousands = behind.size() == 3 || behind.find_first_of(",.") != std::string_view::npos;
    if (thousands || figures[mark] == ' ') out.rewrites.push_back(with(out.begin, out.end, joined));
    if (figures[mark] == ',') out.rewrites.push_back(with(out.begin, out.end, pointed));
    out.offered = 2;
  }

  [[nodiscard]] Trouble explain(const UnitExpressionFault& fault) const {
    using Why = UnitExpressionFault::Why;
    Trouble out = trouble("", fault.begin, fault.end);
    const std::string said = piece(fault.begin, fault.end);
    switch (fault.why) {
      case Why::missing:
        out.message = ", but " + said + " is not a unit";
        break;
      case Why::unknown_symbol:
        out.message = ", but " + said + " is not a unit known here";
        break;
      case Why::stands_alone:
        out.message = ", but " + said + " cannot be part of a combined unit";
        break;
      case Why::bad_power:
        out.message = ", but " + said + " is not a power of a unit";
        break;
      case Why::unfinished:
        out.message = ", but the unit in " + piece(start_, text_.size()) + " is unfinished";
        break;
    }
    if (fault.why == Why::missing && fault.begin == text_.size()) {
      out.message = "; " + piece(start_, text_.size()) + " has no unit";
      out.begin = start_;
    }
    constexpr std::size_t longest_to_rewrite = 200;
    if (fault.why == Why::unknown_symbol && text_.size() <= longest_to_rewrite) {
      const auto symbols = similar_symbols(text_.substr(fault.begin, fault.end - fault.begin));
      for (const std::string_view symbol : symbols) out.rewrites.push_back(with(fault.begin, fault.end, symbol));
    }
    if (fault.why == Why::stands_alone) out.rewrites.push_back(with(fault.end - 1, fault.end, ""));
    return out;
  }

  std::string_view text_;
  const QuantityKind& kind_;
  UnitDimension expected_;
  std::size_t start_ = 0;
  const Unit* larger_ = nullptr;  ///< of the part before
};

}  // namespace

Outcome read_or_explain(std::string_view text, const QuantityKind& kind) { return QuantityReader(text, kind).read(); }

}  // namespace forecourse
