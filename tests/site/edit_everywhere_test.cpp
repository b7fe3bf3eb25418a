#include <gtest/gtest.h>

#include <map>

#include "forecourse/site/edit.h"
#include "site/place_text.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

const std::string station(whole_station);

/// The text after an edit that must be taken.
std::string set(std::string_view text, std::string_view path, std::string_view value) {
  const Parsed<std::string> edited = set_everywhere(text, path, value);
  for (const Diagnostic& d : edited.diagnostics) ADD_FAILURE() << path << ": " << told(text, d);
  return edited.value;
}

/// Message and hint of an edit that must be refused, without its place.
std::string refused(std::string_view path, std::string_view value) {
  const Parsed<std::string> edited = set_everywhere(station, path, value);
  EXPECT_EQ(edited.value, station) << path;
  return edited.diagnostics.empty() ? "taken"
                                    : edited.diagnostics.front().message + " | " + edited.diagnostics.front().hint;
}

std::string hint_of(std::string_view path) {
  const Parsed<std::string> edited = set_everywhere(station, path, "3 in");
  return edited.diagnostics.empty() ? "taken" : edited.diagnostics.front().hint;
}

TEST(SetEverywhere, APathWithoutStarsIsSetAsEver) {
  EXPECT_EQ(set(station, "line.trunk.bore", "3 in"), set_value(station, "line.trunk.bore", "3 in").value);
}

TEST(SetEverywhere, AStarIsEveryItem) {
  const std::string edited = set(station, "line.*.roughness", "0.02 mm");
  for (const char* line : {"trunk", "spur", "diesel-line"}) {
    EXPECT_EQ(value_at(edited, std::string("line.") + line + ".roughness").value, "\"0.02 mm\"") << line;
  }
}

TEST(SetEverywhere, HoseIsThatOfEveryDispenser) {
  const std::string edited = set(station, "hose.*.limiter", "8 gpm");
  for (const char* hose : {"D1.a", "D1.a.2", "D1.d"}) {
    EXPECT_EQ(value_at(edited, std::string("dispenser.D1.hose.") + hose + ".limiter").value, "\"8 gpm\"") << hose;
  }
  EXPECT_EQ(set(station, "hose.D1.a.limiter", "8 gpm"), set(station, "dispenser.D1.hose.D1.a.limiter", "8 gpm"));
  EXPECT_EQ(set(station, "hose.D1.a.2.loss", "3"), set(station, "dispenser.D1.hose.D1.a.2.loss", "3"));
  EXPECT_EQ(set(station, "inlet.regular.riser.length", "4 ft"),
            set(station, "dispenser.D1.inlet.regular.riser.length", "4 ft"));
}

TEST(SetEverywhere, AddsAKeyThatTheFileDoesNotHaveYet) {
  EXPECT_EQ(value_at(set(station, "line.trunk.wall", "0.2 in"), "line.trunk.wall").value, "\"0.2 in\"");
  EXPECT_EQ(value_at(set(station, "line.trunk.interstice.watch", "dry"), "line.trunk.interstice.watch").value,
            "\"dry\"");
}

TEST(SetEverywhere, OffersTheNearestPathWhole) {
  const std::map<const char*, const char*> meant{
      {"line.trunk.boer", "line.trunk.bore"},
      {"line.trnk.bore", "line.trunk.bore"},
      {"lin.trnk.bor", "line.trunk.bore"},
      {"Line.Trunk.Bore", "line.trunk.bore"},
      {"trunk.bore", "line.trunk.bore"},
      {"pump.P1.curve.shutof", "pump.P1.curve.shutoff"},
      {"tank.T1.shap.lenght", "tank.T1.shape.length"},
      {"dispenser.D1.hose.D1.a.limter", "dispenser.D1.hose.D1.a.limiter"},
      {"dispenser.D1.hose.D1a.limiter", "dispenser.D1.hose.D1.a.limiter"},
      {"dispenser.D1.inlet.reglar.riser.bore", "dispenser.D1.inlet.regular.riser.bore"},
      {"line.trunk.interstice.wach", "line.trunk.interstice.watch"},
      {"hose.*.limter", "hose.*.limiter"},
      {"hos.*.limiter", "hose.*.limiter"},
      {"lines.*.bore", "line.*.bore"},
      {"site.dispaly", "site.display"}};
  for (const auto& [typed, right] : meant)
    EXPECT_EQ(hint_of(typed), "did you mean " + std::string(right) + "?") << typed;
}

TEST(SetEverywhere, OffersTheNearestHoseOfAllDispensers) {
  EXPECT_EQ(refused("hose.D1.e.limiter", "8 gpm"), "'hose.D1.e.limiter' is nothing in the file | did you mean 'D1.a'?");
}

TEST(SetEverywhere, FarFromAllItListsWhatThereIs) {
  EXPECT_EQ(
      refused("line.trunk.frobnicate", "3").rfind("'frobnicate' is not a key of line 'trunk' | its keys are: id,", 0),
      0U);
}

TEST(SetEverywhere, WhatIsRightAndCannotBeReadIsToldAsItIs) {
  EXPECT_EQ(refused("line.trunk.bore", "3 psi"),
            "bore is a length, but 'psi' is a pressure | write \"2.00 in\" or \"52 mm\"");
  EXPECT_EQ(refused("hose.*.limiter", "8 in"),
            "limiter is a flow, but 'in' is a length | write \"10 gpm\" or \"38 L/min\"");
}

TEST(SetEverywhere, AListTheFileDoesNotHaveIsNamed) {
  const Parsed<std::string> edited = set_everywhere("format = 1\n", "pump.P1.tank", "T1");
  ASSERT_EQ(edited.diagnostics.size(), 1U);
  EXPECT_EQ(edited.diagnostics.front().message, "the file has no [[pump]] to set anything of");
}

TEST(SetEverywhere, TakesNoPartOfARefusedEdit) {
  // The spur's loss is a table that has a k, the trunk's is a number.
  const Parsed<std::string> edited = set_everywhere(station, "line.*.loss.k", "2");
  EXPECT_FALSE(edited.ok());
  EXPECT_EQ(edited.value, station);
}

}  // namespace
}  // namespace forecourse::site
