#pragma once

#include <vector>

#include "forecourse/server/desk/desk.h"
#include "forecourse/server/http/route.h"
#include "forecourse/server/http/runs.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {

/// The open site: to read it, change it, undo, open another one.
[[nodiscard]] std::vector<Route> site_routes(Desk& desk);

/// Answers to wants, at once.
[[nodiscard]] std::vector<Route> ask_routes(const Desk& desk, StationRecords& records);

/// Long wants.
[[nodiscard]] std::vector<Route> run_routes(const Desk& desk, Runs& runs, StationRecords& records);

/// Rows entered into the store of the station's records.
[[nodiscard]] std::vector<Route> records_routes(const Desk& desk, StationRecords& records);

/// Schedule and calendar of the open site as files.
[[nodiscard]] std::vector<Route> handover_routes(const Desk& desk, StationRecords& records);

/// The report of the open site: what can be in it, and the report itself as a page or as a PDF.
[[nodiscard]] std::vector<Route> report_routes(const Desk& desk);

}  // namespace forecourse::server
