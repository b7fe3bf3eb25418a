#include "forecourse/handover/parts/station_parts.h"

#include "forecourse/handover/parts/part_list.h"

namespace forecourse::handover {

std::vector<StationPart> parts_of_station(const site::Site& site) {
  PartList out;
  list_deliveries(site, out);
  list_tanks(site, out);
  list_piping(site, out);
  list_dispensers(site, out);
  list_safety(site, out);
  return std::move(out).in_course_order();
}

std::vector<const StationPart*> of_kind(const std::vector<StationPart>& parts, std::string_view kind) {
  std::vector<const StationPart*> out;
  for (const StationPart& part : parts) {
    if (part.kind == kind) out.push_back(&part);
  }
  return out;
}

}  // namespace forecourse::handover
