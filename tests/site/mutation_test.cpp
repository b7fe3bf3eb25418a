#include <gtest/gtest.h>

#include <random>

#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "site/whole_station.h"

namespace forecourse::site {
namespace {

/// Random edits of a text, replayed by their seed.
class Mutator {
 public:
  explicit Mutator(std::uint32_t seed) : random_(seed) {}

  std::string mutate(std::string text) {
    const std::uint32_t edits = 1 + below(4);
    for (std::uint32_t i = 0; i < edits && !text.empty(); ++i) edit(text);
    return text;
  }
  std::uint32_t below(std::uint32_t limit) { return static_cast<std::uint32_t>(random_() % limit); }

 private:
  void edit(std::string& text) {
    const std::size_t at = below(static_cast<std::uint32_t>(text.size()));
    const std::size_t length = 1 + below(12);
    switch (below(6)) {
      case 0:
        text[at] = static_cast<char>(below(256));
        break;
      case 1:
        text[at] = letters[below(static_cast<std::uint32_t>(letters.size()))];
        break;
      case 2:
        text.erase(at, length);
        break;
      case 3:
        text.insert(at, 1, letters[below(static_cast<std::uint32_t>(letters.size()))]);
        break;
      case 4:
        text.insert(at, text.substr(below(static_cast<std::uint32_t>(text.size())), length));
        break;
      default:
        text.resize(at);
        break;
    }
  }

  static constexpr std::string_view letters = "\"'[]{}=,.#\n\r\\-+_ 0129aeinx\xC3";
  std::mt19937 random_;
};

/// A short stretch of the whole station, so that an edit hits something that matters.
std::string stretch(std::uint32_t part) {
  const std::string all(whole_station);
  const std::vector<std::string> begins{"format",   "[[tank]]",      "[[pump]]",
                                        "[[line]]", "[[dispenser]]", "[[emergency_stop]]"};
  const std::size_t begin = all.find(begins[part % begins.size()]);
  return "format = 1\n" + all.substr(begin, 1500);
}

void check_spans(const std::string& text, const Parsed<Site>& read) {
  for (const Diagnostic& d : read.diagnostics) {
    EXPECT_FALSE(d.message.empty());
    if (!d.where) continue;
    EXPECT_LE(d.where->begin, d.where->end);
    EXPECT_LE(d.where->end, text.size() + 1);
  }
}

TEST(ReadSiteMutated, NeverFailsAndAlwaysPointsIntoTheText) {
  for (std::uint32_t seed = 0; seed < 20'000; ++seed) {
    Mutator mutator(seed);
    const std::string text = mutator.mutate(stretch(seed));
    check_spans(text, read_site(text));
    if (HasFailure()) FAIL() << "seed " << seed << "\n" << text;
  }
}

TEST(ReadSiteMutated, EditsOfAnyTextEitherTakeOrLeaveItAlone) {
  const std::vector<std::string> paths{"site.name", "line.trunk.bore", "tank.T1.shape.length", "pump.P1.curve.fit",
                                       "dispenser.D1.hose.D1.a.limiter"};
  for (std::uint32_t seed = 0; seed < 2'000; ++seed) {
    Mutator mutator(seed);
    const std::string text = mutator.mutate(stretch(seed));
    const std::string& path = paths[seed % paths.size()];
    const Parsed<std::string> edited = set_value(text, path, "3 in");
    if (!edited.ok()) {
      EXPECT_EQ(edited.value, text);
    }
    const Parsed<std::string> removed = remove_value(text, path);
    EXPECT_LE(removed.value.size(), text.size());
  }
}

}  // namespace
}  // namespace forecourse::site
