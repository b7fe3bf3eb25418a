#pragma once

#include <string>

namespace forecourse::store {

/// The page of the handbook that lists every column of every file of records (Markdown).
[[nodiscard]] std::string records_reference();

}  // namespace forecourse::store
