#pragma once

#include <string>

#include "forecourse/site/site.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// A station with three dispensers of two hoses each on one pump, as a study would give it; the numbers are round
/// ones of the right size, put together by hand so that the pressure budgets add up.
[[nodiscard]] studies::FlowResult sample_result();

/// What the writers need of the station itself.
[[nodiscard]] site::Site sample_site(site::Display display = site::Display::us, const std::string& name = "Site S");

/// A second piping that is not determined, with an error in the file; appended to `result`.
void add_undetermined(studies::FlowResult& result);

/// The text that the spans of the sample's warnings point into.
[[nodiscard]] std::string sample_text();

}  // namespace forecourse::report
