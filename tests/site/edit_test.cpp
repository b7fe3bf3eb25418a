#include "forecourse/site/edit.h"

#include <gtest/gtest.h>

#include "forecourse/site/text/document.h"
#include "site/place_text.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

using testing::IsEmpty;

const std::string station(whole_station);

std::string replaced(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

/// The text after an edit that must be taken.
std::string set(std::string_view text, std::string_view path, std::string_view value) {
  const Parsed<std::string> edited = set_value(text, path, value);
  for (const Diagnostic& d : edited.diagnostics) ADD_FAILURE() << path << ": " << told(text, d);
  return edited.value;
}

/// Why an edit is refused.
std::string refused(std::string_view text, std::string_view path, std::string_view value) {
  const Parsed<std::string> edited = set_value(text, path, value);
  EXPECT_EQ(edited.value, text) << path;
  return edited.diagnostics.empty() ? "taken" : told(text, edited.diagnostics.front());
}

TEST(SetValue, ReplacesTheBytesOfTheValueAndNothingElse) {
  EXPECT_EQ(set(station, "line.trunk.bore", "3 in"),
            replaced(station, "bore = \"2.00 in\"          # inside", "bore = \"3 in\"          # inside"));
  EXPECT_EQ(set(station, "line.trunk.loss", "4"), replaced(station, "loss = 3.6", "loss = 4"));
  EXPECT_EQ(set(station, "site.name", "Upper Wick"), replaced(station, "\"Lower Wick\"", "\"Upper Wick\""));
  EXPECT_EQ(set(station, "tank.T1.shape.length", "32 ft"),
            replaced(station, "length = \"31 ft\", heads", "length = \"32 ft\", heads"));
  EXPECT_EQ(set(station, "tank.T1b.reading.depth", "70 in"),
            replaced(station, "reading.depth = \"71 in\"   #", "reading.depth = \"70 in\"   #"));
  EXPECT_EQ(set(station, "line.trunk.tested", "2026-04-01"),
            replaced(station, "tested = 2025-11-02\n\n[[line]]", "tested = 2026-04-01\n\n[[line]]"));
  EXPECT_EQ(set(station, "line.spur.check_valve", "true"),
            replaced(station, "check_valve = false", "check_valve = true"));
}

TEST(SetValue, TakesValuesWithAndWithoutQuotes) {
  const std::string expected = set(station, "line.trunk.bore", "3 in");
  EXPECT_EQ(set(station, "line.trunk.bore", "\"3 in\""), expected);
  EXPECT_EQ(set(station, "line.trunk.loss", "{ k = 2, bore = \"1 in\" }"),
            replaced(station, "loss = 3.6", "loss = { k = 2, bore = \"1 in\" }"));
  EXPECT_EQ(set(station, "line.trunk.loss", "0.002 psi/gpm^2"),
            replaced(station, "loss = 3.6", "loss = \"0.002 psi/gpm^2\""));
  EXPECT_EQ(set(station, "site.name", "42"), replaced(station, "\"Lower Wick\"", "\"42\""));
  EXPECT_EQ(set(station, "tank.T1.fill.1.at", "5' 6\""), replaced(station, "at = \"4 ft\"", "at = \"5' 6\\\"\""));
  EXPECT_EQ(set(station, "line.trunk.bore", "\"3 in\" # wide"), expected);
}

TEST(SetValue, KeepsTheKindOfQuotes) {
  const std::string single = replaced(station, "bore = \"2.00 in\"          # inside", "bore = '2.00 in' # inside");
  EXPECT_EQ(set(single, "line.trunk.bore", "3 in"), replaced(single, "'2.00 in'", "'3 in'"));
}

TEST(SetValue, FindsTheLongestIdThatFits) {
  EXPECT_EQ(set(station, "dispenser.D1.hose.D1.a.limiter", "9 gpm"),
            replaced(station, "\"10 gpm\"\n  [[", "\"9 gpm\"\n  [["));
  EXPECT_EQ(set(station, "dispenser.D1.hose.D1.a.2.loss", "3"), replaced(station, "\"0.2 psi/gpm\"", "3"));
  EXPECT_EQ(set(station, "dispenser.D1.inlet.regular.riser.length", "4 ft"),
            replaced(station, "\"3 ft 6 in\", bore", "\"4 ft\", bore"));
  EXPECT_EQ(set(station, "tank.T1.flotation.deadman.1.count", "4"), replaced(station, "count = 2", "count = 4"));
  EXPECT_EQ(set(station, "dispenser.D1.hose.D1.a.2.blend.premium.share", "0.3501"),
            replaced(station, "share = 0.35 ", "share = 0.3501 "));
}

TEST(SetValue, AddsAMissingKeyBehindTheLastOfItsTable) {
  EXPECT_EQ(set(station, "line.diesel-line.loss", "2"),
            replaced(station, "to = \"D1.diesel\"\nlength = \"190 ft\"\nbore = \"2.00 in\"\n",
                     "to = \"D1.diesel\"\nlength = \"190 ft\"\nbore = \"2.00 in\"\nloss = 2\n"));
}

TEST(SetValue, AddsWithTheIndentationOfTheTable) {
  EXPECT_EQ(set(station, "dispenser.D1.hose.D1.d.limiter", "30 gpm"),
            replaced(station, "  high_flow = false\n", "  high_flow = false\n  limiter = \"30 gpm\"\n"));
  EXPECT_EQ(set(station, "tank.T1.gauge.tested", "2026-01-01"),
            replaced(station, "  detects = \"0.2 gph\"\n", "  detects = \"0.2 gph\"\n  tested = 2026-01-01\n"));
}

TEST(SetValue, AddsInsideBracesAndBehindDottedKeys) {
  EXPECT_EQ(set(station, "pump.P2.curve.fit", "monotone"),
            replaced(station, "\"-0.0019 psi/gpm^2\"] }", "\"-0.0019 psi/gpm^2\"], fit = \"monotone\" }"));
  EXPECT_EQ(set(station, "tank.T1b.reading.water", "1 in"),
            replaced(station, "reading.at = \"8 ft\"\n", "reading.at = \"8 ft\"\nreading.water = \"1 in\"\n"));
  EXPECT_EQ(set(station, "line.spur.interstice.watch", "dry"),
            replaced(station, "check_valve = false\n", "check_valve = false\ninterstice.watch = \"dry\"\n"));
}

TEST(SetValue, AddsWhereNothingStandsYet) {
  EXPECT_EQ(set("format = 1\n", "site.name", "X"), "format = 1\nsite.name = \"X\"\n");
  EXPECT_EQ(set("format = 1", "site.name", "X"), "format = 1\nsite.name = \"X\"");
  EXPECT_EQ(set("# nothing\n", "format", "1"), "format = 1\n# nothing\n");
  EXPECT_EQ(set("[site]\n", "format", "1"), "format = 1\n[site]\n");
  EXPECT_EQ(set("format = 1\n[site]\n\n[flow]\n", "site.name", "X"), "format = 1\n[site]\nname = \"X\"\n\n[flow]\n");
  EXPECT_EQ(set("format = 1\r\n[site]\r\ndisplay = \"us\"\r\n", "site.name", "X"),
            "format = 1\r\n[site]\r\ndisplay = \"us\"\r\nname = \"X\"\r\n");
}

TEST(SetValue, RefusesWhatCannotBeReadThere) {
  EXPECT_EQ(refused(station, "line.trunk.bore", "3 psi"),
            "144:8: error: bore is a length, but 'psi' is a pressure | write \"2.00 in\" or \"52 mm\"");
  EXPECT_EQ(refused(station, "line.trunk.bore", "3"),
            "144:8: error: bore is a length, but 3 has no unit | write \"2.00 in\" or \"52 mm\"");
  EXPECT_EQ(refused(station, "line.trunk.bora", "3 in"),
            "150:20: error: 'bora' is not a key of line 'trunk' | did you mean 'bore'?");
  EXPECT_EQ(refused(station, "line.trnk.bore", "3 in"), "error: there is no line 'trnk' | did you mean 'trunk'?");
  EXPECT_EQ(refused(station, "liine.trunk.bore", "3 in"),
            "2:11: error: 'liine' is not a key of a site file | did you mean 'line'?");
  EXPECT_EQ(refused(station, "line.trunk", "3 in"),
            "error: 'line.trunk' is a whole table | name one of its keys in the path");
  EXPECT_EQ(refused(station, "dispenser.D1.hose.D1.a.whip.length", "3 in"),
            "error: 'dispenser.D1.hose.D1.a.whip.length' leads nowhere: whip is a text, which has no keys | set whip "
            "as a whole");
  EXPECT_EQ(refused(station, "pump.P1.curve.run_out", "100 gpm"),
            "108:9: error: the pump curve is given in 2 ways: shutoff with per_flow_squared, shutoff with run_out | "
            "keep one of "
            "points, coefficients, shutoff with per_flow_squared, or shutoff with run_out");
  EXPECT_EQ(refused(station, "pump.P1.tank", "T9"),
            "107:8: error: tank is 'T9', but there is no such tank | there are: T1, T1b, T2, T2p, T2d");
  EXPECT_EQ(refused(station, "dispenser.D1.hose.D1.a.lift", "12 ft"),
            "220:21: error: hose 'D1.a' has both 'lift' and 'outlet_elevation' | keep one of them");
  EXPECT_EQ(refused(station, "", "3"), "error: '' is no path to a value | write it as line.trunk.bore");
  EXPECT_EQ(refused(station, "line..bore", "3"),
            "error: 'line..bore' is no path to a value | write it as line.trunk.bore");
}

TEST(SetValue, CannotSmuggleInOtherKeys) {
  EXPECT_EQ(set(station, "site.name", "x\"\nformat = 3\ny = \""),
            replaced(station, "\"Lower Wick\"", "\"x\\\"\\u000Aformat = 3\\u000Ay = \\\"\""));
}

TEST(SetValue, WorksBesideErrorsElsewhere) {
  const std::string broken = replaced(station, "display = \"us\"", "display = \"us");
  EXPECT_EQ(set(broken, "line.trunk.bore", "3 in"),
            replaced(broken, "bore = \"2.00 in\"          #", "bore = \"3 in\"          #"));
}

TEST(SetValue, ThereAndBackIsTheTextAsItWas) {
  for (const char* path :
       {"line.trunk.bore", "site.name", "tank.T1.shape.pitch", "tank.T1.reading.taken", "pump.P3.curve.points",
        "dispenser.D1.hose.D1.a.limiter", "emergency_stop.E1.acts_in", "operations.arrivals", "flow.open",
        "dispenser.D1.hose.D1.a.2.blend", "tank.T1b.reading.at", "pump.P1.check_valve"}) {
    const std::string value = value_at(station, path).value;
    EXPECT_EQ(set(station, path, value), station) << path;
  }
  const std::string wider = set(station, "line.trunk.bore", "3 in");
  EXPECT_EQ(set(wider, "line.trunk.bore", "2.00 in"), station);
}

/// Every path to a value that an edit can replace.
void collect_paths(const Node& table, const std::string& prefix, std::vector<std::string>& paths) {
  for (const Entry& entry : table.entries) {
    const std::string path = prefix + entry.key;
    const bool list_of_tables = entry.node.kind == NodeKind::array && entry.node.items.front().kind == NodeKind::table;
    if (entry.node.kind == NodeKind::table) collect_paths(entry.node, path + ".", paths);
    if (!entry.has_header() && !entry.is_dotted()) paths.push_back(path);
    if (!list_of_tables) continue;
    for (std::size_t i = 0; i < entry.node.items.size(); ++i) {
      collect_paths(entry.node.items[i], path + "." + std::to_string(i + 1) + ".", paths);
    }
  }
}

TEST(SetValue, EveryValueOfAStationCanBeReadAndSetBack) {
  std::vector<std::string> paths;
  collect_paths(read_document(station, 0).value.root, "", paths);
  EXPECT_GT(paths.size(), 250U);
  for (const std::string& path : paths) EXPECT_EQ(set(station, path, value_at(station, path).value), station) << path;
}

TEST(RemoveValue, EveryValueOfAStationCanBeRemovedFromValidToml) {
  std::vector<std::string> paths;
  collect_paths(read_document(station, 0).value.root, "", paths);
  for (const std::string& path : paths) {
    const std::string rest = remove_value(station, path).value;
    EXPECT_LT(rest.size(), station.size()) << path;
    EXPECT_TRUE(read_document(rest, 0).value.complete) << path;
  }
}

TEST(RemoveValue, TakesTheLineOfAKey) {
  EXPECT_EQ(remove_value(station, "line.trunk.bore").value,
            replaced(station, "bore = \"2.00 in\"          # inside\n", ""));
  EXPECT_EQ(remove_value(station, "tank.T1.sump.depth").value, replaced(station, "  depth = \"48 in\"\n", ""));
}

TEST(RemoveValue, TakesTheCommaInsideBraces) {
  EXPECT_EQ(remove_value(station, "tank.T1.shape.pitch").value, replaced(station, "pitch = \"0.5 %\", ", ""));
  EXPECT_EQ(remove_value(station, "tank.T1.shape.low_end").value, replaced(station, ", low_end = \"fill\"", ""));
  EXPECT_EQ(remove_value(station, "tank.T2.compartment.T2p.reading.depth").value,
            replaced(station, "{ depth = \"60 in\" }", "{ }"));
}

TEST(RemoveValue, TakesAWholeTableWithWhatStandsBelow) {
  const std::size_t begin = station.find("[[dispenser]]");
  const std::size_t end = station.find("\n[[emergency_stop]]");
  EXPECT_EQ(remove_value(station, "dispenser.D1").value, station.substr(0, begin) + station.substr(end));
  EXPECT_EQ(remove_value(station, "tank.T1.gauge").value,
            replaced(station,
                     "  [tank.gauge]\n  kind = \"automatic\"\n  at = \"15 ft\"\n  uncertainty = \"0.01 in\"\n  detects "
                     "= \"0.2 gph\"\n",
                     ""));
}

TEST(RemoveValue, WhatWasAddedCanBeRemoved) {
  const std::string added = set(station, "line.diesel-line.loss", "2");
  EXPECT_EQ(remove_value(added, "line.diesel-line.loss").value, station);
  const std::string inside = set(station, "pump.P2.curve.fit", "monotone");
  EXPECT_EQ(remove_value(inside, "pump.P2.curve.fit").value, station);
}

TEST(RemoveValue, TellsWhatIsNotThere) {
  EXPECT_EQ(told(station, remove_value(station, "line.trunk.wall").diagnostics.at(0)),
            "error: there is no 'line.trunk.wall' to remove");
  EXPECT_EQ(told(station, remove_value(station, "line").diagnostics.at(0)),
            "error: 'line' is a list | name one of its items by its id");
}

}  // namespace
}  // namespace forecourse::site
