#include "forecourse/base/decimal.h"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <random>
#include <string>

namespace forecourse {
namespace {

/// The same by the standard library of the compiler the tests are built with.
std::optional<LeadingDecimal> by_the_library(const std::string& text) {
  double value = 0.0;
  const auto [stop, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault == std::errc::invalid_argument) return std::nullopt;
  return LeadingDecimal{value, fault == std::errc{}, static_cast<std::size_t>(stop - text.data())};
}

void expect_same(const std::string& text) {
  SCOPED_TRACE(text);
  const auto read = leading_decimal(text);
  const auto expected = by_the_library(text);
  ASSERT_EQ(read.has_value(), expected.has_value());
  if (!read) return;
  EXPECT_EQ(read->end, expected->end);
  ASSERT_EQ(read->in_range, expected->in_range);
  if (!read->in_range) return;
  EXPECT_EQ(std::signbit(read->value), std::signbit(expected->value));
  EXPECT_TRUE(read->value == expected->value || (std::isnan(read->value) && std::isnan(expected->value)));
}

// SOURCE: closed form: the nearest double, which the standard library of this compiler gives too, bit by bit
TEST(Decimal, IsReadAsTheLibraryReadsIt) {
  for (const char* text : {"",
                           "2.5",
                           ".5",
                           "5.",
                           ".",
                           "-",
                           "-.5",
                           "+1",
                           " 1",
                           "1e",
                           "1e+",
                           "1e-3x",
                           "1.2.3",
                           "0x1p3",
                           "inf",
                           "-inf",
                           "nan",
                           "infinity",
                           "0e999",
                           "-0",
                           "1e999",
                           "-1e999",
                           "1e-400",
                           "4e-324",
                           "2e-324",
                           "1e-310",
                           "1.7976931348623159e308",
                           "9007199254740993",
                           "1e99999999999999999999",
                           "0.1000000000000000055511151231257827021181583404541015625"}) {
    expect_same(text);
  }
}

TEST(Decimal, IsReadAsTheLibraryReadsItWhateverItsCharacters) {
  std::mt19937_64 random(1);
  const std::string alphabet = "0123456789.e-";
  for (int i = 0; i < 200'000; ++i) {
    std::string text(random() % 24, '0');
    for (char& c : text) c = alphabet[random() % alphabet.size()];
    expect_same(text);
    if (HasFailure()) return;
  }
}

TEST(Decimal, AloneIsNothingElse) {
  EXPECT_EQ(read_decimal("2.5"), 2.5);
  EXPECT_EQ(read_decimal("-1e-3"), -1e-3);
  for (const char* text : {"", "2.5 in", " 2.5", "2,5", "1e999", "1e-400"}) EXPECT_FALSE(read_decimal(text)) << text;
}

}  // namespace
}  // namespace forecourse
