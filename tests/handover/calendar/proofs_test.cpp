// The record that a duty says would show it: given that record, its day moves.
#include "forecourse/handover/calendar/proofs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/site/read.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "support/stations.h"

namespace forecourse::handover {
namespace {

using site::Date;
using site::records::Records;

constexpr Date today{2026, 11, 30, {}};
constexpr Date in_records{2026, 11, 30, {1, 0, 10}};  // of a text that is not the site file

Calendar calendar(const site::Site& site, const checks::Studied& studied, const Records& records) {
  return calendar_of(checks::check_station(checks::facts_of(site, studied, today, &records), studied));
}

Records record_of(const Proof& proof) {
  Records out;
  if (proof.test) {
    site::records::Test test;
    test.at.day = in_records;
    test.part.text = proof.part;
    test.passed = true;
    test.kind = *proof.test;
    out.tests.push_back(test);
  } else {
    site::records::Inspection look;
    look.at.day = in_records;
    look.kind.text = proof.inspection;
    look.items.emplace_back();
    look.items.back().part.text = proof.part;
    look.items.back().in_order = true;
    out.inspections.push_back(look);
  }
  return out;
}

class Proofs : public testing::TestWithParam<const char*> {};

TEST_P(Proofs, MoveTheDayOfTheirDuty) {
  const site::Site site = site::read_site(test::site_text(GetParam())).value;
  const checks::Studied studied = checks::study_for_checks(site, nullptr);
  const Calendar before = calendar(site, studied, {});
  std::set<std::string> without;
  for (const Duty& duty : before.duties) {
    const auto proof = proof_of(duty);
    if (!proof) {
      without.insert(duty.what);
      continue;
    }
    const Calendar after = calendar(site, studied, record_of(*proof));
    const auto moved = std::ranges::find(after.duties, duty.id, &Duty::id);
    ASSERT_NE(moved, after.duties.end()) << duty.id;
    ASSERT_TRUE(moved->last_done.has_value()) << duty.id;
    EXPECT_EQ(checks::text(*moved->last_done), checks::text(today)) << duty.id;
    EXPECT_EQ(done_by(*moved), DoneBy::records) << duty.id;
    EXPECT_EQ(moved->where.text, 0U) << duty.id << ": its place is in the site file";
  }
  for (const std::string& what : without) {
    const bool is_known = what.find("water") != std::string::npos || what.find("meter") != std::string::npos ||
                          what.find("gauged") != std::string::npos || what.find("lining") != std::string::npos;
    EXPECT_TRUE(is_known) << what << ": no record shows it";
  }
}

/// A duty of a set of the owner's own is shown by the same records as that of a built-in one.
TEST(ProofsOfAnOwnSet, GoByItsFigures) {
  const auto own = site::read_rule_set(
      "format = 1\nid = \"own\"\ntitle = \"Own\"\nedition = \"of 2026\"\n[[requirement]]\nid = \"stop\"\n"
      "words = \"a stop is tested\"\nfigure = \"emergency-stop-tested\"\nevery = \"1 year\"\n",
      1);
  ASSERT_TRUE(own.ok());
  const site::Site site =
      site::read_site("format = 1\n[site]\nname = \"Case (invented)\"\n[[emergency_stop]]\nid = \"E1\"\n").value;
  const Calendar made =
      calendar_of(checks::check_station(checks::facts_of(site, {}, today, nullptr), {}, std::span(&own.value, 1)));
  ASSERT_EQ(made.duties.size(), 1U);
  const auto proof = proof_of(made.duties.front());
  ASSERT_TRUE(proof.has_value());
  EXPECT_EQ(proof->test, site::records::TestKind::emergency_stop);
  EXPECT_EQ(proof->part, "E1");
}

INSTANTIATE_TEST_SUITE_P(OfExampleStations, Proofs,
                         testing::Values("hollin-gap", "ludd-bank", "marle-cross", "pell-ridge", "site-s", "thornby",
                                         "truck-lane"));

}  // namespace
}  // namespace forecourse::handover
