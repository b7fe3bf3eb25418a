#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace forecourse::site {

/// A value of a site file that another one has differently. What one of them does not have is empty there.
struct ValueDifference {
  std::string path;  ///< as `set_value` takes it
  std::string a;     ///< bytes as written; "listed" for a whole table
  std::string b;
};

/// What two site files have differently, in the order of the first, then what only the second has. Items of lists are
/// held against each other by their names, texts by what stands between their quotes, so that order and layout do not
/// count; nor does how a value is written: "2.00 in" is "2 in". A table that only one of them has is told as one.
[[nodiscard]] std::vector<ValueDifference> differing_values(std::string_view a, std::string_view b);

}  // namespace forecourse::site
