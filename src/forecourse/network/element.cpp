#include "forecourse/network/element.h"

namespace forecourse::network {

const char* word(ElementKind kind) {
  switch (kind) {
    case ElementKind::pump:
      return "pump";
    case ElementKind::check_valve:
      return "check valve";
    case ElementKind::leak_detector:
      return "leak detector";
    case ElementKind::leg:
      return "leg";
    case ElementKind::line:
      return "line";
    case ElementKind::connection:
      return "connection";
    case ElementKind::riser:
      return "riser";
    case ElementKind::shear_valve:
      return "shear valve";
    case ElementKind::filter:
      return "filter";
    case ElementKind::meter:
      return "meter";
    case ElementKind::hose_set:
      return "dispenser and hose";
    case ElementKind::control_valve:
      return "control valve";
    case ElementKind::whip_hose:
      return "whip hose";
    case ElementKind::breakaway:
      return "breakaway";
    case ElementKind::curb_hose:
      return "curb hose";
    case ElementKind::swivel:
      return "swivel";
    case ElementKind::nozzle:
      return "nozzle";
  }
  return "part";
}

}  // namespace forecourse::network
