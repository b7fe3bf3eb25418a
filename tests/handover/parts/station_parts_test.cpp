// The counts were made by hand over the texts of the stations; the list is of none but this program.
// SOURCE: closed form
#include "forecourse/handover/parts/station_parts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "forecourse/site/edit.h"
#include "site/whole_station.h"
#include "support/stations.h"

namespace forecourse::handover {
namespace {

using test::site_text;
using test::station;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Pair;
using testing::UnorderedElementsAre;

std::map<std::string, int> count_of(const site::Site& site) {
  std::map<std::string, int> out;
  for (const StationPart& part : parts_of_station(site)) ++out[part.kind];
  return out;
}

const std::vector<std::string>& example_names() {
  static const std::vector<std::string> names{"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge",
                                              "site-s",     "thornby",   "truck-lane"};
  return names;
}

// The tables of a small station, one line a part: 1 tank, 1 pump with its check valve, 3 lines each with a loss of
// fittings, 3 dispensers each with a tee and a riser with fittings and two hoses entered as one loss; one sump with a
// sensor and the height of its lowest seal, one shear valve, one emergency stop, one interlock.
TEST(StationParts, OfASmallStation) {
  EXPECT_THAT(
      count_of(station(site_text("site-s"))),
      UnorderedElementsAre(Pair("tank", 1), Pair("pump", 1), Pair("check-valve", 1), Pair("line", 3),
                           Pair("fittings", 6), Pair("tee", 3), Pair("riser", 3), Pair("dispenser-sump", 1),
                           Pair("sump-sensor", 1), Pair("entry-seal", 1), Pair("shear-valve", 1), Pair("dispenser", 3),
                           Pair("hose-set", 6), Pair("emergency-stop", 1), Pair("interlock", 1)));
}

// A station that uses every table. Fittings: of the pump's leg, two lines, the riser and the vent's pipe. Monitors of
// an interstice: of a tank and of a line. Seals: two of the tank's sump, one of a line, and the lowest of a
// dispenser's.
TEST(StationParts, OfAStationWithEveryTable) {
  EXPECT_THAT(
      count_of(station(std::string(site::whole_station))),
      UnorderedElementsAre(
          Pair("delivery-hose", 1), Pair("fill", 1), Pair("drop-tube", 1), Pair("spill-container", 1),
          Pair("overfill-valve", 1), Pair("overfill-alarm", 1), Pair("tank", 3), Pair("tank-gauge", 1),
          Pair("interstice-monitor", 2), Pair("slab", 1), Pair("deadman", 1), Pair("pump", 3), Pair("check-valve", 1),
          Pair("pressure-relief", 1), Pair("leak-detector", 1), Pair("pump-leg", 1), Pair("pump-control", 1),
          Pair("line", 4), Pair("branch", 1), Pair("fittings", 5), Pair("tank-sump", 1), Pair("dispenser-sump", 1),
          Pair("sump-sensor", 2), Pair("entry-seal", 4), Pair("tee", 1), Pair("riser", 1), Pair("shear-valve", 2),
          Pair("stabilizer-bar", 1), Pair("dispenser", 1), Pair("filter", 1), Pair("meter", 1), Pair("hose-set", 3),
          Pair("whip-hose", 1), Pair("breakaway", 1), Pair("curb-hose", 1), Pair("flow-limiter", 1), Pair("nozzle", 1),
          Pair("vent", 1), Pair("vent-pipe", 1), Pair("vent-valve", 1), Pair("vapor-return", 1), Pair("vapor-pipe", 1),
          Pair("dispenser-vapor-line", 1), Pair("vapor-recovery", 1), Pair("vapor-processor", 1),
          Pair("emergency-stop", 1), Pair("interlock", 1), Pair("extinguisher", 1)));
}

TEST(StationParts, ADeadmanStandsAsOftenAsEntered) {
  const site::Site site = station(std::string(site::whole_station));
  const auto parts = parts_of_station(site);
  EXPECT_EQ(of_kind(parts, "deadman").front()->count, 2);
}

TEST(StationParts, HowManySealsThereAreIsNotToldByTheHeightOfTheLowest) {
  const site::Site site = station(site_text("site-s"));
  const auto parts = parts_of_station(site);
  EXPECT_EQ(of_kind(parts, "entry-seal").front()->count, std::nullopt);
  EXPECT_EQ(of_kind(parts, "fittings").front()->count, std::nullopt);
  EXPECT_EQ(of_kind(parts, "tee").front()->count, 1);
}

// Three tanks breathe through one outlet: it is there once.
TEST(StationParts, ASharedVentHasOneOutlet) {
  const site::Site site = station(site_text("marle-cross"));
  const auto parts = parts_of_station(site);
  for (const char* kind : {"vent", "vent-pipe", "vent-valve"}) {
    ASSERT_EQ(of_kind(parts, kind).size(), 1U) << kind;
    EXPECT_EQ(of_kind(parts, kind).front()->subject, "T1 vent 1") << kind;
    EXPECT_THAT(of_kind(parts, kind).front()->products, ElementsAre("regular", "premium")) << kind;
  }
}

TEST(StationParts, ASharedVaporPipeIsOfAllItsTanks) {
  std::string text = site_text("marle-cross");
  for (const char* tank : {"T1", "T3"})
    text = test::with(text, std::string("tank.") + tank + ".vapor_return.shared", "v");
  const site::Site site = station(text);
  const auto parts = parts_of_station(site);
  ASSERT_EQ(of_kind(parts, "vapor-pipe").size(), 1U);
  EXPECT_THAT(of_kind(parts, "vapor-pipe").front()->products, ElementsAre("regular", "premium"));
}

// The pipe between two tanks is there once, named from one of them or from both.
TEST(StationParts, ASiphonPipeNamedFromBothTanksIsOne) {
  site::Site site = station(site_text("ludd-bank"));
  const std::size_t one = of_kind(parts_of_station(site), "siphon-bar").size();
  ASSERT_EQ(one, 1U);
  site::Tank& other = site.tanks[1];
  ASSERT_EQ(other.id.text, "T2");
  other.siphon = site.tanks[0].siphon;
  other.siphoned_with = {site.tanks[0].id};
  EXPECT_EQ(of_kind(parts_of_station(site), "siphon-bar").size(), one);
}

// One of two sumps that weigh on a tank is the one entered for itself.
TEST(StationParts, TheTankSumpIsOneOfTheSumpsOnATank) {
  const std::string text = site_text("hollin-gap");
  const site::Site before = station(text);
  const auto two = parts_of_station(before);
  EXPECT_EQ(of_kind(two, "sump-on-tank").front()->count, 2);
  const site::Site after = station(test::with(text, "tank.T1.sump", "{ kind = \"round\", diameter = \"42 in\" }"));
  const auto one = parts_of_station(after);
  EXPECT_EQ(of_kind(one, "sump-on-tank").front()->count, 1);
  EXPECT_EQ(of_kind(one, "tank-sump").size(), 1U);
}

TEST(StationParts, AreInTheOrderOfTheCourse) {
  for (const std::string& name : example_names()) {
    const site::Site site = station(site_text(name));
    int last = 0;
    for (const StationPart& part : parts_of_station(site)) {
      EXPECT_GE(static_cast<int>(part.stop), last) << name << " " << part.path;
      last = static_cast<int>(part.stop);
    }
  }
}

TEST(StationParts, EachHasAPathOfItsOwnThatLeadsToIt) {
  std::vector<std::string> texts{std::string(site::whole_station)};
  for (const std::string& name : example_names()) texts.push_back(site_text(name));
  for (const std::string& text : texts) {
    const site::Site site = station(text);
    std::set<std::string> seen;
    for (const StationPart& part : parts_of_station(site)) {
      EXPECT_TRUE(seen.insert(part.path).second) << part.path;
      EXPECT_TRUE(site::value_at(text, part.path).ok()) << part.path;
      EXPECT_FALSE(part.subject.empty()) << part.path;
    }
  }
}

TEST(StationParts, TheProductOfALineIsThatOfThePumpThatFeedsIt) {
  const site::Site site = station(site_text("hollin-gap"));
  for (const StationPart& part : parts_of_station(site)) {
    if (part.kind != "line") continue;
    const auto* line = std::get<const site::Line*>(part.data);
    ASSERT_EQ(part.products.size(), 1U) << part.path;
    EXPECT_EQ(line->to.text.substr(line->to.text.find('.') + 1), part.products.front());
  }
}

TEST(StationParts, WhatIsNotListedIsNoPart) {
  const std::string text = site_text("hollin-gap");
  const auto without = site::remove_value(text, "dispenser.D1.hose.D1.regular-a.breakaway");
  ASSERT_TRUE(without.ok());
  const site::Site before = station(text);
  const site::Site after = station(without.value);
  EXPECT_EQ(of_kind(parts_of_station(after), "breakaway").size() + 1,
            of_kind(parts_of_station(before), "breakaway").size());
}

}  // namespace
}  // namespace forecourse::handover
