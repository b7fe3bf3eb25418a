#pragma once

#include <string>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/studies/incident/options.h"

namespace forecourse::server {

/// The members of a want that asks for an incident: "kind" and all that changes it. Whether parts and hoses are there
/// is told by `check_options` of the study.
[[nodiscard]] Parsed<studies::IncidentOptions> read_incident_want(WantReader& want);

/// The same for wants that ask for the same incident, drawn or told.
[[nodiscard]] std::string incident_key(const report::Json& want);

}  // namespace forecourse::server
