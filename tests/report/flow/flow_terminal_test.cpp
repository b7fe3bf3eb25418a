#include "forecourse/report/flow/flow_terminal.h"

#include <gtest/gtest.h>

#include <sstream>

#include "report/flow_sample.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

FlowSummaryFacts facts() { return {{{"sites/site-s.toml", sample_text()}}, {"report/site-s-flow.html"}}; }

std::size_t widest(const std::string& text) {
  std::size_t width = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) width = std::max(width, terminal::columns(line));
  return width;
}

TerminalStyle style(std::size_t width, bool utf8 = true) { return {width, false, utf8, false}; }

TEST(FlowTerminal, Prints80Columns) {
  EXPECT_TRUE(matches_snapshot(flow_summary(sample_result(), sample_site(), style(80), facts()), "flow_80.txt"));
}

TEST(FlowTerminal, Prints140ColumnsInSi) {
  EXPECT_TRUE(matches_snapshot(flow_summary(sample_result(), sample_site(site::Display::si), style(140), facts()),
                               "flow_140_si.txt"));
}

TEST(FlowTerminal, PrintsWhatIsNotDeterminedFirst) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  const std::string text = flow_summary(result, sample_site(), style(80, false), facts());
  EXPECT_TRUE(matches_snapshot(text, "flow_80_undetermined_ascii.txt"));
  EXPECT_LT(text.find("not determined"), text.find("12.28"));
}

TEST(FlowTerminal, AsciiTerminalsGetAscii) {
  const std::string text = flow_summary(sample_result(), sample_site(site::Display::us, "Straße"), style(80, false));
  for (const char c : text) ASSERT_LT(static_cast<unsigned char>(c), 0x80U);
}

TEST(FlowTerminal, NoLinePassesTheWidth) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  const std::string hostile = std::string(200, 'x') + "\033]0;owned\a" + "加油站";
  result.hoses[0].id = result.hoses[0].dispenser = hostile;
  result.states[0].systems[0].pumps[0].id = hostile;
  result.states[0].systems[0].lines[0].id = hostile;
  result.states[0].systems[0].hoses[4].budget[1].owner = hostile;
  result.defaults[0].what = result.defaults[0].source = hostile;
  result.warnings[0].message = hostile;
  for (const std::size_t width : {60U, 80U, 100U, 140U}) {
    const std::string text = flow_summary(result, sample_site(site::Display::us, hostile), style(width), facts());
    EXPECT_LE(widest(text), width);
    EXPECT_EQ(text.find('\033'), std::string::npos);
    EXPECT_EQ(text.find('\a'), std::string::npos);
  }
}

TEST(FlowTerminal, ColorChangesNoWord) {
  TerminalStyle colored = style(80);
  colored.color = true;
  std::string text = flow_summary(sample_result(), sample_site(), colored, facts());
  EXPECT_NE(text.find("\033["), std::string::npos);
  while (text.find("\033[") != std::string::npos) {
    const std::size_t at = text.find("\033[");
    text.erase(at, text.find('m', at) - at + 1);
  }
  EXPECT_EQ(text, flow_summary(sample_result(), sample_site(), style(80), facts()));
}

TEST(FlowTerminal, ManyDefaultsAreListedOnlyWhenAskedFor) {
  studies::FlowResult result = sample_result();
  for (int i = 0; i < 20; ++i) {
    result.defaults.push_back({"roughness of line " + std::to_string(i), 1.5e-6 * i, "m", {}, "a table", "regular"});
  }
  TerminalStyle verbose = style(80);
  EXPECT_EQ(flow_summary(result, sample_site(), verbose).find("roughness"), std::string::npos);
  EXPECT_NE(flow_summary(result, sample_site(), verbose).find("--verbose"), std::string::npos);
  verbose.verbose = true;
  EXPECT_NE(flow_summary(result, sample_site(), verbose).find("roughness of line 19"), std::string::npos);
}

TEST(FlowTerminal, NeverPrintsNan) {
  studies::FlowResult result = sample_result();
  add_undetermined(result);
  const std::string text = flow_summary(result, sample_site(), style(80));
  EXPECT_EQ(text.find("nan"), std::string::npos);
  EXPECT_EQ(text.find("inf"), std::string::npos);
}

TEST(FlowTerminal, AnEmptyResultIsPrinted) {
  EXPECT_NE(flow_summary({}, {}, style(80)).find("Station without a name"), std::string::npos);
}

}  // namespace
}  // namespace forecourse::report
