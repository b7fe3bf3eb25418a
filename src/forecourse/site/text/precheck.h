#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "forecourse/base/diagnostic.h"

namespace forecourse::site {

/// Largest site file that is read. [bytes]
inline constexpr std::size_t largest_text = std::size_t{2} << 20U;

/// Why a text is no site file at all: too large, not UTF-8, with NUL bytes in it, or JSON or markup. None when it may
/// be parsed.
[[nodiscard]] std::optional<Diagnostic> why_unreadable(std::string_view text, std::uint32_t text_index);

/// Offset of the first byte that is not well-formed UTF-8 (shortest form, no surrogates); npos when all is well.
[[nodiscard]] std::size_t first_invalid_utf8(std::string_view text);

}  // namespace forecourse::site
