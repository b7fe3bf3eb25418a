// Records of the station in the workbench: the ledger as the command gives it, rows that are entered, files that
// change.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "forecourse/store/import.h"
#include "forecourse/store/read_records.h"
#include "server/http/running.h"

namespace forecourse::server {
namespace {

using nlohmann::json;
namespace fs = std::filesystem;

const char* const site_text =
    "format = 1\n[site]\nname = \"Ledger\"\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e10\"\ndensity = \"740 "
    "kg/m3\"\n[[tank]]\nid = \"T1\"\nproduct = \"regular\"\nshape = { kind = \"rectangular\", length = \"231 in\", "
    "width = \"100 in\", height = \"100 in\" }\n";  // 100 gal for each inch

/// A workbench on a tank of its own, with three dips and two days of sales beside it.
class RecordsTest : public Running {
 protected:
  void SetUp() override {
    folder = scratch_folder(std::string("records-") + testing::UnitTest::GetInstance()->current_test_info()->name());
    site = (fs::path(folder) / "yard.toml").string();
    write_outside(site, site_text);
  }

  void write_files(const std::string& dips =
                       "day,time,tank,depth\n2026-11-01,23:00,T1,50 in\n2026-11-02,23:00,T1,40 "
                       "in\n2026-11-03,23:00,T1,29 in\n") {
    fs::create_directories(fs::path(folder) / "records");
    write_outside((fs::path(folder) / "records/dips.csv").string(), dips);
    write_outside((fs::path(folder) / "records/sales.csv").string(),
                  "day,tank,volume\n2026-11-02,T1,990 gal\n2026-11-03,T1,1105 gal\n");
  }
  void make_store() {
    write_files();
    auto store = store::open_store(store_path(), store::Opening::may_create);
    ASSERT_TRUE(store.ok());
    const std::vector<SourceText> texts{{"dips.csv", file_text((fs::path(folder) / "records/dips.csv").string())},
                                        {"sales.csv", file_text((fs::path(folder) / "records/sales.csv").string())}};
    const std::vector<store::TextToImport> what{{0, store::find_kind("dips")}, {1, store::find_kind("sales")}};
    store::ImportOptions options;
    options.at = "2026-11-25";
    ASSERT_TRUE(store::import_texts(*store.value, texts, what, options).value.stored);
    fs::remove_all(fs::path(folder) / "records");
  }
  [[nodiscard]] std::string store_path() const { return (fs::path(folder) / "yard.db").string(); }

  [[nodiscard]] json ledger(const json& more = json::object()) const {
    json want{{"study", "ledger"}};
    want.update(more);
    const Response response = send("/api/ask", {{"wants", {want}}});
    return json::parse(response.body)["answers"][0];
  }
  [[nodiscard]] std::size_t rows() const { return ledger()["document"]["result"]["books"][0]["rows"].size(); }
};

TEST_F(RecordsTest, WithoutRecordsTheLedgerSaysHowToGiveSome) {
  start();
  const json answer = ledger();
  EXPECT_TRUE(answer["records"].is_null());
  EXPECT_NE(answer["hint"].get<std::string>().find("--records"), std::string::npos);
}

TEST_F(RecordsTest, TheFolderBesideTheSiteIsReadAndReadAgainWhenItChanges) {
  write_files();
  start();
  const json answer = ledger();
  EXPECT_EQ(answer["records"]["store"], false);
  EXPECT_EQ(answer["books"], json::parse(R"([{"name": "T1", "product": "regular"}])"));
  const json& book = answer["document"]["result"]["books"][0];
  EXPECT_NEAR(book["rows"][0]["over_short_m3"].get<double>(), -10 * 0.003785411784, 1e-9);
  EXPECT_EQ(book["months"][0]["state"], "not determined");
  EXPECT_FALSE(book["answer"].empty());
  EXPECT_EQ(book["next"]["day"], "2026-11-04");
  write_files("day,time,tank,depth\n2026-11-01,23:00,T1,50 in\n2026-11-02,23:00,T1,40 in\n");
  EXPECT_EQ(rows(), 1U);
}

TEST_F(RecordsTest, WhatIsWrongWithTheRecordsIsToldWithFileAndLine) {
  write_files(
      "day,time,tank,depth\n2026-11-01,23:00,T1,50 in\n2026-11-02,23:00,T9,40 in\n2026-11-03,23:00,T1,40 psi\n");
  start();
  const json answer = ledger();
  ASSERT_EQ(answer["wrong"].size(), 2U) << answer.dump(1);
  EXPECT_EQ(answer["wrong"][0]["file"], "dips.csv");
  EXPECT_EQ(answer["wrong"][0]["line"], 3);
  EXPECT_EQ(answer["wrong"][1]["line"], 4);
}

TEST_F(RecordsTest, FilesAreNotWritten) {
  write_files();
  start();
  const Response response =
      send("/api/records", {{"kind", "dips"}, {"values", {{"day", "2026-11-04"}, {"tank", "T1"}, {"depth", "20 in"}}}});
  EXPECT_EQ(response.status, 403) << response.body;
  EXPECT_EQ(send("/api/records/take-back", json::object()).status, 403);
  EXPECT_EQ(rows(), 2U);
}

TEST_F(RecordsTest, ARowThatIsAcknowledgedIsInTheStoreAndCanBeTakenBack) {
  make_store();
  start();
  ASSERT_EQ(rows(), 2U);
  const json dip{{"kind", "dips"},
                 {"values", {{"day", "2026-11-04"}, {"time", "23:00"}, {"tank", "T1"}, {"depth", "20 1/8 in"}}}};
  EXPECT_EQ(send("/api/records", dip).status, 200);
  std::vector<SourceText> texts;
  EXPECT_EQ(store::read_records(store_path(), texts).value.dips.size(), 4U) << "another reader sees it";
  EXPECT_EQ(rows(), 3U);
  const Response taken = send("/api/records/take-back", json::object());
  EXPECT_EQ(taken.status, 200);
  EXPECT_EQ(json::parse(taken.body)["taken"], "dip of 2026-11-04");
  EXPECT_EQ(rows(), 2U);
  EXPECT_EQ(send("/api/records/take-back", json::object()).status, 422) << "what was imported stays";
}

TEST_F(RecordsTest, SeveralRowsAreOneStep) {
  make_store();
  start();
  const auto tested = [](const char* part, const char* day) {
    return json{{"day", day}, {"kind", "spill-container"}, {"part", part}, {"passed", "yes"}};
  };
  const json two{{"kind", "tests"}, {"rows", {tested("F1", "2026-11-04"), tested("F2", "2026-11-04")}}};
  EXPECT_EQ(send("/api/records", two).status, 200);
  const auto stored = [&] {
    std::vector<SourceText> texts;
    return store::read_records(store_path(), texts).value.tests.size();
  };
  EXPECT_EQ(stored(), 2U);
  const json half{{"kind", "tests"}, {"rows", {tested("F3", "2026-11-04"), tested("F4", "2026-13-04")}}};
  EXPECT_EQ(send("/api/records", half).status, 422);
  EXPECT_EQ(stored(), 2U) << "all or none";
  EXPECT_EQ(send("/api/records/take-back", json::object()).status, 200);
  EXPECT_EQ(stored(), 0U);
  EXPECT_EQ(send("/api/records", {{"kind", "tests"}, {"rows", json::array()}}).status, 400);
}

TEST_F(RecordsTest, ARecordedTestMovesItsDay) {
  make_store();
  write_outside(site, file_text(std::string(SITES_DIR) + "/hollin-gap.toml"));  // whose first tank is T1 too
  start();
  const auto detector = [&] {
    const json want{{"study", "calendar"}, {"on", "2026-11-30"}};
    const json got = json::parse(send("/api/ask", {{"wants", {want}}}).body)["answers"][0];
    EXPECT_EQ(got["records"]["store"], true);
    for (const json& duty : got["document"]["result"]["duties"]) {
      if (duty["id"] == "line-test/leak-detector-yearly/P1") return duty;
    }
    return json();
  };
  const json before = detector();
  ASSERT_EQ(before["state"], "no record") << before.dump(1);
  EXPECT_EQ(before["path"].get<std::string>().rfind("pump.P1.leak_detector", 0), 0U) << before["path"];
  const json proof = before["proof"];
  const json row{{"day", "2026-11-28"}, {"kind", proof["kind"]}, {"part", proof["part"]}, {"passed", "yes"}};
  ASSERT_EQ(send("/api/records", {{"kind", proof["records"]}, {"rows", {row}}}).status, 200);
  const json after = detector();
  EXPECT_EQ(after["due"], "2027-11-28");
  EXPECT_EQ(after["path"], before["path"]);
  ASSERT_EQ(send("/api/records/take-back", json::object()).status, 200);
  EXPECT_EQ(detector()["state"], "no record");
}

TEST_F(RecordsTest, ABadRowChangesNothingAndSaysWhy) {
  make_store();
  start();
  const auto refused = [&](const json& values) {
    const Response response = send("/api/records", {{"kind", "dips"}, {"values", values}});
    EXPECT_EQ(response.status, 422) << response.body;
    return json::parse(response.body)["error"].get<std::string>();
  };
  EXPECT_NE(refused({{"day", "2026-11-04"}, {"tank", "T1"}, {"depth", "20 psi"}}), "");
  EXPECT_NE(refused({{"day", "2026-11-04"}, {"tank", "T9"}, {"depth", "20 in"}}).find("T9"), std::string::npos);
  EXPECT_NE(refused({{"day", "2026-11-03"}, {"time", "23:00"}, {"tank", "T1"}, {"depth", "20 in"}}).find("contradicts"),
            std::string::npos);
  EXPECT_EQ(rows(), 2U);
  const std::string without_key = post(port(), "/api/records", "", json{{"kind", "dips"}}.dump());
  EXPECT_EQ(answer_to(port(), without_key).status, 401);
}

TEST_F(RecordsTest, GiveTheChecksTheirFindings) {
  make_store();
  write_outside(site, file_text(std::string(SITES_DIR) + "/hollin-gap.toml"));  // whose first tank is T1 too
  start();
  const auto of_ledger = [&] {
    const Response response = send("/api/ask", {{"wants", {{{"study", "findings"}}}}});
    EXPECT_EQ(response.status, 200) << response.body.substr(0, 400);
    std::size_t count = 0;
    EXPECT_TRUE(json::parse(response.body)["answers"][0].contains("document")) << response.body.substr(0, 400);
    const json got = json::parse(response.body);
    for (const json& one : got["answers"][0]["document"]["findings"]) {
      count += one["study"] == "ledger" ? 1U : 0U;
    }
    return count;
  };
  EXPECT_GT(of_ledger(), 0U);
  fs::remove(store_path());
  EXPECT_EQ(of_ledger(), 0U);
}

}  // namespace
}  // namespace forecourse::server
