#include "forecourse/base/unit_table.h"

#include <algorithm>
#include <array>
#include <numbers>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"

namespace forecourse {
namespace {

constexpr double meter_per_inch = 0.0254;
constexpr double meter_per_foot = 0.3048;
constexpr double cubic_meter_per_gallon = 3.785411784e-3;  // 231 in3
constexpr double kilogram_per_pound = 0.45359237;
constexpr double newton_per_pound_force = 4.4482216152605;  // kilogram_per_pound * standard_gravity
constexpr double pascal_per_inch_of_water = 1000.0 * standard_gravity * meter_per_inch;
constexpr double pascal_per_inch_of_mercury = 13595.1 * standard_gravity * meter_per_inch;
constexpr double watt_per_horsepower = 550.0 * meter_per_foot * newton_per_pound_force;
constexpr double joule_per_btu = 1055.05585262;  // International Table
constexpr double kelvin_per_fahrenheit_degree = 5.0 / 9.0;
constexpr double kelvin_at_zero_fahrenheit = kelvin_at_zero_celsius - 32.0 * kelvin_per_fahrenheit_degree;
constexpr double cubic_meter_per_cubic_foot = meter_per_foot * meter_per_foot * meter_per_foot;

constexpr UnitDimension number{{0, 0, 0, 0}};
constexpr UnitDimension angle{{0, 0, 0, 0}, 1};
constexpr UnitDimension length{{0, 1, 0, 0}};
constexpr UnitDimension volume{{0, 3, 0, 0}};
constexpr UnitDimension mass{{1, 0, 0, 0}};
constexpr UnitDimension time{{0, 0, 1, 0}};
constexpr UnitDimension flow{{0, 3, -1, 0}};
constexpr UnitDimension force{{1, 1, -2, 0}};
constexpr UnitDimension pressure{{1, -1, -2, 0}};
constexpr UnitDimension energy{{1, 2, -2, 0}};
constexpr UnitDimension power{{1, 2, -3, 0}};
constexpr UnitDimension temperature{{0, 0, 0, 1}};
constexpr UnitDimension density{{1, -3, 0, 0}};
constexpr UnitDimension dynamic_viscosity{{1, -1, -1, 0}};
constexpr UnitDimension kinematic_viscosity{{0, 2, -1, 0}};

constexpr auto units = std::to_array<Unit>({
    {"in", meter_per_inch, length},
    {"\"", meter_per_inch, length},
    {"″", meter_per_inch, length},
    {"ft", meter_per_foot, length},
    {"'", meter_per_foot, length},
    {"′", meter_per_foot, length},
    {"mm", 1e-3, length},
    {"cm", 1e-2, length},
    {"m", 1.0, length},
    {"dm", 1e-1, length},
    {"km", 1e3, length},
    {"yd", 3.0 * meter_per_foot, length},
    {"mi", 5280.0 * meter_per_foot, length},
    {"um", 1e-6, length},
    {"µm", 1e-6, length},  // micro sign
    {"μm", 1e-6, length},  // Greek letter mu
    {"gal", cubic_meter_per_gallon, volume},
    {"L", 1e-3, volume},
    {"mL", 1e-6, volume},
    {"qt", cubic_meter_per_gallon / 4.0, volume},
    {"bbl", 42.0 * cubic_meter_per_gallon, volume},
    {"lb", kilogram_per_pound, mass},
    {"kg", 1.0, mass},
    {"g", 1e-3, mass},
    {"oz", kilogram_per_pound / 16.0, mass},
    {"t", 1e3, mass},
    {"s", 1.0, time},
    {"ms", 1e-3, time},
    {"min", 60.0, time},
    {"h", 3600.0, time},
    {"d", 86400.0, time},
    {"day", 86400.0, time},
    {"days", 86400.0, time},
    {"gpm", cubic_meter_per_gallon / 60.0, flow},
    {"gph", cubic_meter_per_gallon / 3600.0, flow},
    {"cfm", cubic_meter_per_cubic_foot / 60.0, flow},
    {"cfh", cubic_meter_per_cubic_foot / 3600.0, flow},
    {"psi", pascal_per_psi, pressure},
    {"psig", pascal_per_psi, pressure, Datum::gauge},
    {"psia", pascal_per_psi, pressure, Datum::absolute},
    {"kPa", 1e3, pressure},
    {"bar", 1e5, pressure},
    {"Pa", 1.0, pressure},
    {"mPa", 1e-3, pressure},
    {"hPa", 1e2, pressure},
    {"MPa", 1e6, pressure},
    {"GPa", 1e9, pressure},
    {"mbar", 1e2, pressure},
    {"barg", 1e5, pressure, Datum::gauge},
    {"bara", 1e5, pressure, Datum::absolute},
    {"kPag", 1e3, pressure, Datum::gauge},
    {"kPaa", 1e3, pressure, Datum::absolute},
    {"atm", standard_atmosphere, pressure},
    {"inH2O", pascal_per_inch_of_water, pressure},
    {"inHg", pascal_per_inch_of_mercury, pressure},
    {"lbf", newton_per_pound_force, force},
    {"ozf", newton_per_pound_force / 16.0, force},
    {"N", 1.0, force},
    {"kN", 1e3, force},
    {"kip", 1e3 * newton_per_pound_force, force},
    {"hp", watt_per_horsepower, power},
    {"W", 1.0, power},
    {"kW", 1e3, power},
    {"J", 1.0, energy},
    {"kJ", 1e3, energy},
    {"Btu", joule_per_btu, energy},
    {"degF", kelvin_per_fahrenheit_degree, temperature, Datum::none, kelvin_at_zero_fahrenheit},
    {"°F", kelvin_per_fahrenheit_degree, temperature, Datum::none, kelvin_at_zero_fahrenheit},
    {"degC", 1.0, temperature, Datum::none, kelvin_at_zero_celsius},
    {"°C", 1.0, temperature, Datum::none, kelvin_at_zero_celsius},
    {"K", 1.0, temperature},
    {"degR", kelvin_per_fahrenheit_degree, temperature},
    {"degAPI", 1.0, density, Datum::none, 0.0, true},
    {"°API", 1.0, density, Datum::none, 0.0, true},
    {"cP", pascal_second_per_centipoise, dynamic_viscosity},
    {"cSt", square_meter_per_second_per_centistoke, kinematic_viscosity},
    {"deg", std::numbers::pi / 180.0, angle},
    {"°", std::numbers::pi / 180.0, angle},
    {"rad", 1.0, angle},
    {"%", 1e-2, number},
});

constexpr auto spellings = std::to_array<UnitSpelling>({
    {"inch", "in"},         {"inches", "in"},    {"foot", "ft"},      {"feet", "ft"},       {"yard", "yd"},
    {"yards", "yd"},        {"mile", "mi"},      {"miles", "mi"},     {"meter", "m"},       {"meters", "m"},
    {"metre", "m"},         {"metres", "m"},     {"micron", "um"},    {"microns", "um"},    {"gallon", "gal"},
    {"gallons", "gal"},     {"gals", "gal"},     {"quart", "qt"},     {"quarts", "qt"},     {"barrel", "bbl"},
    {"barrels", "bbl"},     {"liter", "L"},      {"liters", "L"},     {"litre", "L"},       {"litres", "L"},
    {"cc", "cm3"},          {"lbs", "lb"},       {"pound", "lb"},     {"pounds", "lb"},     {"lb", "lbf"},
    {"lbs", "lbf"},         {"pounds", "lbf"},   {"ounce", "oz"},     {"ounces", "oz"},     {"tonne", "t"},
    {"sec", "s"},           {"second", "s"},     {"seconds", "s"},    {"minute", "min"},    {"minutes", "min"},
    {"mins", "min"},        {"hr", "h"},         {"hrs", "h"},        {"hour", "h"},        {"hours", "h"},
    {"lpm", "L/min"},       {"LPM", "L/min"},    {"F", "degF"},       {"C", "degC"},        {"fahrenheit", "degF"},
    {"Fahrenheit", "degF"}, {"celsius", "degC"}, {"Celsius", "degC"}, {"API", "degAPI"},    {"psf", "lbf/ft2"},
    {"pcf", "lb/ft3"},      {"pcf", "lbf/ft3"},  {"WC", "inH2O"},     {"inWC", "inH2O"},    {"iwc", "inH2O"},
    {"percent", "%"},       {"degree", "deg"},   {"degrees", "deg"},  {"horsepower", "hp"}, {"HP", "hp"},
});

struct DimensionNoun {
  UnitDimension dimension;
  std::string_view noun;
};

constexpr auto nouns = std::to_array<DimensionNoun>({
    {number, kinds::Ratio::kind.noun},
    {angle, kinds::Angle::kind.noun},
    {length, kinds::Length::kind.noun},
    {{{0, 2, 0, 0}}, kinds::Area::kind.noun},
    {volume, kinds::Volume::kind.noun},
    {mass, kinds::Mass::kind.noun},
    {time, kinds::Duration::kind.noun},
    {{{0, 1, -1, 0}}, kinds::Velocity::kind.noun},
    {flow, kinds::VolumeFlow::kind.noun},
    {{{1, 0, -1, 0}}, "a mass flow"},
    {force, kinds::Force::kind.noun},
    {pressure, "a pressure"},
    {energy, "an energy"},
    {power, kinds::Power::kind.noun},
    {temperature, "a temperature"},
    {density, kinds::Density::kind.noun},
    {dynamic_viscosity, kinds::DynamicViscosity::kind.noun},
    {kinematic_viscosity, kinds::KinematicViscosity::kind.noun},
    {{{1, -4, -1, 0}}, kinds::LinearLoss::kind.noun},
    {{{1, -7, 0, 0}}, kinds::SquareLoss::kind.noun},
    {{{0, 0, 0, -1}}, kinds::Expansion::kind.noun},
    {{{0, 2, -2, -1}}, kinds::SpecificHeat::kind.noun},
    {{{1, -2, -2, 0}}, kinds::UnitWeight::kind.noun},
    {{{1, 0, -2, 0}}, kinds::Stiffness::kind.noun},
    {{{0, 1, -2, 0}}, kinds::Acceleration::kind.noun},
    {{{-1, 4, 2, 0}}, kinds::Compliance::kind.noun},
});

}  // namespace

bool Unit::stands_alone() const { return datum != Datum::none || is_gravity; }

bool Unit::takes_smaller_unit() const {
  return !stands_alone() && dimension != temperature && dimension != pressure && dimension != number;
}

std::span<const Unit> known_units() { return units; }

const Unit* find_unit(std::string_view symbol) {
  const auto* const found =
      std::find_if(units.begin(), units.end(), [&](const Unit& unit) { return unit.symbol == symbol; });
  return found == units.end() ? nullptr : found;
}

std::span<const UnitSpelling> other_spellings() { return spellings; }

std::string_view noun_of(const UnitDimension& dimension) {
  const auto* const found =
      std::find_if(nouns.begin(), nouns.end(), [&](const DimensionNoun& noun) { return noun.dimension == dimension; });
  return found == nouns.end() ? std::string_view{} : found->noun;
}

double density_from_degrees_api(double degrees_api) {
  return 141.5 / (degrees_api + 131.5) * water_density_at_60_fahrenheit;
}

double degrees_api_from_density(double density) { return 141.5 * water_density_at_60_fahrenheit / density - 131.5; }

}  // namespace forecourse
