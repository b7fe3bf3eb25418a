#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::report::drawing {

/// How a product is drawn: "regular" (plain) for the first fuel that is neither diesel nor another gasoline before it,
/// "premium" (hatched slantwise) for the others, "diesel" (level strokes) for diesel and what is like it. The name of
/// the product always stands beside it.
[[nodiscard]] std::string tone_of(const site::Site& site, const std::string& product);

}  // namespace forecourse::report::drawing
