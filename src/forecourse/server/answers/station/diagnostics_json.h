#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/station/station_parts.h"

namespace forecourse::server {

/// What is wrong with a site file, with line, column and length in code points, and the path of the value it lies in;
/// 0, 0, 0 and null where it lies at no place.
[[nodiscard]] report::Json diagnostics_json(const std::vector<Diagnostic>& diagnostics, const std::string& text,
                                            const std::vector<StationPart>& parts);

/// The same for a text whose parts are not at hand.
[[nodiscard]] report::Json diagnostics_json(const std::vector<Diagnostic>& diagnostics, const std::string& text);

/// The first thing that is wrong with each value.
[[nodiscard]] std::map<std::string, std::string> problems_by_path(const std::vector<Diagnostic>& diagnostics,
                                                                  const std::vector<StationPart>& parts);

}  // namespace forecourse::server
