// Every value of a site file that may be uncertain is found and moved. SOURCE: common practice, no source
#include "forecourse/site/uncertain_values.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "forecourse/site/read.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

using testing::Contains;

/// Visitor-free count: every quantity of the text, spread by one percent where it stands alone behind a key.
struct Spread {
  std::string text;
  std::size_t count = 0;
};

bool ends_value(std::string_view line, std::size_t at) { return at < line.size() && line[at] == '"'; }

/// Writes `key = "12 ft"` as an uncertain value, wherever the reader still takes the whole text without an error.
Spread spread_all(std::string text) {
  Spread out{std::move(text), 0};
  std::size_t from = 0;
  while (true) {
    const std::size_t equals = out.text.find("= \"", from);
    if (equals == std::string::npos) return out;
    const std::size_t begin = equals + 2;
    const std::size_t end = out.text.find('"', begin + 1);
    from = end + 1;
    const std::string value = out.text.substr(begin, end + 1 - begin);
    if (!ends_value(out.text, begin)) continue;
    std::string tried = out.text;
    const std::string spread = "{ low = " + value + ", likely = " + value + ", high = " + value + " }";
    tried.replace(begin, value.size(), spread);
    if (!read_site(tried).ok()) continue;
    if (read_site(tried).value.uncertain.size() == read_site(out.text).value.uncertain.size()) continue;
    out.text = tried;
    ++out.count;
    from = begin + spread.size();
  }
}

/// The station with every `Entered` that the reader met widened: low and high are set by hand.
TEST(UncertainValues, EveryValueThatTheReaderTakesAsUncertainIsMet) {
  const Spread spread = spread_all(std::string(whole_station));
  ASSERT_GT(spread.count, 60U);
  // The reader counts spreads; the walk must meet each of them once its three figures differ.
  std::string text = spread.text;
  std::size_t at = 0;
  std::size_t widened = 0;
  while ((at = text.find(", high = \"", at)) != std::string::npos) {
    const std::size_t begin = at + 10;
    const std::size_t end = text.find('"', begin);
    const std::string value = text.substr(begin, end - begin);
    const std::size_t blank = value.find(' ');
    std::string tried = text;
    const double number = std::stod(value);
    const double more = number + 0.001 * (number < 0.0 ? -number : number) + (number == 0.0 ? 0.001 : 0.0);
    tried.replace(begin, value.size(),
                  fmt::format("{:.9f}", more) + (blank == std::string::npos ? "" : value.substr(blank)));
    at = begin;
    if (!read_site(tried).ok()) continue;
    text = tried;
    ++widened;
  }
  const Site site = read_site(text).value;
  std::size_t differ = 0;
  std::set<std::string> paths;
  for (const UncertainValue& value : uncertain_values(site)) {
    EXPECT_LT(value.low, value.high) << value.path;
    EXPECT_TRUE(paths.insert(value.path).second) << value.path << " twice";
    ++differ;
  }
  EXPECT_GT(widened, 60U);
  std::set<std::pair<std::uint32_t, std::uint32_t>> places;
  for (const UncertainValue& value : uncertain_values(site)) places.insert({value.where.begin, value.where.end});
  for (const SourceSpan& span : site.uncertain) {
    const std::string written = text.substr(span.begin, span.end - span.begin);
    const std::size_t low = written.find("low = ") + 6;
    const std::size_t high = written.find("high = ") + 7;
    const bool same = written.substr(low, written.find('"', low + 1) - low) ==
                      written.substr(high, written.find('"', high + 1) - high);
    if (!same) {
      EXPECT_EQ(places.count({span.begin, span.end}), 1U) << written << " is not met";
    }
  }
  EXPECT_EQ(differ, places.size());
}

TEST(UncertainValues, AreMovedToTheirEndsAndNothingElseIs) {
  const Site site = read_site(whole_station).value;
  const auto values = uncertain_values(site);
  ASSERT_FALSE(values.empty());
  EXPECT_EQ(values.front().path, "site.ground_temperature");
  EXPECT_EQ(values.front().table, "site");
  EXPECT_EQ(values.front().quantity, &Temperature::kind());
  const Site low = at_ends(site, std::vector<End>(values.size(), End::low));
  const Site high = at_ends(site, std::vector<End>(values.size(), End::high));
  EXPECT_EQ(low.ground_temperature->likely, site.ground_temperature->low);
  EXPECT_EQ(high.ground_temperature->likely, site.ground_temperature->high);
  const auto moved = uncertain_values(high);
  ASSERT_EQ(moved.size(), values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    EXPECT_EQ(moved[i].likely, values[i].high) << values[i].path;
    EXPECT_EQ(moved[i].low, values[i].low) << values[i].path;
  }
  EXPECT_EQ(at_ends(site, {}).ground_temperature->likely, site.ground_temperature->likely);
}

TEST(UncertainValues, ShortLossesAreNamedWithoutTheKeyOfTheirFigure) {
  const std::string text =
      "format = 1\n[[line]]\nid = \"trunk\"\nfrom = \"P1\"\nto = \"D1.regular\"\nlength = \"20 ft\"\nbore = \"2 in\"\n"
      "loss = { low = 3, likely = 4, high = 5 }\n[[line]]\nid = \"two\"\nfrom = \"P1\"\nto = \"D1.regular\"\n"
      "loss = { k = { low = 3, likely = 4, high = 5 }, bore = \"2 in\" }\n";
  std::vector<std::string> paths;
  for (const UncertainValue& value : uncertain_values(read_site(text).value)) paths.push_back(value.path);
  EXPECT_THAT(paths, testing::ElementsAre("line.trunk.loss", "line.two.loss.k"));
}

TEST(LoadedFilter, LosesNoLessThanACleanOne) {
  const auto told = [](const std::string& filter) {
    const std::string text =
        "format = 1\n[[dispenser]]\nid = \"D1\"\n  [[dispenser.inlet]]\n  product = \"regular\"\n"
        "  filter = " +
        filter + "\n";
    for (const Diagnostic& d : read_site(text).diagnostics) {
      if (d.message.find("filter") != std::string::npos) return d.message;
    }
    return std::string();
  };
  const std::string less = "the filter loses less when loaded than when clean";
  EXPECT_EQ(told("{ loss = { kv = 5 }, loaded = { kv = 6 } }"), less);
  EXPECT_EQ(told("{ loss = { kv = 5 }, loaded = { kv = 4 } }"), "");
  EXPECT_EQ(told("{ loss = \"0.02 psi/gpm^2\", loaded = \"0.01 psi/gpm^2\" }"), less);
  EXPECT_EQ(told("{ loss = \"0.02 psi/gpm^2\", loaded = \"0.02 psi/gpm^2\" }"), "");
  EXPECT_EQ(
      told("{ loss = { points = [[\"20 L/min\", \"24 kPa\"]] }, loaded = { points = [[\"20 L/min\", \"20 kPa\"]] } }"),
      less);
}

TEST(LoadedFilter, IsNoWordForAMeter) {
  const std::string text =
      "format = 1\n[[dispenser]]\nid = \"D1\"\n  [[dispenser.inlet]]\n  product = \"regular\"\n"
      "  meter = { loss = 3, loaded = 4 }\n";
  std::vector<std::string> told;
  for (const Diagnostic& d : read_site(text).diagnostics) told.push_back(d.message);
  EXPECT_THAT(told, Contains("'loaded' is said of a filter, not of a meter"));
}

TEST(ViscosityPoints, RiseInTemperatureAndFallInViscosity) {
  const auto told = [](const std::string& points) {
    const std::string text =
        "format = 1\n[[product]]\nid = \"d\"\nkind = \"diesel-b0\"\nviscosity_points = " + points + "\n";
    for (const Diagnostic& d : read_site(text).diagnostics) {
      if (d.message.find("viscosity_points") != std::string::npos) return true;
    }
    return false;
  };
  EXPECT_FALSE(told("[[\"0 degC\", \"6 mm2/s\"], [\"40 degC\", \"2.6 mm2/s\"]]"));
  EXPECT_TRUE(told("[[\"0 degC\", \"6 mm2/s\"], [\"40 degC\", \"7 mm2/s\"]]"));
  EXPECT_TRUE(told("[[\"0 degC\", \"6 mm2/s\"]]"));
}

}  // namespace
}  // namespace forecourse::site
