#include "forecourse/report/diagnostic_text.h"

#include <gtest/gtest.h>

namespace forecourse::report {
namespace {

/// The span of a word in the first text, looked for from byte `from` on.
SourceSpan at(const std::vector<SourceText>& texts, std::string_view word, std::size_t from = 0) {
  const auto begin = static_cast<std::uint32_t>(texts[0].text.find(word, from));
  return {0, begin, begin + static_cast<std::uint32_t>(word.size())};
}

Diagnostic error(std::string message, SourceSpan where, std::string hint = "") {
  return {Severity::error, std::move(message), where, std::move(hint), {}};
}

TEST(LineColumn, CountsFromOneInCodePoints) {
  const std::string text = "a\nbé→x\n\nz";
  EXPECT_EQ(line_column(text, 0), (LineColumn{1, 1}));
  EXPECT_EQ(line_column(text, 1), (LineColumn{1, 2}));  // the line end itself
  EXPECT_EQ(line_column(text, 2), (LineColumn{2, 1}));
  EXPECT_EQ(line_column(text, text.find('x')), (LineColumn{2, 4}));
  EXPECT_EQ(line_column(text, text.find('z')), (LineColumn{4, 1}));
  EXPECT_EQ(line_column(text, 1000), (LineColumn{4, 2}));
  EXPECT_EQ(line_column("", 5), (LineColumn{1, 1}));
  EXPECT_EQ(line_column("\xff\xfe!", 2), (LineColumn{1, 3}));
}

// The text is part of the contract with the user, so it is compared whole.
TEST(DiagnosticText, ShowsPlaceLineCaretsAndHint) {
  const std::vector<SourceText> texts{{"hollin-gap.toml", "[[line]]\n  bore = \"2.00 psi\"\n"}};
  const Diagnostic wrong_unit =
      error("bore is a length, but 'psi' is a pressure", at(texts, "\"2.00 psi\""), "write \"2.00 in\" or \"52 mm\"");
  EXPECT_EQ(to_text(wrong_unit, texts),
            "hollin-gap.toml:2:10: error: bore is a length, but 'psi' is a pressure\n"
            "    bore = \"2.00 psi\"\n"
            "           ^^^^^^^^^^\n"
            "  hint: write \"2.00 in\" or \"52 mm\"\n");
}

TEST(DiagnosticText, ShowsRelatedPlacesAfterIt) {
  const std::vector<SourceText> texts{{"site.toml", "id = \"é1\"\n\nid = \"é1\" # again"}};
  Diagnostic twice = error("pump 'é1' is defined twice", at(texts, "\"é1\"", 12));
  twice.related.push_back({Severity::note, "first defined here", at(texts, "\"é1\""), "", {}});
  EXPECT_EQ(to_text(twice, texts),
            "site.toml:3:6: error: pump 'é1' is defined twice\n"
            "  id = \"é1\" # again\n"
            "       ^^^^\n"
            "site.toml:1:6: note: first defined here\n"
            "  id = \"é1\"\n"
            "       ^^^^\n");
}

TEST(DiagnosticText, WithoutPlaceHasNoExcerpt) {
  const Diagnostic missing{Severity::error, "there is no file 'gap.toml'", std::nullopt, "", {}};
  EXPECT_EQ(to_text(missing, {}), "error: there is no file 'gap.toml'\n");
  const Diagnostic elsewhere = error("of a text that is not here", SourceSpan{7, 0, 1});
  EXPECT_EQ(to_text(elsewhere, {}), "error: of a text that is not here\n");
}

TEST(DiagnosticText, UnderlinesTheFirstOfSeveralLines) {
  const std::vector<SourceText> texts{{"s", "curve = [\r\n  1,\r\n]\r\n"}};
  EXPECT_EQ(to_text(error("falls", SourceSpan{0, 8, 19}), texts), "s:1:9: error: falls\n  curve = [\n          ^\n");
}

TEST(DiagnosticText, PutsOneCaretAtAnEmptySpanAndAtTheEnd) {
  const std::vector<SourceText> texts{{"s", "[tank"}};
  EXPECT_EQ(to_text(error("ends early", SourceSpan{0, 5, 5}), texts), "s:1:6: error: ends early\n  [tank\n       ^\n");
  EXPECT_EQ(to_text(error("ends early", SourceSpan{0, 90, 95}), texts),
            "s:1:6: error: ends early\n  [tank\n       ^\n");
}

TEST(DiagnosticText, ShowsControlsAsBlanksAndForeignBytesAsQuestionMarks) {
  const std::vector<SourceText> texts{{"s", "a\tb\x1b[31m\xff\u202ex = 1"}};
  EXPECT_EQ(to_text(error("is odd", at(texts, "x")), texts),
            "s:1:11: error: is odd\n  a b [31m? x = 1\n            ^\n");
}

TEST(DiagnosticText, CutsLongLinesAroundTheCaret) {
  const std::vector<SourceText> texts{{"s", std::string(300, 'a') + "BORE" + std::string(300, 'z')}};
  EXPECT_EQ(to_text(error("is long", at(texts, "BORE")), texts),
            "s:1:301: error: is long\n  ..." + std::string(60, 'a') + "BORE" + std::string(90, 'z') + "...\n" +
                std::string(65, ' ') + "^^^^\n");
  const std::vector<SourceText> early{{"s", "BORE" + std::string(300, 'z')}};
  EXPECT_EQ(to_text(error("is long", at(early, "BORE")), early),
            "s:1:1: error: is long\n  BORE" + std::string(150, 'z') + "...\n  ^^^^\n");
  const std::vector<SourceText> late{{"s", std::string(300, 'a') + "BORE"}};
  EXPECT_EQ(to_text(error("is long", at(late, "BORE")), late),
            "s:1:301: error: is long\n  ..." + std::string(150, 'a') + "BORE\n" + std::string(155, ' ') + "^^^^\n");
  const std::vector<SourceText> just{{"s", std::string(160, 'a')}};
  EXPECT_EQ(to_text(error("fits", SourceSpan{0, 0, 1}), just), "s:1:1: error: fits\n  " + just[0].text + "\n  ^\n");
}

TEST(DiagnosticText, KeepsCaretsOfAWideSpanInsideTheCut) {
  const std::vector<SourceText> texts{{"s", std::string(100, 'a') + std::string(900, 'B')}};
  const std::string text = to_text(error("is wide", SourceSpan{0, 100, 1000}), texts);
  EXPECT_EQ(text, "s:1:101: error: is wide\n  ..." + std::string(60, 'a') + std::string(94, 'B') + "...\n" +
                      std::string(65, ' ') + std::string(94, '^') + "\n");
}

TEST(DiagnosticText, ListsByPlaceAndCounts) {
  const std::vector<SourceText> texts{{"s", "one\ntwo\nthree\n"}};
  const Diagnostic nowhere{Severity::error, "nowhere", std::nullopt, "", {}};
  const Diagnostic warning{Severity::warning, "second", at(texts, "two"), "", {}};
  const std::vector<Diagnostic> all{error("third", at(texts, "three")), warning, error("first", at(texts, "one")),
                                    nowhere};
  EXPECT_EQ(to_text(all, texts),
            "error: nowhere\n"
            "s:1:1: error: first\n  one\n  ^^^\n"
            "s:2:1: warning: second\n  two\n  ^^^\n"
            "s:3:1: error: third\n  three\n  ^^^^^\n"
            "3 errors, 1 warning\n");
}

TEST(DiagnosticText, CountsInPlainWords) {
  const Diagnostic e{Severity::error, "", std::nullopt, "", {}};
  const Diagnostic w{Severity::warning, "", std::nullopt, "", {}};
  EXPECT_EQ(count_text({}), "");
  EXPECT_EQ(count_text({e}), "1 error");
  EXPECT_EQ(count_text({w, w}), "2 warnings");
  EXPECT_EQ(count_text({e, w}), "1 error, 1 warning");
  EXPECT_EQ(to_text(std::vector<Diagnostic>{}, {}), "");
}

}  // namespace
}  // namespace forecourse::report
