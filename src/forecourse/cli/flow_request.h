#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// Tells on standard error what is wrong with options, each with its hint.
void tell_options(const std::vector<Diagnostic>& problems);

/// The open set that a text asks for: ids parted by commas, "all", "each" or "none".
[[nodiscard]] studies::OpenSet open_set(const std::string& text, const site::Site& site);

/// The flow of `--keep`; false, with the reason on standard error, if it is none. An empty text leaves it.
[[nodiscard]] bool read_keep(const std::string& text, std::optional<double>& keep);

/// The study's options from the command line; empty, with the reason on standard error, if they are wrong.
[[nodiscard]] std::optional<studies::FlowOptions> flow_options(const FlowArguments& arguments,
                                                               const SiteSource& source);

}  // namespace forecourse::cli
