#pragma once

#include <span>
#include <string>
#include <string_view>

namespace forecourse::store {

/// A text of the user for a cell: one that a spreadsheet would take for a formula gets a leading apostrophe.
/// `without_guard` gives exactly the text again. Numbers are no texts and are not passed through here.
/// \source [owasp_csv_injection, list of characters] = + - @ tab and carriage return
[[nodiscard]] std::string guarded(std::string_view text);

/// A cell that was read, without the apostrophe that `guarded` puts before it.
[[nodiscard]] std::string_view without_guard(std::string_view cell);

/// One row with its line end; cells with separators, quotes, line ends or blanks at their ends are quoted.
/// \source [rfc_4180, section 2] with a line feed alone at the end of a row
void append_row(std::string& out, std::span<const std::string> cells, char separator = ',');

}  // namespace forecourse::store
