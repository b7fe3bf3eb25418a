#pragma once

#include "forecourse/base/context.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/studies/incident/options.h"

namespace forecourse::cli {

/// The options of an incident from the command line; false, with all that is wrong on standard error.
[[nodiscard]] bool read_incident_request(const IncidentArguments& arguments, studies::IncidentOptions& options);

/// Independent pieces on all processors, and a bar on standard error where that is a terminal.
[[nodiscard]] Context incident_context(const Console& console);

}  // namespace forecourse::cli
