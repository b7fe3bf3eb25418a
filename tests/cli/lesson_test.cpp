// The command `lesson` as it is run, and each of its numbers against the command that it names.
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

using nlohmann::json;

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

Outcome lesson(const std::string& folder, const std::string& site, const std::string& arguments) {
  return run_program(folder, "lesson " + quoted(std::string(SITES_DIR) + "/" + site) + " " + arguments,
                     "LC_ALL=C.UTF-8 COLUMNS=120");
}

/// What commands print for one station, each run once.
class Printed {
 public:
  explicit Printed(std::string site) : site_(std::move(site)) {}

  const json& of(const json& command) {
    std::string line = quoted(command.at(0).get<std::string>()) + " " + quoted(std::string(SITES_DIR) + "/" + site_);
    for (std::size_t i = 1; i < command.size(); ++i) line += " " + quoted(command[i].get<std::string>());
    const auto found = documents_.find(line);
    if (found != documents_.end()) return found->second;
    const Outcome told = run_program(SITES_DIR, line + " --json", "LC_ALL=C.UTF-8");
    return documents_.emplace(line, json::parse(told.out, nullptr, false)).first->second;
  }

 private:
  std::string site_;
  std::map<std::string, json> documents_;
};

class LessonNumbers : public testing::TestWithParam<const char*> {};

// Each number on each page is, to the last bit, what the command line prints at the place that it names; one that is
// not determined is not determined there.
TEST_P(LessonNumbers, EqualThoseOfTheCommandLine) {
  const std::string folder = scratch_folder("lesson-numbers");
  const json document = json::parse(lesson(folder, GetParam(), "--json --on 2026-11-30").out);
  Printed printed(GetParam());
  int equal = 0;
  for (const json& page : document["result"]["pages"]) {
    for (const json& number : page["numbers"]) {
      SCOPED_TRACE(page["page"].get<std::string>() + " " + number.dump());
      if (number["pointer"].is_null()) {
        EXPECT_TRUE(number["value"].is_null());
        continue;
      }
      const json& told = printed.of(number["command"]);
      ASSERT_FALSE(told.is_discarded());
      const json::json_pointer place(number["pointer"].get<std::string>());
      if (number["value"].is_null()) {  // what is not determined may lack what it would be told of
        EXPECT_TRUE(!told.contains(place) || told.at(place).is_null());
        continue;
      }
      ASSERT_TRUE(told.contains(place));
      const double times = number["times"];
      EXPECT_EQ(told.at(place).get<double>() * times, number["value"].get<double>());
      for (const std::string end : {"low", "high"}) {
        if (number[end + "_pointer"].is_null()) continue;
        const json& printed_end = told.at(json::json_pointer(number[end + "_pointer"].get<std::string>()));
        EXPECT_EQ(printed_end.get<double>() * times, number[end].get<double>());
      }
      ++equal;
    }
  }
  EXPECT_GE(equal, 20);
}

INSTANTIATE_TEST_SUITE_P(Stations, LessonNumbers,
                         testing::Values("hollin-gap.toml", "marle-cross.toml", "thornby.toml", "site-s.toml"));

class QuestionAnswers : public testing::TestWithParam<const char*> {};

// An answer that names a command is, to the last bit, what that command prints.
TEST_P(QuestionAnswers, AreThoseOfTheCommandLine) {
  const std::string folder = scratch_folder("lesson-answers");
  Printed printed(GetParam());
  int equal = 0;
  for (const std::string seed : {"1", "2"}) {
    const json document = json::parse(lesson(folder, GetParam(), "--questions 100 --json --seed " + seed).out);
    for (const json& one : document["result"]["questions"]) {
      if (one["pointer"].is_null()) continue;
      SCOPED_TRACE(one["question"].get<std::string>() + " " + one["pointer"].get<std::string>());
      const json& told = printed.of(one["command"]);
      ASSERT_FALSE(told.is_discarded());
      const json::json_pointer place(one["pointer"].get<std::string>());
      ASSERT_TRUE(told.contains(place));
      EXPECT_EQ(told.at(place), one["answer"]["value"]);
      ++equal;
    }
  }
  EXPECT_GE(equal, 6);
}

INSTANTIATE_TEST_SUITE_P(Stations, QuestionAnswers,
                         testing::Values("hollin-gap.toml", "marle-cross.toml", "site-s.toml"));

TEST(LessonCommand, WritesHandoutAndDocument) {
  const std::string folder = scratch_folder("lesson-files");
  const Outcome told = lesson(folder, "hollin-gap.toml", "--out out");
  EXPECT_EQ(told.exit, 0) << told.err;
  EXPECT_TRUE(has(told.out, "written: out/lesson.html")) << told.out;
  const std::string page = file_text(folder + "/out/lesson.html");
  EXPECT_TRUE(has(page, "7 Shear valve: The groove"));
  EXPECT_TRUE(has(page, "Words used"));
  EXPECT_EQ(json::parse(file_text(folder + "/out/lesson.json"))["study"], "lesson");
}

TEST(LessonCommand, TakesALessonOfOnesOwn) {
  const std::string folder = scratch_folder("lesson-own");
  const std::string own = quoted(std::string(SITES_DIR) + "/lessons/shear-valve.toml");
  const json document = json::parse(lesson(folder, "hollin-gap.toml", "--json --lesson " + own).out);
  EXPECT_EQ(document["result"]["title"], "The shear valve in ten minutes");
  EXPECT_EQ(document["result"]["pages"].size(), 4U);
  EXPECT_EQ(document["result"]["pages"][1]["subject"], "D4.regular");
}

TEST(LessonCommand, TellsWhatIsWrong) {
  const std::string folder = scratch_folder("lesson-wrong");
  const std::string own = quoted(std::string(SITES_DIR) + "/lessons/shear-valve.toml");
  const Outcome lacks = lesson(folder, "site-s.toml", "--lesson " + own);
  EXPECT_EQ(lacks.exit, 2);
  EXPECT_TRUE(has(lacks.err, "shear-valve.toml:8:6: error: 'D4' is no dispenser with a sump of this station"))
      << lacks.err;
  EXPECT_EQ(lesson(folder, "site-s.toml", "--pdf").exit, 2);
  EXPECT_EQ(lesson(folder, "site-s.toml", "--lesson no-such.toml").exit, 2);
  EXPECT_EQ(lesson(folder, "no-such.toml", "").exit, 2);
}

TEST(LessonQuestions, AreAskedAndWritten) {
  const std::string folder = scratch_folder("lesson-questions");
  const Outcome told = lesson(folder, "hollin-gap.toml", "--questions 4 --level 1 --seed 3 --json --out out");
  EXPECT_EQ(told.exit, 0) << told.err;
  const json document = json::parse(told.out);
  EXPECT_EQ(document["result"]["questions"].size(), 4U);
  for (const json& one : document["result"]["questions"]) EXPECT_EQ(one["level"], 1);
  EXPECT_FALSE(has(file_text(folder + "/out/questions.html"), "for the trainer"));
  EXPECT_TRUE(has(file_text(folder + "/out/key.html"), "Key to the questions, for the trainer"));
  EXPECT_EQ(json::parse(file_text(folder + "/out/questions.json"))["options"]["seed"], 3);
}

TEST(LessonQuestions, OfAPageThatIsNotThereAreRefused) {
  const std::string folder = scratch_folder("lesson-questions-wrong");
  const Outcome told = lesson(folder, "hollin-gap.toml", "--questions 4 --page nozle");
  EXPECT_EQ(told.exit, 2);
  EXPECT_TRUE(has(told.err, "there is no page 'nozle'")) << told.err;
}

}  // namespace
}  // namespace forecourse::cli
