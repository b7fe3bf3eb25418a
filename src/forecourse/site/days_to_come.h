#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Tells of the days on which something was tested, read, looked at or repaired, and that lie behind `today`: what is
/// yet to come proves nothing. Days on which a part is installed, replaced or changed over may be planned.
[[nodiscard]] std::vector<Diagnostic> days_to_come(const Site& site, const Date& today);

}  // namespace forecourse::site
