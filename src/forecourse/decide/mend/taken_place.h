#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::decide {

/// What stands where a part was moved to: another part within a meter of a dispenser or a vapor processor, a tank where
/// a tank is, a building, or beyond a lot line.
/// \return empty: nothing that was not as near before
/// \source common practice, no source
[[nodiscard]] std::string taken_by(const site::Site& before, const site::Site& after);

}  // namespace forecourse::decide
