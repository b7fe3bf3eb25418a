#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/text/document.h"

namespace forecourse::site {

/// The paths that one with stars stands for, in the order of the file. A star is every item of a list:
/// "dispenser.*.hose.*.limiter". "hose" and "inlet" at the beginning are those of every dispenser. A path without
/// either stands for itself.
///
/// \return no path and the reason where the stars find nothing
[[nodiscard]] Parsed<std::vector<std::string>> every_path(const Node& root, std::string_view path);

}  // namespace forecourse::site
