// SOURCE: [nist_handbook_44, 5 gal draft: 6 in3, half of it for new devices; as texts of states print it]; [cfr_280,
// 43(a): 6 in3 for every 5 gal]; [mid_2014_32, annex VII, table 2: 0.5 % for class 0.5 from 2 L on].
// SOURCE: PROVER rows of check_values2.csv, computed: a second computation of the worked case, marked so there.
// The rest holds the study against closed forms.
#include "forecourse/studies/meter/meter.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "forecourse/base/api_units.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/parts/meter/test_measure.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/ledger/ledger.h"
#include "forecourse/studies/meter/drift.h"
#include "forecourse/studies/meter/read_meter_options.h"
#include "support/check_values.h"

namespace forecourse::test {
namespace {

using namespace studies;
using site::records::Proving;
using site::records::Records;

site::Site station(const std::string& rules = "") {
  const std::string text = "format = 1\n[site]\nname = \"Meter test (invented)\"\n" + rules + R"site(
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "745 kg/m3"
density_at = "15 degC"
[[product]]
id = "premium"
kind = "gasoline-e10"
density = "755 kg/m3"
density_at = "15 degC"
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "96 in", length = "32 ft", heads = "flat" }
[[tank]]
id = "T2"
product = "premium"
shape = { kind = "horizontal-cylinder", inside_diameter = "96 in", length = "32 ft", heads = "flat" }
[[dispenser]]
id = "D1"
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  [[dispenser.hose]]
  id = "D1.b"
  blend = [{ product = "regular", share = "60 %" }, { product = "premium", share = "40 %" }]
)site";
  const Parsed<site::Site> parsed = site::read_site(text);
  return parsed.value;
}

Proving draw(double scale_in3, const char* state = "", site::Date day = {2026, 10, 14, {}}) {
  Proving out;
  out.at.day = day;
  out.hose.text = "D1.a";
  out.state.text = state;
  out.indicated = Volume::from_si(to_si(5.0, "gal"));
  out.measure = Volume::from_si(to_si(5.0, "gal"));
  out.scale = Volume::from_si(to_si(scale_in3, "in3"));
  out.measure_temperature = Temperature::from_si(kelvin_from_fahrenheit(60.0));
  out.meter_temperature = out.measure_temperature;
  return out;
}

MeterResult studied(const std::vector<Proving>& draws, const MeterOptions& options = {}) {
  Records records;
  records.provings = draws;
  return study_meter(station(), records, options, {});
}

/// The finding of D1.a whose limit has this name.
checks::Finding finding(const MeterResult& result, const std::string& name) {
  for (const checks::Finding& one : checks::check_meter(result)) {
    if (one.subject == "D1.a" && one.rule == "meter-error, " + name) return one;
  }
  ADD_FAILURE() << name;
  return {};
}

const char* const federal = "federal inventory control";
const char* const in_use = "Handbook 44, 5 gal, maintenance";
const char* const accepted = "Handbook 44, 5 gal, acceptance";

TEST(Meter, SevenCubicInchesBelowFailSix) {
  const MeterResult result = studied({draw(-7.0)});
  const checks::Finding told = finding(result, federal);
  EXPECT_EQ(told.state, checks::FindingState::falls_short);
  EXPECT_NEAR(from_si(*told.value, "in3"), 7.0, 1e-9);
  EXPECT_NEAR(from_si(*told.margin, "in3"), -1.0, 1e-9);
  EXPECT_NE(told.change.find("adjusted and proved again"), std::string::npos);
  EXPECT_EQ(finding(result, in_use).state, checks::FindingState::falls_short);
  EXPECT_FALSE(finding(result, in_use).clause_verified);
  EXPECT_GT(*result.meters[0].error, 0.0);  // it told more than it gave
  EXPECT_NE(result.meters[0].who_loses.find("customers"), std::string::npos);
}

TEST(Meter, TwoAndAHalfAbovePassAcceptance) {
  const MeterResult result = studied({draw(2.5, "as-left")});
  EXPECT_EQ(finding(result, accepted).state, checks::FindingState::meets);
  EXPECT_EQ(finding(studied({draw(3.5, "as-left")}), accepted).state, checks::FindingState::falls_short);
  EXPECT_NE(result.meters[0].who_loses.find("owner"), std::string::npos);
}

/// Nothing that is not known makes a meter meet: its state, the temperatures, a draw that is not counted.
TEST(Meter, WhatIsMissingIsNotMet) {
  const MeterResult no_state = studied({draw(-4.0)});
  EXPECT_EQ(finding(no_state, in_use).state, checks::FindingState::meets);
  EXPECT_EQ(finding(no_state, accepted).state, checks::FindingState::not_determined);
  EXPECT_EQ(finding(no_state, accepted).change, "enter state of its draws");
  EXPECT_EQ(finding(studied({draw(-4.0, "as-left")}), accepted).state, checks::FindingState::falls_short);
  Proving cold = draw(-4.0);
  cold.measure_temperature.reset();
  cold.meter_temperature.reset();
  EXPECT_EQ(finding(studied({cold}), in_use).state, checks::FindingState::not_determined);
  Proving wild = draw(-4.0);
  wild.scale = Volume::from_si(to_si(-200.0, "in3"));
  EXPECT_EQ(finding(studied({draw(-4.0), wild}), in_use).state, checks::FindingState::not_determined);
  EXPECT_EQ(finding(studied({draw(-8.0), wild}), in_use).state, checks::FindingState::falls_short);
}

/// A draw of 1 gal that is off by a larger share hides no draw of 5 gal that is beyond its own limit.
TEST(Meter, EachLimitTakesTheWorstDrawThatItIsFor) {
  Proving small = draw(0.0);
  small.indicated = Volume::from_si(to_si(1.0, "gal"));
  small.measure = small.indicated;
  small.scale = Volume::from_si(to_si(-2.3, "in3"));
  const MeterResult result = studied({draw(-8.1), small});
  EXPECT_EQ(finding(result, in_use).state, checks::FindingState::falls_short);
  EXPECT_NEAR(from_si(*finding(result, in_use).value, "in3"), 8.1, 1e-9);
}

// 6 / 1155 = 0.519 %: the two forms of a limit need not agree.
TEST(Meter, SixCubicInchesAreMoreThanHalfAPercent) {
  const MeterResult result = studied({draw(-5.9)});
  const ProvingTold& proving = result.meters[0].provings[0];
  std::optional<bool> by_volume;
  std::optional<bool> by_share;
  for (const MeterJudged& judged : proving.draws[0]) {
    const std::string& name = result.limits[judged.limit].name;
    if (name == federal) {
      by_volume = judged.within;
      EXPECT_NEAR(*judged.allowed_share, 6.0 / 1155.0, 1e-12);
      EXPECT_NEAR(*judged.allowed_share, 0.00519, 5e-6);
    }
    if (name == "Handbook 44, class 0.5, maintenance") by_share = judged.within;
  }
  EXPECT_EQ(by_volume, true);
  EXPECT_EQ(by_share, false);
}

TEST(Meter, ALimitFromMemoryDecidesNothing) {
  for (const double scale : {-1.0, -40.0}) {
    const checks::Finding told = finding(studied({draw(scale)}), "Handbook 44, class 0.5, maintenance");
    EXPECT_EQ(told.state, checks::FindingState::not_determined);
    EXPECT_FALSE(told.clause_verified);
    EXPECT_NE(told.reason.find("not verified"), std::string::npos);
  }
}

TEST(Meter, LimitsOfTheOtherRulesDoNotApply) {
  EXPECT_EQ(finding(studied({draw(-7.0)}), "European Union, class 0.5 measuring system").state,
            checks::FindingState::does_not_apply);
  Records records;
  records.provings = {draw(-7.0)};
  const MeterResult european = study_meter(station("rules = [\"eu\"]\n"), records, {}, {});
  EXPECT_EQ(finding(european, federal).state, checks::FindingState::does_not_apply);
  const checks::Finding told = finding(european, "European Union, class 0.5 measuring system");
  EXPECT_EQ(told.state, checks::FindingState::not_determined);  // 7 / 1148 = 0.61 %; the class is from memory
  EXPECT_FALSE(told.clause_verified);
}

TEST(Meter, LimitsByDraft) {
  const std::vector<MeterLimit> limits = published_limits(station());
  EXPECT_NEAR(from_si(*allowed(limits[0], to_si(10.0, "gal")), "in3"), 12.0, 1e-9);  // for every 5 gal
  EXPECT_FALSE(allowed(limits[1], to_si(10.0, "gal")));                              // for a draft of 5 gal alone
  EXPECT_FALSE(allowed(limits.back(), 1e-3));                                        // from 2 L on
  EXPECT_NEAR(*allowed(limits.back(), 20e-3), 0.1e-3, 1e-15);                        // 100 mL in 20 L
  for (const MeterLimit& limit : limits) {
    if (limit.base > 0.0 && limit.of == LimitFor::maintenance) {
      EXPECT_NEAR(from_si(*allowed(limit, to_si(5.0, "gal")), "in3"), 6.0, 1e-9);  // 1 + 5
    }
  }
}

// The row's own tolerance: the procedures of 1980 and 2004 differ by less.
TEST(Meter, TakesTemperatureOfMeasureAndFuelIntoAccount) {
  Proving one;
  one.at.day = {2026, 10, 14, {}};
  one.hose.text = "D1.a";
  one.indicated = Volume::from_si(20e-3);
  one.measured = Volume::from_si(19.93e-3);
  one.measure_temperature = Temperature::from_si(273.15 + 23.5);
  one.meter_temperature = Temperature::from_si(273.15 + 25.0);
  one.reference_temperature = Temperature::from_si(273.15 + 15.0);
  one.expansion = Expansion::from_si(4.77e-5);
  const network::MeterDraw told = network::meter_draw(station(), one, std::nullopt);
  ASSERT_TRUE(told.error) << told.problem;
  EXPECT_TRUE(agrees(row("PROVER-ex-V"), *told.held * 1e3));
  EXPECT_TRUE(agrees(row("PROVER-ex-err"), 100.0 * *told.error, {0.0, 5e-3}));  // 6e-6 of the volume
  EXPECT_NEAR(*told.plain_error, 20.0 / 19.93 - 1.0, 1e-12);
  EXPECT_TRUE(told.left_out.empty());
}

TEST(Meter, SaysWhatItDidNotCorrectFor) {
  Proving one = draw(-1.0);
  one.measure_temperature.reset();
  one.meter_temperature.reset();
  network::MeterDraw told = network::meter_draw(station(), one, std::nullopt);
  EXPECT_EQ(told.left_out.size(), 2u);
  EXPECT_DOUBLE_EQ(*told.error, *told.plain_error);
  one.expansion = Expansion::from_si(0.0);
  told = network::meter_draw(station(), one, std::nullopt);
  EXPECT_NE(told.left_out[0].find("entered as 0"), std::string::npos);
  one.meter_temperature = Temperature::from_si(290.0);
  told = network::meter_draw(station(), one, std::nullopt);
  EXPECT_TRUE(told.one_sided);
  EXPECT_DOUBLE_EQ(*told.error, *told.plain_error);
  EXPECT_EQ(studied({one}).warnings.size(), 1u);
  EXPECT_EQ(check_draws(station(), {one}).size(), 1u);
}

TEST(Meter, AMeasureThatTellsNoReferenceTakesTheDefaultAndSaysSo) {
  Proving one = draw(0.0);
  one.measure_temperature = one.meter_temperature = Temperature::from_si(298.15);
  MeterOptions options;
  options.expansion = parts::stainless_measure_expansion();
  const MeterResult result = studied({one}, options);
  ASSERT_EQ(result.defaults.size(), 1u);
  const double grown = 1.0 + parts::stainless_measure_expansion() * (298.15 - network::default_measure_reference());
  EXPECT_NEAR(*result.meters[0].error, 1.0 / grown - 1.0, 1e-12);
  one.reference_temperature = Temperature::from_si(288.15);
  EXPECT_TRUE(studied({one}, options).defaults.empty());
}

TEST(Meter, WrongUnitsAreTold) {
  EXPECT_NE(studied({draw(-700.0)}).warnings.at(0).message.find("another unit"), std::string::npos);
  Proving one = draw(0.0);
  one.indicated = Volume::from_si(5e-3);  // L in place of gal
  EXPECT_NE(network::meter_draw(station(), one, {}).problem.find("another unit"), std::string::npos);
  one = draw(0.0);
  one.scale.reset();
  EXPECT_NE(network::meter_draw(station(), one, {}).problem.find("scale"), std::string::npos);
  const MeterResult result = studied({draw(-700.0)});
  EXPECT_EQ(finding(result, federal).state, checks::FindingState::not_determined);
}

TEST(Meter, ScatterOfFastAndSlowDraws) {
  std::vector<Proving> draws;
  for (const double scale : {-1.0, -2.0, -3.0, -8.0}) {
    draws.push_back(draw(scale));
    draws.back().flow = VolumeFlow::from_si(to_si(scale < -5.0 ? 4.0 : 10.0, "gpm"));
  }
  const network::MeterProving proving = studied(draws).meters[0].provings[0].proving;
  ASSERT_TRUE(proving.fast && proving.slow);
  EXPECT_EQ(proving.fast->count, 3);
  EXPECT_EQ(proving.slow->count, 1);
  const auto error = [](double scale) { return 1155.0 / (1155.0 + scale) - 1.0; };
  const double mean = (error(-1.0) + error(-2.0) + error(-3.0)) / 3.0;
  EXPECT_NEAR(*proving.fast->mean, mean, 1e-12);
  EXPECT_NEAR(*proving.fast->repeatability, error(-3.0) - error(-1.0), 1e-12);
  const double s = std::sqrt(
      (std::pow(error(-1.0) - mean, 2) + std::pow(error(-2.0) - mean, 2) + std::pow(error(-3.0) - mean, 2)) / 2.0);
  EXPECT_NEAR(*proving.fast->standard_error, s / std::sqrt(3.0), 1e-12);
  EXPECT_FALSE(proving.slow->standard_error);
}

// 0.1 % a year with a scatter of 0.02 %: over many courses the claimed standard error is the scatter of the slopes.
TEST(Meter, APlantedDriftIsFoundWithItsStandardError) {
  std::mt19937 random(7);
  std::normal_distribution<double> scatter(0.0, 2e-4);
  const double slope = 1e-3 / 365.25;
  double sum = 0.0;
  double square = 0.0;
  double claimed = 0.0;
  constexpr int courses = 4000;
  for (int i = 0; i < courses; ++i) {
    std::vector<double> x;
    std::vector<double> error;
    for (int n = 0; n < 6; ++n) {
      x.push_back(20000.0 + 365.25 * n);
      error.push_back(slope * 365.25 * n + scatter(random));
    }
    const MeterDrift drift = drift_of(x, error, 5e-3);
    sum += *drift.slope / courses;
    square += *drift.slope * *drift.slope / courses;
    claimed += *drift.standard_error * *drift.standard_error / courses;
  }
  EXPECT_NEAR(sum, slope, 4.0 * std::sqrt(claimed / courses));
  EXPECT_NEAR(std::sqrt(claimed), std::sqrt(square - sum * sum), 0.05 * std::sqrt(claimed));
}

TEST(Meter, DriftIsFollowedNoFurtherThanTheProvingsCarry) {
  const std::vector<double> x{20000.0, 20365.0, 20730.0};
  const MeterDrift slow = drift_of(x, {0.0, 1e-3, 2.001e-3}, 5.2e-3);
  EXPECT_TRUE(slow.told_apart);
  EXPECT_FALSE(slow.earliest);
  EXPECT_DOUBLE_EQ(slow.horizon, 21460.0);
  const MeterDrift fast = drift_of(x, {0.0, 2e-3, 4.001e-3}, 5.2e-3);
  ASSERT_TRUE(fast.earliest && fast.latest);
  const double exact = 20730.0 + (5.2e-3 - 4.0005e-3) / (2.0005e-3 / 365.0);
  EXPECT_LT(*fast.earliest, exact);
  EXPECT_GT(*fast.latest, exact);
  // by hand: three readings whose second difference is 1e-6 scatter by 1e-6 / sqrt 6; t(0.95, 1) = 6.314 of a table
  const auto edge = [&](double at, double side) {
    const double d = at - 20365.0;
    const double line = 6.001e-3 / 3.0 + 2.0005e-3 / 365.0 * d;
    return line + side * 6.314 * 1e-6 / std::sqrt(6.0) * std::sqrt(1.0 / 3.0 + d * d / (2.0 * 365.0 * 365.0));
  };
  const double a_step = 2.0005e-3 / 365.0 * 730.0 / 2000.0;  // the band is followed in 2,000 steps
  EXPECT_NEAR(edge(*fast.earliest, 1.0), 5.2e-3, a_step);
  EXPECT_NEAR(edge(*fast.latest, -1.0), 5.2e-3, a_step);
  EXPECT_FALSE(drift_of({20000.0, 20365.0}, {0.0, 1e-3}, 5e-3).problem.empty());
  EXPECT_FALSE(drift_of({1.0, 1.0, 1.0}, {0.0, 1e-3, 2e-3}, 5e-3).problem.empty());
}

TEST(Meter, DriftBeginsAnewAfterAChange) {
  std::vector<Proving> draws;
  for (int year = 2021; year <= 2026; ++year) draws.push_back(draw(-0.5 * (year - 2021), "as-found", {year, 5, 1, {}}));
  EXPECT_EQ(studied(draws).meters[0].by_time.provings, 6);
  draws.push_back(draw(0.0, "as-left", {2024, 5, 1, {}}));
  const MeterTold meter = studied(draws).meters[0];
  EXPECT_EQ(meter.by_time.provings, 3);  // left in 2024, found in 2025 and 2026
  EXPECT_FALSE(meter.by_volume.problem.empty());
}

// Errors that grow with what was sold lie on a line over the totalizer, not over the days.
TEST(Meter, DriftByVolumeWhereTheTotalizerIsOnRecord) {
  Records records;
  const std::vector<double> totals{100.0, 150.0, 450.0, 500.0};  // m3
  for (int i = 0; i < 4; ++i) {
    const site::Date day{2023 + i, 5, 1, {}};
    const double error = 1e-5 * totals[static_cast<std::size_t>(i)];
    records.provings.push_back(draw(1155.0 / (1.0 + error) - 1155.0, "as-found", day));
    site::records::Sale sale;
    sale.at.day = day;
    sale.hose.text = "D1.a";
    sale.totalizer = Volume::from_si(totals[static_cast<std::size_t>(i)]);
    records.sales.push_back(sale);
  }
  const MeterTold meter = study_meter(station(), records, {}, {}).meters[0];
  ASSERT_TRUE(meter.by_volume.problem.empty()) << meter.by_volume.problem;
  EXPECT_NEAR(*meter.by_volume.slope, 1e-5, 1e-10);
  EXPECT_LT(*meter.by_volume.standard_error, 1e-8);
  EXPECT_GT(*meter.by_time.standard_error / *meter.by_time.slope, 0.05);
}

Records month_of_sales(std::vector<Proving> provings) {
  Records out;
  const double daily = to_si(1000.0, "gal");
  for (int day = 1; day <= 31; ++day) {
    for (const char* hose : {"D1.a", "D1.b"}) {
      site::records::Sale sale;
      sale.at.day = {2026, 10, day, {}};
      sale.hose.text = hose;
      sale.volume = Volume::from_si(daily);
      out.sales.push_back(sale);
    }
    for (const char* tank : {"T1", "T2"}) {
      site::records::Dip dip;
      dip.at.day = {2026, 10, day, {}};
      dip.tank.text = tank;
      // stock is held by deliveries of what leaves: a level that does not move shows the error of the book alone
      dip.volume = Volume::from_si(to_si(8000.0, "gal"));
      out.dips.push_back(dip);
      site::records::Delivered drop;
      drop.at.day = {2026, 10, day, {}};
      drop.tank.text = tank;
      drop.gross = Volume::from_si(daily * (tank == std::string("T1") ? 1.6 : 0.4));
      out.deliveries.push_back(drop);
    }
  }
  out.provings = std::move(provings);
  return out;
}

TEST(Meter, AYearIsScaledFromTheDaysOnRecordAndPaidByThePrice) {
  MeterOptions options;
  options.prices = {{"", 2.0, ""}, {"regular", 4.0 / to_si(1.0, "gal"), "crowns"}};
  const MeterResult result = study_meter(station(), month_of_sales({draw(-1.155)}), options, {});
  const MeterYear& year = result.meters[0].year;
  EXPECT_EQ(year.days, 30);
  EXPECT_NEAR(from_si(*year.volume, "gal"), 365250.0, 1e-6);
  const double error = 1155.0 / (1155.0 - 1.155) - 1.0;
  EXPECT_NEAR(from_si(*year.error, "gal"), 365250.0 * error / (1.0 + error), 1e-6);
  EXPECT_NEAR(*year.money, 4.0 * from_si(*year.error, "gal"), 1e-6);
  EXPECT_EQ(year.currency, "crowns");
}

TEST(Meter, SharesOfABlendedHoseGoToBothBooks) {
  Proving blended = draw(-1.155);
  blended.hose.text = "D1.b";
  const Records records = month_of_sales({blended});
  const LedgerResult ledger = study_ledger(station(), records, {});
  const MeterResult result = study_meter(station(), records, {}, book_meters(ledger));
  ASSERT_EQ(result.books.size(), 2u);
  const double share = 1.155 / 1155.0;  // e / (1 + e)
  const MetersOfBook& regular = result.books[0];
  ASSERT_EQ(regular.shares.size(), 2u);
  EXPECT_EQ(regular.shares[0].sold.hose, "D1.b");  // proved comes first
  EXPECT_NEAR(*regular.shares[0].sold.volume, 0.6 * 30.0 * to_si(1000.0, "gal") * share, 1e-9);
  EXPECT_NEAR(*result.books[1].shares[0].sold.volume, 0.4 * 30.0 * to_si(1000.0, "gal") * share, 1e-9);
  EXPECT_NEAR(regular.left, regular.book.over_short - *regular.shares[0].sold.volume, 1e-12);
  // the other meter: with that error its share is what is left
  const MeterShare& other = regular.shares[1];
  ASSERT_TRUE(other.alone);
  EXPECT_NEAR(other.sold.sold * *other.alone / (1.0 + *other.alone), regular.left, 1e-9);
}

TEST(Meter, ALedgerTakesTheProvingThatItsDaysCanStandFor) {
  // changed on the 16th: before it what was found holds, from it on what was left; a later month counts for neither
  const Records records =
      month_of_sales({draw(-7.0, "as-found", {2026, 10, 16, {}}), draw(0.0, "as-left", {2026, 10, 16, {}}),
                      draw(-20.0, "as-found", {2026, 11, 16, {}})});
  const LedgerResult ledger = study_ledger(station(), records, {});
  const double daily = to_si(1000.0, "gal");
  const auto& meters = ledger.books[0].meters;
  const auto found =
      std::find_if(meters.begin(), meters.end(), [](const MeterSold& meter) { return meter.hose == "D1.a"; });
  ASSERT_TRUE(found != meters.end() && found->volume);
  EXPECT_NEAR(*found->volume, 14.0 * daily * 7.0 / 1155.0, 1e-9);  // 2nd to 15th
}

/// A sale without a total is counted once: the next total holds it too.
TEST(Meter, ASaleWithoutATotalIsCountedOnce) {
  Records records;
  records.provings = {draw(-1.155)};
  const auto sold = [&](int day, std::optional<double> volume, std::optional<double> total) {
    site::records::Sale sale;
    sale.at.day = {2026, 10, day, {}};
    sale.hose.text = "D1.a";
    if (volume) sale.volume = Volume::from_si(to_si(*volume, "gal"));
    if (total) sale.totalizer = Volume::from_si(to_si(*total, "gal"));
    records.sales.push_back(sale);
  };
  sold(1, std::nullopt, 100.0);
  sold(2, 10.0, std::nullopt);
  sold(3, std::nullopt, 130.0);
  const MeterYear year = study_meter(station(), records, {}, {}).meters[0].year;
  EXPECT_NEAR(from_si(*year.volume, "gal"), 30.0 * 365.25 / 2.0, 1e-6);
}

TEST(MeterOptions, AreReadAndAllThatIsWrongIsTold) {
  MeterTexts texts;
  texts.prices = {"3.20 per gal", "regular=1.5 EUR/L"};
  texts.limits = {"county=7 in3 per 5 gal", "0.6 %", "acceptance: county=0.3 %"};
  texts.yearly = {"60000 gal", "D1.a=200 m3"};
  const auto read = read_meter_options(texts, Asker::command);
  ASSERT_TRUE(read.ok());
  EXPECT_NEAR(read.value.prices[0].price * to_si(1.0, "gal"), 3.20, 1e-12);
  EXPECT_NEAR(read.value.prices[1].price, 1500.0, 1e-9);
  EXPECT_EQ(read.value.prices[1].currency, "EUR");
  EXPECT_NEAR(from_si(*read.value.limits[0].volume, "in3"), 7.0, 1e-9);
  EXPECT_EQ(read.value.limits[2].of, LimitFor::acceptance);
  EXPECT_NEAR(read.value.yearly[1].volume, 200.0, 1e-12);
  texts = {};
  texts.prices = {"cheap"};
  texts.limits = {"county=", "later: x=1 %"};
  texts.yearly = {"-5 gal"};
  texts.expansion = "-1 1/K";
  texts.from = "2026-13-01";
  EXPECT_EQ(read_meter_options(texts, Asker::command).diagnostics.size(), 6u);
  MeterOptions wrong;
  wrong.hose = "D9";
  wrong.prices = {{"diesel", 1.0, ""}};
  EXPECT_EQ(check_options(station(), wrong).size(), 2u);
}

}  // namespace
}  // namespace forecourse::test
