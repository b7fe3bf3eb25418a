// Spans and the line at rest in words.
#include "forecourse/report/flow/spans/span_words.h"

#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/flow/spans/rest_words.h"
#include "forecourse/report/flow/spans/span_html.h"

namespace forecourse::report {
namespace {

using studies::FlowSpan;
using studies::SpanKind;

studies::SpanFlows gives(double gpm) {
  const double flow = to_si(gpm, "gpm");
  return {flow, flow, flow, "D1.a", "D1.a"};
}

studies::FlowResult result() {
  FlowSpan level;
  level.kind = SpanKind::level;
  level.subject = "T1";
  level.system = "regular";
  level.at_low = gives(9.5);
  level.at_likely = gives(9.58);
  level.at_high = gives(9.6);
  FlowSpan filter = level;
  filter.kind = SpanKind::filter;
  filter.at_low.reset();
  filter.at_high = gives(8.0);
  FlowSpan missing = filter;
  missing.at_high.reset();
  missing.reason = "enter loaded";
  FlowSpan too = missing;
  too.system = "premium";
  studies::FlowResult out;
  out.options.open_sets = {{"all hoses open", {"D1.a"}}};
  out.spans.sets = {{"all hoses open", {level, missing, filter, too}}};
  return out;
}

TEST(SpanRows, PutTheWidestFirstAndGatherWhatIsNotDetermined) {
  const auto rows = span_rows(result(), site::Display::us, Glyphs::ascii);
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].what, "filters of regular");
  EXPECT_EQ(rows[0].from, "as entered");
  EXPECT_EQ(rows[0].change, "-1.58");
  EXPECT_EQ(rows[1].what, "level in T1");
  EXPECT_EQ(rows[1].change, "-0.08 to +0.02");
  EXPECT_EQ(rows[2].what, "filters of regular, premium");
  EXPECT_EQ(rows[2].reason, "enter loaded");
  EXPECT_FALSE(rows[2].at_likely);
}

TEST(SpanSection, ShowsWhatIsNotDeterminedAndHasNoFigureWithoutNumbers) {
  EXPECT_NE(spans_section(result(), site::Display::us).find("Not determined: enter loaded"), std::string::npos);
  EXPECT_NE(spans_section(result(), site::Display::us).find("<svg"), std::string::npos);
  studies::FlowResult none = result();
  auto& flows = none.spans.sets.front().flows;
  flows = {flows[1]};
  EXPECT_EQ(spans_section(none, site::Display::us).find("<svg"), std::string::npos);
  EXPECT_EQ(spans_section({}, site::Display::us), "");
}

TEST(RestRows, GivePressuresTimesAndReasons) {
  studies::LineAtRest line;
  line.system = "regular";
  line.places = {{"P1", 0.0, to_si(20.0, "psi"), to_si(-1.0, "psi"), true, {}}, {"stub", {}, {}, {}, false, {}}};
  line.hoses = {{"D1.a", {0.0, 0.0, 0.0, ""}, {{}, {}, 0.0, "enter wall"}, {{}, 12.0, 0.1, "enter opening_time"}},
                {"D1.b", {0.0, 0.0, 0.0, ""}, {2.0, 2.0, 0.1, ""}, {{}, 14.0, 0.1, "enter opening_time"}}};
  const auto rows = rest_rows(line, site::Display::us, Glyphs::ascii);
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[0].pressures, "20.0");
  EXPECT_EQ(rows[0].times, "0.0");
  EXPECT_EQ(rows[1].times, "2.0 (1 of 2 hoses)");
  EXPECT_EQ(rows[1].reason, "enter wall");
  EXPECT_EQ(rows[2].times, "");
  EXPECT_EQ(rows[2].reason, "enter opening_time; were it open at once, 12.0 to 14.0 s");
  line.reason = "its piping is not complete";
  EXPECT_TRUE(rest_rows(line, site::Display::us).empty());
}

TEST(FlowText, ShowsTheRangeWhereThereIsOne) {
  studies::SummaryFlow flow{to_si(9.6, "gpm"), false, false, false};
  EXPECT_EQ(flow_text(flow, site::Display::us), "9.60");
  flow.low = to_si(9.1, "gpm");
  flow.high = to_si(9.9, "gpm");
  EXPECT_EQ(flow_text(flow, site::Display::us), "9.60 (9.10 to 9.90)");
  EXPECT_EQ(flow_text(std::nullopt, site::Display::us, Glyphs::ascii), "-");
}

}  // namespace
}  // namespace forecourse::report
