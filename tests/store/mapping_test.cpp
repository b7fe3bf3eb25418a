#include "forecourse/store/mapping/mapping.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/store/records/row_reader.h"

namespace forecourse::store {
namespace {

using ::testing::HasSubstr;

struct Mapped {
  std::vector<Row> rows;
  RowCount count;
  std::string told;
};

/// Reads a file by a mapping.
Mapped mapped(std::string mapping_text, std::string csv) {
  std::vector<SourceText> texts{{"tank.toml", std::move(mapping_text)}, {"levels.csv", std::move(csv)}};
  Parsed<Mapping> mapping = read_mapping(texts[0].text, 0);
  Mapped out;
  std::vector<Diagnostic>& told = mapping.diagnostics;
  if (mapping.ok()) {
    CsvReader reader(texts[1].text, 1, mapping.value.separator.value_or(likely_separator(texts[1].text)));
    if (auto layout = mapped_layout(reader, mapping.value, told)) {
      RowReader rows(reader, *mapping.value.kind, std::move(*layout), nullptr, told);
      Row row;
      for (auto took = rows.next(row); took != RowReader::Took::end; took = rows.next(row)) {
        if (took == RowReader::Took::row) out.rows.push_back(row);
      }
      rows.finish();
      out.count = rows.count();
    }
  }
  out.told = report::to_text(told, texts);
  return out;
}

TEST(Mapping, ReadsAFileOfSomebodyElsesMaking) {
  const Mapped out = mapped(R"(kind = "dips"
separator = ";"
decimal = ","
thousands = "."
dates = "day/month/year"
skip_lines = 2
[columns]
day = "Stamp"
time = "Stamp"
tank = { column = "No", words = { "1" = "T1", "2" = "T2" } }
depth = { column = "Level", unit = "mm" }
volume = { column = "Vol", unit = "L" }
by = { value = "gauge" }
[leave_out]
No = ["Total"]
)",
                            "Report\r\nof; a \"gauge\"\r\n"
                            "No;Stamp;Level;Vol;Alarm\r\n"
                            "1;03/04/2026 6:05;1.812,5;21.004,0;\r\n"
                            "2;03/04/26 18:05;1.700;;low\r\n"
                            "Total;;;;\r\n");
  EXPECT_EQ(out.told, "");
  ASSERT_EQ(out.rows.size(), 2U);
  EXPECT_EQ(out.count.left_out, 1U);
  const Kind& dips = *find_kind("dips");
  const auto text = [&](std::size_t row, std::string_view column) {
    return out.rows[row].values[dips.find(column).value()].text;
  };
  EXPECT_EQ(text(0, "day"), "2026-04-03");
  EXPECT_EQ(text(0, "time"), "06:05");
  EXPECT_EQ(text(0, "tank"), "T1");
  EXPECT_EQ(text(0, "depth"), "1812.5 mm");
  EXPECT_EQ(text(0, "volume"), "21004.0 L");
  EXPECT_EQ(text(0, "by"), "gauge");
  EXPECT_EQ(text(1, "day"), "2026-04-03");
  EXPECT_EQ(text(1, "volume"), "");
  EXPECT_NEAR(out.rows[0].values[dips.find("depth").value()].number, 1.8125, 1e-12);
}

TEST(Mapping, ReadsColumnsByNumberWithoutAHeader) {
  const Mapped out = mapped(
      "kind = \"sales\"\nheader = false\ndates = \"month/day/year\"\n"
      "[columns]\nday = 1\nhose = { column = 2 }\nvolume = { column = 3, unit = \"gal\" }\n",
      "11/02/2026,D1.a,8.123\n11/02/2026,D1.b,1\n");
  EXPECT_EQ(out.told, "");
  EXPECT_EQ(out.rows.size(), 2U);
}

TEST(Mapping, EachRejectIsListedWithItsReason) {
  const Mapped out = mapped(
      "kind = \"dips\"\ndates = \"day/month/year\"\n[columns]\nday = \"d\"\ntank = \"t\"\n"
      "depth = { column = \"l\", unit = \"in\" }\n",
      "d,t,l\n03/14/2026,T1,70\n14/03/2026,,70\n14/03/2026,T1,-1\n15/03/2026,T1,70\n");
  EXPECT_EQ(out.rows.size(), 1U);
  EXPECT_EQ(out.count.rejected, 3U);
  EXPECT_THAT(out.told, HasSubstr("levels.csv:2:1: error: day is a day, but '03/14/2026' is none in the order day, "
                                  "month, year"));
  EXPECT_THAT(out.told, HasSubstr("hint: is the order month/day/year?"));
  EXPECT_THAT(out.told, HasSubstr("levels.csv:3:1: error: tank is missing"));
  EXPECT_THAT(out.told, HasSubstr("levels.csv:4:15: error: depth is -1 in, but must be zero or more"));
}

TEST(Mapping, FaultsOfTheMappingAreToldAtTheirPlaces) {
  const Mapped out = mapped(
      "kind = \"dips\"\ndecimal = \";\"\ndates = \"us\"\nseperator = \";\"\n"
      "[columns]\nday = \"d\"\ndept = \"l\"\ntank = { value = \"T1\", column = \"t\" }\n"
      "volume = { column = \"v\", unit = \"psi\" }\n",
      "d,l\n");
  for (const char* words :
       {"tank.toml:2:11: error: decimal cannot be", "tank.toml:3:9: error: dates", "a mapping has no key 'seperator'",
        "did you mean 'separator'?", "dips have no column 'dept'", "did you mean 'depth'?",
        "tank comes from a column or is one value, not both", "volume is a volume, but 'psi' is a pressure"}) {
    EXPECT_THAT(out.told, HasSubstr(words));
  }
  EXPECT_THAT(mapped("[columns]\nday = \"d\"\n", "").told, HasSubstr("kind is missing"));
  EXPECT_THAT(mapped("kind = \"dips\"\n[columns]\nday = \"d\"\n", "").told, HasSubstr("[columns] has no tank"));
}

TEST(Mapping, AColumnThatTheFileDoesNotHaveIsTold) {
  const Mapped out = mapped("kind = \"dips\"\n[columns]\nday = \"Dat\"\ntank = \"Tank\"\ndepth = \"Level\"\n",
                            "Date,Tank,Level\n2026-11-02,T1,70 in\n");
  EXPECT_THAT(out.told, HasSubstr("tank.toml:3:7: error: the file has no column 'Dat'"));
  EXPECT_THAT(out.told, HasSubstr("did you mean 'Date'?"));
  EXPECT_THAT(out.told, HasSubstr("levels.csv:1:1: note: its header is here"));
}

}  // namespace
}  // namespace forecourse::store
