#pragma once

#include <string>

namespace forecourse::server {

/// A word as it is typed into a shell: as it is where it is plain, else in single quotes.
[[nodiscard]] std::string shell_word(const std::string& word);

}  // namespace forecourse::server
