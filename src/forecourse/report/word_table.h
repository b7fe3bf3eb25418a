#pragma once

#include <string>
#include <vector>

#include "forecourse/report/html/parts.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

/// A table of words, for a terminal and for a page.
struct WordTable {
  std::vector<std::string> heads;
  std::vector<bool> numbers;  ///< right-aligned
  std::vector<std::vector<std::string>> rows;
};

/// For a terminal: words may wrap, numbers are never cut.
[[nodiscard]] terminal::Table terminal_table(const WordTable& words);

/// For a page, under a caption and one sentence beside it; a last column of words takes the room that is left.
[[nodiscard]] html::Table page_table(const WordTable& words, const std::string& caption, const std::string& note = {});

}  // namespace forecourse::report
