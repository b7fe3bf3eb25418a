#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Barriers that cannot work as they are entered: a fusible link rated below the temperature of the ground.
void check_barriers(const Site& site, Findings& findings);

}  // namespace forecourse::site
