#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// A page that a lesson can have: what it is shown at.
struct PageKind {
  std::string_view id;     ///< "shear-groove"
  std::string_view part;   ///< "shear valve": what it is shown at
  std::string_view enter;  ///< what to enter where the station has none
  /// Ids of all that it can be shown at, the best first.
  std::vector<std::string> (*parts)(const site::Site& site) = nullptr;
};

/// Every kind, in the order of the course.
[[nodiscard]] const std::vector<PageKind>& page_kinds();
/// Null where there is none.
[[nodiscard]] const PageKind* find_page(std::string_view id);

}  // namespace forecourse::lesson
