#pragma once

#include <string>
#include <vector>

namespace forecourse::cli {

/// Exit codes of the program.
enum class Exit {
  fine = 0,
  falls_short = 1,  ///< a finding falls short
  bad_input = 2,
  our_fault = 3,
};

/// The program: reads the arguments (without the program's name), runs one command, prints.
[[nodiscard]] Exit run(const std::vector<std::string>& arguments);

}  // namespace forecourse::cli
