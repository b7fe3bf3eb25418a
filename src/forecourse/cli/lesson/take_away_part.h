#pragma once

#include <string>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// The part of the command `lesson` that writes it as one file, which runs in a browser with no program and no network.
///
/// \param lesson text of a lesson of one's own; empty: the built-in one
/// \param path   of the file
[[nodiscard]] Exit take_away_part(const SiteSource& source, const std::string& lesson, const std::string& path);

}  // namespace forecourse::cli
