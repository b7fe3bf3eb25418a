#pragma once

#include <span>
#include <string_view>

namespace forecourse::site {

/// The files of the folder shelf/, as compiled in (see cmake/embed.cmake).
[[nodiscard]] std::span<const std::string_view> shelf_texts();

}  // namespace forecourse::site
