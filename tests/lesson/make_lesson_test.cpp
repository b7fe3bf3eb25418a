// The built-in lesson at the example stations: which pages, which parts, which numbers.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "forecourse/lesson/lesson.h"
#include "support/stations.h"

namespace forecourse::lesson {
namespace {

constexpr site::Date today{2026, 11, 30, {}};

Lesson lesson_of(const std::string& text) {
  const site::Site site = test::station(text);
  const Studies studies = make_studies(site, today);
  return make_lesson(built_in_lesson(), ground_of(site, studies));
}

const Page* page_of(const Lesson& lesson, const std::string& id) {
  const auto found =
      std::find_if(lesson.pages.begin(), lesson.pages.end(), [&](const Page& p) { return p.page == id; });
  return found == lesson.pages.end() ? nullptr : &*found;
}

const Number& number_of(const Lesson& lesson, const std::string& page, const std::string& id) {
  static const Number none;
  const Page* found = page_of(lesson, page);
  if (found == nullptr) return none;
  for (const Number& one : found->numbers) {
    if (one.number == id) return one;
  }
  return none;
}

/// Pages whose caution begins with these words.
std::vector<std::string> cautioned(const Lesson& lesson, const std::string& words) {
  std::vector<std::string> out;
  for (const Page& page : lesson.pages) {
    if (!page.caution.empty() && page.caution.rfind(words, 0) == 0) out.push_back(page.page);
  }
  return out;
}

TEST(CautionOfAPage, StandsAboveWhatEscapesAndAboveDrops) {
  const Lesson lesson = lesson_of(test::site_text("hollin-gap"));
  EXPECT_THAT(cautioned(lesson, "A drop that stalls"), testing::ElementsAre("drop", "fill", "overfill-valve"));
  EXPECT_THAT(cautioned(lesson, "Stop the pump. Clear people away."),
              testing::ElementsAre("shear-groove", "shear-anchor", "shear-poppets", "shear-crack", "shear-link",
                                   "whip-hose", "breakaway", "vehicle"));
}

class LessonOf : public testing::TestWithParam<const char*> {};

// Whatever the station: no page is lost, no number lacks both value and reason, no picture has a value beyond its
// range.
TEST_P(LessonOf, IsWhole) {
  const Lesson lesson = lesson_of(test::site_text(GetParam()));
  EXPECT_EQ(lesson.pages.size() + lesson.pages_left_out.size(), built_in_lesson().pages.size());
  for (const PageLeftOut& one : lesson.pages_left_out) EXPECT_FALSE(one.reason.empty()) << one.page;
  for (const Page& page : lesson.pages) {
    SCOPED_TRACE(page.page);
    EXPECT_FALSE(page.subject.empty());
    EXPECT_FALSE(page.states.empty());
    for (const Number& one : page.numbers) {
      EXPECT_NE(one.value.has_value(), !one.reason.empty()) << one.number;
      if (!one.value) continue;
      EXPECT_TRUE(std::isfinite(*one.value)) << one.number;
      EXPECT_FALSE(one.proof.command.empty()) << one.number;
    }
    for (const PictureState& state : page.states) {
      for (const auto& value : state.values) {
        EXPECT_LE(std::abs(value.second), 1.0) << state.state << " " << value.first;
        EXPECT_TRUE(value.first == "pressure" || value.second >= 0.0) << state.state << " " << value.first;
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Stations, LessonOf,
                         testing::Values("hollin-gap", "marle-cross", "thornby", "site-s", "pell-ridge", "ludd-bank",
                                         "truck-lane"));

// A page is shown where the file describes what can happen there.
TEST(MakeLesson, ShowsTheShearValveThatTheIncidentsAreAt) {
  const Lesson lesson = lesson_of(test::site_text("hollin-gap"));
  EXPECT_EQ(page_of(lesson, "shear-groove")->subject, "D3.regular");
  EXPECT_EQ(page_of(lesson, "shear-crack")->subject, "D2.regular");
  EXPECT_EQ(page_of(lesson, "shear-link")->subject, "D4.regular");
  EXPECT_EQ(page_of(lesson, "breakaway")->subject, "D4.regular-b");
  EXPECT_EQ(page_of(lesson, "drop")->subject, "load");
}

TEST(MakeLesson, LeavesOutWhatTheStationLacksAndSaysWhatToEnter) {
  const Lesson lesson = lesson_of(test::site_text("site-s"));
  EXPECT_EQ(page_of(lesson, "drop"), nullptr);
  EXPECT_EQ(lesson.pages_left_out.front().page, "drop");
  EXPECT_EQ(lesson.pages_left_out.front().reason,
            "the station lists no delivery: add a [[delivery]] that says how a tanker unloads here");
  EXPECT_EQ(page_of(lesson, "filter"), nullptr);
  EXPECT_NE(page_of(lesson, "interlocks"), nullptr);
}

TEST(MakeLesson, SaysWhatToEnterForANumberThatIsMissing) {
  const Lesson lesson = lesson_of(test::site_text("hollin-gap"));
  const Number& opening = number_of(lesson, "leak-detector", "detector-opening");
  EXPECT_FALSE(opening.value.has_value());
  EXPECT_EQ(opening.reason, "leak detector of pump P1: enter opening_time and restricted");
  EXPECT_TRUE(number_of(lesson, "tank-water", "tank-water-level").value.has_value());  // shown where water was read
}

// The numbers follow the station: a wider line loses less, a hose without its limiter gives more.
TEST(MakeLesson, FollowsTheStation) {
  const std::string text = test::site_text("hollin-gap");
  const Lesson before = lesson_of(text);
  const Lesson after = lesson_of(test::with(text, "line.regular-trunk.bore", "\"3 in\""));
  const double narrow = number_of(before, "line", "line-loss").value.value();
  const double wide = number_of(after, "line", "line-loss").value.value();
  EXPECT_LT(wide, 0.3 * narrow);
  EXPECT_GT(number_of(after, "line", "line-volume").value.value_or(0.0), -1.0);
  // 3 gal/h is what the detector must find: 3 x 231 in3 in an hour.
  // SOURCE: [nist_sp811, appendix B] gallon 231 in3
  EXPECT_NEAR(number_of(before, "leak-detector", "detector-finds").value.value(), 3.0 * 3.785411784e-3 / 3600.0, 1e-12);
}

// A reading that is a spread is told as one, in the tank and above it: the least fuel leaves the most room.
TEST(MakeLesson, TellsWhatRestsOnASpreadAsARange) {
  const std::string text = test::with(test::site_text("hollin-gap"), "tank.T1.reading.depth",
                                      "{ low = \"70 in\", likely = \"71 in\", high = \"72 in\" }");
  const Lesson lesson = lesson_of(text);
  const Number& volume = number_of(lesson, "tank-walls", "tank-volume");
  const Number& share = number_of(lesson, "tank-walls", "tank-share");
  const Number& above = number_of(lesson, "tank-breathing", "tank-ullage");
  const double capacity = number_of(lesson, "tank-walls", "tank-capacity").value.value();
  ASSERT_TRUE(volume.range && share.range && above.range);
  EXPECT_LT(volume.range->low, *volume.value);
  EXPECT_GT(volume.range->high, *volume.value);
  EXPECT_NEAR(volume.range->low + above.range->high, capacity, 1e-9 * capacity);  // rounding only
  EXPECT_NEAR(share.range->high * capacity, volume.range->high, 1e-9 * capacity);
  EXPECT_FALSE(number_of(lesson_of(test::site_text("hollin-gap")), "tank-walls", "tank-volume").range);
  // An uncertain length of line moves every flow, and what a display counts of it.
  const Lesson village = lesson_of(test::site_text("thornby"));
  const Number& flow = number_of(village, "filter", "hose-flow-alone");
  const Number& minute = number_of(village, "price", "display-volume");
  ASSERT_TRUE(flow.range && minute.range);
  EXPECT_DOUBLE_EQ(minute.range->low, 60.0 * flow.range->low);
  EXPECT_DOUBLE_EQ(*minute.value, 60.0 * *flow.value);
}

// What is not anchored is drawn so, and no study is asked about it.
TEST(MakeLesson, DrawsFactsAsEntered) {
  const Lesson lesson = lesson_of(test::site_text("hollin-gap"));
  const Page* anchor = page_of(lesson, "shear-anchor");
  EXPECT_EQ(anchor->states.front().values.at("anchored"), 1.0);
  const Page* walls = page_of(lesson, "tank-walls");
  EXPECT_EQ(walls->states.front().values.count("double"), 0U);  // not entered at T1
}

TEST(MakeLesson, TakesTheTrainersOwnOrderAndTexts) {
  const site::Site site = test::station(test::site_text("hollin-gap"));
  const Studies studies = make_studies(site, today);
  const LessonFile file = read_lesson(
                              "format = 1\ntitle = \"Two pages\"\n[[page]]\npage = \"nozzle\"\nnotes = \"own\"\n"
                              "[[page]]\npage = \"sump\"\nat = \"D4\"\nnumbers = [\"sump-holds\"]\n")
                              .value;
  const Lesson lesson = make_lesson(file, ground_of(site, studies));
  EXPECT_EQ(lesson.title, "Two pages");
  ASSERT_EQ(lesson.pages.size(), 2U);
  EXPECT_EQ(lesson.pages[0].notes, "own");
  EXPECT_EQ(lesson.pages[0].title, "Nozzle");
  EXPECT_EQ(lesson.pages[1].subject, "D4");
  EXPECT_EQ(lesson.pages[1].numbers.size(), 1U);
}

}  // namespace
}  // namespace forecourse::lesson
