#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

/// Inlets are fed by submersible pumps: a suction system is not described by a site file.
std::vector<FigureAt> shear_valve_fitted(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      FigureAt one;
      one.subject = site::place_name(dispenser, inlet);
      one.where = inlet.where;
      one.fact = inlet.shear_valve.has_value();
      out.push_back(std::move(one));
    }
  }
  return out;
}

std::vector<FigureAt> shear_valve_tested(const Facts& facts) {
  return each_shear_valve(facts, [&](const std::string& id, const site::ShearValve& valve, const site::Dispenser&) {
    return shear_valve_trip(facts, id, valve);
  });
}

/// How far the shear groove lies above the island's top; below it, less than zero.
std::vector<FigureAt> shear_groove_offset(const Facts& facts) {
  return each_shear_valve(facts, [](std::string id, const site::ShearValve& valve, const site::Dispenser& dispenser) {
    FigureAt out = of_part(std::move(id), valve.where);
    if (valve.groove_elevation && dispenser.elevation) {
      out.value = valve.groove_elevation->likely.si() - dispenser.elevation->likely.si();
    } else {
      out.enter = "enter groove_elevation of the shear valve and elevation of the dispenser";
    }
    return out;
  });
}

std::vector<FigureAt> shear_valve_clear(const Facts& facts) {
  return each_shear_valve(facts, [](std::string id, const site::ShearValve& valve, const site::Dispenser&) {
    return entered_fact(std::move(id), valve.where, valve.clear, "enter clear of the shear valve");
  });
}

std::vector<FigureAt> island_height(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    return entered_amount(one.id.text, one.where, one.island_height, "enter island_height of the dispenser");
  });
}

std::vector<FigureAt> guard(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    return entered_fact(one.id.text, one.where, one.guarded, "enter guarded of the dispenser");
  });
}

/// By an island of any height, or by something else.
std::vector<FigureAt> guarded(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    const bool island = one.island_height && one.island_height->likely.si() > 0.0;
    const bool known = island || one.guarded.value_or(false) || (one.island_height && one.guarded);
    return entered_fact(one.id.text, one.where,
                        known ? site::Fact(island || one.guarded.value_or(false)) : std::nullopt,
                        "enter island_height or guarded of the dispenser");
  });
}

std::vector<FigureAt> fastened(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    return entered_fact(one.id.text, one.where, one.fastened, "enter fastened of the dispenser");
  });
}

std::vector<FigureAt> vehicle_inside(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    return entered_fact(one.id.text, one.where, one.vehicle_inside, "enter vehicle_inside of the dispenser");
  });
}

std::vector<FigureAt> nozzle_switch(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& one) {
    return entered_fact(one.id.text, one.where, one.nozzle_switch, "enter nozzle_switch of the dispenser");
  });
}

template <site::Fact site::VaporLine::*Member>
std::vector<FigureAt> of_vapor_line(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& one : facts.site.dispensers) {
    if (!one.vapor_line) continue;
    out.push_back(entered_fact(one.id.text, one.vapor_line->where, (*one.vapor_line).*Member,
                               "enter breaks, shear_mounted, drains and closes of the vapor line"));
  }
  return out;
}

}  // namespace

std::vector<Figure> dispenser_figures() {
  return {
      amount_figure<Length>("shear-groove-offset", "height of the shear groove over the top of the island", "m",
                            shear_groove_offset),
      fact_figure("shear-valve-clear", "room around a shear valve's body and moving parts", shear_valve_clear),
      amount_figure<Length>("island-height", "height of a dispenser's island above the drive", "m", island_height),
      fact_figure("dispenser-guard", "something else than its island that guards a dispenser", guard),
      fact_figure("dispenser-guarded", "an island or something else that guards a dispenser", guarded),
      fact_figure("dispenser-fastened", "a dispenser bolted to its mounting", fastened),
      fact_figure("vehicle-inside", "a vehicle that fuels stands on the premises", vehicle_inside),
      fact_figure("nozzle-switch", "a pump that runs only with a nozzle off its bracket", nozzle_switch),
      fact_figure("vapor-line-breaks", "a vapor line in a dispenser that lets the liquid's valve act",
                  of_vapor_line<&site::VaporLine::breaks>),
      fact_figure("vapor-line-shear-mounted", "a vapor line's shear joint rigidly mounted and flush",
                  of_vapor_line<&site::VaporLine::shear_mounted>),
      fact_figure("vapor-line-drains", "a vapor line that drains to the tank without a trap",
                  of_vapor_line<&site::VaporLine::drains>),
      fact_figure("vapor-line-closes", "a vapor line that is shut while nothing is dispensed",
                  of_vapor_line<&site::VaporLine::closes>),
      {"shear-valve-fitted", "a shear valve under the dispenser", FigureKind::fact, nullptr, "", Measured::fuel,
       shear_valve_fitted},
      {"shear-valve-tested", "last trip test of a shear valve", FigureKind::day, nullptr, "", Measured::age,
       shear_valve_tested},
  };
}

}  // namespace forecourse::checks
