#include "forecourse/store/store.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/store/export.h"
#include "forecourse/store/import.h"
#include "forecourse/store/read_records.h"
#include "forecourse/store/sqlite/migrations.h"

namespace forecourse::store {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
namespace fs = std::filesystem;

class StoreFile : public ::testing::Test {
 protected:
  void SetUp() override {
    const auto* info = ::testing::UnitTest::GetInstance()->current_test_info();
    folder_ = fs::temp_directory_path() / fmt::format("forecourse-store-{}-{}", info->name(), ::getpid());
    fs::remove_all(folder_);
    fs::create_directories(folder_);
    path_ = (folder_ / "station.db").string();
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::unique_ptr<Store> open(Opening opening = Opening::may_create) {
    auto opened = open_store(path_, opening);
    EXPECT_TRUE(opened.ok()) << report::to_text(opened.diagnostics, {});
    return std::move(opened.value);
  }

  Parsed<Import> take(Store& store, std::string_view kind, std::string csv, ImportOptions options = {}) {
    texts_ = {{std::string(kind) + ".csv", std::move(csv)}};
    options.at = "2026-11-25T08:00";
    const TextToImport what{0, find_kind(kind)};
    auto imported = import_texts(store, texts_, {&what, 1}, options);
    told_ = report::to_text(imported.diagnostics, texts_);
    return imported;
  }

  static std::size_t rows_of(Store& store, std::string_view kind) {
    for (const KindSummary& one : store.summary()) {
      if (one.kind->name == kind) return one.rows;
    }
    return 0;
  }

  fs::path folder_;
  std::string path_;
  std::vector<SourceText> texts_;
  std::string told_;
};

const std::string two_dips =
    "day,time,tank,depth [in],water,by\n2026-11-02,06:30,T1,71 1/4,1/2 in,stick\n2026-11-03,06:30,T1,70,,stick\n";

TEST_F(StoreFile, KeepsWhatWasTypedAndWhatItMeans) {
  auto store = open();
  const auto imported = take(*store, "dips", two_dips);
  ASSERT_TRUE(imported.value.stored) << told_;
  EXPECT_EQ(imported.value.texts[0].added, 2U);
  store = open(Opening::must_exist);
  std::vector<std::string> typed;
  std::vector<double> meters;
  store->each_row(*find_kind("dips"), [&](const Row& row) {
    typed.push_back(row.values[3].text);
    meters.push_back(row.values[3].number);
  });
  EXPECT_THAT(typed, ElementsAre("71 1/4 in", "70 in"));
  EXPECT_NEAR(meters[0], to_si(71.25, "in"), 1e-12);
  EXPECT_TRUE(store->faults().empty());
}

TEST_F(StoreFile, TheSameRowsAgainAddNothing) {
  auto store = open();
  ASSERT_TRUE(take(*store, "dips", two_dips).value.stored);
  const auto again = take(*store, "dips",
                          "tank,day,time,by,depth,water\nT1,2026-11-02,6:30,stick,5 ft 11.25 in,0.5 in\n"
                          "T1,2026-11-04,6:30,stick,69 in,\n");
  ASSERT_TRUE(again.value.stored) << told_;
  EXPECT_EQ(again.value.texts[0].there, 1U);  // in other units and another order
  EXPECT_EQ(again.value.texts[0].added, 1U);
  EXPECT_EQ(rows_of(*store, "dips"), 3U);
}

TEST_F(StoreFile, ARowThatContradictsIsARejectWithBothValues) {
  auto store = open();
  ASSERT_TRUE(take(*store, "dips", two_dips).value.stored);
  const std::string other =
      "day,time,tank,depth,by\n2026-11-04,06:30,T1,69 in,stick\n2026-11-03,06:30,T1,70 1/8 in,stick\n";
  auto refused = take(*store, "dips", other);
  EXPECT_FALSE(refused.value.stored);
  EXPECT_EQ(refused.value.texts[0].rejected, 1U);
  EXPECT_EQ(rows_of(*store, "dips"), 2U);  // nothing half-imported
  EXPECT_EQ(
      told_,
      "dips.csv:3:1: error: this dip contradicts one that is stored: depth is '70 1/8 in' here and '70 in' there\n"
      "  2026-11-03,06:30,T1,70 1/8 in,stick\n"
      "  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"
      "  hint: that one came from dips.csv, line 3; if both are right, enter their times\n"
      "1 error\n");
  ImportOptions without;
  without.without_rejects = true;
  EXPECT_TRUE(take(*store, "dips", other, without).value.stored);
  EXPECT_EQ(rows_of(*store, "dips"), 3U);
}

TEST_F(StoreFile, ADryRunTriesEverythingAndKeepsNothing) {
  auto store = open();
  ImportOptions dry;
  dry.dry_run = true;
  const auto tried = take(*store, "dips", two_dips, dry);
  EXPECT_FALSE(tried.value.stored);
  EXPECT_EQ(tried.value.texts[0].added, 2U);
  EXPECT_EQ(rows_of(*store, "dips"), 0U);
}

TEST_F(StoreFile, AnUnreadableFileKeepsNothingOfTheOthers) {
  auto store = open();
  texts_ = {{"dips.csv", two_dips}, {"sales.csv", "day,hose,liters\n"}};
  const std::array<TextToImport, 2> what{{{0, find_kind("dips")}, {1, find_kind("sales")}}};
  ImportOptions without;
  without.without_rejects = true;
  EXPECT_FALSE(import_texts(*store, texts_, what, without).value.stored);
  EXPECT_EQ(rows_of(*store, "dips"), 0U);
}

/// A row of every kind, with a text that a spreadsheet would take for a formula.
const std::vector<std::pair<const char*, const char*>> everything{
    {"dips", "day,tank,depth,temperature,by\n2026-11-02,T1,71 1/4 in,-3 degF,gauge\n"},
    {"deliveries",
     "day,time,tank,gross,net,temperature,density,ticket\n"
     "2026-11-02,11:30,T1,8000 gal,7980 gal,64 degF,60 degAPI,'=1+1\n"},
    {"sales", "day,hose,volume,totalizer\n2026-11-02,D1.a,312.5 gal,100312.5 gal\n"},
    {"returns", "day,tank,volume,note\n2026-11-02,T1,15 gal,\"meter test, \"\"three\"\" draws\"\n"},
    {"provings",
     "day,hose,draw,state,indicated,measure,scale,measure_temperature,expansion,flow\n"
     "2026-11-02,D1.a,1,as-found,5 gal,5 gal,-7 in3,58 degF,0.0000265 1/degF,10 gpm\n"},
    {"tests", "day,kind,part,passed,flow\n2026-11-02,line-tightness,L1,yes,0.02 gph\n"},
    {"inspections", "day,kind,by,part,what,in_order\n2026-11-02,30-day,R. Tay,D1,water,no\n"},
    {"incidents", "day,time,kind,part,released,step_what\n2026-11-02,14:02,struck,D1,3 gal,'-struck\n"}};

TEST_F(StoreFile, AnImportOfAnExportGivesTheSameStore) {
  auto store = open();
  for (const auto& [kind, csv] : everything) ASSERT_TRUE(take(*store, kind, csv).value.stored) << told_;
  const auto exported = export_records(*store);
  ASSERT_EQ(exported.size(), everything.size());
  path_ = (folder_ / "second.db").string();
  auto second = open();
  for (const SourceText& text : exported) {
    ASSERT_TRUE(take(*second, fs::path(text.name).stem().string(), text.text).value.stored) << told_;
  }
  const auto again = export_records(*second);
  ASSERT_EQ(again.size(), exported.size());
  for (std::size_t i = 0; i < again.size(); ++i) EXPECT_EQ(again[i].text, exported[i].text);
  EXPECT_THAT(exported[1].text, HasSubstr(",'=1+1\n"));
  std::string ticket;
  store->each_row(*find_kind("deliveries"), [&](const Row& row) { ticket = row.values.back().text; });
  EXPECT_EQ(ticket, "=1+1");
}

TEST_F(StoreFile, RecordsAreReadFromAStore) {
  auto store = open();
  for (const auto& [kind, csv] : everything) ASSERT_TRUE(take(*store, kind, csv).value.stored) << told_;
  std::vector<SourceText> texts;
  const auto read = read_records(path_, texts);
  ASSERT_TRUE(read.ok()) << report::to_text(read.diagnostics, texts);
  EXPECT_EQ(read.value.dips.size(), 1U);
  EXPECT_EQ(read.value.incidents.size(), 1U);
  EXPECT_EQ(read.value.incidents[0].steps[0].what.text, "-struck");
  EXPECT_EQ(texts.at(read.value.dips[0].tank.where.text).name, path_ + ": dips.csv");
}

TEST_F(StoreFile, ResultsAreKeptByAKeyOfAllTheyFollowFrom) {
  auto store = open();
  const std::string key = result_key("0.1.0", "site", "options");
  EXPECT_FALSE(store->result(key));
  store->keep_result(key, "ledger", "{\"a\":1}");
  store->keep_result(result_key("0.1.0", "site", "other"), "meter", "{}");
  EXPECT_EQ(open()->result(key), "{\"a\":1}");
  store->drop_results("meter");
  EXPECT_TRUE(store->result(key));
  store->drop_results();
  EXPECT_FALSE(store->result(key));
  EXPECT_NE(result_key("1", "ab", "c"), result_key("1", "a", "bc"));
  EXPECT_EQ(key.size(), 32U);
}

TEST_F(StoreFile, ABackupIsWholeAndOverwritesNothing) {
  auto store = open();
  ASSERT_TRUE(take(*store, "dips", two_dips).value.stored);
  const std::string copy = (folder_ / "copy.db").string();
  store->back_up(copy);
  EXPECT_THROW(store->back_up(copy), StoreFailure);
  EXPECT_THROW(store->back_up((folder_ / "nowhere" / "copy.db").string()), StoreFailure);
  path_ = copy;
  EXPECT_EQ(rows_of(*open(Opening::must_exist), "dips"), 2U);
}

TEST_F(StoreFile, WhatIsNoStoreIsLeftAsItIs) {
  EXPECT_FALSE(open_store(path_, Opening::must_exist).ok());
  EXPECT_FALSE(fs::exists(path_));
  std::ofstream(path_) << "day,tank\n";
  EXPECT_THAT(open_store(path_, Opening::may_create).diagnostics.at(0).message, HasSubstr("it is no store"));
  fs::remove(path_);
  { SQLite::Database(path_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec("CREATE TABLE a (b)"); }
  EXPECT_THAT(open_store(path_, Opening::may_create).diagnostics.at(0).message, HasSubstr("another program"));
  fs::remove(path_);
  open();
  { SQLite::Database(path_, SQLite::OPEN_READWRITE).exec("PRAGMA user_version = 99"); }
  EXPECT_THAT(open_store(path_, Opening::may_create).diagnostics.at(0).message, HasSubstr("later version"));
}

TEST_F(StoreFile, AFileOfVersion1IsBroughtToThePresent) {
  {
    // What version 1 wrote, as a dump of it.
    std::ifstream file(std::string(TEST_DATA_DIR) + "/store/version_1.sql");
    const std::string dump(std::istreambuf_iterator<char>(file), {});
    ASSERT_FALSE(dump.empty());
    SQLite::Database(path_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec(dump);
  }
  auto store = open(Opening::must_exist);
  EXPECT_EQ(rows_of(*store, "dips"), 2U);
  store->keep_result("k", "ledger", "{}");  // what version 2 added
  EXPECT_EQ(store->result("k"), "{}");
  ASSERT_TRUE(take(*store, "dips", two_dips).value.stored) << told_;
  EXPECT_EQ(rows_of(*store, "dips"), 2U);  // they were there
  SQLite::Database raw(path_, SQLite::OPEN_READONLY);
  EXPECT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), static_cast<int>(migrations().size()));
}

// Tests of meters of version 1 become draws; one without volumes becomes something that was looked at; others stay.
TEST_F(StoreFile, TestsOfMetersBecomeDraws) {
  {
    std::ifstream file(std::string(TEST_DATA_DIR) + "/store/version_1.sql");
    const std::string dump(std::istreambuf_iterator<char>(file), {});
    SQLite::Database old(path_, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    old.exec(dump);
    old.exec(
        "INSERT INTO tests (import, line, day, time, kind, part, passed, pressure, flow, flow_si, volume, volume_si, "
        "expected, expected_si, duration, duration_si, temperature, temperature_si, by, note) VALUES "
        "(1, 2, '2026-10-14', '10:20', 'meter', 'D1.a', 'yes', '', '10 gpm', 6.309e-4, '5.01 gal', 0.018964913, "
        "'5 gal', 0.018927059, '30 s', 30, '60 degF', 288.7, 'R. Tay', 'first'), "
        "(1, 3, '2026-10-14', '10:30', 'meter', 'D1.b', 'no', '', '', NULL, '', NULL, '', NULL, '', NULL, '', NULL, "
        "'R. Tay', ''), "
        "(1, 4, '2026-10-14', '10:40', 'flow', 'D1.b', 'yes', '', '', NULL, '', NULL, '', NULL, '', NULL, '', NULL, "
        "'', '')");
  }
  auto store = open(Opening::must_exist);
  EXPECT_EQ(rows_of(*store, "provings"), 1U);
  EXPECT_EQ(rows_of(*store, "tests"), 1U);
  EXPECT_EQ(rows_of(*store, "inspections"), 1U);
  EXPECT_TRUE(store->faults().empty());
  std::vector<SourceText> texts;
  const auto records = read_records(path_, texts);
  ASSERT_TRUE(records.ok()) << report::to_text(records.diagnostics, texts);
  const site::records::Proving& draw = records.value.provings.at(0);
  EXPECT_EQ(draw.hose.text, "D1.a");
  EXPECT_NEAR(draw.indicated->si(), to_si(5.01, "gal"), 1e-9);
  EXPECT_NEAR(draw.measured->si(), to_si(5.0, "gal"), 1e-9);
  EXPECT_EQ(draw.note.text, "first; passed: yes; fuel at 60 degF; took 30 s");
  EXPECT_EQ(records.value.inspections.at(0).items.at(0).in_order, false);
}

// A column that is new in columns.h wants a migration.
TEST_F(StoreFile, TheTablesHoldTheColumnsOfTheKinds) {
  open();
  SQLite::Database raw(path_, SQLite::OPEN_READONLY);
  for (const Kind& kind : kinds()) {
    std::vector<std::string> wanted{"id", "import", "line"};
    for (const Column& column : kind.columns) {
      wanted.emplace_back(column.name);
      if (column.type == ColumnType::quantity) wanted.push_back(std::string(column.name) + "_si");
    }
    std::vector<std::string> there;
    SQLite::Statement info(raw, fmt::format("PRAGMA table_info({})", kind.name));
    while (info.executeStep()) there.push_back(info.getColumn(1).getString());
    EXPECT_EQ(there, wanted) << "write a migration for " << kind.name;
  }
}

TEST_F(StoreFile, TheTablesRefuseWhatIsNoRecord) {
  open();
  SQLite::Database raw(path_, SQLite::OPEN_READWRITE);
  raw.exec("PRAGMA foreign_keys = ON");
  raw.exec("INSERT INTO imports (source, at) VALUES ('a', 'b')");
  const auto insert = [&](const char* values) {
    raw.exec(fmt::format("INSERT INTO returns (import, line, day, time, tank, volume, volume_si, note) VALUES ({})",
                         values));
  };
  insert("1, 2, '2026-11-02', '', 'T1', '5 gal', 0.0189, ''");
  EXPECT_THROW(insert("1, 2, '2026-11-02', '', 'T1', '6 gal', 0.0227, ''"), SQLite::Exception);  // the key is there
  EXPECT_THROW(insert("9, 2, '2026-11-03', '', 'T1', '5 gal', 0.0189, ''"), SQLite::Exception);  // no such import
  EXPECT_THROW(insert("1, 2, '11/03/2026', '', 'T1', '5 gal', 0.0189, ''"), SQLite::Exception);
  EXPECT_THROW(insert("1, 2, '2026-11-03', '', '', '5 gal', 0.0189, ''"), SQLite::Exception);
  EXPECT_THROW(insert("1, 2, '2026-11-03', '', 'T1', '5 gal', NULL, ''"), SQLite::Exception);
  EXPECT_THROW(insert("1, 2, '2026-11-03', '', 'T1', '-5 gal', -0.0189, ''"), SQLite::Exception);
  EXPECT_THROW(insert("1, 2, '2026-11-03', '', 'T1', '5 gal', 'five', ''"), SQLite::Exception);  // STRICT
}

TEST_F(StoreFile, TakesBackTheLastImportOfASourceAndNoOther) {
  auto store = open();
  ASSERT_TRUE(take(*store, "dips", "day,tank,depth\n2026-11-01,T1,40 in\n").value.stored);
  ASSERT_TRUE(take(*store, "sales", "day,tank,volume\n2026-11-02,T1,900 gal\n").value.stored);
  ASSERT_TRUE(take(*store, "dips", "day,tank,depth\n2026-11-02,T1,31 in\n2026-11-03,T1,22 in\n").value.stored);
  EXPECT_THAT(store->take_back("dips.csv"), ElementsAre("dip of 2026-11-02", "dip of 2026-11-03"));
  EXPECT_THAT(store->take_back("dips.csv"), ElementsAre("dip of 2026-11-01"));
  EXPECT_TRUE(store->take_back("dips.csv").empty());
  store.reset();
  std::vector<std::size_t> rows;
  for (const KindSummary& one : open(Opening::must_exist)->summary()) rows.push_back(one.rows);
  EXPECT_THAT(rows, ElementsAre(0U, 0U, 1U, 0U, 0U, 0U, 0U, 0U)) << "the sale stays";
}

}  // namespace
}  // namespace forecourse::store
