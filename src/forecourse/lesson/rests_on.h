#pragma once

#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::lesson {

/// What a result rests on that nobody entered and no source gives: "roughness of line trunk, illustrative"; each once.
///
/// \param system only what serves this piping system, or all of them; empty: whatever there is
[[nodiscard]] std::vector<std::string> rests_on(const std::vector<DefaultUsed>& defaults,
                                                const std::string& system = {});
/// The same of what an incident was computed with.
[[nodiscard]] std::vector<std::string> rests_on(const std::vector<studies::InputUsed>& inputs);
/// The same of an incident, with its inputs.
[[nodiscard]] std::vector<std::string> rests_on(const studies::IncidentResult& result);

/// The first of them; empty: it rests on none.
[[nodiscard]] std::string first_of(const std::vector<std::string>& words);

}  // namespace forecourse::lesson
