// Readings that a gauge stated as volumes, in tanks of no known shape.
// SOURCE: [cfr_280, 43(a)]: 1.0 % of flow-through and 130 gal; [cfr_280, 43(b)(4)], the row of 1,000 gal and 48 in;
// sums by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/ledger/ledger.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

double gallons(double value) { return to_si(value, "gal"); }

records::Moment at(int day, double hour) {
  records::Moment out;
  out.day = {2026, day <= 30 ? 9 : 10, day <= 30 ? day : day - 30, {}};
  out.time = Duration::from_si(hour * 3600.0);
  return out;
}

records::Dip reading(const char* tank, int day, double hour, double volume) {
  records::Dip out;
  out.at = at(day, hour);
  out.tank = {tank, {}};
  out.volume = Volume::from_si(gallons(volume));
  return out;
}

records::Sale sold_by(const char* hose, int day, double volume) {
  records::Sale out;
  out.at = at(day, 6);
  out.hose = {hose, {}};
  out.volume = Volume::from_si(gallons(volume));
  return out;
}

site::Site site_of(const std::string& more) {
  const auto read = site::read_site(
      "format = 1\n[site]\nname = \"Volumes (invented)\"\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e0\"\n"
      "[[product]]\nid = \"premium\"\nkind = \"gasoline-e0\"\n" +
      more);
  for (const Diagnostic& d : read.diagnostics) {
    const bool of_piping = d.message.starts_with("no line goes");  // a ledger needs none
    if (d.severity == Severity::error && !of_piping) ADD_FAILURE() << d.message;
  }
  return read.value;
}

const char* const two_tanks = R"(
[[tank]]
id = "R"
product = "regular"
[[tank]]
id = "P"
product = "premium"
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "regular"
  [[dispenser.inlet]]
  product = "premium"
  [[dispenser.hose]]
  id = "D1.mid"
  blend = [{ product = "regular", share = "65 %" }, { product = "premium", share = "35 %" }]
  [[dispenser.hose]]
  id = "D1.reg"
  product = "regular"
)";

/// 700 gal of regular and 100 gal of a blend a day, and 12.2 gal of regular gone a day.
records::Records a_month_and_a_day() {
  records::Records out;
  double regular = 30000.0;
  double premium = 4000.0;
  for (int day = 1; day <= 31; ++day) {
    if (day > 1) {
      regular -= 765.0 + 12.2;
      premium -= 35.0;
      out.sales.push_back(sold_by("D1.reg", day, 700));
      out.sales.push_back(sold_by("D1.mid", day, 100));
    }
    out.dips.push_back(reading("R", day, 6, regular));
    out.dips.push_back(reading("P", day, 6, premium));
  }
  return out;
}

TEST(LedgerOfVolumes, IsReconciledWithoutAShape) {
  const LedgerResult result = study_ledger(site_of(two_tanks), a_month_and_a_day(), {});
  ASSERT_EQ(result.books.size(), 2U);
  const LedgerBook& regular = result.books[0];
  EXPECT_EQ(regular.problem, "");
  ASSERT_FALSE(regular.months.empty());
  const LedgerMonth& september = regular.months[0];  // 29 days between its readings
  EXPECT_NEAR(september.sold, gallons(29 * 765.0), 1e-9);
  EXPECT_NEAR(september.over_short, -gallons(29 * 12.2), 1e-9);
  EXPECT_NEAR(september.limit, gallons(0.01 * 29 * 765.0 + 130.0), 1e-9);
  EXPECT_NEAR(result.books[1].months[0].over_short, 0.0, 1e-9);
  ASSERT_TRUE(regular.loss.has_value());
  EXPECT_NEAR(regular.loss->rate, gallons(12.2) / 86400.0, 1e-12);
}

TEST(LedgerOfVolumes, ScatterIsFoundInTheDays) {
  const LedgerResult result = study_ledger(site_of(two_tanks), a_month_and_a_day(), {});
  ASSERT_TRUE(result.books[0].volume_deviation.has_value());
  EXPECT_NEAR(*result.books[0].volume_deviation, gallons(1.0) / std::sqrt(12.0), 1e-9);  // nothing scatters
}

TEST(LedgerOfVolumes, AMonthOfOneDayIsNotYetExplained) {
  const LedgerBook book = study_ledger(site_of(two_tanks), a_month_and_a_day(), {}).books[0];
  EXPECT_EQ(book.rows[book.from].day, (day_of({2026, 9, 2, {}})));
  EXPECT_EQ(book.rows[book.to - 1].day, (day_of({2026, 9, 30, {}})));
}

TEST(LedgerOfVolumes, ADepthInATankOfNoShapeSaysWhatToEnter) {
  records::Records all = a_month_and_a_day();
  all.dips[4].volume.reset();
  all.dips[4].depth = Length::from_si(1.0);
  const LedgerResult result = study_ledger(site_of(two_tanks), all, {});
  EXPECT_TRUE(std::any_of(result.warnings.begin(), result.warnings.end(), [](const Diagnostic& d) {
    return d.message.starts_with("the depth read in R on 2026-09-03 tells no volume") &&
           d.hint == "enter the volume of the reading";
  }));
  for (records::Dip& dip : all.dips) {
    dip.volume.reset();
    dip.depth = Length::from_si(1.0);
  }
  EXPECT_TRUE(study_ledger(site_of(two_tanks), all, {}).books[0].problem.starts_with("the volume in R cannot be told"));
}

/// Four weekly tests of 11, 8, 5 and 4 gal: each within 12 gal, their mean of 7 gal above 6 gal.
TEST(ManualGaugingOfVolumes, FourWeeks) {
  const char* const small = R"(
[[tank]]
id = "T1"
product = "regular"
capacity = "1000 gal"
shape = { kind = "horizontal-cylinder", inside_diameter = "48 in", length = "128 in", heads = "flat" }
)";
  records::Records all;
  double volume = 800.0;
  int friday = 4;
  for (const double lost : {11.0, 8.0, 5.0, 4.0}) {
    all.dips.push_back(reading("T1", friday, 20.0, volume + 0.5));
    all.dips.push_back(reading("T1", friday, 20.2, volume - 0.5));
    volume -= lost;
    all.dips.push_back(reading("T1", friday + 3, 7.0, volume + 0.5));
    all.dips.push_back(reading("T1", friday + 3, 7.2, volume - 0.5));
    records::Sale used = sold_by("", friday + 4, 20.0);
    used.tank = {"T1", {}};
    all.sales.push_back(used);
    volume -= 20.0;
    friday += 7;
  }
  const LedgerResult result = study_ledger(site_of(small), all, {});
  ASSERT_EQ(result.gauging.size(), 1U);
  const ManualGauging& told = result.gauging[0];
  EXPECT_EQ(told.rule->hours, 58.0);
  ASSERT_EQ(told.tests.size(), 4U);
  for (const GaugingTest& test : told.tests) EXPECT_TRUE(test.within);
  EXPECT_NEAR(*told.mean, -gallons(7.0), 1e-9);
  EXPECT_GT(-*told.mean, told.rule->monthly);
}

TEST(ManualGaugingOfVolumes, AShapeALittleAboveABorderAsksForTheCapacity) {
  const char* const small = R"(
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "48 in", length = "128 in", heads = "flat" }
)";
  const LedgerResult result = study_ledger(site_of(small), {}, {});
  ASSERT_EQ(result.gauging.size(), 1U);
  EXPECT_TRUE(result.gauging[0].words.starts_with("by its shape it holds 1003 gal; if it is a tank of 1000 gal"));
}

}  // namespace
}  // namespace forecourse::studies
