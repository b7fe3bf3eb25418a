#include "forecourse/report/terminal/page.h"

#include <gtest/gtest.h>

#include <sstream>

namespace forecourse::report::terminal {
namespace {

std::size_t widest(const std::string& text) {
  std::size_t width = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) width = std::max(width, columns(line));
  return width;
}

Table sample(const std::string& note) {
  return {{{"Hose"}, {"Pressure where it begins, psi gauge", true}, {"Note", false, true}},
          {{"D1.a", "18.2", note}, {"D2.a", "17.9", ""}}};
}

TEST(TerminalPage, PrintsATable) {
  Page page(Style{80, false, true, false});
  page.table(sample("above the cap"));
  EXPECT_EQ(page.text(),
            "  Hose  Pressure where it begins, psi gauge  Note\n"
            "  ────────────────────────────────────────────────────────\n"
            "  D1.a                                 18.2  above the cap\n"
            "  D2.a                                 17.9\n");
}

TEST(TerminalPage, HeadsGiveWayFirst) {
  Page page(Style{32, false, false, false});
  page.table(sample("above the cap"));
  EXPECT_LE(widest(page.text()), 32U);
  EXPECT_NE(page.text().find("above the cap"), std::string::npos);
  EXPECT_NE(page.text().find("18.2"), std::string::npos);
}

TEST(TerminalPage, NoLinePassesTheWidth) {
  for (const std::size_t width : {40U, 80U, 140U}) {
    Page page(Style{width, false, true, false});
    page.title(std::string(500, 'x'));
    page.heading(std::string(300, 'y') + " z");
    page.paragraph("a " + std::string(300, 'b'));
    page.item(std::string(300, 'c'));
    page.notice("warning", std::string(300, 'd'));
    page.table(sample(std::string(300, 'e') + " f"));
    page.table({{{std::string(300, 'h')}}, {{std::string(300, 'i')}}});
    EXPECT_LE(widest(page.text()), width);
  }
}

TEST(TerminalPage, ColorOnlyWhenAsked) {
  Page plain_page(Style{80, false, true, false});
  Page colored(Style{80, true, true, false});
  for (Page* page : {&plain_page, &colored}) {
    page->heading("Pumps");
    page->notice("warning", "short");
  }
  EXPECT_EQ(plain_page.text(), "\nPumps\n  warning short\n");
  EXPECT_EQ(colored.text(), "\n\033[1mPumps\033[0m\n  \033[1;33mwarning\033[0m short\n");
}

}  // namespace
}  // namespace forecourse::report::terminal
