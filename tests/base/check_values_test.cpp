// The reader of reference rows that the tests of all layers lean on.
#include "support/check_values.h"

#include <gtest/gtest.h>

#include <set>

namespace forecourse::test {
namespace {

TEST(CheckValues, ReadsQuotedFieldsWithCommas) {
  const CheckRow check = row("VCF-2004-15C-720--10");
  EXPECT_EQ(check.quantity, "CTL to 15 degC (2004 procedure, unrounded)");
  EXPECT_EQ(check.verified, Verified::computed);
  EXPECT_DOUBLE_EQ(check.number(), 1.03162087);
}

TEST(CheckValues, HandsOutNoRowFromMemory) {
  std::set<std::string> ids;
  for (const CheckRow& check : rows_starting("")) {
    EXPECT_NE(check.verified, Verified::memory) << check.id;
    ids.insert(check.id);
  }
  EXPECT_GT(ids.size(), 1000u);
}

TEST(CheckValues, PrefixesKeepFamiliesApart) {
  for (const CheckRow& check : rows_starting("K-")) EXPECT_EQ(check.id.substr(0, 2), "K-");
  EXPECT_EQ(rows_starting("KT-").size(), 3u);
}

TEST(CheckValues, ReadsInputs) {
  const auto inputs = parse_inputs("group=crude; rho60=API 17.785; t=-27.7 degF; measured");
  EXPECT_EQ(inputs.at("group"), "crude");
  EXPECT_EQ(number_in(inputs.at("rho60")), 17.785);
  EXPECT_EQ(number_in("RD60 0.7943"), 0.7943);
  EXPECT_EQ(number_in("-7.3 (below 0 treated as 0) psig"), -7.3);
  EXPECT_EQ(number_in("no number"), std::nullopt);
  EXPECT_TRUE(inputs.contains("measured"));
  EXPECT_EQ(parts_of("Ethanol; 15 degC; 101.325 kPa"), (std::vector<std::string>{"Ethanol", "15 degC", "101.325 kPa"}));
  EXPECT_DOUBLE_EQ(kelvin_in("t=59 degF"), 288.15);
  EXPECT_DOUBLE_EQ(kelvin_in("15 degC"), 288.15);
}

TEST(CheckValues, ReadsTolerances) {
  EXPECT_EQ(parse_tolerance("1e-9")->absolute, 1e-9);
  EXPECT_EQ(parse_tolerance("0.1%")->relative, 0.001);
  EXPECT_EQ(parse_tolerance("0.5 % rel")->relative, 0.005);
  EXPECT_EQ(parse_tolerance("0.001 rel")->relative, 0.001);
  EXPECT_EQ(parse_tolerance("5e-5")->absolute, 5e-5);
  EXPECT_EQ(parse_tolerance("0.7 (VCF prediction 841.69)")->absolute, 0.7);
  EXPECT_EQ(parse_tolerance("0.05 abs")->absolute, 0.05);
  EXPECT_NEAR(parse_tolerance("printed digits", "12.34")->absolute, 0.005, 1e-9);
  EXPECT_NEAR(parse_tolerance("printed digits", "1.5e3")->absolute, 50.0, 1e-6);
  EXPECT_FALSE(parse_tolerance("handbook").has_value());
  EXPECT_FALSE(parse_tolerance("range").has_value());
}

TEST(CheckValues, ReadsRanges) {
  EXPECT_EQ(parse_range("0.72-0.78"), (std::pair{0.72, 0.78}));
  EXPECT_EQ(parse_range("2.3"), (std::pair{2.3, 2.3}));
}

TEST(CheckValues, AgreementHoldsToTheToleranceAndNoFurther) {
  const CheckRow check = row("VCF-2004-ex1-CTPL");  // 1.03301 to 5e-6
  EXPECT_TRUE(agrees(check, 1.0330149));
  EXPECT_FALSE(agrees(check, 1.0330151));
  EXPECT_FALSE(agrees(row("K-gasoline"), 1.3));  // "handbook" sets no number
  EXPECT_TRUE(agrees(row("K-gasoline"), 1.3, {0.0, 0.01}));
}

}  // namespace
}  // namespace forecourse::test
