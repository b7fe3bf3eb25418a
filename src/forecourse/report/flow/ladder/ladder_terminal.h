#pragma once

#include "forecourse/report/terminal/page.h"
#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// Flow against the number of hoses open and the worst states, for each group of hoses. `whole`: every number, hose
/// and line.
void tell_ladders(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool whole,
                  terminal::Page& page);

}  // namespace forecourse::report
