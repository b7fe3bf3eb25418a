#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/consistency/supply.h"

namespace forecourse::site {

/// Every inlet has a line, every hose an inlet and a pump that reaches it, and no pump reaches a foreign product.
void check_reach(const Site& site, const LineGraph& graph, const Supply& supply, Findings& findings);

/// Lines that join a place to itself, loops of check valves, lines that can never flow.
void check_lines(const Site& site, const LineGraph& graph, const Supply& supply, Findings& findings);

}  // namespace forecourse::site
