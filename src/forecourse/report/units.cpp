#include "forecourse/report/units.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstddef>

#include "forecourse/base/unit_text.h"

namespace forecourse::report {
namespace {

struct Shown {
  const char* unit;   ///< as `from_si` takes it
  const char* label;  ///< as printed; empty: `unit`
  int decimals;
};

/// One row for each Measure: US customary, SI.
constexpr std::array<std::array<Shown, 2>, 29> shown_as{{
    {{{"gpm", "", 2}, {"L/min", "", 1}}},
    {{{"psi", "", 1}, {"kPa", "", 0}}},
    {{{"ft", "", 1}, {"m", "", 2}}},
    {{{"in", "", 2}, {"mm", "", 1}}},
    {{{"ft/s", "", 1}, {"m/s", "", 2}}},
    {{{"ft", "", 1}, {"m", "", 2}}},
    {{{"lb/gal", "", 3}, {"kg/m3", "kg/m³", 1}}},
    {{{"cP", "", 2}, {"mPa.s", "mPa·s", 2}}},
    {{{"degF", "°F", 1}, {"degC", "°C", 1}}},
    {{{"gal", "", 2}, {"L", "", 1}}},
    {{{"gph", "", 2}, {"L/h", "", 2}}},
    {{{"lbf", "", 0}, {"N", "", 0}}},
    {{{"lbf.ft", "lbf·ft", 0}, {"N.m", "N·m", 0}}},
    {{{"ft2", "ft²", 1}, {"m2", "m²", 2}}},
    {{{"in2", "in²", 2}, {"mm2", "mm²", 0}}},
    {{{"deg", "", 0}, {"deg", "", 0}}},
    {{{"kW", "", 0}, {"kW", "", 0}}},
    {{{"kW/m2", "kW/m²", 2}, {"kW/m2", "kW/m²", 2}}},
    {{{"ft3", "ft³", 0}, {"m3", "m³", 2}}},
    {{{"lbf/ft3", "lbf/ft³", 1}, {"kN/m3", "kN/m³", 2}}},
    {{{"lb", "", 0}, {"kg", "", 0}}},
    {{{"inH2O", "", 2}, {"Pa", "", 0}}},
    {{{"g/gal", "", 2}, {"g/m3", "g/m³", 0}}},
    {{{"ft3/h", "ft³/h", 2}, {"L/h", "", 1}}},
    {{{"gph", "", 3}, {"L/h", "", 3}}},
    {{{"mL", "", 0}, {"mL", "", 0}}},
    {{{"degF", "°F", 1}, {"degC", "°C", 1}}},
    {{{"psi/degF", "psi/°F", 1}, {"kPa/degC", "kPa/°C", 0}}},
    {{{"in3", "in³", 1}, {"mL", "", 0}}},
}};

const Shown& shown(Measure measure, site::Display display) {
  return shown_as[static_cast<std::size_t>(measure)][display == site::Display::us ? 0 : 1];
}

const char* blank(Glyphs glyphs) { return glyphs == Glyphs::unicode ? "\u00A0" : " "; }

/// Blanks between groups of three digits ahead of the point.
std::string with_thousands(const std::string& digits) {
  const std::size_t whole = std::min(digits.find('.'), digits.size());
  std::string out;
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (i > 0 && i < whole && (whole - i) % 3 == 0) out += "\u00A0";
    out += digits[i];
  }
  return out;
}

bool is_zero(const std::string& digits) { return digits.find_first_not_of("0.") == std::string::npos; }

std::string significant(double value, Glyphs glyphs) {
  if (!std::isfinite(value) || value == 0.0) return number(value, 0, glyphs);
  const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
  if (exponent < -4 || exponent > 6) return fmt::format("{:.3g}", value);
  std::string text = number(value, exponent >= 3 ? 0 : 3 - exponent, glyphs);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

Measure measure_of_length(double meters) { return std::abs(meters) < 0.5 ? Measure::bore : Measure::length; }

}  // namespace

std::string unit_label(Measure measure, site::Display display, Glyphs glyphs) {
  const Shown& s = shown(measure, display);
  return glyphs == Glyphs::unicode && *s.label != '\0' ? s.label : s.unit;
}

int decimals(Measure measure, site::Display display) { return shown(measure, display).decimals; }

double shown_value(Measure measure, site::Display display, double si) {
  const Datum datum = measure == Measure::temperature              ? Datum::thermometer
                      : measure == Measure::temperature_difference ? Datum::difference
                                                                   : Datum::none;
  return from_si(si, shown(measure, display).unit, datum);
}

std::string number(double value, int decimals, Glyphs glyphs) {
  if (!std::isfinite(value)) return glyphs == Glyphs::unicode ? "\u2013" : "-";
  const std::string digits = fmt::format("{:.{}f}", std::abs(value), decimals);
  const bool minus = value < 0.0 && !is_zero(digits);
  if (glyphs == Glyphs::ascii) return (minus ? "-" : "") + digits;
  return (minus ? "\u2212" : "") + with_thousands(digits);
}

std::string number(Measure measure, site::Display display, double si, Glyphs glyphs) {
  return number(shown_value(measure, display, si), decimals(measure, display), glyphs);
}

std::string with_unit(Measure measure, site::Display display, double si, Glyphs glyphs) {
  return number(measure, display, si, glyphs) + blank(glyphs) + unit_label(measure, display, glyphs);
}

std::string time_span(double seconds, Glyphs glyphs) {
  struct Step {
    double below;
    double unit;
    const char* label;
    int decimals;
  };
  constexpr double minute = 60.0, hour = 3600.0, day = 86400.0;
  constexpr std::array<Step, 6> steps{{{1.0, 1.0, "s", 2},
                                       {2.0 * minute, 1.0, "s", 1},
                                       {2.0 * hour, minute, "min", 1},
                                       {2.0 * day, hour, "h", 1},
                                       {100.0 * day, day, "d", 1},
                                       {INFINITY, day, "d", 0}}};
  if (!std::isfinite(seconds)) return number(seconds, 0, glyphs);
  for (const Step& step : steps) {
    if (std::abs(seconds) < step.below)
      return number(seconds / step.unit, step.decimals, glyphs) + blank(glyphs) + step.label;
  }
  return {};
}

std::string default_value(const DefaultUsed& used, site::Display display, Glyphs glyphs) {
  const auto as = [&](Measure measure) {
    return significant(shown_value(measure, display, used.value), glyphs) + blank(glyphs) +
           unit_label(measure, display, glyphs);
  };
  if (used.unit == "m" && std::abs(used.value) < 1e-3) {
    return significant(from_si(used.value, "mm"), glyphs) + blank(glyphs) + "mm";
  }
  if (used.unit == "m") return as(measure_of_length(used.value));
  if (used.unit == "Pa s") return as(Measure::viscosity);
  if (used.unit == "kg/m3") return as(Measure::density);
  if (used.unit == "K") return as(Measure::temperature);
  if (used.unit == "Pa") return as(Measure::pressure);
  if (used.unit == "m3/s") return as(Measure::flow);
  return significant(used.value, glyphs) + (used.unit.empty() ? "" : blank(glyphs) + used.unit);
}

}  // namespace forecourse::report
