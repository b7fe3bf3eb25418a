#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/consistency/supply.h"

namespace forecourse::site {

/// Heights of hoses and liquid that cannot be meant, and lifts that have no one liquid level to start from.
void check_heights(const Site& site, const Supply& supply, Findings& findings);

/// Runs without a length, and lengths that disagree with the plan.
///
/// \param half_read tables in which a value could not be read; it may have been the length
void check_lengths(const Site& site, const std::vector<SourceSpan>& half_read, Findings& findings);

/// Tanks siphoned together hold the same product, and not themselves.
void check_siphons(const Site& site, Findings& findings);

}  // namespace forecourse::site
