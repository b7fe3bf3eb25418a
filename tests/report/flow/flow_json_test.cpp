#include "forecourse/report/flow/flow_json.h"

#include <gtest/gtest.h>

#include "report/flow_sample.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

std::vector<SourceText> texts() { return {{"sites/site-s.toml", sample_text()}}; }

/// Every number's key must tell its unit, or be one of those that have none.
void expect_units_in_keys(const Json& json, const std::string& key) {
  if (json.is_array() || json.is_object()) {
    for (const auto& [name, value] : json.items()) expect_units_in_keys(value, json.is_array() ? key : name);
    return;
  }
  if (!json.is_number_float()) return;
  for (const char* unit : {"_m3_per_s", "_pa", "_pa_s", "_m_per_s", "_m", "_k", "_kg_per_m3"}) {
    if (key.ends_with(unit)) return;
  }
  if (key.ends_with("_share")) return;
  EXPECT_EQ(key, "share") << "a number without a unit in its key";
}

TEST(FlowJson, HasUnitsInItsKeys) {
  expect_units_in_keys(result_json(sample_result()), "result");
  expect_units_in_keys(options_json(sample_result().options), "options");
}

TEST(FlowJson, HoldsTheWholeResult) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  result.states.resize(1);
  auto& hoses = result.states[0].systems[0].hoses;
  hoses.erase(hoses.begin() + 1, hoses.end());
  EXPECT_TRUE(matches_snapshot(to_text(flow_document(result, texts())), "flow.json"));
}

TEST(FlowJson, WhatIsNotDeterminedIsNull) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  const Json json = flow_document(result, texts());
  const Json& diesel = json["result"]["states"][0]["systems"][1];
  EXPECT_EQ(diesel["status"], "not determined");
  EXPECT_TRUE(diesel["total_flow_m3_per_s"].is_null());
  EXPECT_TRUE(json["result"]["systems"][1]["density_kg_per_m3"].is_null());
  EXPECT_TRUE(json["result"]["hoses"][6]["alone_flow_m3_per_s"].is_null());
  EXPECT_TRUE(json["result"]["states"][0]["systems"][0]["places"][4]["pressure_gauge_pa"].is_null());
}

TEST(FlowJson, CanBeReadBack) {
  studies::FlowResult result = sample_result();
  result.systems[0].id = "a\"\n\xFF</script>";
  const Json json = Json::parse(to_text(flow_document(result, texts())));
  EXPECT_EQ(json["study"], "flow");
  EXPECT_EQ(json["warnings"][0]["line"], 10);
  EXPECT_EQ(json["warnings"][0]["column"], 10);
  EXPECT_DOUBLE_EQ(json["result"]["hoses"][0]["alone_flow_m3_per_s"].get<double>(), result.hoses[0].alone->flow);
}

}  // namespace
}  // namespace forecourse::report
