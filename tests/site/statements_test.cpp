#include "forecourse/site/text/statements.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/site/text/line_starts.h"

namespace forecourse::site {
namespace {

using testing::ElementsAre;

std::vector<std::string> cut(std::string_view text) {
  std::vector<std::string> parts;
  for (const Statement& s : statements_of(text)) parts.emplace_back(text.substr(s.begin, s.end - s.begin));
  return parts;
}

TEST(Statements, EndWithTheirLine) {
  EXPECT_THAT(cut("a = 1\n\n # c\n  [t] # d\r\nb = 2"), ElementsAre("a = 1", "[t] # d", "b = 2"));
}

TEST(Statements, ListsAndLongTextsGoOverLines) {
  EXPECT_THAT(cut("a = [ # c\n 1,\n]\nb = \"\"\"x\n[y]\n\"\"\"\nc = '''\n'''"),
              ElementsAre("a = [ # c\n 1,\n]", "b = \"\"\"x\n[y]\n\"\"\"", "c = '''\n'''"));
}

TEST(Statements, AnOpenListEndsWhereANewStatementBegins) {
  EXPECT_THAT(cut("a = [1,\nb = 2\n"), ElementsAre("a = [1,", "b = 2"));
  EXPECT_THAT(cut("a = [1,\n[[t]]\n"), ElementsAre("a = [1,", "[[t]]"));
  EXPECT_THAT(cut("a = [\n[1, 2],\n[3]\n]\n"), ElementsAre("a = [\n[1, 2],\n[3]\n]"));
  EXPECT_EQ(statements_of("a = [1,\nb = 2\n")[0].unclosed, '[');
}

TEST(Statements, AnOpenTableOrTextEndsWithItsLine) {
  EXPECT_THAT(cut("a = { b = 1\nc = 2"), ElementsAre("a = { b = 1", "c = 2"));
  EXPECT_THAT(cut("a = \"x\nc = 2"), ElementsAre("a = \"x", "c = 2"));
  EXPECT_THAT(cut("a = \"\"\"x\nc = 2"), ElementsAre("a = \"\"\"x", "c = 2"));
}

TEST(Statements, QuotesHideBracketsAndSigns) {
  const std::string_view text = "a = \"[ # = \\\" {\" # c";
  EXPECT_THAT(cut(text), ElementsAre(text));
  EXPECT_EQ(value_of("a = \"x # y\" # z", statements_of("a = \"x # y\" # z")[0]), "\"x # y\"");
  EXPECT_EQ(key_of("[[ a.b ]] # c", statements_of("[[ a.b ]] # c")[0]), "a.b");
}

TEST(Statements, FindLettersOutsideQuotes) {
  EXPECT_EQ(statements_of("\xC3\xA9 = 1")[0].bare_non_ascii, 0U);
  EXPECT_EQ(statements_of("a = \"\xC3\xA9\" # \xC3\xA9")[0].bare_non_ascii, std::string_view::npos);
}

TEST(LineStarts, GoFromLineAndColumnToBytesAndBack) {
  const LineStarts lines(
      "ab\n\xC3\xA9\xE2\x82\xAC"
      "c\n");
  EXPECT_EQ(lines.offset(1, 1), 0U);
  EXPECT_EQ(lines.offset(1, 3), 2U);
  EXPECT_EQ(lines.offset(2, 1), 3U);
  EXPECT_EQ(lines.offset(2, 2), 5U);
  EXPECT_EQ(lines.offset(2, 3), 8U);
  EXPECT_EQ(lines.offset(9, 1), 10U);
  EXPECT_EQ(lines.line(2), 1U);
  EXPECT_EQ(lines.line(3), 2U);
}

}  // namespace
}  // namespace forecourse::site
