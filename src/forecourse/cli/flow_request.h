#pragma once

#include <optional>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// The study's options from the command line; empty, with the reason on standard error, if they are wrong.
[[nodiscard]] std::optional<studies::FlowOptions> flow_options(const FlowArguments& arguments, const site::Site& site);

}  // namespace forecourse::cli
