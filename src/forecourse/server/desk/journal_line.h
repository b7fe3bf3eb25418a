#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "forecourse/server/desk/kept_text.h"

namespace forecourse::server {

// A journal is one line with a whole kept text, then one line for each move since. A line is a checksum, a blank and a
// JSON object; the bytes of texts stand there one code point each, so that no text is lost for not being UTF-8.

/// The line, with its end, that holds a whole kept text, or one move.
[[nodiscard]] std::string journal_line(const KeptText& kept);
[[nodiscard]] std::string journal_line(const Move& move);

/// What a journal tells. It ends at the first line that is torn, changed or does not fit; what stands before it counts.
///
/// \return empty where not even the first line is whole
[[nodiscard]] std::optional<KeptText> read_journal(std::string_view journal);

}  // namespace forecourse::server
