#include "forecourse/site/consistency/heights.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/site/places.h"

namespace forecourse::site {

namespace {

constexpr double same_level = 1e-3;       // [m] closer levels count as one
constexpr double highest_sane = 15.0;     // [m] no pump of a station lifts fuel further; common practice, no source
constexpr double largest_mismatch = 0.2;  // share by which a length may differ from the plan

std::string in_feet(double meters) { return show_quantity(meters, "ft"); }

/// The tanks of known level from which a dispenser is fed with these products.
std::vector<const Tank*> feeding_tanks(const Supply& supply, const Dispenser& dispenser,
                                       const std::vector<std::string>& products) {
  std::vector<const Tank*> tanks;
  const std::vector<const InletPlace*> inlets = supply.inlets_of(dispenser);
  for (const Source& source : supply.sources()) {
    if (source.tank == nullptr || !liquid_level(*source.tank)) continue;
    const bool feeds = std::any_of(inlets.begin(), inlets.end(), [&](const InletPlace* at) {
      return Supply::reaches(source, *at) &&
             std::find(products.begin(), products.end(), at->inlet->product.text) != products.end();
    });
    if (feeds && std::find(tanks.begin(), tanks.end(), source.tank) == tanks.end()) tanks.push_back(source.tank);
  }
  return tanks;
}

/// A height above the liquid that is one height only when all tanks stand at one level.
struct HeightAboveLiquid {
  std::string words;  ///< "the lift of hose 'D1.a'"
  SourceSpan where{};
  std::string hint;
};

void check_one_level(const HeightAboveLiquid& height, const std::vector<const Tank*>& tanks, Findings& findings) {
  for (std::size_t i = 1; i < tanks.size(); ++i) {
    const double difference = *liquid_level(*tanks[i]) - *liquid_level(*tanks[0]);
    if (std::abs(difference) <= same_level) continue;
    Diagnostic& d = findings.error(
        height.where,
        fmt::format("{} has no one liquid level to start from: those in tanks '{}' and '{}' are {} apart", height.words,
                    tanks[0]->id.text, tanks[i]->id.text, in_feet(std::abs(difference))),
        height.hint);
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

void check_hose_height(const Supply& supply, bool above_ground, const Dispenser& dispenser, const Hose& hose,
                       Findings& findings) {
  if (!hose.lift && !hose.outlet_elevation) return;
  const std::vector<const Tank*> tanks = feeding_tanks(supply, dispenser, products_of(hose));
  if (hose.lift) {
    check_one_level(
        {fmt::format("the lift of hose '{}'", hose.id.text), hose.lift->where, "give outlet_elevation instead of lift"},
        tanks, findings);
    check_height(hose, hose.lift->likely.si(), hose.lift->where, above_ground, findings);
    return;
  }
  for (const Tank* tank : tanks) {
    check_height(hose, hose.outlet_elevation->likely.si() - *liquid_level(*tank), hose.outlet_elevation->where,
                 tank->above_ground.value_or(false), findings);
  }
}

void check_groove_height(const Supply& supply, const Dispenser& dispenser, const Inlet& inlet, Findings& findings) {
  if (!inlet.shear_valve || !inlet.shear_valve->groove_lift) return;
  check_one_level({fmt::format("the lift of the shear groove at '{}'", place_name(dispenser, inlet)),
                   inlet.shear_valve->groove_lift->where, "give groove_elevation instead of groove_lift"},
                  feeding_tanks(supply, dispenser, {inlet.product.text}), findings);
}

/// Every place with a position on plan.
std::map<std::string, Position> positions_of(const Site& site) {
  std::map<std::string, Position> positions;
  for (const Pump& pump : site.pumps) {
    if (pump.position) positions.emplace(pump.id.text, *pump.position);
  }
  for (const Branch& branch : site.branches) {
    if (branch.position) positions.emplace(branch.id.text, *branch.position);
  }
  for (const Dispenser& dispenser : site.dispensers) {
    if (!dispenser.position) continue;
    for (const Inlet& inlet : dispenser.inlets) positions.emplace(place_name(dispenser, inlet), *dispenser.position);
  }
  return positions;
}

/// Whether a table is one of those that begin where the spans do.
bool is_among(const std::vector<SourceSpan>& spans, SourceSpan table) {
  return std::any_of(spans.begin(), spans.end(),
                     [&](SourceSpan one) { return one.text == table.text && one.begin == table.begin; });
}

class LengthCheck {
 public:
  LengthCheck(const Site& site, const std::vector<SourceSpan>& half_read, Findings& findings)
      : positions_(positions_of(site)), half_read_(half_read), findings_(findings) {}

  void check_line(const Line& line) {
    const auto from = positions_.find(line.from.text);
    const auto to = positions_.find(line.to.text);
    const bool drawn = from != positions_.end() && to != positions_.end();
    if (drawn && line.pipe.length) return compare(line, from->second, to->second);
    if (drawn || line.pipe.length || is_among(half_read_, line.where)) return;
    findings_.error(
        line.where,
        fmt::format("line '{}' has no length, and its ends have no positions to take it from", line.id.text),
        "add length = ...");
  }

  void need_length(const std::optional<Pipe>& pipe, const std::string& what, bool loss_is_enough) {
    if (!pipe || pipe->length || (loss_is_enough && pipe->loss) || is_among(half_read_, pipe->where)) return;
    findings_.error(pipe->where, fmt::format("{} has no length", what),
                    "add length = ..., or leave it out: a part that is not listed does not exist");
  }

 private:
  void compare(const Line& line, const Position& from, const Position& to) {
    const double drawn = std::hypot(to.x.si() - from.x.si(), to.y.si() - from.y.si());
    const double given = line.pipe.length->likely.si();
    if (std::abs(given - drawn) <= largest_mismatch * std::max(given, drawn)) return;
    findings_.warn(line.pipe.length->where,
                   fmt::format("line '{}' is {} long, but its ends are drawn {} apart", line.id.text, in_feet(given),
                               in_feet(drawn)),
                   "the length is used; check it or the positions");
  }

  std::map<std::string, Position> positions_;
  const std::vector<SourceSpan>& half_read_;
  Findings& findings_;
};

bool is_product(const Site& site, const Name& id) {
  return std::any_of(site.products.begin(), site.products.end(), [&](const Product& p) { return p.id == id; });
}

}  // namespace

void check_heights(const Site& site, const Supply& supply, Findings& findings) {
  const bool above_ground = std::any_of(site.tanks.begin(), site.tanks.end(),
                                        [](const Tank& tank) { return tank.above_ground.value_or(false); });
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Hose& hose : dispenser.hoses) check_hose_height(supply, above_ground, dispenser, hose, findings);
    for (const Inlet& inlet : dispenser.inlets) check_groove_height(supply, dispenser, inlet, findings);
  }
}

void check_lengths(const Site& site, const std::vector<SourceSpan>& half_read, Findings& findings) {
  LengthCheck check(site, half_read, findings);
  for (const Line& line : site.lines) check.check_line(line);
  for (const Pump& pump : site.pumps) {
    check.need_length(pump.leg, fmt::format("the leg of pump '{}'", pump.id.text), true);
  }
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      check.need_length(inlet.riser, fmt::format("the riser of the inlet '{}'", place_name(dispenser, inlet)), false);
    }
    for (const Hose& hose : dispenser.hoses) {
      check.need_length(hose.whip, fmt::format("the whip hose of hose '{}'", hose.id.text), true);
      check.need_length(hose.curb, fmt::format("the curb hose of hose '{}'", hose.id.text), true);
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
