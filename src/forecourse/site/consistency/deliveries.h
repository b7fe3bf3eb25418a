#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Compartments of a tanker that go into a tank of another product, and vents that end in the ground.
void check_deliveries(const Site& site, Findings& findings);

}  // namespace forecourse::site
