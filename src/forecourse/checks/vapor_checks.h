#pragma once

#include <optional>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/site/records/records.h"
#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::checks {

/// What the federal rule for gasoline stations asks at the station's throughput: submerged fill, vapor balance, its
/// connections, settings, leaks and tests of pressure/vacuum valves, and the static pressure test. What hangs on a
/// throughput that is not entered is not determined.
/// \param on the day by which tests are judged overdue; empty: only whether a test is on record is judged
/// \param records the tests in them count beside those of the site file; null: none are given
[[nodiscard]] std::vector<Finding> check_vapor(const site::Site& site, const studies::VaporResult& result,
                                               const std::optional<site::Date>& on = std::nullopt,
                                               const site::records::Records* records = nullptr);

}  // namespace forecourse::checks
