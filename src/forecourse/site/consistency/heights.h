#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/consistency/line_graph.h"

namespace forecourse::site {

/// Heights of hoses and liquid that cannot be meant, and lifts that have no one liquid level to start from.
void check_heights(const Site& site, const LineGraph& graph, Findings& findings);

/// Runs without a length, and lengths that disagree with the plan.
void check_lengths(const Site& site, Findings& findings);

/// Tanks siphoned together hold the same product, and not themselves.
void check_siphons(const Site& site, Findings& findings);

}  // namespace forecourse::site
