#include "forecourse/site/days_to_come.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/site/read.h"
#include "site/place_text.h"

namespace forecourse::site {
namespace {

std::vector<std::string> told_on(const Date& today) {
  const std::string text =
      "format = 1\n[[product]]\nid = \"f\"\nkind = \"diesel-b0\"\n[[tank]]\nid = \"T1\"\nproduct = \"f\"\n"
      "tested = 2027-01-15\ninstalled = 2028-05-01\nchanged = 2028-05-01\nnotified = 2026-12-05\n  [[tank.vent]]\n  "
      "valve = { tested = 2026-12-01 }\n"
      "[operations]\nhand_held_tested = 2026-11-30\n";
  std::vector<std::string> lines;
  for (const Diagnostic& d : days_to_come(read_site(text).value, today)) lines.push_back(told(text, d));
  return lines;
}

TEST(DaysToCome, AreToldWithTheirPlaceUnlessTheyMayBePlanned) {
  EXPECT_THAT(told_on({2026, 11, 30, {}}),
              testing::UnorderedElementsAre(
                  "8:10: warning: tested is 2027-01-15, which is yet to come | correct the date: what is yet to come "
                  "proves nothing",
                  "11:12: warning: notified is 2026-12-05, which is yet to come | correct the date: what is yet to "
                  "come proves nothing",
                  "13:22: warning: tested is 2026-12-01, which is yet to come | correct the date: what is yet to come "
                  "proves nothing"));
  EXPECT_EQ(told_on({2026, 11, 29, {}}).size(), 4U) << "the day itself is no day to come, the one before is";
  EXPECT_TRUE(told_on({2027, 1, 15, {}}).empty());
}

}  // namespace
}  // namespace forecourse::site
