#pragma once

#include "forecourse/report/terminal/page.h"
#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// What moves the flows of the first open set, and times to first flow, as compact tables; nothing where nothing of
/// them is determined.
/// \param verbose all rows, and why what is missing is not determined
void tell_spans(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool verbose,
                terminal::Page& page);
void tell_lines_at_rest(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool verbose,
                        terminal::Page& page);

}  // namespace forecourse::report
