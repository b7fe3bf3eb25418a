#include "forecourse/report/svg/text.h"

#include <gtest/gtest.h>

#include <cmath>

namespace forecourse::report::svg {
namespace {

TEST(SvgText, EscapesWhatCouldEndItsSurroundings) {
  EXPECT_EQ(escape("<b title=\"x\" id='y'>&amp;"), "&lt;b title=&quot;x&quot; id=&#39;y&#39;&gt;&amp;amp;");
  EXPECT_EQ(escape(std::string("a\0b", 3)), "a\uFFFDb");
  EXPECT_EQ(escape("a\xC3(\xFF"), "a\uFFFD(\uFFFD");
  EXPECT_EQ(escape("\xED\xA0\x80"), "\uFFFD\uFFFD\uFFFD");    // half of a surrogate pair
  EXPECT_EQ(escape("\xC0\xBCscript"), "\uFFFD\uFFFDscript");  // '<' written too long
  EXPECT_EQ(escape("a\u202Eb"), "a\uFFFDb");
  EXPECT_EQ(escape("Ünïcode 加油"), "Ünïcode 加油");
}

TEST(SvgText, CoordinatesAreAlwaysNumbers) {
  EXPECT_EQ(coordinate(1.25), "1.2");
  EXPECT_EQ(coordinate(3.0), "3");
  EXPECT_EQ(coordinate(-0.01), "0");
  EXPECT_EQ(coordinate(std::nan("")), "0");
  EXPECT_EQ(coordinate(INFINITY), "0");
}

TEST(SvgText, ShortensByCharacters) {
  EXPECT_EQ(shortened("D1.regular", 10), "D1.regular");
  EXPECT_EQ(shortened("D1.regular", 5), "D1.r\u2026");
  EXPECT_EQ(shortened("ééééé", 3), "éé\u2026");
}

TEST(SvgText, AxisMarksStepBy1And2And2AndAHalfAnd5) {
  EXPECT_EQ(axis_marks(0.0, 72.8, 5), (std::vector<double>{0.0, 20.0, 40.0, 60.0, 80.0}));
  EXPECT_EQ(axis_marks(0.0, 12.28, 6), (std::vector<double>{0.0, 2.5, 5.0, 7.5, 10.0, 12.5}));
  EXPECT_EQ(axis_marks(-3.0, 4.0, 4), (std::vector<double>{-4.0, -2.0, 0.0, 2.0, 4.0}));
}

TEST(SvgText, MarksHaveAsManyDecimalsAsTheirStep) {
  const std::vector<double> marks = axis_marks(0.0, 12.28, 6);
  EXPECT_EQ(mark_text(7.5, marks), "7.5");
  EXPECT_EQ(mark_text(-20.0, axis_marks(-20.0, 72.8, 5)), "\u221220");
}

}  // namespace
}  // namespace forecourse::report::svg
