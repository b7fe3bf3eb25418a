#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace forecourse {

/// A half-open stretch [begin, end) of one text, in bytes. Cheap to copy; lines are counted only
/// when somebody asks for them. `text` is an index into the list of texts read in this run.
struct SourceSpan {
  std::uint32_t text = 0;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  friend bool operator==(const SourceSpan&, const SourceSpan&) = default;
};

enum class Severity { error, warning, note };

/// "error", "warning", "note".
[[nodiscard]] constexpr const char* word(Severity severity) {
  return severity == Severity::warning ? "warning" : severity == Severity::note ? "note" : "error";
}

/// One thing told to the user about a site file. Plain data: who prints it decides how it looks.
struct Diagnostic {
  Severity severity = Severity::error;
  std::string message;              ///< what is wrong, with the value and its unit as written
  std::optional<SourceSpan> where;  ///< empty: about no one place (file not found, ...)
  std::string hint;                 ///< what to write instead; may be empty
  std::vector<Diagnostic> related;  ///< e.g. "first defined here"; one level deep
};

/// True if one of the diagnostics is an error.
[[nodiscard]] inline bool has_error(const std::vector<Diagnostic>& diagnostics) {
  for (const Diagnostic& d : diagnostics) {
    if (d.severity == Severity::error) return true;
  }
  return false;
}

/// What a reader gives back: always a value, as complete as it could be made, and what was wrong.
template <class T>
struct Parsed {
  T value;
  std::vector<Diagnostic> diagnostics;

  [[nodiscard]] bool ok() const { return !has_error(diagnostics); }
};

}  // namespace forecourse
