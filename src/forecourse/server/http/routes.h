#pragma once

#include <vector>

#include "forecourse/server/desk/desk.h"
#include "forecourse/server/http/route.h"
#include "forecourse/server/http/runs.h"

namespace forecourse::server {

/// The open site: to read it, change it, undo, open another one.
[[nodiscard]] std::vector<Route> site_routes(Desk& desk);

/// Answers to wants, at once.
[[nodiscard]] std::vector<Route> ask_routes(const Desk& desk);

/// Long wants.
[[nodiscard]] std::vector<Route> run_routes(const Desk& desk, Runs& runs);

/// The report of the open site: what can be in it, and the report itself as a page or as a PDF.
[[nodiscard]] std::vector<Route> report_routes(const Desk& desk);

}  // namespace forecourse::server
