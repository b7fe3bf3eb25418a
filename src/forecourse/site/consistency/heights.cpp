#include "forecourse/site/consistency/heights.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/places.h"

namespace forecourse::site {

namespace {

constexpr double same_level = 1e-3;       // [m] closer levels count as one
constexpr double highest_sane = 15.0;     // [m] no pump of a station lifts fuel further; common practice, no source
constexpr double largest_mismatch = 0.2;  // share by which a length may differ from the plan

std::string in_feet(double meters) { return show_quantity(meters, "ft"); }

std::optional<double> liquid_level(const Tank& tank) {
  if (tank.surface_elevation) return tank.surface_elevation->likely.si();
  if (!tank.bottom_elevation || !tank.reading || !tank.reading->depth) return std::nullopt;
  const double pitch = tank.shape && tank.shape->pitch ? tank.shape->pitch->likely.si() : 0.0;
  const double along = tank.reading->at ? tank.reading->at->likely.si() : 0.0;
  return tank.bottom_elevation->likely.si() + pitch * along + tank.reading->depth->likely.si();
}

const Tank* tank_of(const Site& site, const Pump& pump) {
  const auto found =
      std::find_if(site.tanks.begin(), site.tanks.end(), [&](const Tank& tank) { return tank.id == pump.tank; });
  return found == site.tanks.end() ? nullptr : &*found;
}

/// The tanks of known level that a hose can be fed from.
std::vector<const Tank*> feeding_tanks(const Site& site, const LineGraph& graph, const Dispenser& dispenser,
                                       const Hose& hose) {
  std::vector<const Tank*> tanks;
  const std::vector<std::string> products = products_of(hose);
  for (const Pump& pump : site.pumps) {
    const Tank* tank = tank_of(site, pump);
    if (tank == nullptr || !liquid_level(*tank) || graph.place(pump.id.text) < 0) continue;
    const std::vector<bool> reached = graph.reached_from({graph.place(pump.id.text)});
    for (const Inlet& inlet : dispenser.inlets) {
      const int at = graph.place(place_name(dispenser, inlet));
      const bool feeds = at >= 0 && reached[static_cast<std::size_t>(at)] &&
                         std::find(products.begin(), products.end(), inlet.product.text) != products.end();
      if (feeds && std::find(tanks.begin(), tanks.end(), tank) == tanks.end()) tanks.push_back(tank);
    }
  }
  return tanks;
}

void check_lift(const Hose& hose, const std::vector<const Tank*>& tanks, Findings& findings) {
  for (std::size_t i = 1; i < tanks.size(); ++i) {
    const double difference = *liquid_level(*tanks[i]) - *liquid_level(*tanks[0]);
    if (std::abs(difference) <= same_level) continue;
    Diagnostic& d = findings.error(
        hose.lift->where,
        fmt::format(
            "the lift of hose '{}' has no one liquid level to start from: those in tanks '{}' and '{}' are {} apart",
            hose.id.text, tanks[0]->id.text, tanks[i]->id.text, in_feet(std::abs(difference))),
        "give outlet_elevation instead of lift");
    relate(d, tanks[0]->where, fmt::format("tank '{}'", tanks[0]->id.text));
    relate(d, tanks[i]->where, fmt::format("tank '{}'", tanks[i]->id.text));
    return;
  }
}

void check_height(const Hose& hose, double above, SourceSpan where, bool above_ground, Findings& findings) {
  if (above > highest_sane) {
    findings.warn(where, fmt::format("the outlet of hose '{}' lies {} above the liquid", hose.id.text, in_feet(above)),
                  "check the elevations: all count from one site datum, upward");
  } else if (above < (above_ground ? -highest_sane : 0.0)) {
    findings.warn(where, fmt::format("the outlet of hose '{}' lies {} below the liquid", hose.id.text, in_feet(-above)),
                  above_ground ? "check the elevations: all count from one site datum, upward"
                               : "check the elevations: all count from one site datum, upward; a tank above ground "
                                 "says above_ground = true");
  }
}

void check_hose_height(const Site& site, const LineGraph& graph, const Dispenser& dispenser, const Hose& hose,
                       Findings& findings) {
  if (!hose.lift && !hose.outlet_elevation) return;
  const std::vector<const Tank*> tanks = feeding_tanks(site, graph, dispenser, hose);
  const bool above_ground = std::any_of(site.tanks.begin(), site.tanks.end(),
                                        [](const Tank& tank) { return tank.above_ground.value_or(false); });
  if (hose.lift) {
    check_lift(hose, tanks, findings);
    check_height(hose, hose.lift->likely.si(), hose.lift->where, above_ground, findings);
    return;
  }
  for (const Tank* tank : tanks) {
    check_height(hose, hose.outlet_elevation->likely.si() - *liquid_level(*tank), hose.outlet_elevation->where,
                 tank->above_ground.value_or(false), findings);
  }
}

std::optional<Position> position_of(const Site& site, const std::string& place) {
  for (const Pump& pump : site.pumps) {
    if (pump.id.text == place) return pump.position;
  }
  for (const Branch& branch : site.branches) {
    if (branch.id.text == place) return branch.position;
  }
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      if (place_name(dispenser, inlet) == place) return dispenser.position;
    }
  }
  return std::nullopt;
}

void check_line_length(const Site& site, const Line& line, Findings& findings) {
  const auto from = position_of(site, line.from.text);
  const auto to = position_of(site, line.to.text);
  if (!from || !to) {
    if (!line.pipe.length) {
      findings.error(
          line.where,
          fmt::format("line '{}' has no length, and its ends have no positions to take it from", line.id.text),
          "add length = ...");
    }
    return;
  }
  if (!line.pipe.length) return;
  const double drawn = std::hypot(to->x.si() - from->x.si(), to->y.si() - from->y.si());
  const double given = line.pipe.length->likely.si();
  if (std::abs(given - drawn) <= largest_mismatch * std::max(given, drawn)) return;
  findings.warn(line.pipe.length->where,
                fmt::format("line '{}' is {} long, but its ends are drawn {} apart", line.id.text, in_feet(given),
                            in_feet(drawn)),
                "the length is used; check it or the positions");
}

bool is_product(const Site& site, const Name& id) {
  return std::any_of(site.products.begin(), site.products.end(), [&](const Product& p) { return p.id == id; });
}

void need_length(const std::optional<Pipe>& pipe, const std::string& what, bool loss_is_enough, Findings& findings) {
  if (!pipe || pipe->length || (loss_is_enough && pipe->loss)) return;
  findings.error(pipe->where, fmt::format("{} has no length", what),
                 "add length = ..., or leave it out: a part that is not listed does not exist");
}

}  // namespace

void check_heights(const Site& site, const LineGraph& graph, Findings& findings) {
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Hose& hose : dispenser.hoses) check_hose_height(site, graph, dispenser, hose, findings);
  }
}

void check_lengths(const Site& site, Findings& findings) {
  for (const Line& line : site.lines) check_line_length(site, line, findings);
  for (const Pump& pump : site.pumps) {
    need_length(pump.leg, fmt::format("the leg of pump '{}'", pump.id.text), true, findings);
  }
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      need_length(inlet.riser, fmt::format("the riser of the inlet '{}'", place_name(dispenser, inlet)), false,
                  findings);
    }
    for (const Hose& hose : dispenser.hoses) {
      need_length(hose.whip, fmt::format("the whip hose of hose '{}'", hose.id.text), true, findings);
      need_length(hose.curb, fmt::format("the curb hose of hose '{}'", hose.id.text), true, findings);
    }
  }
}

void check_siphons(const Site& site, Findings& findings) {
  for (const Tank& tank : site.tanks) {
    for (const Name& other : tank.siphoned_with) {
      if (other == tank.id) {
        findings.error(other.where, fmt::format("tank '{}' is siphoned with itself", tank.id.text));
        continue;
      }
      for (const Tank& partner : site.tanks) {
        if (!(partner.id == other) || partner.product == tank.product) continue;
        if (!is_product(site, partner.product) || !is_product(site, tank.product)) continue;
        Diagnostic& d = findings.error(other.where,
                                       fmt::format("tank '{}' of '{}' is siphoned with tank '{}' of '{}'", tank.id.text,
                                                   tank.product.text, partner.id.text, partner.product.text));
        relate(d, partner.product.where, fmt::format("the product of tank '{}'", partner.id.text));
      }
    }
  }
}

}  // namespace forecourse::site
