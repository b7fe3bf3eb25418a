// An example station cut off after every few bytes: each rest is a site file or is told what it lacks.
#include <gtest/gtest.h>

#include <algorithm>

#include "cli/program.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::cli {
namespace {

constexpr std::size_t cuts = 2000;

void expect_in_text(const Diagnostic& told, const std::string& text) {
  EXPECT_FALSE(told.message.empty());
  if (!told.where) return;
  EXPECT_LE(told.where->begin, told.where->end);
  EXPECT_LE(told.where->end, text.size());
}

/// Reads, prints and, where that is possible, computes what is left of a station.
/// \return whether it is a site file
bool take(const std::string& text) {
  const Parsed<site::Site> read = site::read_site(text);
  for (const Diagnostic& told : read.diagnostics) expect_in_text(told, text);
  const std::string printed = report::to_text(read.diagnostics, {{"cut.toml", text}});
  if (!read.ok()) {
    EXPECT_NE(printed.find("error: "), std::string::npos);
    return false;
  }
  const studies::FlowResult result = studies::study_flow(read.value, {}, {});
  EXPECT_EQ(result.hoses.size(), studies::all_hoses(read.value).hoses.size());
  return true;
}

TEST(TruncatedSite, IsASiteFileOrIsToldWhatItLacks) {
  const std::string whole = file_text(std::string(SITES_DIR) + "/hollin-gap.toml");
  ASSERT_GT(whole.size(), cuts);
  std::size_t right = 0;
  for (std::size_t i = 0; i <= cuts; ++i) {
    const std::size_t length = whole.size() * i / cuts;
    right += take(whole.substr(0, length)) ? 1 : 0;
    if (HasFailure()) FAIL() << "cut after " << length << " bytes";
  }
  EXPECT_GE(right, 1U);  // the whole file
}

TEST(TruncatedSite, WithoutItsBeginningIsToldWhatItLacks) {
  const std::string whole = file_text(std::string(SITES_DIR) + "/hollin-gap.toml");
  for (std::size_t i = 1; i < cuts; ++i) {
    const std::size_t begin = whole.size() * i / cuts;
    take(whole.substr(begin));
    if (HasFailure()) FAIL() << "begun at byte " << begin;
  }
}

}  // namespace
}  // namespace forecourse::cli
