#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"

namespace forecourse::checks {

/// Warnings: tests, and looks at interstices, walls, wells and insides, of a part that the station does not have, or
/// not of that kind. They prove nothing.
[[nodiscard]] std::vector<Diagnostic> check_record_parts(const site::records::Records& records, const site::Site& site);

}  // namespace forecourse::checks
