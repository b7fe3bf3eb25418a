#include "forecourse/handover/parts/station_parts.h"

#include "forecourse/handover/parts/part_list.h"

namespace forecourse::handover {

const char* word(Stop stop) {
  switch (stop) {
    case Stop::tanker:
      return "tanker";
    case Stop::fill:
      return "fill";
    case Stop::tank:
      return "tank";
    case Stop::pump:
      return "pump";
    case Stop::line:
      return "line";
    case Stop::sump:
      return "sump";
    case Stop::shear_valve:
      return "shear valve";
    case Stop::meter:
      return "meter";
    case Stop::hose:
      return "hose";
    case Stop::nozzle:
      return "nozzle";
    case Stop::vapor:
      return "vapor";
    case Stop::station:
      break;
  }
  return "whole station";
}

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
