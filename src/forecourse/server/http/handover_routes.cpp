#include "forecourse/server/http/routes.h"
#include "forecourse/server/pages/handover_files.h"

namespace forecourse::server {

std::vector<Route> handover_routes(const Desk& desk, StationRecords& records) {
  return {{"POST", "/api/handover/", Route::Access::open, [&desk, &records](const Call& call) {
             const StationFacts facts = desk.facts();
             return handover_file(call.tail, facts, records.of(facts.path), call.body);
           }}};
}

}  // namespace forecourse::server
