#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

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
  return each_emergency_stop(facts, [&](const site::EmergencyStop& stop) {
    return last_tested(facts, stop.id.text, stop.where, stop.tested, {TestKind::emergency_stop, {stop.id.text}},
                       "enter tested of the emergency stop");
  });
}

std::vector<FigureAt> stop_height(const Facts& facts) {
  return each_emergency_stop(facts, [](const site::EmergencyStop& stop) {
    return entered_amount(stop.id.text, stop.where, stop.height, "enter height of the emergency stop");
  });
}

template <site::Fact site::EmergencyStop::*Member>
std::vector<FigureAt> of_stop_fact(const Facts& facts) {
  return each_emergency_stop(facts, [](const site::EmergencyStop& stop) {
    return entered_fact(stop.id.text, stop.where, stop.*Member,
                        "enter sign, manual_reset and also_cuts_power of the emergency stop");
  });
}

/// Whether some emergency stop stops a pump. One that lists no pumps leaves it open.
std::vector<FigureAt> pump_stopped(const Facts& facts) {
  std::vector<FigureAt> out;
  const auto& stops = facts.site.emergency_stops;
  for (const site::Pump& pump : facts.site.pumps) {
    const bool stopped = std::any_of(stops.begin(), stops.end(), [&](const site::EmergencyStop& stop) {
      return std::find(stop.stops.begin(), stop.stops.end(), pump.id) != stop.stops.end();
    });
    const bool open = std::any_of(stops.begin(), stops.end(), [](const auto& stop) { return stop.stops.empty(); });
    out.push_back(entered_fact(pump.id.text, pump.where, stopped || !open ? site::Fact(stopped) : std::nullopt,
                               "enter stops of each emergency stop"));
  }
  return out;
}

FigureAt of_operations(const Facts& facts) {
  return of_part("station", facts.site.operations ? facts.site.operations->where : facts.site.where);
}

template <site::Fact site::Operations::*Member>
std::vector<FigureAt> of_operation(const Facts& facts) {
  FigureAt out = of_operations(facts);
  if (facts.site.operations) out.fact = (*facts.site.operations).*Member;
  if (!out.fact) out.enter = "enter attended, card_limits and warning_signs of [operations]";
  return {out};
}

std::vector<FigureAt> sale_limit(const Facts& facts) {
  FigureAt out = of_operations(facts);
  if (facts.site.operations && facts.site.operations->sale_limit) {
    out.value = facts.site.operations->sale_limit->likely.si();
  } else {
    out.enter = "enter sale_limit of [operations]";
  }
  return {out};
}

}  // namespace

std::vector<Figure> safety_figures() {
  return {
      amount_figure<Length>("emergency-stop-height", "height of an emergency stop above the floor", "m", stop_height),
      fact_figure("emergency-stop-sign", "a sign at an emergency stop", of_stop_fact<&site::EmergencyStop::sign>),
      fact_figure("emergency-stop-manual-reset", "an emergency stop that only a hand sets back",
                  of_stop_fact<&site::EmergencyStop::manual_reset>),
      fact_figure("emergency-stop-cuts-power", "an emergency stop that cuts the power of the dispensers",
                  of_stop_fact<&site::EmergencyStop::also_cuts_power>),
      fact_figure("pump-stopped", "an emergency stop that stops the pump", pump_stopped),
      fact_figure("attended", "somebody is there while the station is open", of_operation<&site::Operations::attended>),
      amount_figure<Volume>("sale-limit", "volume at which a sale stops until somebody acts", "m3", sale_limit),
      fact_figure("card-limits", "a card that is programmed before limits each sale",
                  of_operation<&site::Operations::card_limits>),
      fact_figure("warning-signs", "signs at the dispensers that warn those who fuel",
                  of_operation<&site::Operations::warning_signs>),
      {"emergency-stop-reach", "distance from a dispenser to the nearest emergency stop", FigureKind::amount,
       &Length::kind(), "m", Measured::fuel, stop_reach},
      {"emergency-stop-clearance", "distance from an emergency stop to the nearest dispenser", FigureKind::amount,
       &Length::kind(), "m", Measured::fuel, stop_clearance},
      {"emergency-stop-tested", "last test of an emergency stop", FigureKind::day, nullptr, "", Measured::age,
       stop_tested},
  };
}

}  // namespace forecourse::checks
