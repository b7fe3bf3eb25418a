#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/json_document.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// The flow study's part under `result`: systems, hoses in the three states every station is asked about, and each
/// asked state with its hoses, pumps, places, lines and the solver's report.
[[nodiscard]] Json result_json(const studies::FlowResult& result);

/// The options as used.
[[nodiscard]] Json options_json(const studies::FlowOptions& options);

/// The whole document of the flow study.
[[nodiscard]] Json flow_document(const studies::FlowResult& result, const std::vector<SourceText>& texts = {},
                                 const std::vector<checks::Finding>& findings = {});

}  // namespace forecourse::report
