#pragma once

#include <string>

#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/http/reply.h"

namespace forecourse::server {

/// What is handed over with a station, as files: its schedule as a table, its calendar for a phone, its sheets to fill
/// in, its drawings.
///
/// \param name  "kit.csv", "kit.xlsx", "calendar.ics", "sheets.html", and "plan", "section", "tank" or "dispenser" with
///              ".svg" or ".dxf"
/// \param asked {"units": "us"|"si"}, which may be missing
/// \return 404 where there is no such file, or the station has nothing for one; 400 where more is asked for; 422 where
///         the text cannot be studied
[[nodiscard]] Reply handover_file(const std::string& name, const StationFacts& facts, const RecordsOf& records,
                                  const report::Json& asked);

}  // namespace forecourse::server
