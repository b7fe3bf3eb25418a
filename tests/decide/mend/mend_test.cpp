// What would mend a finding: the value found mends it, and a step less does not; the effect on the others is that of a
// second full check; what is mended by no edit says why.
#include "forecourse/decide/mend/mend.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <sstream>

#include "decide/mend/check_text.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/decide/mend/lever_rows.h"
#include "forecourse/decide/mend/taken_place.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "forecourse/site/schema.h"

namespace forecourse::decide {
namespace {

using checks::CheckResult;
using checks::Finding;
using checks::FindingState;
using Json = nlohmann::json;

constexpr site::Date today{2026, 11, 30, {}};

std::string site_text(const std::string& name) {
  const std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml");
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

std::string with(const std::string& text, const std::string& path, const std::string& value) {
  const Parsed<std::string> changed = site::set_value(text, path, value);
  for (const Diagnostic& d : changed.diagnostics) ADD_FAILURE() << path << ": " << d.message << " " << d.hint;
  return changed.value;
}

MendStation station(const std::string& text) { return {text, today}; }

Mend mend_of(const std::string& text, const std::string& rule, const std::string& subject) {
  const std::vector<Mend> all = mend_station(station(text), {rule, subject}).mends;
  if (all.empty()) {
    ADD_FAILURE() << rule << " does not fall short at " << subject;
    return {};
  }
  return all.front();
}

const Finding* find(const CheckResult& result, const Mend& mend) {
  int number = 0;
  for (const checks::FindingSet& set : result.sets) {
    if (set.id != mend.of.set || set.of_study != mend.of.of_study) continue;
    for (const Finding& one : set.findings) {
      if (one.rule == mend.of.rule && one.subject == mend.of.subject && number++ == mend.of.number) return &one;
    }
  }
  return nullptr;
}

/// A full check by the studies that a command makes of it, apart from those that a mend is found with.
CheckResult full_check(const std::string& text) {
  const Parsed<site::Site> read = site::read_site(text);
  EXPECT_TRUE(read.ok());
  const checks::Studied studied = checks::study_for_checks(read.value, nullptr);
  return checks::check_station(checks::facts_of(read.value, studied, today, nullptr), studied);
}

/// A station broken on purpose, what mends it, and a step less.
struct Broken {
  std::string site;
  std::vector<std::pair<std::string, std::string>> values;  ///< set in its file
  std::string rule;
  std::string subject;
  std::string path;
  std::string after;
  std::string less;
};

void PrintTo(const Broken& one, std::ostream* out) { *out << one.site << " " << one.rule; }

std::string text_of(const Broken& one) {
  std::string out = site_text(one.site);
  for (const auto& [path, value] : one.values) out = with(out, path, value);
  return out;
}

std::string name_of(const testing::TestParamInfo<Broken>& info) {
  std::string name = info.param.site + "_" + info.param.rule;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
}

class BrokenStation : public testing::TestWithParam<Broken> {};

TEST_P(BrokenStation, IsMendedByTheValueFoundAndNotByAStepLess) {
  const Broken& one = GetParam();
  const std::string text = text_of(one);
  const Mend mend = mend_of(text, one.rule, one.subject);
  ASSERT_EQ(mend.edits.size(), 1U) << mend.reason;
  EXPECT_EQ(mend.edits.front().path, one.path);
  EXPECT_EQ(mend.edits.front().after, one.after);
  EXPECT_EQ(mend.after, FindingState::meets);

  const CheckResult mended = full_check(with(text, one.path, one.after));
  const Finding* then = find(mended, mend);
  ASSERT_NE(then, nullptr);
  EXPECT_EQ(then->state, FindingState::meets);
  if (one.less.empty()) return;
  const CheckResult short_of = full_check(with(text, one.path, one.less));
  const Finding* almost = find(short_of, mend);
  ASSERT_NE(almost, nullptr);
  EXPECT_NE(almost->state, FindingState::meets) << one.less;
}

/// Of every finding its state, by all that tells it apart.
std::map<std::string, FindingState> states(const CheckResult& result) {
  std::map<std::string, FindingState> out;
  for (const checks::FindingSet& set : result.sets) {
    for (const Finding& one : set.findings) {
      std::string key = set.id + (set.of_study ? " study" : "") + "|" + one.rule + "|" + one.subject + "|";
      int number = 0;
      while (out.contains(key + std::to_string(number))) ++number;
      out[key + std::to_string(number)] = one.state;
    }
  }
  return out;
}

std::string key_of(const MendSubject& of) {
  return of.set + (of.of_study ? " study" : "") + "|" + of.rule + "|" + of.subject + "|" + std::to_string(of.number);
}

TEST_P(BrokenStation, HasTheEffectOfASecondFullCheck) {
  const Broken& one = GetParam();
  const std::string text = text_of(one);
  const Mend mend = mend_of(text, one.rule, one.subject);
  ASSERT_EQ(mend.edits.size(), 1U);
  const auto before = states(full_check(text));
  const auto after = states(full_check(with(text, one.path, mend.edits.front().after)));
  std::map<std::string, std::pair<std::optional<FindingState>, std::optional<FindingState>>> changed;
  for (const auto& [key, state] : before) {
    const auto now = after.find(key);
    const auto then = now == after.end() ? std::nullopt : std::optional(now->second);
    if (then != state && key != key_of(mend.of)) changed[key] = {state, then};
  }
  for (const auto& [key, state] : after) {
    if (!before.contains(key)) changed[key] = {std::nullopt, state};
  }
  EXPECT_EQ(mend.effects.size(), changed.size());
  for (const MendEffect& effect : mend.effects) {
    const auto found = changed.find(key_of(effect.of));
    ASSERT_NE(found, changed.end()) << key_of(effect.of);
    EXPECT_EQ(effect.before, found->second.first);
    EXPECT_EQ(effect.after, found->second.second);
  }
}

// The values after are the limit, 2 % of it, and the next step of the grid, worked out by hand where the figure follows
// the value one to one; where a study stands between, the step less is the proof.
std::vector<Broken> broken_stations() {
  return {
      // 10 gpm less 2 %: 9.8, so 9.5 in steps of 0.5
      {"ludd-bank", {}, "nozzle-flow-cap", "D1.a", "dispenser.D1.hose.D1.a.limiter", "\"9.5 gpm\"", "10 gpm"},
      // the groove lies 6 in below the island; 1/2 in less 2 % of it is kept from 5.51 in on
      {"hollin-gap",
       {},
       "shear-groove-offset",
       "D1.regular",
       "dispenser.D1.inlet.regular.shear_valve.groove_elevation",
       "\"5 5/8 in\"",
       "5 1/2 in"},
      // 5744.36 gal less 2 % of it is 5629: 5600 in steps of 50
      {"hollin-gap", {}, "delivery-room", "T1", "delivery.load.compartment.1.volume", "\"5600 gal\"", "5650 gal"},
      // 12 ft and 2 % of it: 12 ft 2.9 in
      {"hollin-gap",
       {{"tank.T2.vent.V2.outlet_elevation", "9 ft"}},
       "vent-height",
       "V2",
       "tank.T2.vent.V2.outlet_elevation",
       "\"12 ft 3 in\"",
       "12 ft 2 in"},
      // 48 in less 2 % of it is 47.04
      {"hollin-gap",
       {{"emergency_stop.E1.height", "50 in"}},
       "emergency-stop-height",
       "E1",
       "emergency_stop.E1.height",
       "\"47 in\"",
       "48 in"},
      // 18 ft less 2 % of it is 17 ft 7.7 in, of which the whip hose is 30 in
      {"hollin-gap",
       {{"dispenser.D1.hose.D1.regular-a.curb.length", "20 ft"}},
       "hose-length",
       "D1.regular-a",
       "dispenser.D1.hose.D1.regular-a.curb.length",
       "\"15 ft 1 in\"",
       "15 ft 2 in"},
      // 12 in less 2 % of it is 11.76
      {"ludd-bank",
       {{"tank.T1.fill.F1.drop_tube.end_above_bottom", "14 in"}},
       "inventory-drop-tube",
       "F1",
       "tank.T1.fill.F1.drop_tube.end_above_bottom",
       "\"11 3/4 in\"",
       "11 7/8 in"},
      {"hollin-gap",
       {{"delivery.load.rate", "900 gpm"}},
       "fill-velocity",
       "compartment 1",
       "delivery.load.rate",
       "\"610 gpm\"",
       "620 gpm"},
      {"thornby", {}, "flotation-factor-empty", "T1", "tank.T1.flotation.slab.thickness", "\"400 mm\"", "390 mm"},
  };
}
INSTANTIATE_TEST_SUITE_P(All, BrokenStation, testing::ValuesIn(broken_stations()), name_of);

TEST(Mend, WidensThePipeOfTheCourseByTheFewestSizes) {
  const std::string text = site_text("pell-ridge");
  MendStation asked = station(text);
  asked.flow.keep_flow = 0.0007;  // [m3/s]
  const std::vector<Mend> all = mend_station(asked, {"flow-to-keep", "D1.a"}).mends;
  ASSERT_EQ(all.size(), 1U);
  const Mend& mend = all.front();
  ASSERT_EQ(mend.edits.size(), 1U) << mend.reason;
  EXPECT_EQ(mend.edits.front().path, "line.trunk.bore");
  EXPECT_EQ(mend.edits.front().after, "\"4.026 in\"");  // Schedule 40, 4 in
  EXPECT_GT(*mend.least_flow_after, *mend.least_flow_before);
  ASSERT_EQ(mend.effects.size(), 1U);
  EXPECT_EQ(mend.effects.front().of.subject, "D1.b");
  EXPECT_EQ(mend.effects.front().before, FindingState::falls_short);
  EXPECT_EQ(mend.effects.front().after, FindingState::meets);
  EXPECT_TRUE(is_better(mend.effects.front()));
  const auto state_at = [&](const std::string& bore) {
    for (const Finding& one : checks::all_findings(check_text(asked, with(text, "line.trunk.bore", bore)))) {
      if (one.rule == "flow-to-keep" && one.subject == "D1.a") return one.state;
    }
    return FindingState::not_determined;
  };
  EXPECT_EQ(state_at("4.026 in"), FindingState::meets);
  EXPECT_NE(state_at("3.068 in"), FindingState::meets);  // 3 in, the size before
}

TEST(Mend, WhatNoOneValueMendsTellsWhatWasTried) {
  const std::string text = site_text("pell-ridge");
  MendStation asked = station(text);
  asked.flow.keep_flow = 0.0007;  // [m3/s]
  const std::vector<Mend> all = mend_station(asked, {"flow-to-keep", "D2.a"}).mends;
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all.front().way, MendWay::none);
  EXPECT_TRUE(all.front().edits.empty());
  EXPECT_FALSE(all.front().reason.empty());
  EXPECT_GE(all.front().tried.size(), 3U);
  for (const MendTry& tried : all.front().tried) EXPECT_FALSE(tried.reason.empty()) << tried.edit.path;
}

TEST(Mend, SetsOfAnOwnerAreMendedToo) {
  const std::string text = site_text("hollin-gap");
  const std::vector<site::RuleSet> own{site::read_rule_set(site_text("rules/owner")).value};
  MendStation asked = station(text);
  asked.own = own;
  const std::vector<Mend> all = mend_station(asked, {"flow-alone", "D3.diesel-a"}).mends;
  ASSERT_EQ(all.size(), 1U);
  ASSERT_EQ(all.front().edits.size(), 1U) << all.front().reason;
  EXPECT_EQ(all.front().of.set, "owner");
  EXPECT_EQ(all.front().edits.front().path, "dispenser.D3.hose.D3.diesel-a.limiter");
  EXPECT_EQ(all.front().edits.front().after, "\"11.5 gpm\"");  // 12 gpm less 2 % of it, in steps of 0.5
}

TEST(Mend, ADutyThatIsOverdueIsDoneAndItsDateIsNotEdited) {
  const std::string path = "dispenser.D1.inlet.regular.shear_valve.tested";
  const Mend mend = mend_of(with(site_text("hollin-gap"), path, "2025-03-12"), "shear-valve-yearly", "D1.regular");
  EXPECT_EQ(mend.way, MendWay::duty);
  EXPECT_TRUE(mend.edits.empty());
  EXPECT_TRUE(mend.tried.empty());
  EXPECT_NE(mend.words.find("test it"), std::string::npos) << mend.words;
  EXPECT_FALSE(mend.reason.empty());
}

TEST(Mend, WhatIsToBeDoneIsRecordedAfterIt) {
  const Mend mend =
      mend_of(with(site_text("hollin-gap"), "emergency_stop.E1.sign", "false"), "emergency-stop-sign", "E1");
  EXPECT_TRUE(mend.is_work());
  ASSERT_EQ(mend.edits.size(), 1U);
  EXPECT_EQ(mend.edits.front().path, "emergency_stop.E1.sign");
  EXPECT_EQ(mend.edits.front().after, "true");
  EXPECT_NE(mend.words.find("after that is done"), std::string::npos) << mend.words;
}

TEST(Mend, APartThatIsToBeFittedIsNotMadeUp) {
  const Mend mend = mend_of(site_text("ludd-bank"), "spill-container-fitted", "F3a");
  EXPECT_EQ(mend.way, MendWay::replace);
  EXPECT_TRUE(mend.edits.empty());
  EXPECT_FALSE(mend.reason.empty());
}

TEST(Mend, AnOverfillDeviceIsSetLower) {
  std::string text = with(site_text("ludd-bank"), "tank.T1.fill.F1.overfill_valve.closes_at", "94 in");
  text = with(text, "tank.T1.fill.F1.overfill_valve.restricts_at", "93 in");
  text = with(text, "tank.T1.overfill_alarm.at_depth", "94 in");
  const Mend mend = mend_of(text, "overfill-prevention", "T1");
  ASSERT_EQ(mend.edits.size(), 1U) << mend.reason;
  EXPECT_EQ(mend.edits.front().path, "tank.T1.overfill_alarm.at_depth");
  EXPECT_EQ(mend.edits.front().after, "\"90 1/2 in\"");
  for (const Finding& one : checks::all_findings(full_check(with(text, mend.edits.front().path, "90 5/8 in")))) {
    if (one.rule == "overfill-prevention" && one.subject == "T1") {
      EXPECT_EQ(one.state, FindingState::falls_short);
    }
  }
}

TEST(MendEffect, WhatCameIsWorseOnlyIfItDoesNotMeet) {
  const auto turn = [](std::optional<FindingState> before, std::optional<FindingState> after) {
    MendEffect effect;
    effect.before = before;
    effect.after = after;
    EXPECT_FALSE(is_better(effect) && is_worse(effect));
    return is_better(effect) ? 1 : is_worse(effect) ? -1 : 0;
  };
  EXPECT_EQ(turn({}, FindingState::meets), 0);
  EXPECT_EQ(turn({}, FindingState::does_not_apply), 0);
  EXPECT_EQ(turn({}, FindingState::not_determined), -1);
  EXPECT_EQ(turn({}, FindingState::falls_short), -1);
  EXPECT_EQ(turn(FindingState::falls_short, {}), 1);
  EXPECT_EQ(turn(FindingState::meets, {}), 0);
  EXPECT_EQ(turn(FindingState::close, FindingState::meets), 1);
  EXPECT_EQ(turn(FindingState::meets, FindingState::close), -1);
  EXPECT_EQ(turn(FindingState::does_not_apply, FindingState::meets), 0);
}

/// A device that was told by the share of the tank is told by a time: one finding, without a value in another unit.
TEST(Mend, AnOverfillDeviceToldInAnotherUnitIsNoNewFinding) {
  std::string text = with(site_text("ludd-bank"), "tank.T1.fill.F1.overfill_valve.closes_at", "94 in");
  text = with(text, "tank.T1.fill.F1.overfill_valve.restricts_at", "93 in");
  text = with(text, "tank.T1.overfill_alarm.at_depth", "94 in");
  const Mend mend = mend_of(text, "overfill-prevention", "T1");
  EXPECT_EQ(mend.after, FindingState::meets);
  for (const MendEffect& effect : mend.effects) EXPECT_NE(effect.of.rule, "overfill-prevention");
}

TEST(Mend, MovesTheSourceOfIgnitionRatherThanADispenser) {
  const std::string text =
      with(site_text("hollin-gap"), "surroundings.ignition.air-compressor.position", "[\"150 ft\", \"4 ft\"]");
  const Mend mend = mend_of(text, "dispenser-to-ignition", "D3");
  ASSERT_EQ(mend.edits.size(), 1U) << mend.reason;
  EXPECT_EQ(mend.edits.front().path, "surroundings.ignition.air-compressor.position");
  EXPECT_TRUE(mend.warnings.empty());
  for (const MendTry& tried : mend.tried) {
    if (tried.edit.path != "dispenser.D3.position") continue;
    EXPECT_TRUE(tried.is_last);
    EXPECT_NE(tried.words.find("lay its lines anew"), std::string::npos) << tried.words;
  }
}

TEST(Mend, ShortensAHoseRatherThanMovingItsDispenser) {
  const std::string text =
      with(site_text("hollin-gap"), "surroundings.building.shop.opening.shop-door.position", "[\"126 ft\", \"14 ft\"]");
  const Mend mend = mend_of(text, "nozzle-to-opening", "D2.regular-a");
  ASSERT_EQ(mend.edits.size(), 1U) << mend.reason;
  EXPECT_EQ(mend.edits.front().path, "dispenser.D2.hose.D2.regular-a.curb.length");
}

TEST(Mend, TellsWhatTheSiteFileThenWarnsOf) {
  const std::string text = site_text("hollin-gap");
  EXPECT_TRUE(new_warnings(station(text), text).empty());
  const std::string far = with(text, "dispenser.D1.position", "[\"100 ft\", \"900 ft\"]");
  EXPECT_FALSE(new_warnings(station(text), far).empty());
}

// Positions of the station: T1 0 0, T2 0 14 ft; D1 100 0, D2 126 0; the building and the lot's borders as entered.
TEST(TakenPlace, IsWhereAnotherPartStands) {
  const std::string text = site_text("hollin-gap");
  const site::Site before = site::read_site(text).value;
  const auto taken = [&](const char* path, const char* place) {
    return taken_by(before, site::read_site(with(text, path, place)).value);
  };
  EXPECT_EQ(taken("dispenser.D1.position", "[\"124 ft\", \"1 ft\"]"), "dispenser D2");
  EXPECT_EQ(taken("dispenser.D1.position", "[\"0 ft\", \"2 ft\"]"), "tank T1");
  EXPECT_EQ(taken("tank.T1.position", "[\"0 ft\", \"6 ft\"]"), "tank T2");
  EXPECT_EQ(taken("dispenser.D1.position", "[\"105 ft\", \"5 ft\"]"), "");
  EXPECT_EQ(taken("dispenser.D1.position", "[\"100 ft\", \"900 ft\"]"), "or beyond the lot line");
  EXPECT_EQ(taken_by(before, before), "");
}

TEST(Levers, AreNeverTheCoverOfATankInPlace) {
  for (const AmountRow& row : amount_rows()) EXPECT_NE(row.key, "flotation.cover") << row.of;
}

// What a test found, when something was installed, and what a part is rated or listed for are facts: no lever.
TEST(Levers, AreNeverWhatWasFoundOrIsMarked) {
  const auto is_open = [](std::string_view key) {
    for (const char* word :
         {"tested", "installed", "rating", "listed", "liquid_test", "acceptance", "detects", "last_hit"}) {
      EXPECT_EQ(key.find(word), std::string_view::npos) << key;
    }
  };
  for (const AmountRow& row : amount_rows()) is_open(row.key);
  for (const FactRow& row : fact_rows()) is_open(row.key);
}

/// What a key leads to in the schema of a site file, through references, lists and alternatives; null: no such key.
Json below(const Json& schema, const Json& node, const std::string& key) {
  if (node.contains("$ref"))
    return below(schema, schema[Json::json_pointer(node["$ref"].get<std::string>().substr(1))], key);
  if (node.contains("properties") && node["properties"].contains(key)) return node["properties"][key];
  if (node.contains("items") && node["items"].is_object()) return below(schema, node["items"], key);
  for (const char* way : {"anyOf", "oneOf", "allOf"}) {
    if (!node.contains(way)) continue;
    for (const Json& one : node[way]) {
      const Json found = below(schema, one, key);
      if (!found.is_null()) return found;
    }
  }
  return {};
}

const char* list_of(PartOf part) {
  switch (part) {
    case PartOf::station:
      return "";
    case PartOf::tank:
      return "tank.";
    case PartOf::fill:
      return "tank.fill.";
    case PartOf::vent:
      return "tank.vent.";
    case PartOf::pump:
      return "pump.";
    case PartOf::line:
      return "line.";
    case PartOf::dispenser:
      return "dispenser.";
    case PartOf::inlet:
      return "dispenser.inlet.";
    case PartOf::hose:
      return "dispenser.hose.";
    case PartOf::stop:
      return "emergency_stop.";
    case PartOf::delivery:
      return "delivery.";
    case PartOf::processor:
      return "surroundings.vapor_processor.";
    case PartOf::ignition:
      return "surroundings.ignition.";
  }
  return "";
}

bool is_key(PartOf part, std::string_view key) {
  static const Json schema = Json::parse(site::site_schema());
  std::istringstream path(list_of(part) + std::string(key));
  Json at = schema;
  for (std::string one; std::getline(path, one, '.');) {
    at = below(schema, at, one);
    if (at.is_null()) return false;
  }
  return true;
}

TEST(Levers, AreKeysOfTheSiteFile) {
  for (const AmountRow& row : amount_rows()) EXPECT_TRUE(is_key(row.part, row.key)) << row.of << " " << row.key;
  for (const FactRow& row : fact_rows()) EXPECT_TRUE(is_key(row.part, row.key)) << row.of << " " << row.key;
  for (const SizeRow& row : size_rows()) EXPECT_TRUE(is_key(row.part, row.key)) << row.of << " " << row.key;
  for (const PlaceRow& row : place_rows()) EXPECT_TRUE(is_key(row.part, "position")) << row.of;
  EXPECT_FALSE(is_key(PartOf::tank, "overfill_alarm.at_height"));
}

TEST(Levers, AreOfKnownFigures) {
  const auto is_known = [](std::string_view of) {
    EXPECT_TRUE(of.find('|') != std::string_view::npos || checks::find_figure(of) != nullptr) << of;
  };
  for (const AmountRow& row : amount_rows()) is_known(row.of);
  for (const FactRow& row : fact_rows()) is_known(row.of);
  for (const PlaceRow& row : place_rows()) is_known(row.of);
  for (const SizeRow& row : size_rows()) is_known(row.of);
  for (const OtherRow& row : other_rows()) is_known(row.of);
}

TEST(Grid, WritesAsTheValueBeforeWasWritten) {
  const auto at = [](Grid grid, const char* before, double inches) {
    return text_on(grid, written_like(before, site::Display::us), to_si(inches, "in"));
  };
  EXPECT_EQ(at(Grid::inch, "\"9 ft\"", 147.0), "12 ft 3 in");
  EXPECT_EQ(at(Grid::inch, "\"50 in\"", 47.0), "47 in");
  EXPECT_EQ(at(Grid::eighth, "\"6 in\"", 5.625), "5 5/8 in");
  EXPECT_EQ(at(Grid::eighth, "\"6 in\"", -0.375), "-3/8 in");
  EXPECT_EQ(at(Grid::eighth, "\"2 in\"", 0.5), "1/2 in");
  EXPECT_EQ(text_on(Grid::inch, written_like("\"1.0 m\"", site::Display::us), 1.36), "1.36 m");
  EXPECT_EQ(text_on(Grid::hose_flow, written_like("\"40 L/min\"", site::Display::us), to_si(37.0, "L/min")),
            "37 L/min");
  EXPECT_EQ(text_on(Grid::count, {}, 3.0), "3");
}

}  // namespace
}  // namespace forecourse::decide
