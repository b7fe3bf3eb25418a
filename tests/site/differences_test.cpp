#include "forecourse/site/editing/differences.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/site/edit.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const std::string station(whole_station);

std::vector<std::string> told(std::string_view a, std::string_view b) {
  std::vector<std::string> out;
  for (const ValueDifference& v : differing_values(a, b)) out.push_back(v.path + ": " + v.a + " | " + v.b);
  return out;
}

TEST(DifferingValues, OfOneTextThereAreNone) { EXPECT_THAT(told(station, station), IsEmpty()); }

TEST(DifferingValues, AreToldAsWrittenUnderThePathThatSetsThem) {
  const std::string b =
      set_value(set_value(station, "line.trunk.bore", "3 in").value, "line.diesel-line.loss", "2").value;
  EXPECT_THAT(told(station, b), ElementsAre("line.trunk.bore: \"2.00 in\" | \"3 in\"", "line.diesel-line.loss:  | 2"));
  EXPECT_THAT(told(b, station), ElementsAre("line.trunk.bore: \"3 in\" | \"2.00 in\"", "line.diesel-line.loss: 2 | "));
}

TEST(DifferingValues, LayoutAndOrderDoNotCount) {
  EXPECT_THAT(told("[[line]]\nid = \"a\"\nbore = \"2 in\"\n[[line]]\nid = \"b\"\n",
                   "[[line]]\nid = 'b'\n[[line]]\nbore = '2 in' # wide\nid = \"a\"\n"),
              IsEmpty());
}

TEST(DifferingValues, HowAValueIsWrittenDoesNotCount) {
  EXPECT_THAT(told("bore = \"2.00 in\"\nloss = 3.6\n", "bore = \"2 in\"\nloss = 3.60\n"), IsEmpty());
  EXPECT_THAT(told("bore = \"2 in\"\n", "bore = \"50.8 mm\"\n"), IsEmpty());
  EXPECT_THAT(told("bore = \"2.00 in\"\n", "bore = \"2.01 in\"\n"), testing::SizeIs(1));
  EXPECT_THAT(told("id = \"1\"\nloss = -1\n", "id = \"1.0\"\nloss = 1\n"), testing::SizeIs(2));
}

TEST(DifferingValues, AWholeTableIsOneDifference) {
  const std::string less = remove_value(station, "line.spur").value;
  EXPECT_THAT(told(station, less), ElementsAre("line.spur: listed | "));
  EXPECT_THAT(told(less, station), ElementsAre("line.spur:  | listed"));
}

TEST(DifferingValues, AnyTextMayBeHeldAgainstAnyOther) {
  EXPECT_THAT(told("", ""), IsEmpty());
  EXPECT_THAT(told("x = [1", "\xFF"), IsEmpty());
  EXPECT_THAT(told("x = 1", "x = { y = 1 }"), ElementsAre("x: 1 | listed"));
  EXPECT_THAT(told("[[x]]\ny = 1\n", "x = 1"), ElementsAre("x: [[x]] | 1"));
}

}  // namespace
}  // namespace forecourse::site
