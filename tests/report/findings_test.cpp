#include "forecourse/report/findings.h"

#include <gtest/gtest.h>

#include "forecourse/base/unit_text.h"
#include "report/snapshot.h"

namespace forecourse::report {
namespace {

using checks::Finding;
using checks::FindingState;

Finding finding(const char* hose, FindingState state, double value) {
  Finding f;
  f.rule = "nozzle-flow-cap";
  f.requirement = "a nozzle delivers no more than the cap";
  f.subject = hose;
  f.state = state;
  f.clause = "40 CFR 1090.1550(b)";
  f.clause_verified = true;
  f.limit = to_si(10.0, "gpm");
  f.value = to_si(value, "gpm");
  f.margin = *f.limit - *f.value;
  f.unit = "m3/s";
  if (state == FindingState::falls_short) f.change = "fit a limiter";
  return f;
}

std::vector<Finding> sample() {
  std::vector<Finding> out{finding("D1.a", FindingState::meets, 9.5), finding("D1.b", FindingState::falls_short, 12.25),
                           finding("D2.a", FindingState::falls_short, 12.28),
                           finding("D2.b", FindingState::close, 9.9)};
  out.emplace_back();
  out.back().rule = "flow-to-keep";
  out.back().requirement = "every open hose keeps the flow asked for";
  out.back().subject = "D3.d";
  out.back().limit = to_si(8.0, "gpm");
  out.back().unit = "m3/s";
  out.back().reason = "its flow is not determined";
  return out;
}

TEST(Findings, WhatFallsShortComesFirstAndIsOneSentence) {
  const std::vector<Finding> findings = sample();
  const std::vector<FindingGroup> groups = grouped(findings);
  ASSERT_EQ(groups.size(), 4U);
  EXPECT_EQ(in_words(groups[0], site::Display::us, Glyphs::ascii),
            "D1.b, D2.a: a nozzle delivers no more than the cap; 12.25 to 12.28 gpm, limit 10.00 gpm; "
            "40 CFR 1090.1550(b); fit a limiter.");
  EXPECT_EQ(in_words(groups[1], site::Display::si, Glyphs::ascii),
            "D3.d: every open hose keeps the flow asked for; limit 30.3 L/min; its flow is not determined.");
  EXPECT_EQ(groups[2].findings[0]->state, FindingState::close);
}

TEST(Findings, AreCountedByState) {
  EXPECT_EQ(count_by_state(sample()), "2 fall short, 1 is not determined, 1 is close, 1 meets");
  EXPECT_EQ(count_by_state({}), "none");
}

TEST(Findings, HaveATableForEachRule) {
  EXPECT_TRUE(matches_snapshot(findings_html(sample(), site::Display::us), "findings.html"));
  EXPECT_EQ(findings_html({}, site::Display::us), "");
}

TEST(Findings, AreWrittenWithTheirPlace) {
  std::vector<Finding> findings = sample();
  findings[0].where = {0, 4, 6};
  const Json json = findings_json(findings, {{"a.toml", "one\ntwo\n"}});
  EXPECT_EQ(json[0]["state"], "meets");
  EXPECT_EQ(json[0]["line"], 2);
  EXPECT_EQ(json[0]["unit"], "m3/s");
  EXPECT_TRUE(json[4]["value"].is_null());
  EXPECT_TRUE(json[4]["clause"].is_null());
  EXPECT_TRUE(json[4]["file"].is_null());
}

}  // namespace
}  // namespace forecourse::report
