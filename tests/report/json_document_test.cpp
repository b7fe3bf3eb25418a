#include "forecourse/report/json_document.h"

#include <gtest/gtest.h>

#include <cmath>

namespace forecourse::report {
namespace {

std::vector<std::string> keys(const Json& json) {
  std::vector<std::string> out;
  for (const auto& [key, value] : json.items()) out.push_back(key);
  return out;
}

TEST(JsonDocument, HasTheKeysOfTheContractInTheirOrder) {
  EXPECT_EQ(keys(document({})), (std::vector<std::string>{"study", "version", "cautions", "options", "defaults",
                                                          "result", "findings", "warnings"}));
}

TEST(JsonDocument, EmptyPartsKeepTheirKind) {
  const Json json = document({});
  EXPECT_TRUE(json["options"].is_object());
  EXPECT_TRUE(json["result"].is_object());
  for (const char* key : {"cautions", "defaults", "findings", "warnings"}) EXPECT_TRUE(json[key].is_array()) << key;
}

TEST(JsonDocument, WarningsCarryTheirPlace) {
  JsonDocument in;
  in.warnings.push_back({Severity::warning,
                         "too long",
                         SourceSpan{0, 5, 6},
                         "check it",
                         {{Severity::note, "first here", SourceSpan{0, 0, 1}, "", {}}}});
  in.warnings.push_back({Severity::error, "no file", std::nullopt, "", {}});
  const Json out = document(in, {{"a.toml", "one\n\u00E9two\n"}})["warnings"];
  EXPECT_EQ(out[0]["severity"], "warning");
  EXPECT_EQ(out[0]["file"], "a.toml");
  EXPECT_EQ(out[0]["line"], 2);
  EXPECT_EQ(out[0]["hint"], "check it");
  EXPECT_EQ(out[0]["related"][0]["line"], 1);
  EXPECT_TRUE(out[1]["file"].is_null());
  EXPECT_TRUE(out[1]["line"].is_null());
}

TEST(JsonDocument, SpansOutsideTheTextsHaveNoPlace) {
  JsonDocument in;
  in.warnings.push_back({Severity::warning, "too long", SourceSpan{3, 5, 6}, "", {}});
  EXPECT_TRUE(document(in)["warnings"][0]["column"].is_null());
}

TEST(JsonDocument, DefaultsCarryValueUnitStatusAndSource) {
  JsonDocument in;
  in.defaults = {{"roughness of trunk", 1.5e-6, "m", DefaultStatus::published, "a table", "regular"},
                 {"K of tee", std::nan(""), "", DefaultStatus::illustrative, "", ""}};
  const Json out = document(in)["defaults"];
  EXPECT_EQ(out[0].dump(),
            R"({"what":"roughness of trunk","value":1.5e-06,"unit":"m","status":"published","source":"a table"})");
  EXPECT_TRUE(out[1]["value"].is_null());
  EXPECT_EQ(out[1]["unit"], "1");
}

TEST(JsonDocument, BytesThatAreNoTextDoNotStopTheWriter) {
  JsonDocument in;
  in.cautions = {"a\xFF"};
  EXPECT_NE(to_text(document(in)).find("a\uFFFD"), std::string::npos);
}

TEST(JsonDocument, WhatIsNotThereIsNull) {
  EXPECT_EQ(text_or_null(""), nullptr);
  EXPECT_EQ(text_or_null("a"), "a");
  EXPECT_EQ(count_or_null(std::nullopt), nullptr);
  EXPECT_EQ(count_or_null(3), 3);
  EXPECT_EQ(array_of(std::vector<int>{1, 2}, [](int i) { return Json(2 * i); }), Json({2, 4}));
  EXPECT_EQ(array_of(std::vector<int>{}, [](int i) { return Json(i); }), Json::array());
}

}  // namespace
}  // namespace forecourse::report
