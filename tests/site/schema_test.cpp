#include "forecourse/site/schema.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "forecourse/site/product_kinds.h"

namespace forecourse::site {
namespace {

using Json = nlohmann::json;

/// Every "$ref" below a node.
void collect_references(const Json& node, std::set<std::string>& references) {
  if (node.is_object() && node.contains("$ref")) references.insert(node["$ref"].get<std::string>());
  if (node.is_structured()) {
    for (const Json& child : node) collect_references(child, references);
  }
}

TEST(SiteSchema, IsTheSameEachTime) { EXPECT_EQ(site_schema(), site_schema()); }

TEST(SiteSchema, NamesItsDraft) {
  EXPECT_EQ(Json::parse(site_schema())["$schema"], "https://json-schema.org/draft/2020-12/schema");
}

TEST(SiteSchema, HasEveryTableItRefersTo) {
  const Json schema = Json::parse(site_schema());
  std::set<std::string> references;
  collect_references(schema, references);
  EXPECT_GT(references.size(), 40U);
  for (const std::string& reference : references) {
    ASSERT_EQ(reference.substr(0, 8), "#/$defs/");
    EXPECT_TRUE(schema["$defs"].contains(reference.substr(8))) << reference;
  }
  for (const auto& [name, unused] : schema["$defs"].items())
    EXPECT_TRUE(references.count("#/$defs/" + name) == 1) << name;
}

TEST(SiteSchema, TellsRequiredKeysAndWords) {
  const Json schema = Json::parse(site_schema());
  EXPECT_EQ(schema["required"], Json::array({"format"}));
  EXPECT_EQ(schema["$defs"]["line"]["required"], Json::array({"id", "from", "to"}));
  EXPECT_EQ(schema["$defs"]["product"]["properties"]["kind"]["enum"].size(), product_kinds.size());
  EXPECT_EQ(schema["$defs"]["line"]["additionalProperties"], false);
  EXPECT_EQ(schema["$defs"]["hose"]["properties"]["limiter"]["x-range"], "above zero");
}

TEST(SiteSchema, EveryKeyHasASentence) {
  const Json schema = Json::parse(site_schema());
  for (const auto& [name, table] : schema["$defs"].items()) {
    if (!table.contains("properties")) continue;
    EXPECT_FALSE(table["description"].get<std::string>().empty()) << name;
    for (const auto& [key, value] : table["properties"].items()) {
      const std::string doc = value["description"].get<std::string>();
      EXPECT_TRUE(!doc.empty() && (doc.back() == '.' || doc.back() == ']')) << name << "." << key << ": " << doc;
    }
  }
}

TEST(SiteReference, HasASectionForEveryTableOfTheSchema) {
  const std::string page = site_reference();
  const Json schema = Json::parse(site_schema());
  for (const auto& [name, table] : schema["$defs"].items()) {
    if (!table.contains("properties") || !table.contains("additionalProperties")) continue;
    std::string heading = "\n## " + name + "\n";
    std::replace(heading.begin(), heading.end(), '_', ' ');
    EXPECT_NE(page.find(heading), std::string::npos) << heading;
    for (const auto& [key, unused] : table["properties"].items()) {
      EXPECT_NE(page.find("| `" + key + "` |"), std::string::npos) << name << "." << key;
    }
  }
}

}  // namespace
}  // namespace forecourse::site
