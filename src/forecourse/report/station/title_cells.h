#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "forecourse/base/diagnostic.h"

namespace forecourse::report {

/// A cell of the title block that people fill in.
struct TitleCell {
  std::string_view name;        ///< as it is asked for: "prepared by"
  std::string_view label;       ///< as it is printed: "Prepared by"
  std::string_view when_empty;  ///< what is printed in place of a text: "not checked"
};

/// All of them, in their order on the page.
[[nodiscard]] std::span<const TitleCell> title_cells();

/// Texts by the names of their cells; one that is missing or blank counts as empty.
using CellTexts = std::map<std::string, std::string>;

/// [bytes] The longest text of a cell.
inline constexpr std::size_t longest_cell_text = 200;

/// Puts a text into the cell of a name, in whichever case it is written.
///
/// \return what is wrong with the name, with the nearest one, or with the length of the text
[[nodiscard]] std::optional<Diagnostic> fill_cell(std::string_view name, std::string_view text, CellTexts& cells);

/// The same from one text, "prepared by=R. Tay".
[[nodiscard]] std::optional<Diagnostic> fill_cell(std::string_view name_and_text, CellTexts& cells);

/// Label and text of every cell as printed: never a gap.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> printed(const CellTexts& cells);

}  // namespace forecourse::report
