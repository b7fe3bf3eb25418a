#pragma once

#include <string_view>
#include <vector>

namespace forecourse::site {

/// A key that a table of the site file may have, and what may stand below it.
struct KnownKey {
  std::string_view name;
  bool is_list = false;                        ///< of tables
  std::vector<KnownKey> (*below)() = nullptr;  ///< the keys of the table or of each table of the list; null: a value
};

/// The keys at the root of a site file, from the descriptions in fields/.
[[nodiscard]] std::vector<KnownKey> keys_of_site_file();

}  // namespace forecourse::site
