#include <cmath>
#include <limits>

#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

constexpr const char* of_stop = "enter position of the emergency stop and of the dispensers";

double distance(const site::Position& a, const site::Position& b) {
  return std::hypot(a.x.si() - b.x.si(), a.y.si() - b.y.si());
}

/// From each dispenser to the nearest stop.
std::vector<FigureAt> stop_reach(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    FigureAt one;
    one.subject = dispenser.id.text;
    one.where = dispenser.where;
    bool all_known = dispenser.position.has_value();
    double nearest = std::numeric_limits<double>::infinity();
    for (const site::EmergencyStop& stop : facts.site.emergency_stops) {
      all_known = all_known && stop.position;
      if (dispenser.position && stop.position)
        nearest = std::min(nearest, distance(*dispenser.position, *stop.position));
    }
    if (facts.site.emergency_stops.empty()) {
      one.enter = "enter [[emergency_stop]]; else one is to be fitted";
    } else if (!all_known) {
      one.enter = of_stop;
    } else {
      one.value = nearest;
    }
    out.push_back(std::move(one));
  }
  return out;
}

/// From each stop to the nearest dispenser.
std::vector<FigureAt> stop_clearance(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::EmergencyStop& stop : facts.site.emergency_stops) {
    FigureAt one;
    one.subject = stop.id.text;
    one.where = stop.where;
    bool all_known = stop.position.has_value() && !facts.site.dispensers.empty();
    double nearest = std::numeric_limits<double>::infinity();
    for (const site::Dispenser& dispenser : facts.site.dispensers) {
      all_known = all_known && dispenser.position;
      if (dispenser.position && stop.position)
        nearest = std::min(nearest, distance(*dispenser.position, *stop.position));
    }
    if (all_known) {
      one.value = nearest;
    } else {
      one.enter = of_stop;
    }
    out.push_back(std::move(one));
  }
  return out;
}

std::vector<FigureAt> stop_tested(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::EmergencyStop& stop : facts.site.emergency_stops) {
    out.push_back(entered_day(stop.id.text, stop.where, stop.tested, "enter tested of the emergency stop"));
  }
  return out;
}

}  // namespace

std::vector<Figure> safety_figures() {
  return {
      {"emergency-stop-reach", "distance from a dispenser to the nearest emergency stop", FigureKind::amount,
       &Length::kind(), "m", Measured::fuel, stop_reach},
      {"emergency-stop-clearance", "distance from an emergency stop to the nearest dispenser", FigureKind::amount,
       &Length::kind(), "m", Measured::fuel, stop_clearance},
      {"emergency-stop-tested", "last test of an emergency stop", FigureKind::day, nullptr, "", Measured::age,
       stop_tested},
  };
}

}  // namespace forecourse::checks
