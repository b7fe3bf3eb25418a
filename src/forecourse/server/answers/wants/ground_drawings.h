#pragma once

#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {

/// Drawings of a tank against the ground water: "flotation", "factor-by-water", "factor-by-fill".
[[nodiscard]] bool is_flotation_drawing(const report::Json& drawing);
[[nodiscard]] report::Json flotation_drawing(const Asked& asked);

/// Drawings of vapor: "vapor-pressure", "static-test".
[[nodiscard]] bool is_vapor_drawing(const report::Json& drawing);
[[nodiscard]] report::Json vapor_drawing(const Asked& asked);

}  // namespace forecourse::server
