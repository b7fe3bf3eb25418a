#include "forecourse/site/stop.h"

namespace forecourse::site {

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

}  // namespace forecourse::site
