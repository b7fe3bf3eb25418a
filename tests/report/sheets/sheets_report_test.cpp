// Sheets as written: JSON, pages, and the file into which readings are typed.
#include "forecourse/report/sheets/sheets_report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/readings/read_sheet_readings.h"
#include "handover/sheets/pack.h"

namespace forecourse::report {
namespace {

using handover::Handed;
using testing::HasSubstr;

const Handed& hollin_gap() {
  static const Handed handed(test::site_text("hollin-gap"));
  return handed;
}

TEST(SheetsReport, TheDocumentHasEverySheetInSi) {
  const Json json = sheets_document(hollin_gap().pack);
  EXPECT_EQ(json["study"], "sheets");
  ASSERT_EQ(json["result"]["sheets"].size(), 6U);
  EXPECT_EQ(json["result"]["first_in_an_emergency"][0], "Stop the pump.");
  const Json& row = json["result"]["sheets"][0]["sections"][0]["rows"][0];
  EXPECT_EQ(row["id"], "flow-alone");
  EXPECT_EQ(row["part"], "D1.regular-a");
  EXPECT_EQ(row["path"], "hose.D1.regular-a");
  EXPECT_EQ(row["unit"], "m3/s");
  EXPECT_DOUBLE_EQ(row["value"], hollin_gap().studied.flow->hoses.front().alone->flow);
  EXPECT_EQ(row["limit"]["clause"], "40 CFR 1090.1550(b)");
  EXPECT_TRUE(json["result"]["readings"].is_null());
  EXPECT_FALSE(json["cautions"].empty());
}

// What to do first stands above the name of the station, and so above every number.
TEST(SheetsReport, EmergencyMatterStandsAboveEveryNumber) {
  for (const handover::Sheet& sheet : hollin_gap().pack.sheets) {
    if (sheet.first.empty()) continue;
    const std::string html = sheet_page(sheet, hollin_gap().pack, hollin_gap().site);
    const std::size_t body = html.find("<body>");
    const std::size_t first = html.find("Stop the pump.", body);
    ASSERT_NE(first, std::string::npos);
    EXPECT_LT(first, html.find("<h1>", body));
    EXPECT_LT(first, html.find("<td", body));
  }
}

TEST(SheetsReport, PagesSayWhatIsNotKnown) {
  const std::string html = sheets_page(hollin_gap().pack, hollin_gap().site, {});
  for (const char* text : {"10.00\u00A0gpm", "not entered", "(text not seen)", "(not a rule the site names)",
                           "signature", "Cause and effect", "40 CFR 280.36(a)(1)(i)"}) {
    EXPECT_THAT(html, HasSubstr(text));
  }
}

TEST(SheetsReport, EveryPageListsWarnings) {
  handover::SheetPack pack = hollin_gap().pack;
  pack.warnings.push_back({Severity::warning, "no tank is called T9", {}, "write T1", {}});
  const SheetsFacts facts{"2026-11-30", "forecourse sheets", {{"hollin-gap.toml", ""}}};
  for (const handover::Sheet& sheet : pack.sheets) {
    EXPECT_THAT(sheet_page(sheet, pack, hollin_gap().site, facts), HasSubstr("no tank is called T9: write T1"));
  }
  const std::string whole = sheets_page(pack, hollin_gap().site, facts);
  for (const char* text : {"<h2>Warnings", "no tank is called T9: write T1", "hollin-gap.toml", "US customary"}) {
    EXPECT_THAT(whole, HasSubstr(text));
  }
}

// Each blank can be typed in its own unit and finds its row again.
TEST(SheetsReport, TheFileOfReadingsComesBack) {
  for (const char* name : handover::examples) {
    const Handed handed(test::site_text(name));
    std::string text;
    store::append_row(text, store::sheet_columns());
    std::size_t blanks = 0;
    for (std::vector<std::string> row : sheet_blanks(handed.pack, handed.site.display)) {
      row[5] = row[6] == "yes/no" ? "yes" : "1";
      row[8] = "2026-11-20";
      for (std::string& one : row) one = store::guarded(one);
      store::append_row(text, row);
      ++blanks;
    }
    const std::vector<SourceText> texts{{"readings.csv", text}};
    const auto typed = store::read_sheet_readings(texts);
    ASSERT_TRUE(typed.ok()) << to_text(typed.diagnostics, texts);
    const auto told = handover::hold_readings(handed.pack, typed.value, handover::the_day);
    EXPECT_TRUE(told.ok()) << name << "\n" << to_text(told.diagnostics, texts);
    EXPECT_EQ(told.value.readings.size(), blanks);
  }
}

TEST(SheetsReport, AFileOfReadingsWithFaultsIsToldWithItsPlaces) {
  const std::vector<SourceText> texts{
      {"readings.csv", "sheet,section,part,what,valu,day\ncommissioning,flow,D1,x,12,2026-11-20\n"}};
  const auto typed = store::read_sheet_readings(texts);
  const std::string told = to_text(typed.diagnostics, texts);
  EXPECT_THAT(told, HasSubstr("readings.csv:1:25: error: readings have no column 'valu'"));
  EXPECT_THAT(told, HasSubstr("did you mean 'value'?"));
  const std::vector<SourceText> days{
      {"readings.csv", "sheet,section,part,what,value,day\na,b,c,d,12,20.11.2026\na,b,c,d,,\n"}};
  EXPECT_THAT(to_text(store::read_sheet_readings(days).diagnostics, days),
              HasSubstr("readings.csv:2:12: error: '20.11.2026' is no day"));
}

}  // namespace
}  // namespace forecourse::report
