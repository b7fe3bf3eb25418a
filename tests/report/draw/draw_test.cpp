// What is written of drawings: true to scale, and in the forms that other programs read. tests/oracle/dxf.py holds the
// files for programs that draw against an independent library.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <sstream>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/draw/draw_report.h"
#include "support/stations.h"

namespace forecourse::report {
namespace {

using test::site_text;
using test::station;
using testing::HasSubstr;
using testing::Not;

handover::DrawingSet set_of(const std::string& name) { return handover::draw_station(station(site_text(name)), {}); }

/// Codes and values of a file, two lines each.
std::vector<std::pair<int, std::string>> pairs(const std::string& text) {
  std::vector<std::pair<int, std::string>> out;
  std::istringstream in(text);
  for (std::string code, value; std::getline(in, code) && std::getline(in, value);)
    out.emplace_back(std::stoi(code), value);
  return out;
}

TEST(DrawDxf, HasOneInsertionForEachPartThatIsPlaced) {
  for (const char* name : {"hollin-gap", "marle-cross", "thornby"}) {
    for (const handover::Drawing& drawing : set_of(name).drawings) {
      std::map<std::string, int> placed, inserted;
      for (const handover::Mark& mark : drawing.marks) {
        std::string block = mark.kind;
        std::transform(block.begin(), block.end(), block.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
        ++placed[block];
      }
      const auto all = pairs(draw_dxf(drawing, site::Display::us));
      bool in_insert = false;
      for (const auto& [code, value] : all) {
        if (code == 0) in_insert = value == "INSERT";
        if (code == 2 && in_insert) ++inserted[value];
      }
      EXPECT_EQ(inserted, placed) << name << " " << drawing.id;
      EXPECT_EQ(all.back(), (std::pair<int, std::string>{0, "EOF"}));
    }
  }
}

TEST(DrawDxf, SaysItsUnits) {
  const handover::DrawingSet set = set_of("thornby");
  EXPECT_THAT(draw_dxf(set.drawings.front(), site::Display::us), HasSubstr("$INSUNITS\n 70\n1\n"));
  EXPECT_THAT(draw_dxf(set.drawings.front(), site::Display::si), HasSubstr("$INSUNITS\n 70\n4\n"));
}

TEST(DrawDxf, WritesLettersOfAllKindsPlainly) {
  handover::Drawing drawing;
  drawing.sheet.scale = 100.0;
  drawing.layers = {{"text", "names", 7}, {"parts", "", 9}};
  drawing.texts = {{"text", {}, "Ö 5 % 100%% ^\nx", 1.0}};
  drawing.marks = {{"pump", "pump.\"P\"\n 0\nEOF", "", {}, ""}};
  const std::string text = draw_dxf(drawing, site::Display::si);
  EXPECT_THAT(text, HasSubstr("\\U+00D6 5 % 100%%%% ^  x\n"));
  EXPECT_THAT(text, HasSubstr("pump.\"P\"  0 EOF\n"));
  EXPECT_EQ(pairs(text).back().second, "EOF");
}

TEST(DrawSvg, IsAsLargeAsItsPaperAndTrueToScale) {
  handover::Drawing drawing;
  drawing.id = "plan";
  drawing.title = "Plan";
  drawing.sheet = {"a3", to_si(420.0, "mm"), to_si(297.0, "mm"), 100.0, "1:100", {0.0, 0.0}};
  drawing.layers = {{"tanks", "tanks", 5}};
  drawing.paths = {{"tanks", {{2.0, 3.0}, {12.0, 3.0}}}};
  const std::string svg = draw_svg(drawing);
  EXPECT_THAT(svg, HasSubstr("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\""));
  // 10 m at 1:100 are 100 mm, 30 mm above the lower edge.
  EXPECT_THAT(svg, HasSubstr("M20 267L120 267"));
  EXPECT_THAT(svg, HasSubstr("id=\"plan-tanks\" data-layer=\"tanks\""));
}

TEST(DrawSvg, EscapesNames) {
  handover::Drawing drawing;
  drawing.id = drawing.title = "<i>\"&";
  drawing.sheet = {"a3", 0.42, 0.297, 100.0, "1:100", {}};
  drawing.layers = {{"text", "names", 7}, {"parts", "", 9}, {"<i>", "", 7}};
  drawing.texts = {{"text", {}, "<i>", 1.0}};
  drawing.marks = {{"<i>", "\"<i>", "", {}, ""}};
  drawing.paths = {{"<i>", {{0.0, 0.0}, {1.0, 1.0}}}};
  EXPECT_THAT(draw_svg(drawing), Not(HasSubstr("<i>")));
}

TEST(DrawSvg, HoldsEachPlacedPartOnce) {
  const handover::DrawingSet set = set_of("marle-cross");
  for (const handover::Drawing& drawing : set.drawings) {
    const std::string svg = draw_svg(drawing);
    std::size_t parts = 0;
    for (std::size_t at = svg.find("data-part="); at != std::string::npos; at = svg.find("data-part=", at + 1)) ++parts;
    EXPECT_EQ(parts, drawing.marks.size()) << drawing.id;
  }
}

TEST(DrawSheets, HaveThePagesOfTheirPaper) {
  const std::string page = draw_sheets(set_of("thornby"));
  EXPECT_THAT(page, HasSubstr("@page{size:420mm 297mm;margin:0}"));
}

TEST(DrawJson, CountsAndHoldsTheGeometry) {
  const handover::DrawingSet set = set_of("hollin-gap");
  const Json document = draw_document(set);
  ASSERT_EQ(document["result"]["drawings"].size(), set.drawings.size());
  for (std::size_t i = 0; i < set.drawings.size(); ++i) {
    const Json& one = document["result"]["drawings"][i];
    EXPECT_EQ(one["parts"].get<std::size_t>(),
              one["marks"].size() + one["not_placed"].size() + one["elsewhere"].size());
    EXPECT_EQ(one["paths"].size(), set.drawings[i].paths.size());
    EXPECT_EQ(one["sheet"]["words"], set.drawings[i].sheet.words);
  }
}

TEST(DrawTerminal, TellsWhatIsNotPlaced) {
  const std::string text = draw_summary(set_of("hollin-gap"), {100, false, false, false});
  EXPECT_THAT(text, HasSubstr("276 of 288 parts placed"));
  EXPECT_THAT(text, HasSubstr("enter position of the emergency stop"));
}

}  // namespace
}  // namespace forecourse::report
