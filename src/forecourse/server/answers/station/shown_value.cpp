#include "forecourse/server/answers/station/shown_value.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>
#include <variant>
#include <vector>

#include "forecourse/base/unit_text.h"

namespace forecourse::server {
namespace {

/// The units a kind is shown in. Where `for_unit` is named, only what is written in one of these.
struct UnitPair {
  const QuantityKind* kind;
  const char* us;
  const char* si;
  std::string_view for_units = {};  ///< parted by blanks
};

// The first that fits counts.
constexpr auto unit_pairs = std::to_array<UnitPair>({
    {&kinds::Length::kind, "ft", "m", "ft feet foot ' ′ m meter meters yd mi km"},
    {&kinds::Length::kind, "in", "mm"},
    {&kinds::Area::kind, "ft2", "m2", "ft m"},
    {&kinds::Area::kind, "in2", "cm2"},
    {&kinds::Volume::kind, "gal", "m3", "m bbl"},
    {&kinds::Volume::kind, "in3", "mL", "in mL"},
    {&kinds::Volume::kind, "gal", "L"},
    {&kinds::Mass::kind, "lb", "kg"},
    {&kinds::Velocity::kind, "ft/s", "m/s"},
    {&kinds::VolumeFlow::kind, "gal/h", "L/h", "gph h"},
    {&kinds::VolumeFlow::kind, "cfm", "m3/min", "cfm"},
    {&kinds::VolumeFlow::kind, "gpm", "L/min"},
    {&kinds::PressureDifference::kind, "psi", "kPa"},
    {&kinds::GaugePressure::kind, "psi", "kPa"},
    {&kinds::AbsolutePressure::kind, "psi", "kPa"},
    {&kinds::Modulus::kind, "psi", "MPa"},
    {&kinds::Temperature::kind, "degF", "degC"},
    {&kinds::TemperatureDifference::kind, "degF", "degC"},
    {&kinds::Density::kind, "lb/ft3", "kg/m3"},
    {&kinds::DynamicViscosity::kind, "cP", "mPa.s"},
    {&kinds::KinematicViscosity::kind, "cSt", "mm2/s"},
    {&kinds::LinearLoss::kind, "psi/gpm", "kPa.min/L"},
    {&kinds::SquareLoss::kind, "psi/gpm^2", "kPa.min2/L2"},
    {&kinds::Expansion::kind, "1/degF", "1/degC"},
    {&kinds::SpecificHeat::kind, "Btu/lb.degF", "kJ/kg.K"},
    {&kinds::Power::kind, "hp", "kW"},
    {&kinds::Force::kind, "lbf", "N"},
    {&kinds::Stiffness::kind, "lbf/in", "kN/m"},
    {&kinds::Moment::kind, "lbf.ft", "kN.m"},
    {&kinds::Acceleration::kind, "ft/s2", "m/s2"},
    {&kinds::Compliance::kind, "mL/psi", "mL/kPa"},
    {&kinds::UnitWeight::kind, "lbf/ft3", "kN/m3"},
});

constexpr std::string_view us_units =
    " in inch inches ft feet foot ' ′ \" ″ yd mi gal gallon gallons gals qt bbl lb lbs oz gpm gph cfm cfh psi psig "
    "psia "
    "inH inHg lbf ozf kip hp Btu degF °F degR degAPI °API ";
constexpr std::string_view si_units =
    " mm cm m dm km um µm μm L mL liter liters kg g t kPa bar Pa mPa hPa MPa GPa mbar barg bara kPag kPaa N kN W kW J "
    "kJ degC °C K cc ";

bool holds(std::string_view words, const std::string& word) {
  return (" " + std::string(words) + " ").find(" " + word + " ") != std::string::npos;
}

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '\'' || c == '"' ||
         static_cast<unsigned char>(c) > 127;
}

/// The units in a text: its runs of letters, without the "e" of an exponent.
std::vector<std::string> units_in(std::string_view text) {
  std::vector<std::string> out;
  std::string one;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && is_letter(text[i])) {
      one += text[i];
    } else if (!one.empty()) {
      if (one != "e" && one != "E") out.push_back(one);
      one.clear();
    }
  }
  return out;
}

bool has_unit_of(const std::vector<std::string>& units, std::string_view words) {
  return std::any_of(units.begin(), units.end(), [&](const std::string& unit) { return holds(words, unit); });
}

const UnitPair* pair_for(const QuantityKind& kind, const std::vector<std::string>& units) {
  for (const UnitPair& pair : unit_pairs) {
    if (pair.kind == &kind && (pair.for_units.empty() || has_unit_of(units, pair.for_units))) return &pair;
  }
  return nullptr;
}

}  // namespace

ShownValue shown_value(std::string_view written, const QuantityKind& kind) {
  const auto read = read_quantity(written, kind);
  if (!std::holds_alternative<double>(read)) return {};
  const std::vector<std::string> units = units_in(written);
  const UnitPair* pair = pair_for(kind, units);
  const bool us = has_unit_of(units, us_units);
  const bool si = has_unit_of(units, si_units);
  const std::string as_written(written);
  if (pair == nullptr || us == si) return {as_written, as_written};
  const double value = std::get<double>(read);
  if (us) return {as_written, show_quantity(value, pair->si, kind.datum)};
  return {show_quantity(value, pair->us, kind.datum), as_written};
}

ShownValue shown_share(double number) {
  const std::string text = show_quantity(number, "%");
  return {text, text};
}

}  // namespace forecourse::server
