#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

/// Each well about a tank.
template <class Read>
std::vector<FigureAt> each_well(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    for (const site::Well& well : tank.wells) {
      out.push_back(read(name_in_tank(tank, tank.wells, well, "well"), well));
      if (is_above_ground(tank)) out.back().exempt = above_ground;
    }
  }
  return out;
}

/// Of each tank: the day by which all its wells had been read.
std::vector<FigureAt> wells_read(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    MaybeDay oldest;
    bool all = !tank.wells.empty();
    for (const site::Well& well : tank.wells) {
      const std::string name = name_in_tank(tank, tank.wells, well, "well");
      const MaybeDay read = last_looked(facts, name, well.where, well.read, {"wells", {name, tank.id.text}}, {}).day;
      all = all && read;
      if (read && (!oldest || is_before(*read, *oldest))) oldest = read;
    }
    return entered_day(tank.id.text, tank.where, all ? oldest : std::nullopt,
                       "enter well of the tank, with read of each");
  });
}

std::vector<FigureAt> water_depth(const Facts& facts) {
  return each_well(facts, [](const std::string& subject, const site::Well& well) {
    return entered_amount(subject, well.where, well.water_depth, "enter water_depth of the well");
  });
}

std::vector<FigureAt> conductivity(const Facts& facts) {
  return each_well(facts, [](const std::string& subject, const site::Well& well) {
    return entered_amount(subject, well.where, well.conductivity, "enter conductivity of the well");
  });
}

std::vector<FigureAt> layer(const Facts& facts) {
  return each_well(facts, [](const std::string& subject, const site::Well& well) {
    return entered_amount(subject, well.where, well.detects, "enter detects of the well");
  });
}

template <class Read>
std::vector<FigureAt> each_barrier(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.barrier) continue;
    out.push_back(read(tank, *tank.barrier));
    if (is_above_ground(tank)) out.back().exempt = above_ground;
  }
  return out;
}

std::vector<FigureAt> permeability(const Facts& facts) {
  return each_barrier(facts, [](const site::Tank& tank, const site::Barrier& barrier) {
    return entered_amount(tank.id.text, barrier.where, barrier.permeability, "enter permeability of the barrier");
  });
}

std::vector<FigureAt> dry_place(const Facts& facts) {
  return each_barrier(facts, [](const site::Tank& tank, const site::Barrier& barrier) {
    site::Fact dry;
    if (barrier.above_ground_water && barrier.above_flood_plain) {
      dry = *barrier.above_ground_water && *barrier.above_flood_plain;
    } else if (!barrier.above_ground_water.value_or(true) || !barrier.above_flood_plain.value_or(true)) {
      dry = false;
    }
    return entered_fact(tank.id.text, barrier.where, dry, "enter above_ground_water and above_flood_plain");
  });
}

}  // namespace

std::vector<Figure> well_figures() {
  const auto velocity = [](std::string_view id, std::string_view words, ReadFigure read) {
    return Figure{id, words, FigureKind::amount, &Velocity::kind(), "m/s", Measured::fuel, read};
  };
  return {
      day_figure("wells-read", "day by which all wells about a tank were read", wells_read),
      length_figure("well-water-depth", "depth of the ground water in a well", water_depth),
      velocity("well-conductivity", "hydraulic conductivity of the soil from tank to well", conductivity),
      length_figure("well-layer", "layer of fuel that is found in a well", layer),
      velocity("barrier-permeability", "permeability of the barrier about a tank", permeability),
      fact_figure("barrier-dry-place",
                  "a barrier lies above ground water and outside a 25-year flood plain, or is made "
                  "for that",
                  dry_place),
  };
}

}  // namespace forecourse::checks
