#include "forecourse/base/unit_text.h"

#include <fmt/format.h>

#include <stdexcept>

#include "forecourse/base/quantity_reader.h"
#include "forecourse/base/unit_expression.h"

namespace forecourse {
namespace {

/// The rewrites that can be read, else how such a quantity is written.
std::string hint_for(const QuantityTrouble& trouble, const QuantityKind& kind) {
  std::string offers;
  std::size_t count = 0;
  for (const std::string& rewrite : trouble.rewrites) {
    if (count == trouble.offered) break;
    if (std::holds_alternative<QuantityTrouble>(read_or_explain(rewrite, kind))) continue;
    offers += (count++ == 0 ? "\"" : " or \"") + rewrite + "\"";
  }
  if (offers.empty()) offers = kind.examples;
  return offers.empty() ? offers : "write " + offers;
}

struct Scale {
  double factor = 1.0;
  double zero = 0.0;
  bool is_gravity = false;
};

Scale scale_of(std::string_view unit, Datum datum) {
  const auto read = read_unit(unit, 0);
  const auto* expression = std::get_if<UnitExpression>(&read);
  if (expression == nullptr || expression->end != unit.size()) {
    throw std::logic_error("not a unit: " + std::string(unit));
  }
  Scale scale{expression->factor};
  if (expression->single == nullptr) return scale;
  scale.is_gravity = expression->single->is_gravity;
  const bool temperature = expression->dimension.powers == kinds::Temperature::kind.dimension;
  if (temperature && datum != Datum::thermometer && datum != Datum::difference) {
    throw std::logic_error("neither a temperature nor a difference: " + std::string(unit));
  }
  if (temperature && datum == Datum::thermometer) scale.zero = expression->single->zero;
  return scale;
}

}  // namespace

std::variant<double, UnitTextError> read_quantity(std::string_view text, const QuantityKind& kind) {
  const auto outcome = read_or_explain(text, kind);
  if (const double* value = std::get_if<double>(&outcome)) return *value;
  const QuantityTrouble& trouble = std::get<QuantityTrouble>(outcome);
  return UnitTextError{std::string("is ") + kind.noun + trouble.message, hint_for(trouble, kind), trouble.begin,
                       trouble.end};
}

std::variant<double, UnitTextError> read_dimensioned(std::string_view text, Dimension dimension, const char* noun,
                                                     const char* examples) {
  return read_quantity(text, QuantityKind{noun, dimension, Datum::difference, examples});
}

double from_si(double si, std::string_view unit, Datum datum) {
  const Scale scale = scale_of(unit, datum);
  return scale.is_gravity ? degrees_api_from_density(si) : (si - scale.zero) / scale.factor;
}

double to_si(double value, std::string_view unit, Datum datum) {
  const Scale scale = scale_of(unit, datum);
  return scale.is_gravity ? density_from_degrees_api(value) : scale.zero + value * scale.factor;
}

std::string show_quantity(double si, std::string_view unit, Datum datum) {
  return fmt::format("{:.6g} {}", from_si(si, unit, datum) + 0.0, unit);  // no "-0"
}

}  // namespace forecourse
