#include "forecourse/lesson/pages/page_parts.h"

#include <algorithm>

#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

using site::Site;
using Ids = std::vector<std::string>;

/// The ids of those that are meant.
template <class Part, class Is>
Ids ids_of(const std::vector<Part>& parts, Is is) {
  Ids out;
  for (const Part& part : parts) {
    if (!part.id.empty() && is(part)) out.push_back(part.id.text);
  }
  return out;
}

template <class Part>
Ids ids_of(const std::vector<Part>& parts) {
  return ids_of(parts, [](const Part&) { return true; });
}

/// Whether an incident at `where` is at this part: at itself, or at the dispenser that bears it.
bool is_there(const std::string& part, const std::string& where) {
  return part == where || part.rfind(where + ".", 0) == 0;
}

/// Those at which the file describes such an incident come first.
Ids described_first(const Site& site, const char* incident, Ids ids) {
  for (const site::IncidentRequest& request : site.incidents) {
    if (request.kind.text != incident || request.at.empty()) continue;
    const auto here = [&](const std::string& id) { return is_there(id, request.at.text); };
    std::stable_partition(ids.begin(), ids.end(), here);
    break;
  }
  return ids;
}

/// The places of the inlets that are meant.
template <class Is>
Ids inlets(const Site& site, Is is) {
  Ids out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      const std::string place = site::place_name(dispenser, inlet);
      if (!place.empty() && is(inlet)) out.push_back(place);
    }
  }
  return out;
}

bool has_valve(const site::Inlet& inlet) { return inlet.shear_valve.has_value(); }

/// The ids of the hoses that are meant; each is asked with its dispenser.
template <class Is>
Ids hoses_that(const Site& site, Is is) {
  Ids out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (!hose.id.empty() && is(dispenser, hose)) out.push_back(hose.id.text);
    }
  }
  return out;
}

/// Whether an inlet that feeds a hose has a part that its hoses share.
bool is_shared(const site::Dispenser& dispenser, const site::Hose& hose,
               const std::optional<site::Part> site::Inlet::*part) {
  const auto feeds = [&](const site::Inlet& inlet) {
    const auto of_it = [&](const site::BlendShare& share) { return share.product == inlet.product; };
    return inlet.product == hose.product || std::any_of(hose.blend.begin(), hose.blend.end(), of_it);
  };
  return std::any_of(dispenser.inlets.begin(), dispenser.inlets.end(),
                     [&](const site::Inlet& inlet) { return feeds(inlet) && (inlet.*part).has_value(); });
}

/// Those that a delivery fills come first.
Ids filled_first(const Site& site, Ids ids) {
  const auto is_filled = [&](const std::string& id) {
    return std::any_of(site.deliveries.begin(), site.deliveries.end(), [&](const site::Delivery& delivery) {
      return std::any_of(delivery.compartments.begin(), delivery.compartments.end(),
                         [&](const site::TruckCompartment& one) { return one.tank.text == id; });
    });
  };
  std::stable_partition(ids.begin(), ids.end(), is_filled);
  return ids;
}

}  // namespace

Ids deliveries(const Site& site) { return ids_of(site.deliveries); }

Ids tanks_with_fill(const Site& site) {
  return filled_first(site, ids_of(site.tanks, [](const site::Tank& tank) { return !tank.fills.empty(); }));
}

Ids tanks_with_overfill_valve(const Site& site) {
  return filled_first(site, ids_of(site.tanks, [](const site::Tank& tank) {
                        return std::any_of(tank.fills.begin(), tank.fills.end(),
                                           [](const site::Fill& fill) { return fill.overfill_valve.has_value(); });
                      }));
}

Ids tanks(const Site& site) { return filled_first(site, ids_of(site.tanks)); }

Ids tanks_by_water(const Site& site) {
  Ids read = ids_of(site.tanks, [](const site::Tank& tank) { return tank.reading && tank.reading->water; });
  const Ids others = ids_of(site.tanks, [](const site::Tank& tank) { return !tank.reading || !tank.reading->water; });
  read.insert(read.end(), others.begin(), others.end());
  return read;
}

Ids tanks_with_vapor_return(const Site& site) {
  return filled_first(site, ids_of(site.tanks, [](const site::Tank& tank) { return tank.vapor_return.has_value(); }));
}

Ids tanks_with_vent(const Site& site) {
  return filled_first(site, ids_of(site.tanks, [](const site::Tank& tank) { return !tank.vents.empty(); }));
}

Ids tanks_with_sump(const Site& site) {
  return ids_of(site.tanks, [](const site::Tank& tank) { return tank.sump.has_value(); });
}

Ids pumps(const Site& site) { return ids_of(site.pumps); }

Ids pumps_with_detector(const Site& site) {
  return ids_of(site.pumps, [](const site::Pump& pump) { return pump.leak_detector.has_value(); });
}

Ids double_walled_lines(const Site& site) {
  return ids_of(site.lines, [](const site::Line& line) { return line.double_wall == true; });
}

Ids lines(const Site& site) { return ids_of(site.lines); }

Ids dispensers_with_sump(const Site& site) {
  return ids_of(site.dispensers, [](const site::Dispenser& dispenser) { return dispenser.sump.has_value(); });
}

Ids shear_valves(const Site& site) { return described_first(site, "struck", inlets(site, has_valve)); }

Ids shear_valves_cracked(const Site& site) { return described_first(site, "crack", inlets(site, has_valve)); }

Ids shear_valves_with_link(const Site& site) {
  return described_first(site, "sump-fire", inlets(site, [](const site::Inlet& inlet) {
                           return inlet.shear_valve && inlet.shear_valve->fusible_link;
                         }));
}

Ids hoses(const Site& site) {
  return hoses_that(site, [](const site::Dispenser&, const site::Hose&) { return true; });
}

Ids hoses_with_filter(const Site& site) {
  return hoses_that(site, [](const site::Dispenser& dispenser, const site::Hose& hose) {
    return hose.filter || is_shared(dispenser, hose, &site::Inlet::filter);
  });
}

Ids hoses_with_meter(const Site& site) {
  return hoses_that(site, [](const site::Dispenser& dispenser, const site::Hose& hose) {
    return hose.meter || is_shared(dispenser, hose, &site::Inlet::meter);
  });
}

Ids hoses_with_whip(const Site& site) {
  return described_first(site, "drive-off", hoses_that(site, [](const site::Dispenser&, const site::Hose& hose) {
                           return hose.whip.has_value();
                         }));
}

Ids hoses_with_breakaway(const Site& site) {
  return described_first(site, "drive-off", hoses_that(site, [](const site::Dispenser&, const site::Hose& hose) {
                           return hose.breakaway.has_value();
                         }));
}

Ids hoses_with_curb(const Site& site) {
  return hoses_that(site, [](const site::Dispenser&, const site::Hose& hose) { return hose.curb.has_value(); });
}

Ids hoses_with_swivel(const Site& site) {
  return hoses_that(site, [](const site::Dispenser&, const site::Hose& hose) { return hose.swivel.has_value(); });
}

Ids emergency_stops(const Site& site) { return ids_of(site.emergency_stops); }

Ids interlocks(const Site& site) { return ids_of(site.interlocks); }

}  // namespace forecourse::lesson
