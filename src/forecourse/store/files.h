#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"

namespace forecourse::store {

/// The whole of a file; empty, with the reason told, when it cannot be read.
[[nodiscard]] std::optional<std::string> read_whole(const std::string& path, std::vector<Diagnostic>& diagnostics);

}  // namespace forecourse::store
