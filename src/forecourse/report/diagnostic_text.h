#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/source_text.h"

namespace forecourse::report {

using forecourse::SourceText;

/// A place in a text as people count it.
struct LineColumn {
  std::size_t line = 1;    ///< from 1
  std::size_t column = 1;  ///< from 1, counted in code points

  friend bool operator==(const LineColumn&, const LineColumn&) = default;
};

/// Line and column of byte `offset` of a text in UTF-8; an offset past the end means the end.
/// A byte that is no UTF-8 counts as one code point.
[[nodiscard]] LineColumn line_column(std::string_view text, std::size_t offset);

/// `name:line:column: error: message`, the line itself, a row of carets, the hint, then what is related.
///
/// Tabs and control characters of the line are shown as blanks, bytes that are no UTF-8 as '?', so that the carets
/// stand under what they mean. A line of more than 160 code points is cut around the carets, with "..." for what is
/// left out. A diagnostic about no place has no excerpt; a span over several lines is underlined on its first.
[[nodiscard]] std::string to_text(const Diagnostic& diagnostic, const std::vector<SourceText>& texts);

/// All of them in the order of their places, those about no place first, and how many there are:
/// "3 errors, 1 warning". Empty when there are none.
[[nodiscard]] std::string to_text(const std::vector<Diagnostic>& diagnostics, const std::vector<SourceText>& texts);

/// The count line alone, without a line end: "1 error", "3 errors, 1 warning"; empty when there are none.
[[nodiscard]] std::string count_text(const std::vector<Diagnostic>& diagnostics);

}  // namespace forecourse::report
