#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Whether what was entered of a tank fits into it: depths, places along it, heads, compartments, what stands inside.
void check_tanks(const Site& site, Findings& findings);

}  // namespace forecourse::site
