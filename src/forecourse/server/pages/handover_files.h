#pragma once

#include <string>

#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/http/reply.h"

namespace forecourse::server {

/// The schedule of a station as a table, or its calendar for a phone.
///
/// \param name  "kit.csv", "kit.xlsx" or "calendar.ics"
/// \param asked {"units": "us"|"si"}, which may be missing
/// \return 404 where there is no such file; 400 where more is asked for; 422 where the text cannot be studied
[[nodiscard]] Reply handover_file(const std::string& name, const StationFacts& facts, const RecordsOf& records,
                                  const report::Json& asked);

}  // namespace forecourse::server
