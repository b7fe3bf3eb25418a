#pragma once

#include <string>

namespace forecourse::cli {

/// What a run of the program left behind.
struct Outcome {
  int exit = -1;    ///< exit code; -1 when it did not end by itself
  std::string out;  ///< standard output
  std::string err;  ///< standard error
};

/// Runs the built program in `folder`, by the shell.
///
/// \param arguments   as typed behind the program's name, quotes included
/// \param environment variables before it: "COLUMNS=80 LC_ALL=C.UTF-8"
[[nodiscard]] Outcome run_program(const std::string& folder, const std::string& arguments,
                                  const std::string& environment = "");

/// The whole of a file; empty when there is none.
[[nodiscard]] std::string file_text(const std::string& path);

/// A new empty folder for one test, under the system's folder for such.
[[nodiscard]] std::string scratch_folder(const std::string& name);

/// A word for the shell, in single quotes.
[[nodiscard]] std::string quoted(const std::string& word);

}  // namespace forecourse::cli
