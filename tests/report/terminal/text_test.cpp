#include "forecourse/report/terminal/text.h"

#include <gtest/gtest.h>

namespace forecourse::report::terminal {
namespace {

TEST(TerminalText, TakesAwayWhatSteersATerminal) {
  EXPECT_EQ(plain("a\033[31mb\nc\td\x07", true), "a [31mb c d ");
  EXPECT_EQ(plain("a\u202Eb", true), "a b");
  EXPECT_EQ(plain("a\xFF\xC3", true), "a??");
  EXPECT_EQ(plain("\u22121 \u00B0 é", false), "-1 deg ?");
}

TEST(TerminalText, CountsColumns) {
  EXPECT_EQ(columns("Émile"), 5U);
  EXPECT_EQ(columns("加油"), 4U);
  EXPECT_EQ(columns("e\u0301"), 1U);
}

TEST(TerminalText, CutsWithAnEllipsis) {
  EXPECT_EQ(fit("dispenser", 5, true), "disp\u2026");
  EXPECT_EQ(fit("dispenser", 5, false), "di...");
  EXPECT_EQ(fit("dispenser", 2, false), "..");
  EXPECT_EQ(fit("加油站加油", 4, true), "加\u2026");
  EXPECT_EQ(fit("short", 5, true), "short");
}

TEST(TerminalText, WrapsAtBlanksAndCutsLongWords) {
  EXPECT_EQ(wrap("one two three", 7), (std::vector<std::string>{"one two", "three"}));
  EXPECT_EQ(wrap("abcdefgh ij", 3), (std::vector<std::string>{"abc", "def", "gh", "ij"}));
  EXPECT_EQ(wrap("", 7), (std::vector<std::string>{""}));
  EXPECT_EQ(wrap("加油", 1), (std::vector<std::string>{"加", "油"}));  // too narrow, but never half a character
}

}  // namespace
}  // namespace forecourse::report::terminal
