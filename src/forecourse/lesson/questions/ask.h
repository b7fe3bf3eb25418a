#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/lesson/questions/question.h"

namespace forecourse::lesson {

/// What is to be asked.
struct AskOptions {
  std::size_t count = 10;
  int level = 0;                        ///< 1 to 3; 0: of every level
  std::uint64_t seed = 1;               ///< which kinds, which parts, in which order answers stand
  std::vector<std::string> kinds = {};  ///< ids; empty: all
  std::string page = {};                ///< only those of this page; empty: of every page
};

struct AskResult {
  AskOptions options;               ///< as used
  std::vector<Question> questions;  ///< in the order of the course
  std::vector<LeftOut> left_out;    ///< kinds that were tried and cannot be asked here
};

/// A level, kind or page that there is not.
[[nodiscard]] std::vector<Diagnostic> check_options(const AskOptions& options);

/// Questions of a station; equal options give equal questions.
[[nodiscard]] AskResult ask(const Ground& ground, const AskOptions& options);

/// One kind asked of a station.
[[nodiscard]] Asked ask_kind(const QuestionKind& kind, const Ground& ground, std::uint64_t seed);

}  // namespace forecourse::lesson
