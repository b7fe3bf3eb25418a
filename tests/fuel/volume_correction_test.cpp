// SOURCE: [api_11_1_2004, 11.1.6.1 examples 1 to 6] published examples with all intermediates
// SOURCE: [noaa_oil_data, records EC00567 to EC10042] measured densities at 15 and 0 degC
#include "forecourse/fuel/volume_correction.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/api_units.h"
#include "support/check_values.h"

namespace forecourse::fuel {
namespace {

using test::agrees;
using test::CheckRow;
using test::kelvin_in;
using test::number_in;
using test::parse_inputs;
using test::rows_starting;

ProductGroup group_of(const std::string& word) {
  if (word == "crude") return ProductGroup::crude;
  if (word == "gasoline") return ProductGroup::gasoline;
  if (word == "transition") return ProductGroup::transition;
  if (word == "jet/kerosene") return ProductGroup::jet;
  EXPECT_EQ(word, "fuel oil");
  return ProductGroup::fuel_oil;
}

double base_density_in(const std::string& text) {
  const double value = number_in(text).value();
  if (text.starts_with("API")) return density_from_api_gravity(value);
  if (text.starts_with("RD60")) return density_from_relative_density(value);
  return value;
}

VolumeCorrection evaluate(const CheckRow& check) {
  auto inputs = parse_inputs(check.inputs);
  return volume_correction(group_of(inputs["group"]), base_density_in(inputs["rho60"]), kelvin_in(inputs["t"]),
                           pascal_from_psi(number_in(inputs["P"]).value()));
}

double in_unit_of_row(const CheckRow& check, const VolumeCorrection& c) {
  if (check.quantity == "t_ITPS68") return fahrenheit_from_kelvin(c.temperature_68);
  if (check.quantity == "rho_star") return c.shifted_density;
  if (check.quantity == "alpha60") return per_fahrenheit_from_per_kelvin(c.expansion_60);
  if (check.quantity == "Fp scaled (1e5/psi)") return 1e5 * per_psi_from_per_pascal(c.scaled_compressibility);
  if (check.quantity == "CTL") return c.for_temperature;
  if (check.quantity == "CPL") return c.for_pressure;
  EXPECT_EQ(check.quantity, "CTPL rounded");
  return rounded_correction(c.for_both);
}

TEST(VolumeCorrection, GivesTheSixPublishedExamplesWithEveryIntermediate) {
  const auto rows = rows_starting("VCF-2004-ex");
  EXPECT_EQ(rows.size(), 42u);
  for (const CheckRow& check : rows) {
    const VolumeCorrection c = evaluate(check);
    EXPECT_EQ(c.status, VolumeCorrectionStatus::ok) << check.id;
    EXPECT_TRUE(agrees(check, in_unit_of_row(check, c)));
  }
}

TEST(VolumeCorrection, CorrectsTo15DegreesAsASecondComputation) {
  const auto rows = rows_starting("VCF-2004-15C");
  EXPECT_EQ(rows.size(), 11u);
  for (const CheckRow& check : rows) {
    auto inputs = parse_inputs(check.inputs);
    EXPECT_TRUE(agrees(check, correction_to_15(number_in(inputs["rho15"]).value(), kelvin_in(inputs["t"]), 0.0)));
  }
}

TEST(VolumeCorrection, FindsTheBaseDensityAsASecondComputation) {
  for (const CheckRow& check : rows_starting("VCF-inv-")) {
    auto inputs = parse_inputs(check.inputs);
    const BaseDensity found = refined_base_density(number_in(inputs["rho_obs"]).value(), kelvin_in(inputs["t"]),
                                                   pascal_from_psi(number_in(inputs["P"]).value()));
    EXPECT_EQ(found.status, VolumeCorrectionStatus::ok);
    EXPECT_TRUE(agrees(check, found.density_60));
  }
}

TEST(VolumeCorrection, PredictsMeasuredDensitiesAt0FromThoseAt15Degrees) {
  const auto rows = rows_starting("RHO-EC");
  EXPECT_EQ(rows.size(), 8u);
  for (const CheckRow& check : rows) {
    const double density_15 = test::input_number(check, "rho15");
    const double at_0 = density_15 * correction_to_15(density_15, kelvin_from_celsius(0.0), 0.0);
    EXPECT_TRUE(agrees(check, at_0));  // 0.7 kg/m3: under 0.1 % of the density, the reach of the procedure
  }
}

struct State {
  double density_60, fahrenheit, psi;
};

std::vector<State> states() {
  std::vector<State> all;
  for (double density : {615.0, 720.0, 745.0, 770.0, 771.0, 780.0, 787.0, 788.0, 820.0, 838.0, 839.0, 860.0, 1160.0}) {
    for (double fahrenheit : {-57.0, -10.0, 32.0, 60.0, 90.0, 140.0, 300.0}) {
      for (double psi : {0.0, 45.0, 1400.0}) all.push_back({density, fahrenheit, psi});
    }
  }
  return all;
}

TEST(VolumeCorrection, ObservedDensityLeadsBackToTheBaseDensity) {
  for (const State& s : states()) {
    const double kelvin = kelvin_from_fahrenheit(s.fahrenheit);
    const double pascal = pascal_from_psi(s.psi);
    const double observed = density_at(refined_group(s.density_60), s.density_60, kelvin, pascal);
    const BaseDensity back = refined_base_density(observed, kelvin, pascal);
    ASSERT_EQ(back.status, VolumeCorrectionStatus::ok) << s.density_60 << ' ' << s.fahrenheit << ' ' << s.psi;
    EXPECT_EQ(back.group, refined_group(s.density_60));
    EXPECT_NEAR(back.density_60, s.density_60, 1e-9 * s.density_60);  // the search stops at 1e-13, slope above 0.5
    EXPECT_LE(back.iterations, 12);
  }
}

TEST(VolumeCorrection, DensityAt15LeadsBackTo60Degrees) {
  for (double density : {650.0, 745.0, 780.0, 800.0, 850.0}) {
    const double at_15 = density_15_from_60(refined_group(density), density);
    EXPECT_GT(at_15, density);
    EXPECT_NEAR(density_60_from_15(at_15).density_60, density, 1e-9 * density);  // as above
  }
}

TEST(VolumeCorrection, ExpansionIsTheDerivativeOfDensity) {
  for (const State& s : states()) {
    constexpr double h = 0.05;  // [K]
    const double kelvin = kelvin_from_fahrenheit(s.fahrenheit);
    const double pascal = pascal_from_psi(s.psi);
    const ProductGroup group = refined_group(s.density_60);
    const double slope = std::log(density_at(group, s.density_60, kelvin + h, pascal) /
                                  density_at(group, s.density_60, kelvin - h, pascal)) /
                         (2.0 * h);
    const double expansion = volume_correction(group, s.density_60, kelvin, pascal).expansion;
    EXPECT_NEAR(expansion, -slope, 1e-6 * expansion);  // central difference: h^2 of a smooth function
  }
}

TEST(VolumeCorrection, DensityFallsWithTemperatureAndRisesWithPressureAndBaseDensity) {
  for (const State& s : states()) {
    const double kelvin = kelvin_from_fahrenheit(s.fahrenheit);
    const double pascal = pascal_from_psi(s.psi);
    const ProductGroup group = refined_group(s.density_60);
    const double here = density_at(group, s.density_60, kelvin, pascal);
    EXPECT_LT(density_at(group, s.density_60, kelvin + 0.2, pascal), here);
    EXPECT_GT(density_at(group, s.density_60, kelvin, pascal + 1e4), here);
    EXPECT_GT(density_at(group, s.density_60 + 0.3, kelvin, pascal), here);
  }
}

TEST(VolumeCorrection, IsOneAtTheBase) {
  for (double density : {650.0, 745.0, 780.0, 800.0, 850.0}) {
    const VolumeCorrection c = volume_correction(refined_group(density), density, kelvin_from_fahrenheit(60.0), 0.0);
    EXPECT_NEAR(c.for_both, 1.0, 1e-11);  // the base temperature on ITPS-68 is printed to 1e-7 degF
  }
}

TEST(VolumeCorrection, GroupsMeetWhereTheyBorder) {
  using enum ProductGroup;
  struct Border {
    ProductGroup below, above;
    double density;
  };
  for (const Border& b :
       {Border{gasoline, transition, 770.3520}, Border{transition, jet, 787.5195}, Border{jet, fuel_oil, 838.3127}}) {
    for (double fahrenheit : {-58.0, 0.0, 60.0, 130.0, 302.0}) {
      const double kelvin = kelvin_from_fahrenheit(fahrenheit);
      EXPECT_NEAR(density_at(b.above, b.density, kelvin, 0.0) / density_at(b.below, b.density, kelvin, 0.0), 1.0, 2e-7)
          << b.density << ' ' << fahrenheit;  // as refined_base_density states
    }
  }
  EXPECT_EQ(refined_group(770.3519), gasoline);
  EXPECT_EQ(refined_group(770.3520), transition);
  EXPECT_EQ(refined_group(787.5195), jet);
  EXPECT_EQ(refined_group(838.3127), fuel_oil);
}

TEST(VolumeCorrection, EveryDensityOfTheRangeHasABase) {
  for (double fahrenheit : {-58.0, 0.0, 100.0}) {
    for (double observed = 700.0; observed < 1000.0; observed += 0.0137) {
      const BaseDensity found = refined_base_density(observed, kelvin_from_fahrenheit(fahrenheit), 0.0);
      ASSERT_EQ(found.status, VolumeCorrectionStatus::ok) << observed << " at " << fahrenheit;
    }
  }
}

struct Refusal {
  double density_60, fahrenheit, psi;
  VolumeCorrectionStatus status;
};

TEST(VolumeCorrection, RefusesWhatLiesOutsideItsLimitsWithoutNumbers) {
  using enum VolumeCorrectionStatus;
  for (const Refusal& r :
       {Refusal{610.5, 60, 0, density_out_of_range}, Refusal{771.0, 60, 0, density_out_of_range},
        Refusal{745, -58.1, 0, temperature_out_of_range}, Refusal{745, 302.1, 0, temperature_out_of_range},
        Refusal{745, 60, 1500.1, pressure_out_of_range}}) {
    const VolumeCorrection c = volume_correction(ProductGroup::gasoline, r.density_60,
                                                 kelvin_from_fahrenheit(r.fahrenheit), pascal_from_psi(r.psi));
    EXPECT_EQ(c.status, r.status);
    EXPECT_TRUE(std::isnan(c.for_both));
    EXPECT_TRUE(std::isnan(c.expansion));
  }
  for (double fahrenheit : {-58.0, 302.0}) {
    const double kelvin = kelvin_from_fahrenheit(fahrenheit);
    EXPECT_EQ(volume_correction(ProductGroup::gasoline, 745, kelvin, pascal_from_psi(1500.0)).status, ok);
  }
  EXPECT_EQ(refined_base_density(500.0, kelvin_from_fahrenheit(60.0), 0.0).status, density_out_of_range);
  EXPECT_EQ(refined_base_density(1300.0, kelvin_from_fahrenheit(60.0), 0.0).status, density_out_of_range);
  EXPECT_EQ(refined_base_density(745.0, kelvin_from_fahrenheit(310.0), 0.0).status, temperature_out_of_range);
  EXPECT_TRUE(std::isnan(refined_base_density(500.0, kelvin_from_fahrenheit(60.0), 0.0).density_60));
}

TEST(VolumeCorrection, TakesPressureBelowTheAtmosphereAsNone) {
  const double kelvin = kelvin_from_fahrenheit(70.0);
  EXPECT_EQ(density_at(ProductGroup::gasoline, 740.0, kelvin, -5e4),
            density_at(ProductGroup::gasoline, 740.0, kelvin, 0.0));
}

TEST(ApiGravity, LeadsThereAndBack) {
  for (double api : {-10.0, 10.0, 35.0, 60.0, 85.0}) {
    EXPECT_NEAR(api_gravity_from_density(density_from_api_gravity(api)), api, 1e-12 * 200.0);  // rounding
  }
  EXPECT_DOUBLE_EQ(density_from_api_gravity(10.0), 999.016);  // by definition
}

}  // namespace
}  // namespace forecourse::fuel
