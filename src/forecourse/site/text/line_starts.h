#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace forecourse::site {

/// Where the lines of a text begin, to turn line and column into a byte offset and back.
class LineStarts {
 public:
  explicit LineStarts(std::string_view text);

  /// Byte offset of a line and column, both counted from 1, the column in code points.
  [[nodiscard]] std::uint32_t offset(std::size_t line, std::size_t column) const;
  /// Line of a byte offset, counted from 1.
  [[nodiscard]] std::size_t line(std::size_t offset) const;

 private:
  std::string_view text_;
  std::vector<std::uint32_t> starts_;
  std::vector<bool> plain_;  ///< the line is ASCII, so columns are bytes
};

}  // namespace forecourse::site
