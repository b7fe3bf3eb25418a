#include "forecourse/report/station/title_cells.h"

#include <gtest/gtest.h>

namespace forecourse::report {
namespace {

TEST(TitleCells, TakesANameInAnyCaseAndTrimsTheText) {
  CellTexts cells;
  EXPECT_EQ(fill_cell("Prepared By =  R. Tay ", cells), std::nullopt);
  EXPECT_EQ(cells, (CellTexts{{"prepared by", "R. Tay"}}));
}

TEST(TitleCells, KeepsWhatStandsBehindTheFirstEqualsSign) {
  CellTexts cells;
  EXPECT_EQ(fill_cell("client=A = B", cells), std::nullopt);
  EXPECT_EQ(cells.at("client"), "A = B");
}

TEST(TitleCells, TellsTheNearestName) {
  CellTexts cells;
  const auto wrong = fill_cell("prepard by=x", cells);
  ASSERT_TRUE(wrong);
  EXPECT_EQ(wrong->message, "there is no title cell 'prepard by'");
  EXPECT_EQ(wrong->hint.rfind("did you mean 'prepared by'? there are: station, client,", 0), 0U);
  EXPECT_TRUE(cells.empty());
}

TEST(TitleCells, RefusesATextWithoutAName) {
  CellTexts cells;
  const auto wrong = fill_cell("R. Tay", cells);
  ASSERT_TRUE(wrong);
  EXPECT_EQ(wrong->message, "a title cell is a name, '=' and a text, but 'R. Tay' is written");
}

TEST(TitleCells, RefusesATextThatNoCellHolds) {
  CellTexts cells;
  EXPECT_EQ(fill_cell("client", std::string(longest_cell_text, 'x'), cells), std::nullopt);
  EXPECT_TRUE(fill_cell("client", std::string(longest_cell_text + 1, 'x'), cells));
  EXPECT_EQ(cells.at("client").size(), longest_cell_text);
}

TEST(TitleCells, PrintsAWordInPlaceOfAGap) {
  const auto shown = printed({{"client", "Invented Fuels"}, {"revision", ""}});
  ASSERT_EQ(shown.size(), title_cells().size());
  for (const auto& [label, text] : shown) {
    const char* wanted = label == "Client" ? "Invented Fuels" : label == "Checked by" ? "not checked" : "not given";
    EXPECT_EQ(text, wanted) << label;
  }
}

}  // namespace
}  // namespace forecourse::report
