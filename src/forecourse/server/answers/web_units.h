#pragma once

#include <string>

namespace forecourse::server {

/// The units that the page shows numbers in and the ones a flow may be typed in, each with its size in SI, as a file of
/// TypeScript: the page has no factor of its own.
[[nodiscard]] std::string web_units();

}  // namespace forecourse::server
