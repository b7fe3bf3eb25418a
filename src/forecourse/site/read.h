#pragma once

#include <cstdint>
#include <string_view>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Reads a site file (TOML) into a station.
///
/// Everything that is wrong is told in one run (up to 200 errors), in the order of the text: what is no TOML, unknown
/// keys, values of a wrong kind or out of range, and, as far as the text allows, what does not fit together
/// (check_site.h). The station is as complete as it could be made; a value that could not be read is missing, never
/// zero.
///
/// \param text       the whole file, UTF-8
/// \param text_index index of this text in the spans of station and diagnostics
[[nodiscard]] Parsed<Site> read_site(std::string_view text, std::uint32_t text_index = 0);

}  // namespace forecourse::site
