#include "forecourse/decide/mend/grid.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <variant>

#include "forecourse/base/decimal.h"
#include "forecourse/base/quantity.h"
#include "forecourse/base/unit_text.h"

namespace forecourse::decide {
namespace {

struct Steps {
  const QuantityKind* kind;  ///< null: a count
  const char* us;            ///< unit
  double us_step;
  const char* si;
  double si_step;
};

Steps steps_of(Grid grid) {
  switch (grid) {
    case Grid::eighth:
      return {&Length::kind(), "in", 0.125, "mm", 2.0};
    case Grid::inch:
      return {&Length::kind(), "in", 1.0, "cm", 1.0};
    case Grid::half_foot:
      return {&Length::kind(), "ft", 0.5, "m", 0.1};
    case Grid::gallon:
      return {&Volume::kind(), "gal", 1.0, "L", 5.0};
    case Grid::order:
      return {&Volume::kind(), "gal", 50.0, "L", 200.0};
    case Grid::hose_flow:
      return {&VolumeFlow::kind(), "gpm", 0.5, "L/min", 1.0};
    case Grid::drop_flow:
      return {&VolumeFlow::kind(), "gpm", 10.0, "L/min", 50.0};
    case Grid::percent:
      return {&Ratio::kind(), "%", 1.0, "%", 1.0};
    case Grid::tenth:
      return {&Ratio::kind(), "%", 0.1, "%", 0.1};
    case Grid::hour:
      return {&Duration::kind(), "h", 1.0, "h", 1.0};
    case Grid::month:
      return {&Duration::kind(), "d", 30.0, "d", 30.0};
    case Grid::count:
      break;
  }
  return {nullptr, "", 1.0, "", 1.0};
}

bool is_us(site::Display display) { return display == site::Display::us; }

/// "5 5/8", "1/8", "-5 1/2"
std::string in_eighths(double inches) {
  const long eighths = std::lround(inches * 8.0);
  const std::string sign = eighths < 0 ? "-" : "";
  const auto [whole, rest] = std::div(std::labs(eighths), 8L);
  if (rest == 0) return fmt::format("{}{}", sign, whole);
  const long divisor = rest % 4 == 0 ? 4 : rest % 2 == 0 ? 2 : 1;
  const std::string fraction = fmt::format("{}/{}", rest / divisor, 8 / divisor);
  return whole == 0 ? sign + fraction : fmt::format("{}{} {}", sign, whole, fraction);
}

/// "12 ft 3 in", "9 in"
std::string in_feet_and_inches(double inches) {
  const long all = std::lround(inches);
  const std::string sign = all < 0 ? "-" : "";
  const auto [feet, rest] = std::div(std::labs(all), 12L);
  if (feet == 0) return fmt::format("{}{} in", sign, rest);
  return rest == 0 ? fmt::format("{}{} ft", sign, feet) : fmt::format("{}{} ft {} in", sign, feet, rest);
}

/// Without quotes and blanks at the ends.
std::string_view bare(std::string_view bytes) {
  const bool quoted = bytes.size() >= 2 && (bytes.front() == '"' || bytes.front() == '\'');
  return quoted ? bytes.substr(1, bytes.size() - 2) : bytes;
}

}  // namespace

double step_of(Grid grid, site::Display display) {
  const Steps steps = steps_of(grid);
  if (steps.kind == nullptr) return 1.0;
  return is_us(display) ? to_si(steps.us_step, steps.us) : to_si(steps.si_step, steps.si);
}

Written written_like(std::string_view bytes, site::Display otherwise) {
  constexpr std::array<std::string_view, 4> us{"in", "ft", "gal", "gpm"};
  constexpr std::array<std::string_view, 5> metric{"mm", "cm", "m", "L", "L/min"};
  const std::string_view text = bare(bytes);
  const std::size_t begin = text.find_first_not_of(' ', text.find_last_of("0123456789") + 1);
  const std::string_view unit = begin == std::string_view::npos ? std::string_view() : text.substr(begin);
  if (std::find(us.begin(), us.end(), unit) != us.end()) return {site::Display::us, std::string(unit)};
  if (std::find(metric.begin(), metric.end(), unit) != metric.end()) return {site::Display::si, std::string(unit)};
  return {otherwise};
}

std::string text_on(Grid grid, const Written& as, double si) {
  const Steps steps = steps_of(grid);
  if (steps.kind == nullptr) return fmt::format("{}", std::lround(si));
  const bool us = is_us(as.display);
  if (us && grid == Grid::inch && as.unit != "in") return in_feet_and_inches(from_si(si, "in"));
  if (us && (grid == Grid::inch || grid == Grid::eighth)) return in_eighths(from_si(si, "in")) + " in";
  if (!as.unit.empty()) return show_quantity(si, as.unit);
  return show_quantity(si, us ? steps.us : steps.si);
}

std::optional<double> read_value(Grid grid, std::string_view bytes) {
  const Steps steps = steps_of(grid);
  if (steps.kind == nullptr) {
    const auto read = leading_decimal(bytes);
    return read && read->in_range ? std::optional(read->value) : std::nullopt;
  }
  const auto read = read_quantity(bare(bytes), *steps.kind);
  if (const double* value = std::get_if<double>(&read)) return *value;
  return std::nullopt;
}

}  // namespace forecourse::decide
