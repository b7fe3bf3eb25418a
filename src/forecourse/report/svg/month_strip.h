#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// What a mark of a strip says; each has a form of its own.
enum class StripMark { none, cross, diamond, disk, ring, square, dash };

/// One row of a strip, a mark for each month.
struct StripRow {
  std::string name;
  std::vector<StripMark> marks;
};

/// A form and what it means.
struct StripKey {
  StripMark mark = StripMark::none;
  std::string words;
};

/// Rows of marks under the names of months, with a key below.
struct MonthStrip {
  std::string id;
  double width = wide;
  std::string title;
  std::string description;
  std::vector<std::string> months;  ///< "Nov"
  std::vector<StripRow> rows;
  std::vector<StripKey> keys;
};

/// Empty without rows or months.
[[nodiscard]] std::string draw(const MonthStrip& strip);

}  // namespace forecourse::report::svg
