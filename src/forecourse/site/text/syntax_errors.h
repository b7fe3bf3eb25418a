#pragma once

#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/text/statements.h"

namespace forecourse::site {

/// A text that is read statement by statement.
struct ScannedText {
  std::string_view text;
  std::uint32_t text_index = 0;
  std::vector<Statement> statements;
};

/// The statement at fault when the parser stopped at byte `offset`: the one around it, or the one before it
/// when that was left open.
[[nodiscard]] std::size_t statement_at_fault(const ScannedText& scanned, std::size_t offset);

/// What is wrong with the statement `index`, in words of a site file rather than of a parser.
///
/// \param description what the parser says; used where nothing better is found
/// \param offset      byte where it stopped
[[nodiscard]] Diagnostic describe_syntax_error(const ScannedText& scanned, std::size_t index,
                                               std::string_view description, std::size_t offset);

/// What is wrong with a statement that holds a letter outside ASCII where only a quoted one may stand.
[[nodiscard]] Diagnostic describe_bare_letter(const ScannedText& scanned, std::size_t index);

}  // namespace forecourse::site
