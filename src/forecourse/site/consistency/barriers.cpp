#include "forecourse/site/consistency/barriers.h"

#include <fmt/format.h>

#include "forecourse/site/places.h"

namespace forecourse::site {
namespace {

void check_link(const Site& site, const std::string& place, const ShearValve& valve, Findings& findings) {
  if (!valve.fusible_link) return;
  const double rated = valve.fusible_link->low.si();
  if (site.ground_temperature && rated <= site.ground_temperature->likely.si()) {
    Diagnostic& d = findings.error(
        valve.fusible_link->where,
        fmt::format("the fusible link of '{}' is rated no higher than the temperature of the ground", place),
        "check the rating: 165 degF is common");
    relate(d, site.ground_temperature->where, "temperature of the ground");
  }
}

}  // namespace

void check_barriers(const Site& site, Findings& findings) {
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      if (inlet.shear_valve) check_link(site, place_name(dispenser, inlet), *inlet.shear_valve, findings);
    }
  }
}

}  // namespace forecourse::site
