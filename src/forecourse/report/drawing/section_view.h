#pragma once

#include <string>

#include "forecourse/report/drawing/section.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report::drawing {

/// The developed section of the course to an open hose, from what was entered and what the study found. A number that
/// is not known is left empty and said in words; nothing is made up.
[[nodiscard]] Section section_of(const site::Site& site, const studies::SystemFlow& system,
                                 const studies::HoseFlow& hose, site::Display display, bool heights_known,
                                 const std::string& id);

/// What the drawing could not show because it was not entered; sentences.
[[nodiscard]] std::vector<std::string> remarks(const Section& section);

/// The band as a table.
[[nodiscard]] html::Table stops_table(const Section& section);

}  // namespace forecourse::report::drawing
