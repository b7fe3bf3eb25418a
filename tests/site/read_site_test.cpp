#include <gtest/gtest.h>

#include "forecourse/base/api_units.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/read.h"
#include "site/place_text.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

std::string with_head(std::string_view rest) { return "format = 1\n" + std::string(rest); }

/// A station in which everything but the tested hose is in order.
std::string with_hose(std::string_view keys) {
  return R"(format = 1
product = [{ id = "regular", kind = "gasoline-e10" }]
tank = [{ id = "T1", product = "regular" }]
pump = [{ id = "P1", tank = "T1" }]
line = [{ id = "l", from = "P1", to = "D1.regular", length = "9 m" }]
[[dispenser]]
id = "D1"
inlet = [{ product = "regular" }]
[[dispenser.hose]]
id = "h"
product = "regular"
)" + std::string(keys);
}

const Hose& hose_of(const Parsed<Site>& read) { return read.value.dispensers.at(0).hoses.at(0); }

TEST(ReadSite, TakesAWholeStationWithoutAWord) { EXPECT_THAT(told_of(whole_station), IsEmpty()); }

TEST(ReadSite, KeepsEveryPartOfAWholeStation) {
  const Site site = read_site(whole_station).value;
  EXPECT_EQ(site.name.text, "Lower Wick");
  EXPECT_EQ(site.rules.size(), 2U);
  EXPECT_EQ(site.products.size(), 3U);
  EXPECT_EQ(site.tanks.size(), 3U);
  EXPECT_EQ(site.tanks[2].compartments.size(), 2U);
  EXPECT_EQ(site.tanks[2].chart.size(), 3U);
  EXPECT_EQ(site.pumps.size(), 3U);
  EXPECT_EQ(site.controls.size(), 1U);
  EXPECT_EQ(site.lines.size(), 4U);
  EXPECT_EQ(site.branches.size(), 1U);
  ASSERT_EQ(site.dispensers.size(), 1U);
  EXPECT_EQ(site.dispensers[0].inlets.size(), 3U);
  EXPECT_EQ(site.dispensers[0].hoses.size(), 3U);
  EXPECT_EQ(site.emergency_stops.at(0).stops.size(), 3U);
  EXPECT_EQ(site.interlocks.at(0).what.size(), 2U);
  EXPECT_EQ(site.deliveries.at(0).compartments.size(), 1U);
  EXPECT_EQ(site.operations->arrivals.size(), 24U);
  EXPECT_EQ(site.flow.open.size(), 2U);
}

TEST(ReadSite, GivesValuesInSi) {
  const Site site = read_site(whole_station).value;
  EXPECT_DOUBLE_EQ(site.tanks[0].shape->inside_diameter->likely.si(), to_si(118.0, "in"));
  EXPECT_DOUBLE_EQ(site.tanks[0].bottom_elevation->likely.si(), -to_si(170.0, "in"));
  EXPECT_DOUBLE_EQ(site.tanks[0].shape->pitch->likely.si(), 0.005);
  EXPECT_DOUBLE_EQ(site.lines[0].pipe.length->likely.si(), to_si(150.0, "ft"));
  EXPECT_DOUBLE_EQ(site.lines[0].pipe.loss->k->likely, 3.6);
  EXPECT_DOUBLE_EQ(site.pumps[0].motor_power->likely.si(), to_si(1.5, "hp"));
  EXPECT_EQ(site.pumps[0].leak_detector->kind->value, LeakDetectorKind::mechanical);
  EXPECT_EQ(site.pumps[0].leak_detector->tested->month, 11);
  EXPECT_DOUBLE_EQ(site.pumps[1].curve->coefficients[1].likely, -0.01 * to_si(1.0, "psi") / to_si(1.0, "gpm"));
  EXPECT_EQ(site.pumps[2].curve->fit, CurveFit::power);
  EXPECT_DOUBLE_EQ(site.pumps[2].curve->points[2].rise.si(), to_si(19.0, "psi"));
}

TEST(ReadSite, KeepsWhatIncidentsAreWorkedOutFrom) {
  const Site site = read_site(whole_station).value;
  const Dispenser& dispenser = site.dispensers.at(0);
  const ShearValve& valve = *dispenser.inlets.at(0).shear_valve;
  ASSERT_EQ(valve.closing->points.size(), 3U);
  EXPECT_DOUBLE_EQ(valve.closing->points[1].time.si(), 0.1);
  EXPECT_DOUBLE_EQ(valve.closing->points[1].open.si(), 0.4);
  EXPECT_DOUBLE_EQ(valve.trip_volume->likely.si(), 2e-4);
  EXPECT_DOUBLE_EQ(valve.seat_leak->rate->likely.si(), 0.1 * 3.785411784e-3 / 3600.0);
  EXPECT_DOUBLE_EQ(dispenser.inlets[1].shear_valve->closing->equivalent_time->likely.si(), 0.1);
  EXPECT_DOUBLE_EQ(dispenser.inlets[0].loss_to_groove->k->likely, 3.7);
  EXPECT_DOUBLE_EQ(dispenser.anchorage->likely.si(), 3300.0 * 4.4482216152605 * 0.3048);
  EXPECT_DOUBLE_EQ(dispenser.hoses.at(0).curb->stiffness->likely.si(), 45.0 * 4.4482216152605 / 0.0254);
  EXPECT_EQ(dispenser.hoses[0].parting->poppet->value, Poppet::double_poppet);
  EXPECT_EQ(site.forecourt->drains_to.text, "interceptor");
  ASSERT_EQ(site.incidents.size(), 6U);
  EXPECT_EQ(site.incidents[1].readings.size(), 2U);
  EXPECT_DOUBLE_EQ(site.incidents[0].line_compliance->likely.si(), 20e-6 / pascal_from_psi(1.0));
  EXPECT_DOUBLE_EQ(site.incidents[2].vehicle->acceleration->likely.si(), 5.0 * 0.3048);
  EXPECT_FALSE(site.incidents[5].pump_runs.value());
}

// Zero says that a line is rigid; a missing key says that nobody knows.
TEST(ReadSite, AComplianceOfZeroIsNotAMissingOne) {
  const auto compliance = [](std::string_view key) {
    const std::string text = "format = 1\n[[incident]]\nkind = \"crack\"\n" + std::string(key);
    return read_site(text).value.incidents.at(0).line_compliance;
  };
  ASSERT_TRUE(compliance("line_compliance = \"0 mL/psi\"").has_value());
  EXPECT_DOUBLE_EQ(compliance("line_compliance = \"0 mL/psi\"")->likely.si(), 0.0);
  EXPECT_FALSE(compliance("").has_value());
}

TEST(ReadSite, KeepsTheSpreadOfAnUncertainValue) {
  const auto acts_in = read_site(whole_station).value.emergency_stops.at(0).acts_in;
  ASSERT_TRUE(acts_in);
  EXPECT_TRUE(acts_in->is_uncertain());
  EXPECT_DOUBLE_EQ(acts_in->low.si(), 20.0);
  EXPECT_DOUBLE_EQ(acts_in->likely.si(), 60.0);
  EXPECT_DOUBLE_EQ(acts_in->high.si(), 180.0);
}

TEST(ReadSite, WhatIsNotListedIsMissing) {
  const Site site = read_site(whole_station).value;
  EXPECT_FALSE(site.pumps[1].check_valve.has_value());
  EXPECT_FALSE(site.pumps[1].leak_detector.has_value());
  EXPECT_FALSE(site.dispensers[0].inlets[1].riser.has_value());
  EXPECT_FALSE(site.dispensers[0].inlets[0].shear_valve->listed.has_value());
  EXPECT_FALSE(site.tanks[1].shape.has_value());
}

TEST(ReadSite, SpansCoverTheValueAsWritten) {
  const Site site = read_site(whole_station).value;
  const auto written = [](SourceSpan where) {
    return std::string(whole_station.substr(where.begin, where.end - where.begin));
  };
  EXPECT_EQ(written(site.lines[0].pipe.bore->where), "\"2.00 in\"");
  EXPECT_EQ(written(site.lines[0].where), "[[line]]");
  EXPECT_EQ(written(site.lines[0].pipe.loss->where), "3.6");
  EXPECT_EQ(written(site.lines[0].tested->where), "2025-11-02");
  EXPECT_EQ(written(site.tanks[1].reading->depth->where), "\"71 in\"");
  EXPECT_EQ(written(site.dispensers[0].hoses[1].blend[1].share.where), "0.35");
  EXPECT_EQ(written(site.dispensers[0].hoses[0].id.where), "\"D1.a\"");
}

TEST(ReadSite, SpansCountTheTextTheyBelongTo) {
  EXPECT_EQ(read_site(whole_station, 3).value.lines[0].where.text, 3U);
  EXPECT_EQ(read_site("format = 2", 4).diagnostics.at(0).where->text, 4U);
}

TEST(ReadSite, SpansCountBytesBehindLettersOfSeveralBytes) {
  const std::string text = with_head("[site]\nname = \"Bäch\" # Gäßchen\ndisplay = \"uk\"\n");
  EXPECT_THAT(told_of(text), ElementsAre("4:11: error: display cannot be \"uk\" | did you mean 'us'?"));
}

TEST(ReadSite, TakesAByteOrderMarkAndWindowsLineEnds) {
  const std::string text =
      "\xEF\xBB\xBF"
      "format = 1\r\n[site]\r\nname = \"x\"\r\n";
  const Parsed<Site> read = read_site(text);
  EXPECT_TRUE(read.ok());
  EXPECT_EQ(text.substr(read.value.name.where.begin, 3), "\"x\"");
}

TEST(ReadSite, APipeMayBeItsLength) {
  const Parsed<Site> read =
      read_site(with_hose("whip = \"30 in\"\ncurb = { low = \"8 ft\", likely = \"9 ft\", high = \"10 ft\" }"));
  EXPECT_THAT(read.diagnostics, IsEmpty());
  EXPECT_DOUBLE_EQ(hose_of(read).whip->length->likely.si(), to_si(30.0, "in"));
  EXPECT_DOUBLE_EQ(hose_of(read).curb->length->high.si(), to_si(10.0, "ft"));
}

TEST(ReadSite, ALossMayBeANumberATextOrATable) {
  const double psi = to_si(1.0, "psi");
  const double gpm = to_si(1.0, "gpm");
  const auto loss = [](std::string_view written) {
    const Parsed<Site> read = read_site(with_hose("loss = " + std::string(written)));
    EXPECT_THAT(read.diagnostics, IsEmpty()) << written;
    return hose_of(read).loss.value_or(EnteredLoss{});
  };
  EXPECT_DOUBLE_EQ(loss("3").k->likely, 3.0);
  EXPECT_DOUBLE_EQ(loss("\"0.2 psi/gpm\"").per_flow->likely.si(), 0.2 * psi / gpm);
  EXPECT_DOUBLE_EQ(loss("\"0.17 psi/gpm^2\"").per_flow_squared->likely.si(), 0.17 * psi / (gpm * gpm));
  EXPECT_DOUBLE_EQ(loss("{ low = 2, likely = 3, high = 5 }").k->high, 5.0);
  EXPECT_DOUBLE_EQ(loss("{ low = \"0.1 psi/gpm^2\", likely = \"0.17 psi/gpm^2\", high = \"0.2 psi/gpm^2\" }")
                       .per_flow_squared->low.si(),
                   0.1 * psi / (gpm * gpm));
  EXPECT_DOUBLE_EQ(loss("{ cv = 12 }").cv->likely, 12.0);
  EXPECT_DOUBLE_EQ(loss("{ kv = 10 }").kv->likely, 10.0);
  EXPECT_DOUBLE_EQ(loss("{ k = 2, bore = \"1 in\" }").bore->likely.si(), to_si(1.0, "in"));
  EXPECT_EQ(loss("{ points = [[\"5 gpm\", \"1 psi\"], [\"10 gpm\", \"3 psi\"]] }").points.size(), 2U);
}

TEST(ReadSite, AHalfRightFileStillGivesItsRightHalf) {
  const std::string text =
      with_hose("lift = \"12\"\nlimitr = \"10 gpm\"\nloss = \"0.17 psi/gpm^2\"\nhigh_flow = maybe\n");
  const Parsed<Site> read = read_site(text);
  EXPECT_FALSE(read.ok());
  EXPECT_EQ(read.diagnostics.size(), 3U);
  EXPECT_TRUE(hose_of(read).loss.has_value());
  EXPECT_FALSE(hose_of(read).lift.has_value());
  EXPECT_EQ(read.value.lines.size(), 1U);
}

struct Wrong {
  const char* keys;  ///< of a hose
  const char* told;
};

class WrongHose : public testing::TestWithParam<Wrong> {};

TEST_P(WrongHose, IsTold) {
  const std::string text = with_hose(GetParam().keys);
  EXPECT_THAT(told_of(text), ElementsAre(GetParam().told));
}

INSTANTIATE_TEST_SUITE_P(
    ReadSite, WrongHose,
    testing::Values(
        Wrong{"lift = \"12 psi\"",
              "12:8: error: lift is a length, but 'psi' is a pressure | write \"12 ft 6 in\" or \"3.8 m\""},
        Wrong{"lift = 12", "12:8: error: lift is a length, but 12 has no unit | write \"12 ft 6 in\" or \"3.8 m\""},
        Wrong{"lift = true",
              "12:8: error: lift is a length, but true is true or false | write \"12 ft 6 in\" or \"3.8 m\""},
        Wrong{"lift = nan", "12:8: error: lift is a length, but nan has no unit | write \"12 ft 6 in\" or \"3.8 m\""},
        Wrong{"loss = nan",
              "12:8: error: loss is a number, but nan is not finite | write a number, or leave the key out when it is "
              "not "
              "known"},
        Wrong{"limiter = \"0 gpm\"", "12:11: error: limiter must be above zero, but \"0 gpm\" is written"},
        Wrong{"limiter = \"-3 gpm\"", "12:11: error: limiter must be above zero, but \"-3 gpm\" is written"},
        Wrong{"whip = \"-30 in\"", "12:8: error: whip must be zero or more, but \"-30 in\" is written"},
        Wrong{"lift = { low = \"3 ft\", likely = \"2 ft\", high = \"4 ft\" }",
              "12:8: error: lift is not ordered: low, likely and high must not fall in { low = \"3 ft\", likely = \"2 "
              "ft\", "
              "high = \"4 ft\" } | low is the smallest of the three, high the largest"},
        Wrong{"lift = { low = \"3 ft\", likely = \"4 ft\" }",
              "12:8: error: the uncertain value of lift has no 'high' | write { low = ..., likely = ..., high = ... }"},
        Wrong{
            "lift = { low = \"3 ft\", likely = \"4 ft\", high = \"5 ft\", most = 2 }",
            "12:56: error: 'most' is not a key of an uncertain value | write { low = ..., likely = ..., high = ... }"},
        Wrong{"high_flow = \"yes\"",
              "12:13: error: high_flow is true or false, but \"yes\" is a text | write true or false "
              "without quotes, or leave the key out when it is not known"},
        Wrong{"high_flow = yes", "12:13: error: high_flow is 'yes', which is no value | write true"},
        Wrong{"limitr = \"10 gpm\"", "12:1: error: 'limitr' is not a key of hose 'h' | did you mean 'limiter'?"},
        Wrong{"loss = { k = 3, cv = 4 }",
              "12:8: error: the loss is given in 2 ways: k, cv | keep one of k, cv, kv, points, or per_flow with "
              "per_flow_squared"},
        Wrong{"loss = { bore = \"1 in\" }",
              "12:8: error: the loss is given in no complete way | give k, cv, kv, points, or per_flow with "
              "per_flow_squared"},
        Wrong{"loss = { points = [[\"5 gpm\", \"2 psi\"], [\"4 gpm\", \"3 psi\"]] }",
              "12:8: error: the points of the loss must rise in flow and in loss from point to point | write the "
              "smallest flow first, and check a reading that falls"},
        Wrong{"loss = { points = [[\"5 gpm\"]] }",
              "12:20: error: points is a list of pairs, but [\"5 gpm\"] is no pair | write each as [\"10 gpm\", \"30 "
              "psi\"]"},
        Wrong{"breakaway = \"illustrative-three-quarters\"",
              "12:13: error: there is no breakaway 'illustrative-three-quarters' on the shelf | did you mean "
              "'illustrative-three-quarter'?"},
        Wrong{"nozzle = 3",
              "12:10: error: nozzle is a part, but 3 is a number | write the id of a part on the shelf in quotes, "
              "or its loss as { loss = ... }"},
        Wrong{"lift = \"600 ft\"",
              "12:8: warning: the outlet of hose 'h' lies 600 ft above the liquid | check the "
              "elevations: all count from one site datum, upward"},
        Wrong{"suction = true",
              "12:1: error: 'suction': suction systems are out of scope of this program | describe only "
              "the liquid fuels with submersible pumps of this station"}));

struct WrongText {
  const char* text;
  std::vector<std::string> told;
};

class WrongFile : public testing::TestWithParam<WrongText> {};

TEST_P(WrongFile, IsTold) { EXPECT_EQ(told_of(GetParam().text), GetParam().told); }

INSTANTIATE_TEST_SUITE_P(
    ReadSite, WrongFile,
    testing::Values(
        WrongText{
            "",
            {"1:1: error: the file describes nothing | begin with format = 1, then [site], [[product]], [[tank]], "
             "[[pump]], [[line]] and [[dispenser]]"}},
        WrongText{"[site]", {"1:1: error: the file does not say its format | write format = 1 in the first line"}},
        WrongText{"format = 2",
                  {"1:10: error: format is 2, but this program reads format 1 | a newer version of this program reads "
                   "it"}},
        WrongText{"format = 0", {"1:10: error: format is 0, but this program reads format 1 | write format = 1"}},
        WrongText{
            "format = 1\n[[product]]\nid = \"r\"\nkind = \"lpg\"",
            {"4:8: error: 'lpg': LPG is out of scope of this program | describe only the liquid fuels with submersible "
             "pumps of this station"}},
        WrongText{
            "format = 1\n[[hydrogen]]\nx = 1",
            {"2:3: error: 'hydrogen': hydrogen is out of scope of this program | describe only the liquid fuels with "
             "submersible pumps of this station"}},
        WrongText{"format = 1\n[[product]]\nid = \"r.1\"\nkind = \"other\"",
                  {"3:6: error: id \"r.1\" holds other than letters, digits, '-' and '_' | write \"r-1\": a dot stands "
                   "only between a dispenser and what is at it"}},
        WrongText{
            "format = 1\n[[product]]\nkind = \"other\"\ntemperature = \"400 degF\"\ndensity = \"100 kg/m3\"",
            {"2:1: error: product has no 'id' | add id = ...",
             "4:15: error: temperature must be from -58 to 302 degF (-50 to 150 degC), but \"400 degF\" is written",
             "5:11: error: density must be from 500 to 1200 kg/m3, but \"100 kg/m3\" is written"}},
        WrongText{"format = 1\n[product]\nid = \"r\"",
                  {"2:2: error: product is a list of tables | write [[product]] with two brackets for each"}},
        WrongText{"format = 1\n[[site]]\nname = \"r\"",
                  {"2:3: error: site is one table, not a list | write [site] once"}},
        WrongText{
            "format = 1\nsite = 3",
            {"2:8: error: site is a table, but 3 is a number | write site = { ... }, or a header that ends with site"}},
        WrongText{"format = 1\nproduct = [3]", {"2:12: error: product is a list of tables, but 3 is a number"}},
        WrongText{"format = 1\n[[branch]]\nid = \"B\"\nposition = [\"3 ft\"]",
                  {"4:12: error: position is two lengths, but 1 is written | write [\"40 ft\", \"12 ft\"]"}},
        WrongText{"format = 1\n[operations]\nopens = \"25:00\"\narrivals = [1, 2]",
                  {"3:9: error: opens is a time of day, but \"25:00\" is written | write \"06:00\"",
                   "4:12: error: arrivals is a list of 24 numbers, but 2 are written"}}));

TEST(ReadSite, PumpCurvesMustFall) {
  const auto curve = [](std::string_view written) {
    return told_of(
        "format = 1\nproduct = [{ id = \"r\" }]\ntank = [{ id = \"T\", product = \"r\" }]\n[[pump]]\nid = \"P\"\n"
        "tank = \"T\"\ncurve = " +
        std::string(written));
  };
  EXPECT_THAT(curve("{ shutoff = \"30 psi\", run_out = \"100 gpm\" }"), IsEmpty());
  EXPECT_THAT(
      curve("{ points = [[\"0 gpm\", \"30 psi\"], [\"9 gpm\", \"31 psi\"]] }"),
      ElementsAre("7:9: error: the pump curve rises with flow; it must fall from point to point | check the points; "
                  "leave out a hump near zero flow"));
  EXPECT_THAT(
      curve("{ points = [[\"9 gpm\", \"30 psi\"], [\"0 gpm\", \"31 psi\"]] }"),
      ElementsAre("7:9: error: the flows of the pump curve's points must rise from point to point | write each flow "
                  "once, the smallest first"));
  EXPECT_THAT(
      curve("{ coefficients = [\"30 psi\", \"0.1 psi/gpm\", \"-0.002 psi/gpm^2\"] }"),
      ElementsAre("7:9: error: the pump curve rises with flow; it must fall all the way | check the signs of the "
                  "coefficients, or give points"));
  EXPECT_THAT(curve("{ coefficients = [\"30 psi\", \"0.1 psi/gpm\"] }"),
              ElementsAre("7:9: error: the pump curve never falls to zero | check the signs of the coefficients"));
  EXPECT_THAT(
      curve("{ shutoff = \"30 psi\" }"),
      ElementsAre("7:9: error: the pump curve is given in no complete way | give points, coefficients, shutoff with "
                  "per_flow_squared, or shutoff with run_out"));
  EXPECT_THAT(
      curve("{ points = [[\"0 gpm\", \"30 psi\"], [\"9 gpm\", \"20 psi\"]], fit = \"power\" }"),
      ElementsAre("7:9: error: fit = \"power\" takes three points, the first at zero flow, but 2 are written | add or "
                  "leave out points, or write fit = \"monotone\""));
}

TEST(ReadSite, OfTwoKeysThatExcludeEachOtherTheLaterIsTold) {
  EXPECT_THAT(told_of(with_hose("outlet_elevation = \"3 ft\"\nlift = \"3 ft\"")),
              ElementsAre("13:8: error: hose 'h' has both 'lift' and 'outlet_elevation' | keep one of them",
                          "  12:20: note: 'outlet_elevation'"));
}

TEST(ReadSite, ATableWithTwoFaultsTellsBoth) {
  EXPECT_THAT(told_of(with_hose("lift = 3\nlimiter = 4\nfoo = 5")).size(), 3U);
}

TEST(ReadSite, BlendsAddUp) {
  std::string text(whole_station);
  text.replace(text.find("\"65 %\""), 6, "\"60 %\"");
  EXPECT_THAT(told_of(text),
              ElementsAre(testing::HasSubstr("the shares of the blend of hose 'D1.a.2' add up to 0.95, not to 1")));
}

}  // namespace
}  // namespace forecourse::site
