#pragma once

#include <string>

#include "forecourse/site/site.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// The section "What moves the flow": figure, words and table; empty when no open set was asked.
[[nodiscard]] std::string spans_section(const studies::FlowResult& result, site::Display display);

/// The section "The line at rest": one table of all piping; empty when there is none.
[[nodiscard]] std::string rest_section(const studies::FlowResult& result, site::Display display);

}  // namespace forecourse::report
