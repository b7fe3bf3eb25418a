#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"

namespace forecourse::checks {

/// What cannot be in records on a day: tests, inspections and provings that lie after it are errors. Tests of one kind
/// and part that were passed and failed on one day, in an order that is not told, are a warning: such a day proves
/// nothing.
[[nodiscard]] std::vector<Diagnostic> check_records(const site::records::Records& records, const site::Date& today);

/// All that is wrong with the days of the records of a station, and then with the parts that they name.
/// \param records null: none are given, and nothing is wrong
[[nodiscard]] std::vector<Diagnostic> check_days_and_parts(const site::records::Records* records,
                                                           const site::Site& site, const site::Date& today);

}  // namespace forecourse::checks
