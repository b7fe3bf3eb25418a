#pragma once

#include <string>
#include <vector>

namespace forecourse::server {

/// Why a name cannot be the name of a site file in the folder of the open one; empty: it can. A name is of letters,
/// digits, blanks, dots, hyphens and underscores, ends in .toml, and has at most 100 bytes: no name leads elsewhere.
[[nodiscard]] std::string wrong_name(const std::string& name);

/// The site files in a folder by their names, sorted; at most 1000.
[[nodiscard]] std::vector<std::string> site_names(const std::string& folder);

}  // namespace forecourse::server
