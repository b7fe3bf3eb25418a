// The station as forms need it: of every example, of half a file, after edits, and with names meant to break out.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "forecourse/server/answers/answers.h"
#include "forecourse/server/answers/web_types.h"
#include "support/stations.h"

namespace forecourse::server {
namespace {

using report::Json;
using test::site_text;

Json station_of(const std::string& text) { return station_json({text, 1, "a.toml", true, "move D1", ""}); }

const std::vector<std::string> sites{"hollin-gap", "marle-cross", "pell-ridge", "site-s", "thornby", "truck-lane"};

/// True if a value is of a type of TypeScript as `told_shapes` writes them.
bool is_of(const Json& value, std::string type);

bool is_of_shape(const Json& value, const TypeShape& shape) {
  std::size_t found = 0;
  for (const TypeMember& member : shape.members) {
    std::string name(member.name);
    const bool optional = name.ends_with('?');
    if (optional) name.pop_back();
    if (optional && !value.contains(name)) continue;
    const bool fits = value.contains(name) && is_of(value[name], std::string(member.type));
    EXPECT_TRUE(fits) << shape.name << "." << name;
    if (!fits) return false;
    ++found;
  }
  return value.size() == found;
}

bool is_of(const Json& value, std::string type) {
  for (std::size_t bar = type.find(" | "); bar != std::string::npos; bar = type.find(" | ")) {
    if (is_of(value, type.substr(0, bar))) return true;
    type = type.substr(bar + 3);
  }
  if (type.ends_with("[]")) {
    const std::string item = type.substr(0, type.size() - 2);
    return value.is_array() && std::all_of(value.begin(), value.end(), [&](const Json& v) { return is_of(v, item); });
  }
  if (type.starts_with("Record<string, ")) {
    const std::string item = type.substr(15, type.size() - 16);
    return value.is_object() && std::all_of(value.begin(), value.end(), [&](const Json& v) { return is_of(v, item); });
  }
  if (type == "string") return value.is_string();
  if (type == "number") return value.is_number();
  if (type == "boolean") return value.is_boolean();
  if (type == "null") return value.is_null();
  if (type == "Units") return value == "us" || value == "si";
  if (type.starts_with("\"")) return value.is_string() && "\"" + value.get<std::string>() + "\"" == type;
  for (const TypeShape& shape : told_shapes()) {
    if (shape.name == type) return value.is_object() && is_of_shape(value, shape);
  }
  ADD_FAILURE() << "no type " << type;
  return false;
}

TEST(WebTypes, AreThoseOfEveryExample) {
  for (const std::string& name : sites) EXPECT_TRUE(is_of(station_of(site_text(name)), "StationTold")) << name;
  EXPECT_TRUE(is_of(station_of("format = 1\n[[tank]]\nid = 3\nnew = 4\n"), "StationTold"));
}

TEST(StationJson, HasEveryPartAndWhatWasTyped) {
  const std::string text = site_text("hollin-gap");
  const Json station = station_of(text);
  EXPECT_EQ(station["text"], text);
  EXPECT_EQ(station["undo"], "move D1");
  EXPECT_EQ(station["redo"], nullptr);
  bool found = false;
  for (const Json& part : station["parts"]) {
    if (part["path"] != "dispenser.D1") continue;
    found = true;
    EXPECT_EQ(part["stop"], 8);
    EXPECT_NEAR(part["position"]["x_m"].get<double>(), 30.48, 1e-9);
    for (const Json& field : part["fields"]) {
      if (field["key"] == "elevation") {
        EXPECT_EQ(field["text"], "\"6 in\"");
      }
    }
  }
  EXPECT_TRUE(found);
}

/// A page finds what a field is where the field says.
TEST(StationJson, EveryFieldIsAKeyOfTheTablesAndEveryNameHasIds) {
  EXPECT_TRUE(is_of(tables_json(), "Record<string, TableKey[]>"));
  std::set<std::string> keys;
  const Json station = station_of(site_text("hollin-gap"));
  for (const auto& [name, table] : tables_json().items()) {
    for (const Json& key : table) {
      keys.insert(name + "/" + key["key"].get<std::string>());
      if (key.contains("names")) {
        EXPECT_TRUE(station["ids"].contains(key["names"].get<std::string>())) << key;
      }
    }
  }
  for (const Json& part : station["parts"]) {
    for (const Json& field : part["fields"]) {
      const std::string key = field["key"].get<std::string>();
      const std::string last = key.substr(key.rfind('.') + 1);  // npos + 1 is the beginning
      EXPECT_TRUE(keys.contains(field["in"].get<std::string>() + "/" + last)) << part["path"] << field;
    }
  }
  EXPECT_EQ(station["ids"]["tank"], Json({"T1", "T2", "T3"})) << station["ids"];
}

std::set<std::string> paths_in(const Json& station) {
  std::set<std::string> out;
  for (const Json& part : station["parts"]) out.insert(part["path"].get<std::string>());
  return out;
}

/// The last line that a part has a value on; 0: it has none.
int last_line(const Json& part) {
  int last = 0;
  for (const Json& field : part["fields"]) {
    if (field["line"].is_number()) last = std::max(last, field["line"].get<int>());
  }
  return last;
}

/// Parts that end before the last two tables which begin in a piece of a text.
void expect_early_parts(const Json& whole, const std::string& piece) {
  std::size_t header = piece.rfind("\n[");
  if (header != std::string::npos && header > 0) header = piece.rfind("\n[", header - 1);
  if (header == std::string::npos) return;
  const auto lines = std::count(piece.begin(), piece.begin() + static_cast<std::ptrdiff_t>(header), '\n');
  const std::set<std::string> there = paths_in(station_of(piece));
  for (const Json& part : whole["parts"]) {
    const int last = last_line(part);
    if (last == 0 || last > lines || !part["of"].is_null()) continue;
    EXPECT_TRUE(there.contains(part["path"].get<std::string>())) << part["path"] << " of " << piece.size() << " bytes";
  }
}

void cut_everywhere(const std::string& name, std::size_t step) {
  const std::string text = site_text(name);
  const Json whole = station_of(text);
  for (std::size_t size = 0; size < text.size(); size += step) expect_early_parts(whole, text.substr(0, size));
}

TEST(StationJson, OfHalfAFileHasThePartsThatCanBeRead) { cut_everywhere("site-s", 50); }

TEST(LongStationJson, OfHalfAFileHasThePartsThatCanBeRead) {
  for (const std::string& name : sites) cut_everywhere(name, 50);
}

TEST(StationJson, OfNoTextAndOfNoTomlIsStillAStation) {
  for (const char* text : {"", "\n", "[[", "= = =", "\xff\xfe\x00", "format = \"x\""}) {
    EXPECT_TRUE(is_of(station_of(text), "StationTold")) << text;
  }
}

TEST(Apply, KeepsComments) {
  const std::string text = "# kept\nformat = 1\n[site]\nname = \"A\"  # beside\n\n[[tank]] # of it\nid = \"T1\"\n";
  const Parsed<std::string> out = apply(text, {{"site.name", "B", false, ""},
                                               {"tank.T1.surface_elevation", "-3 ft", false, ""},
                                               {"", std::nullopt, false, "[[tank]]\nid = \"T2\" # new"}});
  ASSERT_TRUE(out.ok());
  for (const char* kept : {"# kept\n", "name = \"B\"  # beside", "[[tank]] # of it", "id = \"T2\" # new\n"}) {
    EXPECT_NE(out.value.find(kept), std::string::npos) << kept << out.value;
  }
  const Parsed<std::string> back = apply(out.value, {{"tank.T2", std::nullopt, true, ""},
                                                     {"tank.T1.surface_elevation", std::nullopt, true, ""},
                                                     {"site.name", "A", false, ""}});
  ASSERT_TRUE(back.ok());
  EXPECT_NE(back.value.find("name = \"A\"  # beside"), std::string::npos);
  EXPECT_EQ(back.value.find("T2"), std::string::npos);
}

TEST(Apply, OfARefusedEditChangesNothing) {
  const std::string text = site_text("site-s");
  const Parsed<std::string> out =
      apply(text, {{"site.name", "B", false, ""}, {"tank.NONE.product", "x", false, ""}, {"site.name", {}, false, ""}});
  EXPECT_FALSE(out.ok());
  EXPECT_EQ(out.value, text);
  EXPECT_EQ(out.diagnostics.size(), 2U);
}

// ---- names that are meant to break out of what they are written into

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// A tag that none of our drawings has, or a character that no XML may hold.
void expect_harmless(const std::string& svg, const std::string& name) {
  for (const char* bad : {"<script", "<b", "onload", "\x01", "\x1b"}) {
    if (std::string(bad) == "onload" && name.find("onload") != std::string::npos) continue;
    EXPECT_EQ(svg.find(bad), std::string::npos) << name;
  }
  EXPECT_EQ(svg.find("\" onload=\""), std::string::npos) << name;
}

TEST(Names, ThatAreMeantToBreakOutAreEscaped) {
  const std::vector<std::string> names{
      "<script>alert(1)</script>", "a\\\" onload=\\\"alert(1)", "'><b>&amp;",
      "\\u0001\\u001b[31m",        "\\u202eevil\\u2066",        std::string(3000, 'W')};
  const std::string text = site_text("hollin-gap");
  for (const std::string& name : names) {
    std::string hostile = replaced(text, "\"regular\"", "\"" + name + "\"");
    hostile = replaced(hostile, "name = \"Hollin Gap\"", "name = \"" + name + "\"");
    const Json station = station_of(hostile);
    EXPECT_TRUE(is_of(station, "StationTold"));
    EXPECT_EQ(Json::parse(station.dump(-1, ' ', false, Json::error_handler_t::replace)), station);
    for (const char* drawing : {"section", "plan", "grade-line", "budget", "ladder", "sumps"}) {
      const Json got = answer(hostile, name, {{"drawing", drawing}}, {});
      expect_harmless(got.value("svg", ""), name);
      EXPECT_TRUE(got.contains("svg") || got.contains("error"));
      EXPECT_NO_THROW(static_cast<void>(got.dump()));
    }
    const Json scene = answer(hostile, name, {{"drawing", "scene"}, {"kind", "struck"}, {"at", name}}, {});
    expect_harmless(scene.value("svg", ""), name);
  }
}

}  // namespace
}  // namespace forecourse::server
