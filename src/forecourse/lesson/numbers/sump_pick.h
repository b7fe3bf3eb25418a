#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "forecourse/lesson/ground.h"

namespace forecourse::lesson {

/// Which of the sumps of the containment study belongs to a dispenser or a tank; empty: none.
[[nodiscard]] std::optional<std::size_t> sump_place(const Ground& ground, const std::string& owner);

}  // namespace forecourse::lesson
