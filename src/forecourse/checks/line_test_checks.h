#pragma once

#include <optional>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/site/records/records.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::checks {

/// Leak detectors and line tests against the federal rule on underground storage tanks.
///
/// \param on the day by which tests are judged overdue; empty: they are not
/// \param records the tests in them count beside those of the site file; null: none are given
[[nodiscard]] std::vector<Finding> check_line_test(const site::Site& site, const studies::LineTestResult& result,
                                                   const std::optional<site::Date>& on,
                                                   const site::records::Records* records = nullptr);

}  // namespace forecourse::checks
