#include "forecourse/report/html/paper.h"

#include <gtest/gtest.h>

#include "forecourse/report/html/chart_style.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::html {
namespace {

std::string report() {
  return page({"Hollin Gap", "Flow", {{"Date", "25 Nov 2026"}}, "", svg::open("c", 10, 10, "t", "d") + "</svg>\n"});
}

TEST(Paper, EachDrawingHoldsItsRules) {
  const std::string out = on_paper(report(), Paper::a4);
  const std::size_t svg = out.find("<svg class=\"chart\"");
  ASSERT_NE(svg, std::string::npos);
  EXPECT_EQ(out.compare(out.find('>', svg) + 1, 7, "<style>"), 0);
}

TEST(Paper, KnowsBothSizes) {
  EXPECT_NE(on_paper(report(), Paper::a4).find("@page{size:A4}"), std::string::npos);
  EXPECT_NE(on_paper(report(), Paper::letter).find("@page{size:letter}"), std::string::npos);
}

TEST(Paper, RulesOfDrawingsHaveNoTokenLeft) {
  const std::string rules = chart_rules_on_paper();
  EXPECT_EQ(rules.find("var("), std::string::npos);
  EXPECT_NE(rules.find("fill:#000"), std::string::npos);
}

TEST(Paper, WhatIsReadDoesNotChange) {
  const std::string before = report();
  const std::string after = on_paper(before, Paper::letter);
  EXPECT_EQ(after.substr(after.find("<h1>"), 30), before.substr(before.find("<h1>"), 30));
}

TEST(Page, RunsItsTitleOnPaperWithoutLettingItOut) {
  const std::string out = page({"</style><b>\"};", "Flow", {{"Site file", "a\\b\"}"}}, "", ""});
  EXPECT_EQ(out.find("</style><b>"), std::string::npos);
  EXPECT_NE(out.find("@top-left{content:\"\\00003c\\00002fstyle"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report::html
