#pragma once

#include <CLI/CLI.hpp>
#include <cstdint>
#include <optional>
#include <string>

#include "forecourse/cli/run.h"
#include "forecourse/cli/site_source.h"
#include "forecourse/lesson/ground.h"

namespace forecourse::cli {

/// What the command lesson is told of questions.
struct QuestionsArguments {
  std::optional<std::size_t> count;  ///< empty: no questions are asked for
  int level = 0;                     ///< 0: every level
  std::uint64_t seed = 1;
  std::string page;  ///< empty: every page
};

void add_questions_options(CLI::App& command, QuestionsArguments& questions);

/// How the paper is written, besides what the site's options say.
struct QuestionsFacts {
  bool pdf = false;
  std::string paper;
  std::string command;  ///< as typed
};

/// Asks, prints, and writes questions.html, .json and .pdf into the folder of the site's options.
[[nodiscard]] Exit questions_part(const QuestionsArguments& arguments, const SiteArguments& site,
                                  const SiteSource& source, const lesson::Ground& ground, const QuestionsFacts& facts);

}  // namespace forecourse::cli
