#pragma once

#include <string_view>

namespace forecourse::report::html {

/// The style sheet of every report.
[[nodiscard]] std::string_view style_sheet();

}  // namespace forecourse::report::html
