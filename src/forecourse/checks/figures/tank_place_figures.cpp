#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/studies/delivery/limits.h"

namespace forecourse::checks {
namespace {

// ---- vents -------------------------------------------------------------------------------------------

FigureAt vent_size_of(const site::Vent& vent, std::string name) {
  FigureAt out = of_part(std::move(name), vent.where);
  out.value = vent_nominal(vent);
  out.deviation = 0.0;  // a nominal size is met or not
  if (!out.value) out.enter = "enter pipe = { length, bore } of the vent";
  return out;
}

std::vector<FigureAt> vent_size(const Facts& facts) {
  return each_vent(facts, [](const site::Tank&, const site::Vent& vent, std::string name) {
    return vent_size_of(vent, std::move(name));
  });
}

/// Greatest flow into tanks that breathe through a vent, of the deliveries as entered [m3/s]; empty: not known.
std::optional<double> flow_through(const Facts& facts, const site::Tank& own, const site::Vent& vent) {
  std::optional<double> most;
  for (const site::Delivery& delivery : facts.site.deliveries) {
    int drops = 0;
    for (const site::TruckCompartment& from : delivery.compartments) {
      const auto& tanks = facts.site.tanks;
      drops += static_cast<int>(std::count_if(tanks.begin(), tanks.end(), [&](const site::Tank& tank) {
        return tank.id == from.tank && breathes_through(vent, own, tank);
      }));
    }
    if (drops == 0) continue;
    if (!delivery.rate || (drops > 1 && !delivery.at_once)) return std::nullopt;
    const int at_once = delivery.at_once ? static_cast<int>(delivery.at_once->likely) : 1;
    const double flow = std::min(drops, at_once) * delivery.rate->likely.si();
    most = std::max(most.value_or(0.0), flow);
  }
  return most;
}

/// With its own limit, by the table of flow and length.
std::vector<FigureAt> vent_size_for_flow(const Facts& facts) {
  return each_vent(facts, [&](const site::Tank& tank, const site::Vent& vent, std::string name) {
    FigureAt out = vent_size_of(vent, std::move(name));
    const std::optional<double> flow = flow_through(facts, tank, vent);
    const std::optional<double> length = vent_length(vent);
    if (!flow || !length) {
      out.value.reset();
      out.enter = !flow ? "enter rate of each delivery into the tank, and at_once where it has several drops"
                        : "enter length of the vent's pipe, and of its branch where it has one";
      return out;
    }
    out.at_least = studies::vent_size(*flow, *length);
    if (!out.at_least) out.enter = "the table of vent sizes ends before this flow and length; have an engineer size it";
    return out;
  });
}

/// Of vents that ask for it: shorter than 10 ft, or wider than 2 in.
/// \source [osha_1910_106, (b)(3)(iv)(a)]
std::vector<FigureAt> vent_guarded(const Facts& facts) {
  return each_vent(facts, [](const site::Tank&, const site::Vent& vent, std::string name) {
    FigureAt out = of_part(std::move(name), vent.where);
    const std::optional<double> size = vent_nominal(vent);
    const bool length = vent.pipe && vent.pipe->length;
    const bool is_short = length && vent.pipe->length->likely.si() < to_si(10.0, "ft");
    const bool is_wide = size && *size > to_si(2.0, "in");
    if (length && size && !is_short && !is_wide) {
      out.exempt = "the vent is 10 ft long or more, and no wider than 2 in";
    } else if (!is_short && !is_wide) {
      out.enter = "enter pipe = { length, bore } of the vent";
    } else if (vent.valve || vent.flame_arrester) {
      out.fact = vent.valve.has_value() || *vent.flame_arrester;
    } else {
      out.enter = "enter valve or flame_arrester of the vent";
    }
    return out;
  });
}

template <site::Fact site::Vent::*Member>
std::vector<FigureAt> of_vent(const Facts& facts) {
  return each_vent(facts, [](const site::Tank&, const site::Vent& vent, std::string name) {
    return entered_fact(std::move(name), vent.where, vent.*Member, "enter upward and drains of the vent");
  });
}

/// How far a vent's outlet lies above the highest fill of its tank.
std::vector<FigureAt> vent_above_fill(const Facts& facts) {
  return each_vent(facts, [](const site::Tank& tank, const site::Vent& vent, std::string name) {
    FigureAt out = of_part(std::move(name), vent.where);
    std::optional<double> highest;
    bool known = vent.outlet_elevation.has_value() && !tank.fills.empty();
    for (const site::Fill& fill : tank.fills) {
      known = known && fill.elevation;
      if (fill.elevation)
        highest = std::max(highest.value_or(fill.elevation->likely.si()), fill.elevation->likely.si());
    }
    if (known)
      out.value = vent.outlet_elevation->likely.si() - *highest;
    else
      out.enter = "enter outlet_elevation of the vent and elevation of the fill";
    return out;
  });
}

// ---- fills -------------------------------------------------------------------------------------------

template <site::Fact site::Fill::*Member>
std::vector<FigureAt> of_fill(const Facts& facts) {
  return each_fill(facts, [](const site::Tank&, const site::Fill& fill, std::string name) {
    return entered_fact(std::move(name), fill.where, fill.*Member,
                        "enter outside, tight, through_top and slopes of the fill");
  });
}

/// Grade is elevation zero.
std::vector<FigureAt> fill_height(const Facts& facts) {
  return each_fill(facts, [](const site::Tank&, const site::Fill& fill, std::string name) {
    return entered_amount(std::move(name), fill.where, fill.elevation, "enter elevation of the fill");
  });
}

std::vector<FigureAt> capacity_at_fill(const Facts& facts) {
  return each_fill(facts, [](const site::Tank& tank, const site::Fill&, std::string name) {
    return entered_amount(std::move(name), tank.where, tank.capacity, "enter capacity of the tank");
  });
}

std::vector<FigureAt> fill_into_buried(const Facts& facts) {
  return each_fill(facts, [](const site::Tank& tank, const site::Fill&, std::string name) {
    return entered_fact(std::move(name), tank.where, is_buried(tank), "enter above_ground of the tank");
  });
}

std::vector<FigureAt> fill_of_gasoline(const Facts& facts) {
  return each_fill(facts, [&](const site::Tank& tank, const site::Fill&, std::string name) {
    return entered_fact(std::move(name), tank.where, is_gasoline(product_of(facts.site, tank.product)),
                        "enter product of the tank, and kind of the product");
  });
}

std::vector<FigureAt> fill_pipe_end(const Facts& facts) {
  return each_fill(facts, [](const site::Tank&, const site::Fill& fill, std::string name) {
    const site::Maybe<Length> none;
    return entered_amount(std::move(name), fill.where, fill.drop_tube ? fill.drop_tube->end_above_bottom : none,
                          "enter drop_tube = { end_above_bottom = ... } of the fill");
  });
}

std::vector<FigureAt> spill_room(const Facts& facts) {
  return each_fill(facts, [](const site::Tank&, const site::Fill& fill, std::string name) {
    const site::Maybe<Volume> none;
    return entered_amount(std::move(name), fill.where, fill.spill_container ? fill.spill_container->volume : none,
                          "enter spill_container = { volume = ... } of the fill; else one is to be fitted");
  });
}

std::vector<FigureAt> gauged(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Delivery& delivery : facts.site.deliveries) {
    out.push_back(entered_fact(delivery.id.text, delivery.where, delivery.gauged, "enter gauged of the delivery"));
  }
  return out;
}

}  // namespace

std::vector<Figure> tank_place_figures() {
  return {
      amount_figure<Length>("vent-size", "nominal size of a vent", "m", vent_size),
      amount_figure<Length>("vent-size-for-flow", "nominal size of a vent, at the flow and length that it has", "m",
                            vent_size_for_flow),
      fact_figure("vent-guarded", "a pressure/vacuum valve or flame arrester on a short or wide vent", vent_guarded),
      fact_figure("vent-upward", "a vent that blows upward, or away from walls", of_vent<&site::Vent::upward>),
      fact_figure("vent-drains", "a vent that drains to its tank and enters through the top",
                  of_vent<&site::Vent::drains>),
      amount_figure<Length>("vent-above-fill", "height of a vent's outlet over the fill", "m", vent_above_fill),
      amount_figure<Length>("fill-height", "height of a fill above grade", "m", fill_height),
      fact_figure("fill-outside", "a fill out of doors", of_fill<&site::Fill::outside>),
      fact_figure("fill-tight", "a fill that the tanker's hoses join tightly", of_fill<&site::Fill::tight>),
      fact_figure("fill-through-top", "a fill that enters the tank through its top", of_fill<&site::Fill::through_top>),
      fact_figure("fill-slopes", "a fill that falls toward the tank", of_fill<&site::Fill::slopes>),
      amount_figure<Volume>("fill-tank-capacity", "capacity of the tank under a fill", "m3", capacity_at_fill),
      fact_figure("fill-into-buried", "a fill of a buried tank", fill_into_buried),
      fact_figure("fill-of-gasoline", "a fill for gasoline", fill_of_gasoline),
      amount_figure<Length>("fill-pipe-end", "height of a fill pipe's end over the tank's bottom", "m", fill_pipe_end),
      amount_figure<Volume>("spill-room", "volume of the spill container of a fill", "m3", spill_room),
      fact_figure("gauged-before-drop", "room in the tank measured before each drop", gauged),
  };
}

}  // namespace forecourse::checks
