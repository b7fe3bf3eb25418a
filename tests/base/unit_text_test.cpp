// SOURCE: [nist_handbook_44, appendix C, section 4] exact lengths, volumes and masses
// SOURCE: [nist_sp811, appendix B.8] forces, pressures, powers
#include "forecourse/base/unit_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <locale>
#include <stdexcept>

#include "forecourse/base/api_units.h"
#include "forecourse/base/unit_table.h"

namespace forecourse {
namespace {

struct Row {
  const char* text;
  const QuantityKind& kind;
  double si;
};

void expect_value(const Row& row) {
  const auto read = read_quantity(row.text, row.kind);
  const auto* error = std::get_if<UnitTextError>(&read);
  ASSERT_EQ(error, nullptr) << row.text << " " << error->message;
  // Rounding only: a handful of multiplications.
  EXPECT_NEAR(std::get<double>(read), row.si, 4e-16 * 4 * std::abs(row.si)) << row.text;
}

const QuantityKind& length = Length::kind();
const QuantityKind& volume = Volume::kind();
const QuantityKind& pressure = PressureDifference::kind();

// What the definitions say, digit for digit.
TEST(UnitText, AgreesWithExactUsCustomaryDefinitions) {
  const Row rows[] = {
      {"1 in", length, 0.0254},
      {"1 ft", length, 0.3048},
      {"1 yd", length, 0.9144},
      {"1 mi", length, 1609.344},
      {"1 in2", Area::kind(), 6.4516e-4},
      {"1 ft2", Area::kind(), 0.09290304},
      {"1 in3", volume, 1.6387064e-5},
      {"1 ft3", volume, 0.028316846592},
      {"231 in3", volume, 3.785411784e-3},
      {"1 gal", volume, 3.785411784e-3},
      {"1 qt", volume, 0.946352946e-3},
      {"1 bbl", volume, 0.158987294928},
      {"1 lb", Mass::kind(), 0.45359237},
      {"1 oz", Mass::kind(), 0.028349523125},
      {"1 lbf", Force::kind(), 4.4482216152605},
      {"1 kip", Force::kind(), 4448.2216152605},
      {"1 day", Duration::kind(), 86400.0},
  };
  for (const Row& row : rows) expect_value(row);
}

// Printed to seven digits; half of the last one is allowed.
TEST(UnitText, AgreesWithPublishedFactorsToSevenDigits) {
  const Row rows[] = {
      {"1 psi", pressure, 6.894757e3},
      {"1 hp", Power::kind(), 7.456999e2},
      {"1 inH2O", pressure, 2.490889e2},
      {"1 inHg", pressure, 3.386389e3},
      {"1 gpm", VolumeFlow::kind(), 6.309020e-5},
      {"1 lb/ft3", Density::kind(), 1.601846e1},
      {"1 lb/gal", Density::kind(), 1.198264e2},
      {"1 Btu/lb.degF", SpecificHeat::kind(), 4.1868e3},
  };
  for (const Row& row : rows) {
    const auto read = read_quantity(row.text, row.kind);
    ASSERT_TRUE(std::holds_alternative<double>(read)) << row.text;
    EXPECT_NEAR(std::get<double>(read) / row.si, 1.0, 0.5e-6) << row.text;
  }
}

TEST(UnitText, ReadsTheFormsOfASiteFile) {
  constexpr double gpm = 3.785411784e-3 / 60.0;
  const double psi = pascal_from_psi(1.0);
  const Row rows[] = {
      {"12 ft 6 in", length, 3.81},
      {"-14 ft 2 in", length, -170 * 0.0254},
      {"12' 6\"", length, 3.81},
      {"12'-6\"", length, 3.81},
      {"12'6\"", length, 3.81},
      {"12 ft-6 1/2 in", length, 150.5 * 0.0254},
      {"12 ft. 6 in.", length, 3.81},
      {"7 1/2 in", length, 7.5 * 0.0254},
      {"7-1/2 in", length, 7.5 * 0.0254},
      {"1/4 in", length, 0.25 * 0.0254},
      {"2.00in", length, 0.0508},
      {"  .5 in ", length, 0.0127},
      {"+5. mm", length, 5e-3},
      {"4.5e-5 m", length, 4.5e-5},
      {"1.5 µm", length, 1.5e-6},
      {"1.5 um", length, 1.5e-6},
      {"2\u00a0m", length, 2.0},
      {"1 h 30 min", Duration::kind(), 5400.0},
      {"90 days", Duration::kind(), 90 * 86400.0},
      {"4400 lb 8 oz", Mass::kind(), 4400.5 * 0.45359237},
      {"8000 gal", volume, 30.283294272},
      {"500 mL", volume, 5e-4},
      {"3 gph", VolumeFlow::kind(), 3 * 3.785411784e-3 / 3600},
      {"38 L/min", VolumeFlow::kind(), 38e-3 / 60},
      {"2 L/s", VolumeFlow::kind(), 2e-3},
      {"36 m3/h", VolumeFlow::kind(), 1e-2},
      {"36 m³/h", VolumeFlow::kind(), 1e-2},
      {"7 ft/s", Velocity::kind(), 7 * 0.3048},
      {"0.21 psi/gpm^2", SquareLoss::kind(), 0.21 * psi / (gpm * gpm)},
      {"0.21 psi/gpm²", SquareLoss::kind(), 0.21 * psi / (gpm * gpm)},
      {"0.21 psi / gpm^2", SquareLoss::kind(), 0.21 * psi / (gpm * gpm)},
      {"0.21 psi/(gpm)^2", SquareLoss::kind(), 0.21 * psi / (gpm * gpm)},
      {"1 kPa/(L/min)^2", SquareLoss::kind(), 1e3 / (1e-3 / 60.0) / (1e-3 / 60.0)},
      {"1 kPa/(L/min)²", SquareLoss::kind(), 1e3 / (1e-3 / 60.0) / (1e-3 / 60.0)},
      {"0.2 psi/gpm", LinearLoss::kind(), 0.2 * psi / gpm},
      {"4 kPa.min/L", LinearLoss::kind(), 4e3 * 60 / 1e-3},
      {"840 kg/m3", Density::kind(), 840.0},
      {"0.84 g/cm3", Density::kind(), 840.0},
      {"0.50 mPa.s", DynamicViscosity::kind(), 5e-4},
      {"0.50 mPa s", DynamicViscosity::kind(), 5e-4},
      {"0.50 cP", DynamicViscosity::kind(), 5e-4},
      {"0.68 cSt", KinematicViscosity::kind(), 6.8e-7},
      {"0.68 mm2/s", KinematicViscosity::kind(), 6.8e-7},
      {"0.00067 1/degF", Expansion::kind(), 0.00067 * 1.8},
      {"0.0012 1/°C", Expansion::kind(), 0.0012},
      {"0.0012 1/K", Expansion::kind(), 0.0012},
      {"2.2 kJ/kg.K", SpecificHeat::kind(), 2200.0},
      {"2.2 kJ/(kg.K)", SpecificHeat::kind(), 2200.0},
      {"2.2 kJ/kg/K", SpecificHeat::kind(), 2200.0},
      {"120 lbf/ft3", UnitWeight::kind(), 120 * 4.4482216152605 / 0.028316846592},
      {"1.9 %", Ratio::kind(), 0.019},
      {"1/4 in/ft", Ratio::kind(), 0.25 / 12.0},
      {"180 deg", Angle::kind(), 3.14159265358979323846},
      {"1 ozf/in2", pressure, pascal_from_psi(1.0 / 16.0)},
      {"1.2 GPa", Modulus::kind(), 1.2e9},
      {"170000 psi", Modulus::kind(), 170000 * psi},
      {"2.1 bar", pressure, 2.1e5},
      {"30 psi", GaugePressure::kind(), 30 * psi},
      {"15 psig", GaugePressure::kind(), 15 * psi},
      {"14.7 psia", AbsolutePressure::kind(), 14.7 * psi},
      {"101.3 kPa", AbsolutePressure::kind(), 101300.0},
      {"1.5 kW", Power::kind(), 1500.0},
      {"45 lbf/in", Stiffness::kind(), 45 * 4.4482216152605 / 0.0254},
      {"45 lbf/ft", Stiffness::kind(), 45 * 4.4482216152605 / 0.3048},
      {"8 kN/m", Stiffness::kind(), 8000.0},
      {"3300 lbf.ft", Moment::kind(), 3300 * 4.4482216152605 * 0.3048},
      {"3300 lbf ft", Moment::kind(), 3300 * 4.4482216152605 * 0.3048},
      {"4.5 kN.m", Moment::kind(), 4500.0},
      {"5 ft/s2", Acceleration::kind(), 5 * 0.3048},
      {"1.5 m/s^2", Acceleration::kind(), 1.5},
      {"20 mL/psi", Compliance::kind(), 20e-6 / psi},
      {"0.3 L/bar", Compliance::kind(), 0.3e-3 / 1e5},
      {"3e-9 m3/Pa", Compliance::kind(), 3e-9},
      {"30 deg", Angle::kind(), 3.14159265358979323846 / 6.0},
  };
  for (const Row& row : rows) expect_value(row);
}

TEST(UnitText, KeepsTemperatureAndDifferenceApart) {
  const Row rows[] = {
      {"32 degF", Temperature::kind(), 273.15},
      {"165 degF", Temperature::kind(), kelvin_from_fahrenheit(165.0)},
      {"59 °F", Temperature::kind(), 288.15},
      {"-40 degF", Temperature::kind(), kelvin_from_celsius(-40.0)},
      {"15 °C", Temperature::kind(), 288.15},
      {"288.15 K", Temperature::kind(), 288.15},
      {"518.67 degR", Temperature::kind(), 288.15},
      {"18 degF", TemperatureDifference::kind(), 10.0},
      {"-10 degC", TemperatureDifference::kind(), -10.0},
  };
  for (const Row& row : rows) expect_value(row);
}

// SOURCE: [api_11_1_2004, section 11.1.6.1] examples give the density at 60 degF with the gravity
TEST(UnitText, ReadsGravityAsDensityAtSixtyFahrenheit) {
  expect_value({"10 degAPI", Density::kind(), 999.016});  // water, by definition of the scale
  expect_value({"33.4 degAPI", Density::kind(), 141.5 / 164.9 * 999.016});
  expect_value({"-10 °API", Density::kind(), 141.5 / 121.5 * 999.016});
}

TEST(UnitText, ReadsCoefficientsOfAnyDimension) {
  const Dimension rise_per_square = kinds::SquareLoss::kind.dimension;
  const auto read = read_dimensioned("-0.0020 psi/gpm^2", rise_per_square, "a rise per flow squared");
  ASSERT_TRUE(std::holds_alternative<double>(read));
  EXPECT_DOUBLE_EQ(std::get<double>(read), -to_si(0.0020, "psi/gpm^2"));
  const auto cubic = read_dimensioned(
      "3 psi/gpm^3", kinds::PressureDifference::kind.dimension + (-3) * kinds::VolumeFlow::kind.dimension);
  EXPECT_TRUE(std::holds_alternative<double>(cubic));
  const auto wrong = read_dimensioned("1 psi/gpm", rise_per_square, "a rise per flow squared");
  EXPECT_EQ(std::get<UnitTextError>(wrong).message, "is a rise per flow squared, but 'psi/gpm' is a loss per flow");
}

TEST(UnitText, GivesStrongTypes) {
  const auto bore = read_as<Length>("2.00 in");
  ASSERT_TRUE(std::holds_alternative<Length>(bore));
  EXPECT_DOUBLE_EQ(std::get<Length>(bore).si(), 0.0508);
  EXPECT_TRUE(std::holds_alternative<UnitTextError>(read_as<Length>("2.00 psi")));
}

struct DecimalComma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
};

TEST(UnitText, DoesNotDependOnTheLocale) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new DecimalComma));
  expect_value({"2.5 in", length, 2.5 * 0.0254});
  EXPECT_EQ(show_quantity(0.0635, "in"), "2.5 in");
  std::locale::global(before);
}

struct Wrong {
  const char* text;
  const QuantityKind& kind;
  const char* message;
  const char* hint;
  const char* at_fault;  ///< the underlined piece
};

void expect_error(const Wrong& row) {
  const auto read = read_quantity(row.text, row.kind);
  ASSERT_TRUE(std::holds_alternative<UnitTextError>(read)) << row.text << " = " << std::get<double>(read);
  const auto& error = std::get<UnitTextError>(read);
  EXPECT_EQ(error.message, row.message) << row.text;
  EXPECT_EQ(error.hint, row.hint) << row.text;
  ASSERT_LE(error.begin, error.end) << row.text;
  ASSERT_LE(error.end, std::string_view(row.text).size()) << row.text;
  EXPECT_EQ(std::string(row.text).substr(error.begin, error.end - error.begin), row.at_fault) << row.text;
}

TEST(UnitText, SaysWhatIsWrongAndWhatToWrite) {
  const Wrong rows[] = {
      {"2.00 psi", length, "is a length, but 'psi' is a pressure", "write \"2.00 in\" or \"52 mm\"", "psi"},
      {"2.00", length, "is a length; '2.00' has no unit", "write \"2.00 in\" or \"52 mm\"", "2.00"},
      {"in", length, "is a length, but 'in' has no number", "write \"2.00 in\" or \"52 mm\"", "in"},
      {"", length, "is a length, but the text is empty", "write \"2.00 in\" or \"52 mm\"", ""},
      {"-", length, "is a length, but '-' has no number", "write \"2.00 in\" or \"52 mm\"", "-"},
      {"2 inn", length, "is a length, but 'inn' is not a unit known here", "write \"2 in\"", "inn"},
      {"20 feet", length, "is a length, but 'feet' is not a unit known here", "write \"20 ft\"", "feet"},
      {"57 F", Temperature::kind(), "is a temperature, but 'F' is not a unit known here", "write \"57 degF\"", "F"},
      {"30 PSI", pressure, "is a pressure difference, but 'PSI' is not a unit known here", "write \"30 psi\"", "PSI"},
      {"0.2 psi/gmp^2", SquareLoss::kind(), "is a loss per flow squared, but 'gmp' is not a unit known here",
       "write \"0.2 psi/gpm^2\"", "gmp"},
      {"3 furlong", length, "is a length, but 'furlong' is not a unit known here", "write \"2.00 in\" or \"52 mm\"",
       "furlong"},
      {"150 lb", Force::kind(), "is a force, but 'lb' is a mass", "write \"150 lbf\"", "lb"},
      {"14.7 psia", GaugePressure::kind(), "is a gauge pressure, but 'psia' is an absolute pressure",
       "write \"30 psig\" or \"2.1 bar\"", "psia"},
      {"14.7 psig", AbsolutePressure::kind(), "is an absolute pressure, but 'psig' is a gauge pressure",
       "write \"14.7 psia\" or \"101.3 kPa\"", "psig"},
      {"30 psig", pressure, "is a pressure difference, but 'psig' is a gauge pressure",
       "write \"30 psi\" or \"2.1 bar\"", "psig"},
      {"0.2 psig/gpm", LinearLoss::kind(), "is a loss per flow, but 'psig' cannot be part of a combined unit",
       "write \"0.2 psi/gpm\"", "psig"},
      {"inf psi", pressure, "is a pressure difference, but 'inf psi' is not a finite number",
       "write \"30 psi\" or \"2.1 bar\"", "inf psi"},
      {"nan in", length, "is a length, but 'nan in' is not a finite number", "write \"2.00 in\" or \"52 mm\"",
       "nan in"},
      {"1e999 m", length, "is a length, but '1e999' is not a finite number", "write \"2.00 in\" or \"52 mm\"", "1e999"},
      {"1e308 km", length, "is a length, but '1e308 km' is out of range", "write \"2.00 in\" or \"52 mm\"", "1e308 km"},
      {"2.00 in wide", length, "is a length, but 'wide' is not a unit known here", "write \"2.00 in\" or \"52 mm\"",
       "wide"},
      {"2.00 in (new)", length, "is a length, but '(new)' makes no sense after '2.00 in '",
       "write \"2.00 in\" or \"52 mm\"", "(new)"},
      {"2,5 in", length, "is a length, but '2,5' has a comma", "write \"2.5 in\"", "2,5"},
      {"8,000 gal", volume, "is a volume, but '8,000' has a comma", "write \"8000 gal\" or \"8.000 gal\"", "8,000"},
      {"1,250,000 gal", volume, "is a volume, but '1,250,000' has a comma", "write \"1250000 gal\"", "1,250,000"},
      {"8 000 gal", volume, "is a volume, but '8 000' has a blank in the number", "write \"8000 gal\"", "8 000"},
      {"1.2.3 in", length, "is a length, but '1.2.3' has two decimal points", "write \"2.00 in\" or \"52 mm\"",
       "1.2.3"},
      {"1/0 in", length, "is a length, but '1/0' divides by zero", "write \"2.00 in\" or \"52 mm\"", "1/0"},
      {"2.5 1/2 in", length, "is a length, but '2.5 1/2' mixes a decimal and a fraction",
       "write \"2.00 in\" or \"52 mm\"", "2.5 1/2"},
      {"6 in 12 ft", length, "is a length, but 'ft' is not a smaller unit than 'in'", "write \"2.00 in\" or \"52 mm\"",
       "12 ft"},
      {"12 ft 62 in", length, "is a length, but '62 in' is no less than one 'ft'", "write \"2.00 in\" or \"52 mm\"",
       "62 in"},
      {"12.5 ft 6 in", length, "is a length, but '6 in' makes no sense after '12.5 ft '",
       "write \"2.00 in\" or \"52 mm\"", "6 in"},
      {"12 ft 6 psi", length, "is a length, but 'psi' is a pressure", "write \"2.00 in\" or \"52 mm\"", "psi"},
      {"0.2 psi/gpm^x", SquareLoss::kind(), "is a loss per flow squared, but '^x' is not a power of a unit",
       "write \"0.17 psi/gpm^2\" or \"0.08 kPa.min^2/L^2\"", "^x"},
      {"0.2 psi/", LinearLoss::kind(), "is a loss per flow, but the unit in '0.2 psi/' is unfinished",
       "write \"0.2 psi/gpm\" or \"4 kPa.min/L\"", ""},
      {"0.5", Ratio::kind(), "is a ratio; '0.5' has no unit", "write \"0.5 %\" or 0.005", "0.5"},
      {"5 %", Angle::kind(), "is an angle, but '%' is a ratio", "write \"30 deg\"", "%"},
      {"5 deg", Ratio::kind(), "is a ratio, but 'deg' is an angle", "write \"0.5 %\" or 0.005", "deg"},
      {"-500 degF", Temperature::kind(), "is a temperature, but '-500 degF' is below absolute zero",
       "write \"57 degF\" or \"14 degC\"", "-500 degF"},
      {"-131.5 degAPI", Density::kind(), "is a density, but '-131.5 degAPI' is out of range",
       "write \"740 kg/m3\" or \"59.7 degAPI\"", "-131.5 degAPI"},
      {"3 psi/gpm^3", pressure, "is a pressure difference, but 'psi/gpm^3' is something else",
       "write \"30 psi\" or \"2.1 bar\"", "psi/gpm^3"},
      {"2 #", length, "is a length, but '#' is not a unit", "write \"2.00 in\" or \"52 mm\"", "#"},
      {"two\nin", length, "is a length, but 'two in' has no number", "write \"2.00 in\" or \"52 mm\"", "two\nin"},
  };
  for (const Wrong& row : rows) expect_error(row);
}

TEST(UnitText, CutsLongTextsInMessages) {
  const auto read = read_quantity(std::string(5000000, 'x'), length);
  EXPECT_LT(std::get<UnitTextError>(read).message.size(), 120U);
}

TEST(UnitText, EverySymbolIsReadAsItself) {
  for (const Unit& unit : known_units()) {
    const auto read =
        read_quantity("1 " + std::string(unit.symbol), {"a thing", unit.dimension.powers, unit.datum, ""});
    const bool is_angle = unit.dimension.angle != 0;
    EXPECT_EQ(std::holds_alternative<double>(read), !is_angle) << unit.symbol;
    EXPECT_EQ(find_unit(unit.symbol), &unit) << unit.symbol << " stands in the table twice";
  }
}

TEST(UnitText, OtherSpellingsLeadToUnits) {
  for (const UnitSpelling& spelling : other_spellings())
    EXPECT_NO_THROW((void)to_si(1.0, spelling.meant, Datum::difference));
}

TEST(UnitText, ConvertsThereAndBack) {
  for (const char* unit : {"in", "gpm", "psi", "psi/gpm^2", "kPa.min/L", "1/degF", "degAPI", "hp"}) {
    EXPECT_NEAR(from_si(to_si(12.34, unit), unit), 12.34, 1e-13) << unit;  // rounding only
  }
  EXPECT_NEAR(from_si(288.15, "degF", Datum::thermometer), 59.0, 1e-12);
  EXPECT_NEAR(in_unit(Temperature::from_si(288.15), "degC"), 15.0, 1e-12);
  EXPECT_NEAR(in_unit(TemperatureDifference::from_si(10.0), "degF"), 18.0, 1e-12);
  EXPECT_NEAR(in_unit(Length::from_si(0.0254), "in"), 1.0, 1e-15);
}

TEST(UnitText, ShowsWhatItCanRead) {
  EXPECT_EQ(show_quantity(0.0508, "in"), "2 in");
  EXPECT_EQ(show_quantity(-0.0, "in"), "0 in");
  EXPECT_EQ(show_quantity(pascal_from_psi(29.4), "psi"), "29.4 psi");
  EXPECT_EQ(show_quantity(288.15, "degF", Datum::thermometer), "59 degF");
}

TEST(UnitText, UnknownUnitInOurOwnCodeStops) {
  EXPECT_THROW((void)from_si(1.0, "furlong"), std::logic_error);
  EXPECT_THROW((void)from_si(1.0, "in "), std::logic_error);
  EXPECT_THROW((void)from_si(288.15, "degF"), std::logic_error);  // a temperature, or a difference?
}

}  // namespace
}  // namespace forecourse
