#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "forecourse/site/text/document.h"

namespace forecourse::site {

/// The path that a misspelt one most likely stands for: every key and id in it is put right on its own, and where its
/// beginning is missing ("trunk.bore") it is completed. Stars are left as they are. None where nothing is near, or the
/// path is right as it is.
[[nodiscard]] std::optional<std::string> nearest_path(const Node& root, std::string_view path);

}  // namespace forecourse::site
