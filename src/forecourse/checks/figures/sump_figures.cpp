#include <algorithm>

#include "forecourse/checks/figures/sumps.h"
#include "forecourse/checks/figures/tested.h"
#include "forecourse/site/places.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

// Sumps of tanks and dispensers

/// Whether the interstice of a line or of a tank opens into a sump; empty where one may, for all that is entered.
site::Fact watches_interstice(const Facts& facts, const SumpOf& sump) {
  bool known = !facts.site.lines.empty();
  const auto opens_here = [&](const site::Fact& double_wall, const std::optional<site::Interstice>& interstice) {
    if (interstice && !interstice->drains_to.empty()) {
      return std::find(sump.places.begin(), sump.places.end(), interstice->drains_to.text) != sump.places.end();
    }
    known = known && double_wall && !*double_wall;
    return false;
  };
  bool any = false;
  for (const site::Line& line : facts.site.lines) any = opens_here(line.double_wall, line.interstice) || any;
  if (any) return true;
  return known ? site::Fact(false) : std::nullopt;
}

std::vector<FigureAt> watches(const Facts& facts) {
  return each_sump(facts, [&](const SumpOf& sump) {
    return entered_fact(sump.subject, sump.sump->where, watches_interstice(facts, sump),
                        "enter the lines, with their double_wall and interstice, with drains_to");
  });
}

std::vector<FigureAt> double_wall(const Facts& facts) {
  return each_sump(facts, [](const SumpOf& sump) {
    return entered_fact(sump.subject, sump.sump->where, sump.sump->double_wall, "enter double_wall of the sump");
  });
}

std::vector<FigureAt> tested(const Facts& facts) {
  return each_sump(facts, [&](const SumpOf& sump) {
    return last_tested(facts, sump.subject, sump.sump->where, sump.sump->tested, {TestKind::sump, sump.names()},
                       "enter tested of the sump");
  });
}

std::vector<FigureAt> monitored(const Facts& facts) {
  return each_sump(facts, [&](const SumpOf& sump) {
    return last_looked(facts, sump.subject, sump.sump->where, sump.sump->monitored, {"walls", sump.names(), true},
                       "enter monitored of the sump");
  });
}

bool has_sensor(const site::Sump& sump) { return sump.sensor || sump.sensor_height; }

std::vector<FigureAt> sensor_tested(const Facts& facts) {
  std::vector<FigureAt> out = each_sump(facts, [&](const SumpOf& sump) {
    const auto& sensor = sump.sump->sensor;
    std::vector<std::string> names = sump.names();
    if (sensor && !sensor->id.empty()) names.push_back(sensor->id.text);
    FigureAt one = last_tested(facts, sump.subject, sump.sump->where, sensor ? sensor->tested : std::nullopt,
                               {TestKind::sensor, names}, "enter sensor of the sump, with tested");
    if (!has_sensor(*sump.sump)) one.exempt = "the sump has no sensor";
    return one;
  });
  return out;
}

// Under dispensers

/// When a dispenser and all that joins it to the tanks are new: the day of the oldest of them.
std::vector<FigureAt> system_installed(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& dispenser) {
    MaybeDay oldest = dispenser.installed;
    const auto take = [&](const MaybeDay& day) {
      if (day && (!oldest || is_before(*day, *oldest))) oldest = day;
    };
    take(dispenser.connectors_installed);
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.shear_valve) take(inlet.shear_valve->installed);
    }
    const bool known = dispenser.installed && dispenser.connectors_installed;
    return entered_day(dispenser.id.text, dispenser.where, known ? oldest : std::nullopt,
                       "enter installed and connectors_installed of the dispenser");
  });
}

std::vector<FigureAt> fitted(const Facts& facts) {
  return each_dispenser(facts, [](const site::Dispenser& dispenser) {
    return entered_fact(dispenser.id.text, dispenser.where, dispenser.sump.has_value(), {});
  });
}

/// Sides and bottom, and every seal that is listed.
std::vector<FigureAt> tight(const Facts& facts) {
  return each_dispenser_sump(facts, [](const SumpOf& sump) {
    site::Fact tight = sump.sump->tight;
    for (const site::EntrySeal& seal : sump.sump->seals) {
      if (!seal.tight.value_or(true)) tight = false;
      if (!seal.tight && tight.value_or(false)) tight = std::nullopt;
    }
    return entered_fact(sump.subject, sump.sump->where, tight, "enter tight of the sump and of each of its seals");
  });
}

std::vector<FigureAt> open_to_view(const Facts& facts) {
  return each_dispenser_sump(facts, [](const SumpOf& sump) {
    return entered_fact(sump.subject, sump.sump->where, sump.sump->open_to_view, "enter open_to_view of the sump");
  });
}

std::vector<FigureAt> sensor(const Facts& facts) {
  return each_dispenser_sump(facts, [](const SumpOf& sump) {
    return entered_fact(sump.subject, sump.sump->where, has_sensor(*sump.sump), {});
  });
}

}  // namespace

std::vector<Figure> sump_figures() {
  return {
      fact_figure("sump-watches-interstice", "a sump in which the interstice of a line opens", watches),
      fact_figure("sump-double-wall", "two walls of a sump", double_wall),
      day_figure("sump-tested", "last test of a sump", tested),
      day_figure("sump-monitored", "last look at the walls of a sump", monitored),
      day_figure("sump-sensor-tested", "last test of a sump's sensor", sensor_tested),
      day_figure("dispenser-system-installed",
                 "day on which a dispenser, or the oldest of what joins it to the tanks, was installed",
                 system_installed),
      fact_figure("dispenser-sump-fitted", "a sump under a dispenser", fitted),
      fact_figure("dispenser-sump-tight", "a dispenser sump is tight at sides, bottom and seals", tight),
      fact_figure("dispenser-sump-open", "all in a dispenser sump can be looked at and reached", open_to_view),
      fact_figure("dispenser-sump-sensor", "a sensor in a dispenser sump", sensor),
  };
}

}  // namespace forecourse::checks
