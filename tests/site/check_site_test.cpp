#include "forecourse/site/check_site.h"

#include <gtest/gtest.h>

#include "site/place_text.h"

namespace forecourse::site {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Two products, two tanks, one line each to one dispenser; `more` is put behind it.
std::string station(std::string_view more, std::string_view trunk = "length = \"9 m\"", std::string_view hose = "") {
  return R"(format = 1
product = [{ id = "regular" }, { id = "diesel" }]
tank = [{ id = "T1", product = "regular" }, { id = "T2", product = "diesel" }]
pump = [{ id = "P1", tank = "T1" }, { id = "P2", tank = "T2" }]
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
)" + std::string(trunk) +
         R"(
[[line]]
id = "other"
from = "P2"
to = "D1.diesel"
length = "9 m"
[[dispenser]]
id = "D1"
inlet = [{ product = "regular" }, { product = "diesel" }]
[[dispenser.hose]]
id = "a"
product = "regular"
)" + std::string(hose) +
         R"(
[[dispenser.hose]]
id = "b"
product = "diesel"
)" + std::string(more);
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

TEST(CheckSite, AStationInOrderIsPassedWithoutAWord) { EXPECT_THAT(told_of(station("")), IsEmpty()); }

TEST(CheckSite, OffersTheNearestName) {
  EXPECT_THAT(
      told_of(replaced(station(""), "product = \"regular\" }, { id = \"T2\"", "product = \"regulr\" }, { id = \"T2\"")),
      ElementsAre("3:32: error: product is 'regulr', but there is no such product | did you mean 'regular'?"));
  EXPECT_THAT(told_of(replaced(station(""), "tank = \"T2\"", "tank = \"T3\"")),
              ElementsAre("4:57: error: tank is 'T3', but there is no such tank | there are: T1, T2"));
  EXPECT_THAT(
      told_of(replaced(station(""), "from = \"P1\"", "from = \"P3\"")),
      ElementsAre("7:8: error: from is 'P3', but there is no such pump, branch or dispenser inlet | there are: P1, P2, "
                  "D1.regular, D1.diesel"));
  EXPECT_THAT(
      told_of(replaced(station(""), "to = \"D1.regular\"", "to = \"D1.regula\"")),
      ElementsAre("8:6: error: to is 'D1.regula', but there is no such pump, branch or dispenser inlet | did you mean "
                  "'D1.regular'?"));  // not also that no line goes to D1.regular
  EXPECT_THAT(
      told_of(replaced(station(""), "to = \"D1.diesel\"", "to = \"D1\"")),
      testing::Contains("13:6: error: to is 'D1', but there is no such pump, branch or dispenser inlet | a line goes "
                        "to an inlet of a dispenser: D1.regular, D1.diesel"));
  EXPECT_THAT(told_of(station("[flow]\norder = [\"a\", \"c\"]")),
              ElementsAre("26:15: error: order is 'c', but there is no such hose | there are: a, b"));
  EXPECT_THAT(told_of(station("[[emergency_stop]]\nid = \"E\"\nstops = [\"P9\"]")),
              ElementsAre("27:10: error: stops is 'P9', but there is no such pump | there are: P1, P2"));
}

TEST(CheckSite, TellsBothPlacesOfAnIdGivenTwice) {
  EXPECT_THAT(told_of(replaced(station(""), "id = \"other\"", "id = \"trunk\"")),
              ElementsAre("11:6: error: line 'trunk' is defined twice | give one of them another id",
                          "  6:6: note: first defined here"));
  EXPECT_THAT(told_of(replaced(station(""), "id = \"b\"", "id = \"a\"")),
              ElementsAre("23:6: error: hose 'a' is defined twice | give one of them another id",
                          "  19:6: note: first defined here"));
  EXPECT_THAT(told_of(station("[[branch]]\nid = \"P1\"")),
              ElementsAre("26:6: error: 'P1' is the id of a pump and of a branch | give one of them another id",
                          "  4:16: note: first defined here"));
}

TEST(CheckSite, HosesNeedAnInletAndAPump) {
  EXPECT_THAT(told_of(replaced(station(""), ", { product = \"diesel\" }]", "]")),
              ElementsAre("13:6: error: to is 'D1.diesel', but there is no such pump, branch or dispenser inlet | "
                          "there are: P1, P2, D1.regular",
                          "22:1: error: hose 'b' takes 'diesel', but dispenser 'D1' has no inlet for it | add a "
                          "[[dispenser.inlet]] with product = \"diesel\""));
  // A pump that is off is a state of the station, not a fault of its file.
  EXPECT_THAT(told_of(replaced(station(""), "tank = \"T1\" }", "tank = \"T1\", running = false }")), IsEmpty());
  EXPECT_THAT(told_of(station("", "length = \"9 m\"\ncheck_valve = true")), IsEmpty());
  std::string turned = station("", "length = \"9 m\"\ncheck_valve = true");
  turned = replaced(replaced(turned, "from = \"P1\"", "from = \"D1.regular\""), "to = \"D1.regular\"", "to = \"P1\"");
  EXPECT_THAT(
      told_of(turned),
      ElementsAre("5:1: warning: line 'trunk' can never flow: its check valve points from the hoses to the pumps | "
                  "exchange 'from' and 'to'",
                  "19:1: error: no pump of 'regular' reaches hose 'a' | join the lines from the pump to the "
                  "dispenser, and look at the way their check valves point",
                  "  4:9: note: pump 'P1' draws 'regular'"));
}

TEST(CheckSite, ProductsMustNotMix) {
  const std::string text = replaced(station(""), "to = \"D1.diesel\"", "to = \"D1.regular\"");
  EXPECT_THAT(
      told_of(text),
      ElementsAre("4:57: error: pump 'P2' draws 'diesel' from tank 'T2', but its line leads to the inlet 'D1.regular' "
                  "of 'regular' | name another tank, or another inlet in the line",
                  "  17:10: note: the inlet 'D1.regular'",
                  "17:35: error: no line goes to the inlet 'D1.diesel' | add a [[line]] with to = \"D1.diesel\""));
}

TEST(CheckSite, LinesThatCannotFlow) {
  const std::string places = "[[branch]]\nid = \"B1\"\n[[branch]]\nid = \"B2\"\n";
  EXPECT_THAT(
      told_of(station(places +
                      "[[line]]\nid = \"x\"\nfrom = \"B1\"\nto = \"B2\"\nlength = \"1 m\"\ncheck_valve = true\n"
                      "[[line]]\nid = \"y\"\nfrom = \"B2\"\nto = \"B1\"\nlength = \"1 m\"\ncheck_valve = true\n")),
      ElementsAre(
          "29:1: error: the check valves of the lines 'x', 'y' point around in a loop | fuel can flow around in "
          "no such loop: turn a line around, or leave out a check valve",
          "  35:1: note: from 'B2' to 'B1'"));
  EXPECT_THAT(told_of(station(places + "[[line]]\nid = \"x\"\nfrom = \"B1\"\nto = \"B2\"\nlength = \"1 m\"\n")),
              ElementsAre("29:1: warning: line 'x' can never flow: it joins no pump to a hose"));
  EXPECT_THAT(told_of(station(places + "[[line]]\nid = \"x\"\nfrom = \"B1\"\nto = \"B1\"\nlength = \"1 m\"\n")),
              ElementsAre("32:6: error: line 'x' goes from 'B1' to itself | name the place at its other end"));
}

TEST(CheckSite, ARealLoopIsFine) {
  EXPECT_THAT(told_of(station("[[branch]]\nid = \"B1\"\n"
                              "[[line]]\nid = \"x\"\nfrom = \"P1\"\nto = \"B1\"\nlength = \"1 m\"\n"
                              "[[line]]\nid = \"y\"\nfrom = \"B1\"\nto = \"D1.regular\"\nlength = \"1 m\"\n")),
              IsEmpty());
}

TEST(CheckSite, RunsNeedALength) {
  EXPECT_THAT(
      told_of(station("", "bore = \"2 in\"")),
      ElementsAre("5:1: error: line 'trunk' has no length, and its ends have no positions to take it from | add length "
                  "= ..."));
  EXPECT_THAT(
      told_of(replaced(station(""), "{ product = \"regular\" }, { product",
                       "{ product = \"regular\", riser = { loss = 2 } }, { product")),
      ElementsAre(
          "17:41: error: the riser of the inlet 'D1.regular' has no length | add length = ..., or leave it out: "
          "a part that is not listed does not exist"));
}

TEST(CheckSite, LengthsAreComparedWithThePlan) {
  std::string text = replaced(station(""), "id = \"D1\"", "id = \"D1\"\nposition = [\"30 m\", \"0 m\"]");
  text = replaced(text, "tank = \"T1\" }", "tank = \"T1\", position = [\"0 m\", \"0 m\"] }");
  EXPECT_THAT(told_of(text),
              ElementsAre("9:10: warning: line 'trunk' is 29.5276 ft long, but its ends are drawn 98.4252 ft apart "
                          "| the length is used; check it or the positions"));
  EXPECT_THAT(told_of(replaced(text, "length = \"9 m\"", "length = \"33 m\"")), IsEmpty());
}

TEST(CheckSite, ALiftNeedsOneLevel) {
  std::string text = station(
      "[[tank]]\nid = \"T3\"\nproduct = \"regular\"\nsurface_elevation = \"-9 ft\"\n"
      "[[pump]]\nid = \"P3\"\ntank = \"T3\"\n"
      "[[line]]\nid = \"x\"\nfrom = \"P3\"\nto = \"D1.regular\"\nlength = \"9 m\"\n",
      "length = \"9 m\"", "lift = \"12 ft\"");
  text = replaced(text, "tank = [{ id = \"T1\", product = \"regular\" }, { id = \"T2\", product = \"diesel\" }]",
                  "[[tank]]\nid = \"T1\"\nproduct = \"regular\"\nsurface_elevation = \"-8 ft\"\n[[tank]]\nid = "
                  "\"T2\"\nproduct = \"diesel\"");
  text = replaced(text, "pump = [{ id = \"P1\", tank = \"T1\" }, { id = \"P2\", tank = \"T2\" }]",
                  "[[pump]]\nid = \"P1\"\ntank = \"T1\"\n[[pump]]\nid = \"P2\"\ntank = \"T2\"");
  EXPECT_THAT(
      told_of(text),
      ElementsAre(
          "32:8: error: the lift of hose 'a' has no one liquid level to start from: those in tanks 'T1' and 'T3' "
          "are 1 ft apart | give outlet_elevation instead of lift",
          "  3:1: note: tank 'T1'", "  36:1: note: tank 'T3'"));
  EXPECT_THAT(told_of(replaced(text, "lift = \"12 ft\"", "outlet_elevation = \"3 ft\"")), IsEmpty());
  EXPECT_THAT(
      told_of(replaced(text, "lift = \"12 ft\"", "outlet_elevation = \"-8.5 ft\"")),
      ElementsAre(
          "32:20: warning: the outlet of hose 'a' lies 0.5 ft below the liquid | check the elevations: all count "
          "from one site datum, upward; a tank above ground says above_ground = true"));
}

// SOURCE: common practice, no source
TEST(CheckSite, AControlThatDoesNotLookAtAKeyIsTold) {
  const auto control = [](const std::string& rest) {
    return told_of(station("[[control]]\nid = \"C\"\nproduct = \"regular\"\n" + rest));
  };
  EXPECT_THAT(control("kind = \"all\"\nstarts_below = \"20 psi\"\nhoses_calling = 2"),
              ElementsAre("29:16: warning: control 'C' does not look at starts_below, hoses_calling: its kind is "
                          "\"all\" | write kind = \"lead-lag\", or leave starts_below, hoses_calling out"));
  EXPECT_THAT(control("kind = \"off\"\nholds = \"20 psi\""),
              ElementsAre("29:9: warning: control 'C' does not look at holds: its kind is \"off\" | write kind = "
                          "\"variable-speed\", or leave holds out"));
  EXPECT_THAT(control("kind = \"all\""), IsEmpty());
}

TEST(CheckSite, SiphonedTanksHoldOneProduct) {
  EXPECT_THAT(told_of(replaced(station(""), "product = \"regular\" }, { id = \"T2\"",
                               "product = \"regular\", siphoned_with = [\"T2\", \"T1\"] }, { id = \"T2\"")),
              ElementsAre("3:60: error: tank 'T1' of 'regular' is siphoned with tank 'T2' of 'diesel'",
                          "  3:98: note: the product of tank 'T2'", "3:66: error: tank 'T1' is siphoned with itself"));
}

// SOURCE: common practice, no source
TEST(CheckSite, APitchThatUncoversTheDropTubeIsTold) {
  const auto tank = [](const std::string& pitch) {
    return told_of(
        replaced(station(""), "id = \"T1\", product = \"regular\"",
                 "id = \"T1\", product = \"regular\", shape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 "
                 "in\", length = "
                 "\"27 ft\", pitch = \"" +
                     pitch +
                     "\" }, reading = { depth = \"8 in\", at = \"2 ft\" }, fill = [{ at = \"25 ft\", drop_tube = { "
                     "end_above_bottom = \"6 in\" } }]"));
  };
  EXPECT_THAT(tank("0 %"), IsEmpty());
  EXPECT_THAT(
      tank("2 %"),
      ElementsAre(testing::HasSubstr(
          "warning: the drop tube of tank 'T1' ends 6 in above the bottom, but at the fill the liquid stands only "
          "2.48 in deep | the pitch uncovers the fill: a longer drop tube, or the fill at the low end")));
}

}  // namespace
}  // namespace forecourse::site
