// SOURCE: [cfr_280, 43(a)] for the limit of the month told here; the rest holds the writers against the result.
#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/ledger/invented_month.h"

namespace forecourse::report {
namespace {

const site::Site& station() {
  static const site::Site site = site::read_site(
                                     "format = 1\n[site]\nname = \"Ledger\"\n[[product]]\nid = \"regular\"\nkind = "
                                     "\"gasoline-e10\"\ndensity = \"740 kg/m3\"\n[[tank]]\nid = \"T1\"\nproduct = "
                                     "\"regular\"\nshape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 "
                                     "in\", length = \"32 ft\", heads = \"flat\" }\n")
                                     .value;
  return site;
}

studies::LedgerResult ledger(double leak_gph, double typo_inches = 0.0) {
  studies::InventedMonth month;
  month.first = studies::day_of({2026, 11, 1, {}});
  month.daily_sales = to_si(2600, "gal");
  month.scatter = {to_si(0.125, "in"), 0.002, 0.001};
  month.faults.leak = to_si(leak_gph, "gph");
  month.faults.typo = to_si(typo_inches, "in");
  studies::LedgerOptions options;
  options.month = studies::day_of({2026, 11, 1, {}});
  return studies::study_ledger(station(), studies::invented_month(station(), "T1", month, 3, 1), options);
}

TEST(LedgerReport, ThatFallsShortSaysFirstThatExplainingDoesNotCancelReporting) {
  const studies::LedgerResult result = ledger(2.0);
  ASSERT_TRUE(ledger_falls_short(result));
  const std::string text = ledger_summary(result, station(), {200, false, true, false});
  EXPECT_LT(text.find("does not cancel a duty to report"), text.find("gal short"));
  const std::string page = ledger_report(result, station());
  EXPECT_LT(page.find("does not cancel a duty to report"), page.find("gal short"));
  EXPECT_EQ(ledger_summary(ledger(0.0), station(), {200, false, true, false}).find("First"), std::string::npos);
}

TEST(LedgerReport, TellsTheSameNumbersInTextPageAndDocument) {
  const studies::LedgerResult result = ledger(0.2);
  const Json document = ledger_document(result);
  const Json& book = document["result"]["books"][0];
  const auto& month = result.books[0].months[0];
  EXPECT_DOUBLE_EQ(book["months"][0]["limit_m3"].get<double>(), month.limit);
  EXPECT_EQ(book["rows"].size(), 30U);
  const std::string limit = with_unit(Measure::volume, site::Display::us, month.limit);
  EXPECT_NE(ledger_summary(result, station(), {200, false, true, true}).find(limit), std::string::npos);
  EXPECT_NE(ledger_report(result, station()).find(limit), std::string::npos);
  EXPECT_NEAR(month.limit, 0.01 * month.sold + to_si(130, "gal"), 1e-12);
}

TEST(LedgerReport, NamesAWildReadingAndWhatToDo) {
  const studies::LedgerResult result = ledger(0.0, 4.0);
  const std::string text = ledger_summary(result, station(), {200, false, true, true});
  EXPECT_NE(text.find("Look at 2026-11-11"), std::string::npos);
  EXPECT_NE(text.find("Prove the meters"), std::string::npos);
}

TEST(LedgerReport, ItsStepsAreDoubledPointsAndItsFallsEndAtWhatIsLeft) {
  const studies::LedgerResult result = ledger(0.2);
  const svg::CurveChart running = running_chart(result.books[0], site::Display::si, "1");
  EXPECT_EQ(running.curves[0].x.size(), 59U);
  EXPECT_EQ(running.curves[1].x.size(), 30U);
  const svg::WaterfallChart falls = term_chart(result.books[0], site::Display::si, "1");
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < falls.falls.size(); ++i) sum += falls.falls[i].value;
  EXPECT_NEAR(sum, falls.falls.back().value, 1e-9);
  EXPECT_NE(draw(falls).find("</svg>"), std::string::npos);
}

TEST(LedgerChecks, AMonthWithARowThatWasNotCountedIsNotDetermined) {
  studies::LedgerResult result = ledger(2.0);
  EXPECT_EQ(checks::check_ledger(result)[0].state, checks::FindingState::falls_short);
  result.books[0].months[0].unsettled.emplace_back("a sale below zero");
  EXPECT_STREQ(month_state(result.books[0].months[0]), "not determined");
  for (const checks::Finding& finding : checks::check_ledger(result)) {
    EXPECT_EQ(finding.state, checks::FindingState::not_determined) << finding.rule;
  }
}

/// A month that is within its limit so far is not met: it is not over.
TEST(LedgerChecks, AMonthThatIsNotReadToItsEndIsNeverMet) {
  studies::LedgerResult result = ledger(0.0);
  EXPECT_EQ(checks::check_ledger(result)[0].state, checks::FindingState::meets);
  result.books[0].months[0].whole = false;
  const std::vector<checks::Finding> findings = checks::check_ledger(result);
  EXPECT_EQ(findings[0].state, checks::FindingState::not_determined);
  EXPECT_EQ(findings[1].state, checks::FindingState::not_determined);
  EXPECT_STREQ(month_state(result.books[0].months[0]), "not determined");
  EXPECT_NE(book_answer(result.books[0], site::Display::us, Glyphs::ascii)[0].find("so far"), std::string::npos);
}

TEST(LedgerChecks, ATankAboveGroundIsNotUnderTheRule) {
  studies::LedgerResult result = ledger(2.0);
  result.books[0].buried = false;
  for (const checks::Finding& finding : checks::check_ledger(result)) {
    EXPECT_EQ(finding.state, checks::FindingState::does_not_apply) << finding.rule;
  }
}

TEST(LedgerReport, OfAPeriodWithoutAReadingTellsNoOtherMonth) {
  studies::LedgerResult result = ledger(0.2);
  result.books[0].from = result.books[0].to = 0;
  result.books[0].terms.reset();
  result.books[0].loss.reset();
  EXPECT_EQ(book_answer(result.books[0], site::Display::us, Glyphs::ascii)[0],
            "No reading lies in the period asked for.");
}

}  // namespace
}  // namespace forecourse::report
