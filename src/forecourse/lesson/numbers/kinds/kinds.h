#pragma once

#include <vector>

#include "forecourse/lesson/numbers/number.h"

namespace forecourse::lesson {

// The kinds of number, by what they are picked from.

[[nodiscard]] std::vector<NumberKind> delivery_numbers();
[[nodiscard]] std::vector<NumberKind> tank_numbers();
[[nodiscard]] std::vector<NumberKind> pump_numbers();
[[nodiscard]] std::vector<NumberKind> line_numbers();
[[nodiscard]] std::vector<NumberKind> sump_numbers();
[[nodiscard]] std::vector<NumberKind> shear_valve_numbers();
[[nodiscard]] std::vector<NumberKind> hose_numbers();
[[nodiscard]] std::vector<NumberKind> vapor_numbers();
[[nodiscard]] std::vector<NumberKind> safety_numbers();

}  // namespace forecourse::lesson
