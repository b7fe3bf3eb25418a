#include "forecourse/base/nearest_word.h"

#include <gtest/gtest.h>

#include <vector>

namespace forecourse {
namespace {

TEST(EditDistance, CountsEditsAndSwaps) {
  EXPECT_EQ(edit_distance("", ""), 0U);
  EXPECT_EQ(edit_distance("bore", "bore"), 0U);
  EXPECT_EQ(edit_distance("", "bore"), 4U);
  EXPECT_EQ(edit_distance("bore", "bor"), 1U);
  EXPECT_EQ(edit_distance("bore", "borre"), 1U);
  EXPECT_EQ(edit_distance("bore", "bare"), 1U);
  EXPECT_EQ(edit_distance("bore", "broe"), 1U);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);
  EXPECT_EQ(edit_distance("ca", "abc"), 3U);  // no part is edited twice
}

TEST(EditDistance, IsSymmetric) {
  const std::vector<std::string> words = {"length", "lenght", "leng", "", "bore", "robe", "riser"};
  for (const auto& a : words) {
    for (const auto& b : words) EXPECT_EQ(edit_distance(a, b), edit_distance(b, a)) << a << " " << b;
  }
}

struct Row {
  const char* word;
  const char* nearest;  ///< empty: none
};

TEST(NearestWord, OffersWhatWasMeant) {
  const std::vector<std::string> known = {"length",           "bore", "roughness", "rating", "loss",
                                          "per_flow_squared", "id",   "to"};
  const Row rows[] = {
      {"lenght", "length"},
      {"legnth", "length"},
      {"boer", "bore"},
      {"roughnes", "roughness"},
      {"ruffness", ""},
      {"Loss", "loss"},
      {"per-flow-squared", "per_flow_squared"},
      {"per_flow_sqared", "per_flow_squared"},
      {"diameter", ""},
      {"x", ""},
      {"", ""},
      {"dd", "id"},
      {"LENGTH", "length"},
  };
  for (const Row& row : rows) EXPECT_EQ(nearest_word(row.word, known).value_or(""), row.nearest) << row.word;
}

TEST(NearestWord, PrefersTheFirstOfEquals) {
  const std::vector<std::string> known = {"tank", "tang"};
  EXPECT_EQ(nearest_word("tan", known), "tank");
  EXPECT_EQ(nearest_word("tang", known), "tang");
}

TEST(NearestWord, OfNothingIsNone) { EXPECT_EQ(nearest_word("bore", std::span<const std::string>()), std::nullopt); }

}  // namespace
}  // namespace forecourse
