#pragma once

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/consistency/supply.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// Tells of pump controls that run pumps of another product or of another control, and of those that can never start
/// a pump or never hold their pressure, as far as the file alone says so.
void check_controls(const Site& site, const Supply& supply, Findings& findings);

}  // namespace forecourse::site
