#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Rule sets that a site names and that there are not.
void check_rule_names(const Site& site, Findings& findings);

}  // namespace forecourse::site
