#pragma once

#include <vector>

#include "forecourse/server/desk/desk.h"
#include "forecourse/server/http/route.h"

namespace forecourse::server {

/// The report of the open site: what can be in it, and the report itself as a page or as a PDF.
[[nodiscard]] std::vector<Route> report_routes(const Desk& desk);

}  // namespace forecourse::server
