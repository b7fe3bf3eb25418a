#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "forecourse/store/csv/csv_reader.h"
#include "forecourse/store/csv/csv_writer.h"

namespace forecourse::store {
namespace {

std::vector<std::vector<std::string>> rows_of(std::string_view text, char separator = ',') {
  CsvReader reader(text, 0, separator);
  std::vector<std::vector<std::string>> rows;
  std::vector<CsvCell> row;
  while (reader.next(row)) {
    rows.emplace_back();
    for (const CsvCell& cell : row) rows.back().push_back(cell.text);
  }
  return rows;
}

using Rows = std::vector<std::vector<std::string>>;

// SOURCE: [rfc_4180, section 2] rules 1 to 7
TEST(CsvReader, ReadsTheForm) {
  EXPECT_EQ(rows_of("aaa,bbb\r\nzzz,yyy\r\n"), (Rows{{"aaa", "bbb"}, {"zzz", "yyy"}}));
  EXPECT_EQ(rows_of("aaa,bbb"), (Rows{{"aaa", "bbb"}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b\r\nbb\",\"c,c\"\r\nzzz,,"), (Rows{{"aaa", "b\r\nbb", "c,c"}, {"zzz", "", ""}}));
  EXPECT_EQ(rows_of("\"aaa\",\"b\"\"bb\""), (Rows{{"aaa", "b\"bb"}}));
}

TEST(CsvReader, ReadsWhatPeopleWrite) {
  EXPECT_EQ(rows_of("\xEF\xBB\xBFg;h\r1 ; 2\r", ';'), (Rows{{"g", "h"}, {"1", "2"}}));
  EXPECT_EQ(rows_of("71\",5'6\"\n\n,,\n x , \" y \" \n"), (Rows{{"71\"", "5'6\""}, {"x", " y "}}));
  EXPECT_EQ(rows_of("a\t\tb", '\t'), (Rows{{"a", "", "b"}}));
}

TEST(CsvReader, GivesThePlaceOfEachCell) {
  const std::string_view text = "a,\"b\"\n\n ccc ,d\n";
  CsvReader reader(text, 3, ',');
  std::vector<CsvCell> row;
  ASSERT_TRUE(reader.next(row));
  EXPECT_EQ(row[1].where, (SourceSpan{3, 2, 5}));
  ASSERT_TRUE(reader.next(row));
  EXPECT_EQ(row[0].where, (SourceSpan{3, 8, 11}));
  EXPECT_EQ(reader.row_span(), (SourceSpan{3, 7, 14}));
}

TEST(CsvReader, TellsOfQuotesThatDoNotEnd) {
  CsvReader open("a,\"b\nc", 0, ',');
  std::vector<CsvCell> row;
  EXPECT_TRUE(open.next(row));
  EXPECT_FALSE(open.next(row));
  ASSERT_EQ(open.diagnostics().size(), 1U);
  EXPECT_EQ(open.diagnostics()[0].where, (SourceSpan{0, 2, 3}));
  CsvReader behind("\"12\" riser\",x", 0, ',');
  EXPECT_TRUE(behind.next(row));
  ASSERT_EQ(behind.diagnostics().size(), 1U);
  EXPECT_EQ(behind.diagnostics()[0].where, (SourceSpan{0, 5, 11}));
}

TEST(CsvReader, FindsTheSeparator) {
  EXPECT_EQ(likely_separator("a;b;c\n1,5;2,5;3,5\n"), ';');
  EXPECT_EQ(likely_separator("a\tb\n"), '\t');
  EXPECT_EQ(likely_separator("\"a;b;c\",d\n"), ',');
  EXPECT_EQ(likely_separator("alone\n"), ',');
}

TEST(CsvReader, RefusesWhatIsNoText) {
  EXPECT_FALSE(why_no_csv("\xFF\xFE"
                          "a",
                          0)
                   .empty());
  EXPECT_FALSE(why_no_csv(std::string_view("a\0b", 3), 0).empty());
  EXPECT_EQ(why_no_csv("ab\xE9", 0).at(0).where, (SourceSpan{0, 2, 3}));
  EXPECT_TRUE(why_no_csv("caf\xC3\xA9", 0).empty());
}

// SOURCE: [owasp_csv_injection, list of characters]
TEST(CsvWriter, DefusesFormulas) {
  for (const char* text : {"=1+1", "+1", "-1", "@x", "\tx", "\rx"}) EXPECT_EQ(guarded(text), "'" + std::string(text));
  EXPECT_EQ(guarded("plain = text"), "plain = text");
  EXPECT_EQ(guarded("it's"), "it's");
  EXPECT_EQ(guarded("'quoted'"), "'quoted'");
}

TEST(CsvWriter, WhatIsWrittenIsReadBack) {
  std::mt19937 random(7);
  const std::string letters = "=+-@'\t\r\n\",; aé1";
  for (int i = 0; i < 2000; ++i) {
    std::vector<std::string> cells;
    for (int c = 0; c < 4; ++c) {
      std::string text;
      for (auto n = random() % 6; n > 0; --n) text += letters[random() % letters.size()];
      cells.push_back(text);
    }
    cells.push_back("end");
    std::string out;
    std::vector<std::string> safe;
    for (const std::string& cell : cells) safe.push_back(guarded(cell));
    append_row(out, safe);
    CsvReader reader(out, 0, ',');
    std::vector<CsvCell> row;
    ASSERT_TRUE(reader.next(row));
    ASSERT_EQ(row.size(), cells.size()) << out;
    for (std::size_t c = 0; c < cells.size(); ++c) EXPECT_EQ(without_guard(row[c].text), cells[c]) << out;
    EXPECT_TRUE(reader.diagnostics().empty());
  }
}

}  // namespace
}  // namespace forecourse::store
