// What the three writers of the meter study print, by snapshot; they tell the same numbers.
#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/meter/meter_view.h"
#include "forecourse/site/read.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

const site::Site& station() {
  static const site::Site site = site::read_site(
                                     "format = 1\n[site]\nname = \"Meters\"\n[[product]]\nid = \"regular\"\nkind = "
                                     "\"gasoline-e10\"\ndensity = \"740 kg/m3\"\n[[dispenser]]\nid = \"D1\"\n"
                                     "[[dispenser.hose]]\nid = \"D1.a\"\nproduct = \"regular\"\n"
                                     "[[dispenser.hose]]\nid = \"D1.b\"\nproduct = \"regular\"\n")
                                     .value;
  return site;
}

studies::MeterResult meters() {
  site::records::Records records;
  const auto add = [&](int year, const char* hose, const char* name, double scale, double flow) {
    site::records::Proving one;
    one.at.day = {year, 10, 14, {}};
    one.hose.text = hose;
    one.draw.text = name;
    one.state.text = "as-found";
    one.indicated = one.measure = Volume::from_si(to_si(5.0, "gal"));
    one.scale = Volume::from_si(to_si(scale, "in3"));
    one.flow = VolumeFlow::from_si(to_si(flow, "gpm"));
    one.measure_temperature = Temperature::from_si(to_si(64.0, "degF", Datum::thermometer));
    one.meter_temperature = Temperature::from_si(to_si(63.0, "degF", Datum::thermometer));
    one.expansion = Expansion::from_si(4.77e-5);
    records.provings.push_back(one);
  };
  for (int year = 2024; year <= 2026; ++year) {
    add(year, "D1.a", "1", -1.0 * (year - 2023), 10.0);
    add(year, "D1.a", "2", -1.0 * (year - 2023) + 0.5, 10.0);
    add(year, "D1.a", "3", -1.0 * (year - 2023) + 2.0, 4.0);
  }
  add(2026, "D1.b", "1", -7.0, 10.0);
  studies::MeterOptions options;
  options.prices = {{"", 3.0 / to_si(1.0, "gal"), "crowns"}};
  options.yearly = {{"D1.a", to_si(60000.0, "gal")}};
  studies::BookMeters book{"T1",
                           "regular",
                           studies::day_of({2026, 10, 1, {}}),
                           studies::day_of({2026, 10, 31, {}}),
                           to_si(40.0, "gal"),
                           to_si(25.0, "gal"),
                           to_si(9.0, "gal"),
                           {}};
  book.meters = {{"D1.a", to_si(5000.0, "gal"), to_si(5000.0, "gal"), to_si(10.0, "gal"), to_si(2.0, "gal")},
                 {"D1.b", to_si(4000.0, "gal"), 0.0, std::nullopt, std::nullopt}};
  studies::MeterResult result = studies::study_meter(station(), records, options, {book});
  result.version = "0";
  return result;
}

MeterFacts facts(const studies::MeterResult& result) {
  return {"30 Nov 2026", "forecourse meter site.toml", {}, checks::check_meter(result), {}};
}

std::string body(const std::string& page) { return page.substr(page.find("<main>")); }

TEST(MeterWriters, PrintATerminalPage) {
  const studies::MeterResult result = meters();
  EXPECT_TRUE(matches_snapshot(meter_summary(result, station(), {100, false, true, true}, facts(result)),
                               "meter_100_verbose.txt"));
}

TEST(MeterWriters, PrintAPage) {
  const studies::MeterResult result = meters();
  EXPECT_TRUE(matches_snapshot(body(meter_report(result, station(), facts(result))), "meter_body.html"));
}

TEST(MeterWriters, PrintADocument) {
  const studies::MeterResult result = meters();
  EXPECT_TRUE(matches_snapshot(to_text(meter_document(result, facts(result))), "meter.json"));
}

TEST(MeterWriters, DrawEveryMeterAndBothFormsOfALimit) {
  const svg::MeterDots chart = meter_dots(meters(), site::Display::us);
  ASSERT_EQ(chart.rows.size(), 2U);
  EXPECT_EQ(chart.rows[0].draws.size(), 3U);
  EXPECT_EQ(chart.rows[0].course.size(), 3U);
  bool volume = false;
  bool share = false;
  for (const svg::MeterDotsLimit& limit : chart.limits) (limit.as_share ? share : volume) = true;
  EXPECT_TRUE(volume && share);
  EXPECT_TRUE(draw(svg::MeterDots{}).empty());
}

TEST(MeterWriters, SayWhatIsMissing) {
  const studies::MeterResult none = studies::study_meter(station(), {}, {}, {});
  EXPECT_TRUE(meter_section(none, station()).empty());
  const std::string text = meter_summary(none, station(), {80, false, true, false}, facts(none));
  EXPECT_NE(text.find("No meter was proved"), std::string::npos);
  EXPECT_NE(text.find("provings.csv"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report
