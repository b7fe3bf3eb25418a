// SOURCE: [cfr_280, 43(a)]: 1.0 % of flow-through and 130 gal; [cfr_280, 43(b)(4)] the table of manual gauging;
// closed forms.
#include "forecourse/studies/ledger/ledger.h"

#include <gtest/gtest.h>

#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/ledger/months.h"

namespace forecourse::studies {
namespace {

double gallons(double value) { return to_si(value, "gal"); }
double inches(double value) { return to_si(value, "in"); }

site::Site site_of(const std::string& more) {
  auto read = site::read_site(
      "format = 1\n[site]\nname = \"Ledger\"\n[[product]]\nid = \"regular\"\nkind = "
      "\"gasoline-e10\"\ndensity = \"740 kg/m3\"\n[[product]]\nid = \"premium\"\nkind = "
      "\"gasoline-e10\"\ndensity = \"745 kg/m3\"\n" +
      more);
  for (const Diagnostic& d : read.diagnostics) {
    const bool of_piping = d.message.starts_with("no line goes");  // a ledger needs none
    if (d.severity == Severity::error && !of_piping) ADD_FAILURE() << d.message;
  }
  return read.value;
}

/// Upright and square-cut: an inch is the same volume everywhere.
const char* const box =
    "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\nshape = { kind = \"rectangular\", length = \"231 in\", width = "
    "\"100 "
    "in\", height = \"100 in\" }\n";  // 100 gal for each inch

site::records::Moment on(int day, std::optional<double> hour = std::nullopt, int month = 11) {
  site::records::Moment out;
  out.day = {2026, month, day, {}};
  if (hour) out.time = Duration::from_si(*hour * 3600.0);
  return out;
}

site::records::Dip dip(const site::records::Moment& at, double depth, const char* tank = "T1") {
  site::records::Dip out;
  out.at = at;
  out.tank = {tank, {}};
  out.depth = Length::from_si(inches(depth));
  return out;
}

site::records::Sale sale(const site::records::Moment& at, double volume, const char* tank = "T1") {
  site::records::Sale out;
  out.at = at;
  out.tank = {tank, {}};
  out.volume = Volume::from_si(gallons(volume));
  return out;
}

site::records::Delivered delivered(const site::records::Moment& at, double gross) {
  site::records::Delivered out;
  out.at = at;
  out.tank = {"T1", {}};
  out.gross = Volume::from_si(gallons(gross));
  return out;
}

/// SOURCE: [cfr_280, 43(a)], the limits of W1 by arithmetic
TEST(MonthlyLimit, IsOnePercentAndAHundredAndThirtyGallons) {
  for (const auto& [sold, limit] : std::vector<std::pair<double, double>>{
           {80000, 930}, {10000, 230}, {50000, 630}, {100000, 1130}, {150000, 1630}, {200000, 2130}}) {
    EXPECT_NEAR(monthly_limit(gallons(sold)), gallons(limit), 1e-9);
  }
}

/// SOURCE: closed form (ISO 8601 calendar): days since 1970 of known dates
TEST(Days, AreCountedAsTheCalendarHasThem) {
  EXPECT_EQ(day_of({1970, 1, 1, {}}).number, 0);
  EXPECT_EQ(day_of({2000, 2, 29, {}}).number, 11016);
  EXPECT_EQ(day_of({2026, 11, 30, {}}).number, 20787);
  for (int number = -800000; number < 800000; number += 37) EXPECT_EQ(day_of(date_of({number})).number, number);
  EXPECT_EQ(text(month_beside(day_of({2026, 1, 31, {}}), -1)), "2025-12-01");
  EXPECT_EQ(text(month_beside(day_of({2026, 12, 31, {}}), 1)), "2027-01-01");
}

/// SOURCE: closed form: the book is opening and delivered less sold; 100 gal for each inch
TEST(Ledger, TellsWhatTheBookExpectsAtTheReadingToCome) {
  site::records::Records records;
  records.dips = {dip(on(1, 23.0), 50), dip(on(2, 23.0), 40)};
  records.sales = {sale(on(2), 980), sale(on(3), 1100)};
  records.deliveries = {delivered(on(3), 4000)};
  const auto evening = study_ledger(site_of(box), records, {}).books.at(0).next;
  ASSERT_TRUE(evening);
  EXPECT_EQ(text(evening->day), "2026-11-03");
  EXPECT_EQ(evening->time, "23:00");
  EXPECT_EQ(evening->business, evening->day);
  EXPECT_NEAR(evening->book, gallons(4000 + 4000 - 1100), 1e-9);
  EXPECT_NEAR(evening->depth.value(), inches(69), 1e-9);
  EXPECT_EQ(evening->deliveries, 1);
  EXPECT_EQ(evening->sales, 1);
  records.dips = {dip(on(1, 7.0), 50), dip(on(2, 7.0), 40)};
  const auto morning = study_ledger(site_of(box), records, {}).books.at(0).next;
  ASSERT_TRUE(morning);
  EXPECT_EQ(text(morning->business), "2026-11-02") << "the sales of a day come behind its morning";
  records.dips.pop_back();
  EXPECT_TRUE(study_ledger(site_of(box), records, {}).books.at(0).next) << "one reading is enough to go on from";
  records.dips.clear();
  EXPECT_FALSE(study_ledger(site_of(box), records, {}).books.at(0).next);
}

TEST(Ledger, BalancesOpeningDeliveriesSalesAndReturns) {
  site::records::Records records;
  records.dips = {dip(on(1), 50), dip(on(2), 40), dip(on(3), 70)};
  records.sales = {sale(on(2), 980), sale(on(3), 1100)};
  records.deliveries = {delivered(on(3), 4000)};
  site::records::Returned back;
  back.at = on(3);
  back.tank = {"T1", {}};
  back.volume = Volume::from_si(gallons(5));
  records.returns = {back};
  const LedgerResult result = study_ledger(site_of(box), records, {});
  ASSERT_EQ(result.books.size(), 1U);
  const LedgerBook& book = result.books[0];
  ASSERT_EQ(book.rows.size(), 2U);
  EXPECT_NEAR(book.rows[0].over_short, gallons(-20), 1e-9);
  EXPECT_NEAR(book.rows[1].book, gallons(4000 + 4000 + 5 - 1100), 1e-9);
  EXPECT_NEAR(book.rows[1].over_short, gallons(7000 - 6905), 1e-9);
  EXPECT_NEAR(book.rows[1].running, gallons(75), 1e-9);
  ASSERT_EQ(book.months.size(), 1U);
  EXPECT_NEAR(book.months[0].limit, gallons(130 + 20.8), 1e-9);
  EXPECT_FALSE(book.months[0].exceeds);
  EXPECT_EQ(book.months[0].missing_days, 0);
}

TEST(Ledger, AMorningReadingComesBeforeTheSalesOfItsDay) {
  site::records::Records records;
  records.dips = {dip(on(1, 6.0), 50), dip(on(2, 6.0), 40)};
  records.sales = {sale(on(1), 1000), sale(on(2), 700)};
  EXPECT_NEAR(study_ledger(site_of(box), records, {}).books[0].rows[0].sold, gallons(1000), 1e-9);
  records.dips = {dip(on(1), 50), dip(on(2), 43)};
  EXPECT_NEAR(study_ledger(site_of(box), records, {}).books[0].rows[0].sold, gallons(700), 1e-9);
}

TEST(Ledger, ASecondMonthConfirms) {
  site::records::Records records;
  for (const int month : {9, 10, 11}) {
    records.dips.push_back(dip(on(1, std::nullopt, month), 90.0));
    records.dips.push_back(dip(on(month == 10 ? 31 : 30, std::nullopt, month), month == 9 ? 89.0 : 80.0));
    records.deliveries.push_back(delivered(on(1, 18.0, month), 0));
  }
  records.deliveries = {delivered(on(1, 12.0, 10), 100), delivered(on(1, 12.0, 11), 1000)};
  const auto months = study_ledger(site_of(box), records, {}).books[0].months;
  ASSERT_EQ(months.size(), 3U);
  EXPECT_FALSE(months[0].exceeds);  // 100 gal short, of 130
  EXPECT_TRUE(months[1].exceeds);
  EXPECT_FALSE(months[1].confirmed);
  EXPECT_TRUE(months[2].confirmed);
  EXPECT_EQ(months[2].missing_days, 28);
  for (const LedgerMonth& month : months) EXPECT_TRUE(month.whole);
}

/// A month that falls short, or is not over, confirms nothing while the month before is not on record.
TEST(Ledger, AMonthAloneIsNotUnconfirmed) {
  const auto state = [](const site::records::Records& records) {
    for (const checks::Finding& one : checks::check_ledger(study_ledger(site_of(box), records, {}))) {
      if (one.rule == "inventory-confirmed") return one.state;
    }
    return checks::FindingState::does_not_apply;
  };
  site::records::Records records;
  records.dips = {dip(on(1), 90), dip(on(30), 72)};  // 1,800 gal short in the whole month
  EXPECT_EQ(state(records), checks::FindingState::not_determined);
  records.dips = {dip(on(1), 90), dip(on(2), 90), dip(on(3), 90)};
  EXPECT_EQ(state(records), checks::FindingState::not_determined);
  records.dips = {dip(on(1), 90), dip(on(30), 90)};  // a whole month that is within its limit is no second one
  EXPECT_EQ(state(records), checks::FindingState::meets);
}

/// True where a warning holds these words.
bool told(const LedgerResult& result, const std::string& words) {
  for (const Diagnostic& d : result.warnings) {
    if ((d.message + " " + d.hint).find(words) != std::string::npos) return true;
  }
  return false;
}

TEST(Ledger, NamesWhatItCannotCount) {
  site::records::Records records;
  records.dips = {dip(on(1), 50), dip(on(2), 40), dip(on(2), 41), dip(on(3), 1524)};
  records.sales = {sale(on(2), -5), sale(on(2), 900), sale(on(3), 10, "T9")};
  records.deliveries = {delivered(on(2), 10)};
  records.deliveries[0].gross.reset();
  const LedgerResult result = study_ledger(site_of(box), records, {});
  EXPECT_TRUE(told(result, "a sale below zero on 2026-11-02"));
  EXPECT_TRUE(told(result, "read twice on 2026-11-02"));
  EXPECT_TRUE(told(result, "tank 'T9'"));
  EXPECT_TRUE(told(result, "was it mm, not in?"));
  EXPECT_TRUE(told(result, "tells no volume"));
  EXPECT_EQ(result.books[0].months[0].unsettled.size(), 4U);
}

TEST(Ledger, AMeterThatTurnsOverIsCountedThroughAndOneThatWasReplacedIsAskedAbout) {
  const site::Site site = site_of(
      std::string(box) +
      "[[pump]]\nid = \"P1\"\ntank = \"T1\"\n[[dispenser]]\nid = \"D1\"\n[[dispenser.inlet]]\nproduct = \"regular\"\n"
      "[[dispenser.hose]]\nid = \"D1.a\"\nproduct = \"regular\"\n");
  const auto total = [](int day, double value) {
    site::records::Sale out;
    out.at = on(day);
    out.hose = {"D1.a", {}};
    out.totalizer = Volume::from_si(gallons(value));
    return out;
  };
  site::records::Records records;
  records.dips = {dip(on(1), 60), dip(on(2), 50), dip(on(3), 40)};
  records.sales = {total(1, 998900), total(2, 999900), total(3, 900)};
  const LedgerResult turned = study_ledger(site, records, {});
  EXPECT_NEAR(turned.books[0].rows[1].sold, gallons(1000), 1e-6);
  EXPECT_TRUE(told(turned, "turned over"));
  EXPECT_TRUE(turned.books[0].months[0].unsettled.empty());
  records.sales[2] = total(3, 300000);
  const LedgerResult replaced = study_ledger(site, records, {});
  EXPECT_TRUE(told(replaced, "was its meter replaced?"));
  EXPECT_FALSE(replaced.books[0].months[0].unsettled.empty());
}

TEST(Ledger, ABlendIsChargedToItsTanksByTheRatio) {
  const site::Site site = site_of(
      std::string(box) +
      "[[tank]]\nid = \"T2\"\nproduct = \"premium\"\nshape = { kind = \"rectangular\", length = \"231 in\", width = "
      "\"100 in\", height = \"100 in\" }\n[[dispenser]]\nid = \"D1\"\n[[dispenser.inlet]]\nproduct = "
      "\"regular\"\n[[dispenser.inlet]]\nproduct = \"premium\"\n[[dispenser.hose]]\nid = \"D1.mid\"\nblend = [{ "
      "product = \"regular\", share = \"65 %\" }, { product = \"premium\", share = \"35 %\" }]\n");
  site::records::Records records;
  records.dips = {dip(on(1), 50), dip(on(2), 43.5), dip(on(1), 50, "T2"), dip(on(2), 46.5, "T2")};
  site::records::Sale mid;
  mid.at = on(2);
  mid.hose = {"D1.mid", {}};
  mid.volume = Volume::from_si(gallons(1000));
  records.sales = {mid};
  const LedgerResult result = study_ledger(site, records, {});
  ASSERT_EQ(result.books.size(), 2U);
  for (const LedgerBook& book : result.books) EXPECT_NEAR(book.rows[0].over_short, 0.0, 1e-9) << book.name;
}

/// SOURCE: closed form: what a meter error of +0.5 % and a delivery 10 K too warm do, by hand
TEST(Ledger, TakesOffWhatIsKnown) {
  site::records::Records records;
  records.dips = {dip(on(1), 50), dip(on(2), 45), dip(on(3), 40)};
  records.sales = {sale(on(2), 1005), sale(on(3), 1005)};
  LedgerOptions options;
  options.meters.push_back({"", 0.005, 0.001});
  const LedgerBook book = study_ledger(site_of(box), records, options).books[0];
  ASSERT_TRUE(book.terms.has_value());
  EXPECT_EQ(book.terms->terms[0].cause, "meters");
  EXPECT_NEAR(*book.terms->terms[0].volume, gallons(10), 1e-9);
  EXPECT_NEAR(*book.terms->terms[0].standard_error, gallons(2.01), 1e-9);
  EXPECT_NEAR(book.terms->over_short, gallons(1010), 1e-9);
  EXPECT_NEAR(book.terms->unexplained, gallons(1000), 1e-9);
}

/// SOURCE: [cfr_280, 43(b)(4)]: 800 gal, 48 in wide: 58 h, 12 gal a week, 6 gal a month
TEST(ManualGauging, FollowsThePublishedTable) {
  const site::Site site = site_of(
      "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\ncapacity = \"800 gal\"\nshape = { kind = \"horizontal-cylinder\", "
      "inside_diameter = \"48 in\", length = \"102 in\", heads = \"flat\" }\n");
  site::records::Records records;
  for (int week = 0; week < 5; ++week) {
    const double depth = 24.0 - week * 0.35;
    records.dips.push_back(dip(on(2 + 6 * week, 8.0), depth));
    records.dips.push_back(dip(on(2 + 6 * week, 8.1), depth));
  }
  const LedgerResult result = study_ledger(site, records, {});
  ASSERT_EQ(result.gauging.size(), 1U);
  const ManualGauging& told = result.gauging[0];
  EXPECT_NEAR(told.rule->hours, 58.0, 0.0);
  EXPECT_NEAR(told.rule->weekly, gallons(12), 1e-9);
  EXPECT_NEAR(told.rule->monthly, gallons(6), 1e-9);
  ASSERT_EQ(told.tests.size(), 4U);
  EXPECT_TRUE(told.tests[0].within);           // 7.4 gal
  EXPECT_GT(-*told.mean, told.rule->monthly);  // the mean of four is above 6 gal: the month falls short
}

/// SOURCE: closed form: 8,000 gal, 0.00067 per degF, 0.02 degF an hour is 0.107 gal an hour
TEST(OwnTest, ADriftLooksLikeALeak) {
  LedgerOptions options;
  options.own_volume = gallons(8000);
  options.own_drift = -to_si(0.02, "degF", Datum::difference) / 3600.0;
  options.own_expansion = to_si(0.00067, "1/degF");
  const auto told = study_ledger(site_of(box), {}, options).own_test;
  ASSERT_TRUE(told.has_value());
  EXPECT_NEAR(told->apparent, -to_si(0.1072, "gph"), 1e-12);
}

TEST(OwnTest, WithoutAnExpansionIsNotDetermined) {
  LedgerOptions options;
  options.own_volume = gallons(8000);
  options.own_drift = 1e-6;
  const LedgerResult result = study_ledger(site_of(box), {}, options);  // two products, none named
  EXPECT_FALSE(result.own_test.has_value());
  EXPECT_TRUE(told(result, "not determined: the expansion"));
  options.tank = "T1";
  EXPECT_TRUE(study_ledger(site_of(box), {}, options).own_test.has_value());
}

TEST(Ledger, TellsOfRowsThatLieInNoReconciliation) {
  site::records::Records records;
  records.dips = {dip(on(2), 50), dip(on(3), 40)};
  records.sales = {sale(on(1), 900), sale(on(3), 980), sale(on(4), 700)};
  const LedgerResult result = study_ledger(site_of(box), records, {});
  EXPECT_TRUE(told(result, "1 row of deliveries and sales of T1 lie before its first reading"));
  EXPECT_TRUE(told(result, "1 row of deliveries and sales of T1 wait for the reading"));
  EXPECT_FALSE(result.books[0].months[0].whole);
}

TEST(LedgerOptions, AMeterErrorOfAHoseThatIsNotThereIsRefused) {
  LedgerOptions options;
  options.meters.push_back({"D9.z", 0.001, std::nullopt});
  ASSERT_EQ(check_options(site_of(box), options).size(), 1U);
}

TEST(LedgerOptions, AskedOfATankThatIsNotThereAreRefused) {
  LedgerOptions options;
  options.tank = "T9";
  ASSERT_EQ(check_options(site_of(box), options).size(), 1U);
  EXPECT_NE(check_options(site_of(box), options)[0].hint.find("T1"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::studies
