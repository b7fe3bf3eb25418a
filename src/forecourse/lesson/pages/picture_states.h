#pragma once

#include <string_view>
#include <vector>

#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/numbers/number.h"

namespace forecourse::lesson {

/// The states in which a page's picture stands, at the part at hand. A value that no study tells is not there.
[[nodiscard]] std::vector<PictureState> picture_states(std::string_view page, const From& from);

}  // namespace forecourse::lesson
