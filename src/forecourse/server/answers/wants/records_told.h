#pragma once

#include <vector>

#include "forecourse/base/source_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {

/// The answer where none are given.
[[nodiscard]] report::Json no_records();

/// Where the records are, and whether rows can be entered.
[[nodiscard]] report::Json records_json(const ReadRecords& records);

/// What is wrong with the records, each with its file and line.
[[nodiscard]] report::Json unreadable(const ReadRecords& records, const std::vector<SourceText>& texts);

}  // namespace forecourse::server
