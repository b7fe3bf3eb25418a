#include "forecourse/studies/flotation/read_flotation_options.h"

#include "forecourse/base/decimal.h"

namespace forecourse::studies {
namespace {

void refuse(const std::string& message, const char* hint, std::vector<Diagnostic>& wrong) {
  wrong.push_back({Severity::error, message, SourceSpan{}, hint, {}});
}

/// A quantity of zero or more.
template <class Q>
std::optional<double> not_negative(const char* word, const std::string& text, Asker asker, const char* hint,
                                   std::vector<Diagnostic>& wrong) {
  const Parsed<site::Maybe<Q>> read = read_option<Q>(word, text, asker);
  wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
  if (!read.value) return std::nullopt;
  const double value = read.value->likely.si();
  if (value < 0.0) refuse(option_name(word, asker) + " is zero or more, but '" + text + "' is written", hint, wrong);
  return value;
}

}  // namespace

Parsed<FlotationOptions> read_flotation_options(const FlotationTexts& texts, Asker asker) {
  Parsed<FlotationOptions> out;
  out.value.tank = texts.tank;
  out.value.water_level =
      not_negative<Length>("water_level", texts.water_level, asker,
                           "it counts from grade downward; water above grade is a flood", out.diagnostics);
  out.value.filled = not_negative<Volume>("filled", texts.filled, asker, "write \"1200 gal\"", out.diagnostics);
  if (texts.factor.empty()) return out;
  const std::optional<double> factor = read_decimal(texts.factor);
  if (factor && *factor > 0.0) {
    out.value.factor = *factor;
  } else {
    refuse(option_name("factor", asker) + " is a number above zero, but '" + texts.factor + "' is written", "write 1.2",
           out.diagnostics);
  }
  return out;
}

}  // namespace forecourse::studies
