#include <memory>

#include "forecourse/server/http/routes.h"
#include "forecourse/server/pages/station_pages.h"

namespace forecourse::server {

std::vector<Route> report_routes(const Desk& desk) {
  using Access = Route::Access;
  const auto pages = std::make_shared<StationPages>();
  return {{"GET", "/api/report/sections", Access::open,
           [&desk, pages](const Call&) {
             const StationFacts facts = desk.facts();
             return pages->sections(facts.text, facts.file);
           }},
          {"POST", "/api/report", Access::open, [&desk, pages](const Call& call) {
             const StationFacts facts = desk.facts();
             return pages->report(facts.text, facts.file, call.body, call.given_up);
           }}};
}

}  // namespace forecourse::server
