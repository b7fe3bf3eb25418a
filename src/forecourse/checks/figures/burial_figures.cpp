#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

std::vector<FigureAt> surround(const Facts& facts) {
  return each_buried_tank(facts, [](const site::Tank& tank) {
    const site::Maybe<Length> none;
    return entered_amount(tank.id.text, tank.where, tank.ground ? tank.ground->surround : none,
                          "enter ground = { surround = ... } of the tank");
  });
}

/// What lies over a buried tank [m].
struct Cover {
  double earth = 0.0;
  double slab = 0.0;
  double asphalt = 0.0;
  bool traffic = false;
  site::Fact reinforced;
};

std::optional<Cover> cover_of(const site::Tank& tank) {
  if (!tank.flotation || !tank.flotation->cover || !tank.ground || !tank.ground->traffic) return std::nullopt;
  const auto& slab = tank.flotation->slab;
  if (slab && !slab->thickness) return std::nullopt;
  if (*tank.ground->traffic && !slab && !tank.ground->asphalt) return std::nullopt;
  Cover out;
  out.slab = slab ? slab->thickness->likely.si() : 0.0;
  out.asphalt = tank.ground->asphalt ? tank.ground->asphalt->likely.si() : 0.0;
  out.earth = tank.flotation->cover->likely.si() - out.slab - out.asphalt;
  out.traffic = *tank.ground->traffic;
  out.reinforced = tank.ground->reinforced;
  return out;
}

constexpr const char* enter_cover =
    "enter cover under flotation, with the thickness of its slab, and ground = { traffic = ... }, with asphalt where "
    "vehicles pass and no slab lies over the tank (\"0 in\" where there is none)";

double in(double inches) { return to_si(inches, "in"); }

/// Earth that is asked for without anything over it, and below a slab or asphalt that is thick enough.
/// \source [osha_1910_106, (b)(3)(ii)] [ifc_2018, 5704.2.11.2]
double plain_earth(const Cover& cover) { return in(cover.traffic ? 36.0 : 24.0); }
double paved_earth(const Cover& cover) { return in(cover.traffic ? 18.0 : 12.0); }
bool slab_counts(const Cover& cover) { return cover.slab >= in(cover.traffic ? 6.0 : 4.0) - 1e-9; }
bool asphalt_counts(const Cover& cover) { return cover.traffic && cover.asphalt >= in(8.0) - 1e-9; }

/// With its own limit, by traffic and by what lies over the earth.
std::vector<FigureAt> earth_cover(const Facts& facts) {
  return each_buried_tank(facts, [](const site::Tank& tank) {
    FigureAt out = of_part(tank.id.text, tank.flotation ? tank.flotation->where : tank.where);
    const std::optional<Cover> cover = cover_of(tank);
    if (!cover) {
      out.enter = enter_cover;
      return out;
    }
    const bool leans_on_slab = slab_counts(*cover) && !asphalt_counts(*cover) && cover->earth < plain_earth(*cover);
    if (leans_on_slab && !cover->reinforced) {
      out.enter = "enter reinforced of ground: whether the slab has reinforcement";
      return out;
    }
    const bool paved = asphalt_counts(*cover) || (slab_counts(*cover) && cover->reinforced.value_or(false));
    out.value = cover->earth;
    out.at_least = paved ? paved_earth(*cover) : plain_earth(*cover);
    return out;
  });
}

/// How far a slab reaches beyond a tank on each side [m]; empty: not known.
std::optional<double> slab_beyond(const site::Tank& tank) {
  const site::Slab& slab = *tank.flotation->slab;
  if (slab.overhang) return slab.overhang->likely.si();
  if (!slab.length || !slab.width || !tank.shape || !tank.shape->length) return std::nullopt;
  const auto& wide = tank.shape->outside_diameter;
  if (!wide) return std::nullopt;
  return std::min(slab.length->likely.si() - tank.shape->length->likely.si(),
                  slab.width->likely.si() - wide->likely.si()) /
         2.0;
}

/// Under traffic, where paving stands for earth.
std::vector<FigureAt> paving_beyond(const Facts& facts) {
  return each_buried_tank(facts, [](const site::Tank& tank) {
    FigureAt out = of_part(tank.id.text, tank.flotation ? tank.flotation->where : tank.where);
    const std::optional<Cover> cover = cover_of(tank);
    if (!cover) {
      out.enter = enter_cover;
    } else if (!cover->traffic) {
      out.exempt = "no vehicle passes over the tank";
    } else if (cover->earth >= plain_earth(*cover)) {
      out.exempt = "the earth over the tank is thick enough without paving";
    } else if (cover->slab > 0.0) {
      out.value = slab_beyond(tank);
      if (!out.value)
        out.enter = "enter overhang of the slab, or its sizes and outside_diameter and length of the tank";
    } else if (tank.ground->paving_beyond) {
      out.value = tank.ground->paving_beyond->likely.si();
    } else {
      out.enter = "enter paving_beyond of ground";
    }
    return out;
  });
}

/// Share of the capacity below a level above the tank's bottom, by its chart; empty without one.
std::optional<double> share_below(const Facts& facts, const site::Tank& tank, double level) {
  if (facts.tank == nullptr) return std::nullopt;
  for (const studies::TankTold& told : facts.tank->tanks) {
    if (told.id != tank.id.text) continue;
    const auto& rows = told.chart.rows;
    for (std::size_t i = 1; i < rows.size(); ++i) {
      if (level > rows[i].level || level < rows[i - 1].level) continue;
      const double part = (level - rows[i - 1].level) / (rows[i].level - rows[i - 1].level);
      return rows[i - 1].share + part * (rows[i].share - rows[i - 1].share);
    }
  }
  return std::nullopt;
}

/// Of its capacity.
std::vector<FigureAt> flood_submerged(const Facts& facts) {
  return each_buried_tank(facts, [&](const site::Tank& tank) {
    FigureAt out = of_part(tank.id.text, tank.where);
    const std::optional<double> height = inside_height(tank);
    out.enter = "enter flood_elevation of [surroundings], and bottom_elevation and shape of the tank";
    if (!facts.site.surroundings || !facts.site.surroundings->flood_elevation || !tank.bottom_elevation || !height) {
      return out;
    }
    const double level = facts.site.surroundings->flood_elevation->likely.si() - tank.bottom_elevation->likely.si();
    if (level <= 0.0)
      out.value = 0.0;
    else if (level >= *height)
      out.value = 1.0;
    else
      out.value = share_below(facts, tank, level);
    return out;
  });
}

/// What is not listed under flotation does not exist.
std::vector<FigureAt> held_down(const Facts& facts) {
  return each_buried_tank(facts, [](const site::Tank& tank) {
    site::Fact held;
    if (tank.flotation) held = tank.flotation->slab || (!tank.flotation->deadmen.empty() && tank.flotation->strap);
    return entered_fact(tank.id.text, tank.where, held, "enter flotation of the tank: what holds it down");
  });
}

}  // namespace

std::vector<Figure> burial_figures() {
  return {
      amount_figure<Length>("tank-surround", "thickness of the inert fill around a buried tank", "m", surround),
      amount_figure<Length>("tank-earth-cover", "earth over a buried tank", "m", earth_cover),
      amount_figure<Length>("tank-paving-beyond", "how far paving reaches beyond a buried tank", "m", paving_beyond),
      amount_figure<Ratio>("flood-submerged", "share of a buried tank's capacity under the greatest flood", "share",
                           flood_submerged),
      fact_figure("tank-held-down", "a slab, or straps and deadmen, that hold a buried tank down", held_down),
  };
}

}  // namespace forecourse::checks
