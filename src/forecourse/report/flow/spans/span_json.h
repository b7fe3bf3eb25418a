#pragma once

#include "forecourse/report/json_document.h"
#include "forecourse/studies/flow/rest/rest_results.h"
#include "forecourse/studies/flow/spans/span_results.h"

namespace forecourse::report {

/// What moves the flows, under `spans`.
[[nodiscard]] Json spans_json(const studies::FlowSpans& spans);

/// The piping with all hoses shut, under `lines_at_rest`.
[[nodiscard]] Json lines_at_rest_json(const std::vector<studies::LineAtRest>& lines);

}  // namespace forecourse::report
