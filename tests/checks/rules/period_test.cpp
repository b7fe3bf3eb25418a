// SOURCE: the Gregorian calendar, closed form.
#include "forecourse/checks/rules/period.h"

#include <gtest/gtest.h>

namespace forecourse::checks {
namespace {

TEST(Period, IsReadInWholeYearsMonthsOrDays) {
  EXPECT_EQ(read_period("3 years")->years, 3);
  EXPECT_EQ(read_period("6 months")->months, 6);
  EXPECT_EQ(read_period("30 days")->days, 30);
  for (const char* wrong : {"", "3", "3 y", "0 days", "-1 years", "1.5 years"})
    EXPECT_FALSE(read_period(wrong)) << wrong;
}

TEST(Period, AYearAfterALeapDayIsTheLastOfFebruary) {
  EXPECT_EQ(text(later({2024, 2, 29, {}}, {1, 0, 0})), "2025-02-28");
  EXPECT_EQ(text(later({2024, 2, 29, {}}, {4, 0, 0})), "2028-02-29");
  EXPECT_EQ(text(later({2026, 8, 31, {}}, {0, 6, 0})), "2027-02-28");
  EXPECT_EQ(text(later({2026, 12, 15, {}}, {0, 0, 30})), "2027-01-14");
}

TEST(Period, DaysBetweenCountsLeapDays) {
  EXPECT_EQ(days_between({2024, 1, 1, {}}, {2025, 1, 1, {}}), 366);
  EXPECT_EQ(days_between({2026, 3, 1, {}}, {2026, 2, 1, {}}), -28);
}

}  // namespace
}  // namespace forecourse::checks
