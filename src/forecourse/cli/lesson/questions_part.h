#pragma once

#include <string>

#include "forecourse/cli/commands.h"
#include "forecourse/lesson/ground.h"

namespace forecourse::cli {

/// How the paper is written, besides what the site's options say.
struct QuestionsFacts {
  bool pdf = false;
  std::string paper;
  std::string command;  ///< as typed
};

/// Asks, prints, and writes questions.json and, as .html and .pdf, questions and key into the folder of the site's
/// options.
[[nodiscard]] Exit questions_part(const QuestionsArguments& arguments, const SiteArguments& site,
                                  const SiteSource& source, const lesson::Ground& ground, const QuestionsFacts& facts);

}  // namespace forecourse::cli
