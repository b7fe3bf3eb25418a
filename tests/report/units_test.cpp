#include "forecourse/report/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "forecourse/base/unit_text.h"

namespace forecourse::report {
namespace {

using site::Display;

TEST(ReportUnits, ShowEachMeasureInBothSystems) {
  const double flow = to_si(12.25, "gpm");
  EXPECT_EQ(with_unit(Measure::flow, Display::us, flow, Glyphs::ascii), "12.25 gpm");
  EXPECT_EQ(with_unit(Measure::flow, Display::si, flow, Glyphs::ascii), "46.4 L/min");
  EXPECT_EQ(with_unit(Measure::pressure, Display::us, to_si(23.34, "psi"), Glyphs::ascii), "23.3 psi");
  EXPECT_EQ(with_unit(Measure::pressure, Display::si, 160900.0, Glyphs::ascii), "161 kPa");
  EXPECT_EQ(with_unit(Measure::length, Display::us, to_si(12.0, "ft"), Glyphs::ascii), "12.0 ft");
  EXPECT_EQ(with_unit(Measure::bore, Display::us, to_si(1.61, "in"), Glyphs::ascii), "1.61 in");
  EXPECT_EQ(with_unit(Measure::bore, Display::si, 0.0409, Glyphs::ascii), "40.9 mm");
  EXPECT_EQ(with_unit(Measure::velocity, Display::si, 1.234, Glyphs::ascii), "1.23 m/s");
  EXPECT_EQ(with_unit(Measure::density, Display::si, 740.0, Glyphs::ascii), "740.0 kg/m3");
  EXPECT_EQ(with_unit(Measure::density, Display::us, 740.0, Glyphs::ascii), "6.176 lb/gal");
  EXPECT_EQ(with_unit(Measure::viscosity, Display::us, 0.5e-3, Glyphs::ascii), "0.50 cP");
  EXPECT_EQ(with_unit(Measure::temperature, Display::us, 288.70555555555555, Glyphs::ascii), "60.0 degF");
  EXPECT_EQ(unit_label(Measure::temperature, Display::us), "°F");
  EXPECT_EQ(unit_label(Measure::viscosity, Display::si), "mPa·s");
}

TEST(ReportUnits, NumbersHaveATrueMinusAndGroupedThousands) {
  EXPECT_EQ(number(-3.25, 1), "\u22123.2");
  EXPECT_EQ(number(-3.25, 1, Glyphs::ascii), "-3.2");
  EXPECT_EQ(number(8147.0, 0), "8\u00A0147");
  EXPECT_EQ(number(1234567.5, 1), "1\u00A0234\u00A0567.5");
  EXPECT_EQ(number(8147.0, 0, Glyphs::ascii), "8147");
  EXPECT_EQ(number(147.0, 0), "147");
}

TEST(ReportUnits, WhatRoundsToZeroHasNoSign) {
  EXPECT_EQ(number(-0.04, 1), "0.0");
  EXPECT_EQ(number(-0.0, 2, Glyphs::ascii), "0.00");
}

TEST(ReportUnits, WhatIsNoNumberIsADash) {
  EXPECT_EQ(number(std::nan(""), 2), "\u2013");
  EXPECT_EQ(number(std::numeric_limits<double>::infinity(), 2, Glyphs::ascii), "-");
}

TEST(ReportUnits, DefaultsHaveAUnitThatPeopleRead) {
  const auto text = [](double value, const char* unit, Display display) {
    return default_value({"", value, unit, {}, "", "regular"}, display, Glyphs::ascii);
  };
  EXPECT_EQ(text(1.5e-6, "m", Display::us), "0.0015 mm");
  EXPECT_EQ(text(0.01905, "m", Display::us), "0.75 in");
  EXPECT_EQ(text(0.01905, "m", Display::si), "19.05 mm");
  EXPECT_EQ(text(0.5e-3, "Pa s", Display::si), "0.5 mPa.s");
  EXPECT_EQ(text(0.17, "psi/gpm^2", Display::us), "0.17 psi/gpm^2");
  EXPECT_EQ(text(2.0, "", Display::us), "2");
  EXPECT_EQ(text(0.0, "m", Display::us), "0 mm");
  EXPECT_EQ(text(std::nan(""), "", Display::us), "-");
}

}  // namespace
}  // namespace forecourse::report
