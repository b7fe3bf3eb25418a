#pragma once

#include <string>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// The part of the command `lesson` that breaks something: both scenes of a failure, as a page or as JSON.
///
/// \param failure id of its kind
/// \param at      id of the part; empty: the first that it can happen to
[[nodiscard]] Exit failure_part(const SiteArguments& arguments, const std::string& failure, const std::string& at);

}  // namespace forecourse::cli
