#include "forecourse/report/html/page.h"

#include <gtest/gtest.h>

#include "forecourse/report/html/parts.h"
#include "forecourse/report/html/style.h"
#include "report/snapshot.h"

namespace forecourse::report::html {
namespace {

TEST(HtmlPage, AsksNobodyForAnything) {
  const std::string out = page({"Hollin Gap", "Flow", {{"Date", ""}}, "A computed flow is not a test.", ""});
  EXPECT_NE(out.find("default-src 'none'"), std::string::npos);
  EXPECT_NE(out.find("<html lang=\"en\">"), std::string::npos);
  EXPECT_NE(out.find("<title>Hollin Gap: Flow</title>"), std::string::npos);
  for (const char* outside : {"http:", "https:", "<script", "<link", "<img", "@import", "url(\"", "url(http"}) {
    EXPECT_EQ(out.find(outside), std::string::npos) << outside;
  }
}

TEST(HtmlPage, SaysWhenATitleCellIsEmpty) {
  const std::string out = page({"Hollin Gap", "Flow", {{"Checked", ""}}, "", ""});
  EXPECT_NE(out.find("<dt>Checked</dt><dd>not given</dd>"), std::string::npos);
}

TEST(HtmlParts, TableHasCaptionScopesAndUnits) {
  const Table in{"Lines",
                 "A note.",
                 {{"Line", ""}, {"Flow", "gpm", true}, {"Note", "", false, true}},
                 {{{"trunk", "57.72", "fast"}, true}, {{"gap", "1"}}},
                 {"All", "58.72", ""}};
  EXPECT_TRUE(matches_snapshot(table(in), "table.html"));
}

TEST(HtmlParts, LongWordsMayBreakAndAreEscaped) {
  const std::string name = std::string(60, 'x') + "<b>";
  const std::string out = table({"T", "", {{"Name", ""}}, {{{name}}}, {}});
  EXPECT_NE(out.find("<wbr>"), std::string::npos);
  EXPECT_EQ(out.find("<b>x"), std::string::npos);
  EXPECT_NE(out.find("&lt;b&gt;"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report::html
