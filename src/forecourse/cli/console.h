#pragma once

#include <string>

namespace forecourse::cli {

/// What the outside looks like: asked once, handed in everywhere.
struct Console {
  bool is_terminal = false;
  bool color = false;  ///< a terminal, and the user did not set NO_COLOR
  bool utf8 = true;
  int width = 100;  ///< columns, 60 to 200
};

/// The console of this process (standard output).
[[nodiscard]] Console this_console();

/// Writes to standard output; a closed pipe ends quietly.
void print(const std::string& text);

/// Writes to standard error.
void print_error(const std::string& text);

/// The whole of a file, or empty with a message on standard error.
[[nodiscard]] bool read_file(const std::string& path, std::string& text);

/// Writes a file through a temporary one beside it, so that a reader never sees half of it.
[[nodiscard]] bool write_file(const std::string& path, const std::string& text);

}  // namespace forecourse::cli
