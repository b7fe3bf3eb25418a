#pragma once

#include <span>

namespace forecourse::store {

/// What brings a store from each version to the next, in SQL: the first makes version 1 of an empty file.
[[nodiscard]] std::span<const char* const> migrations();

}  // namespace forecourse::store
