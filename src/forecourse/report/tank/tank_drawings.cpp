#include "forecourse/report/tank/tank_drawings.h"

#include <algorithm>
#include <iterator>
#include <vector>

#include "forecourse/report/drawing/tone.h"
#include "forecourse/report/tank/tank_view.h"
#include "forecourse/report/units.h"

namespace forecourse::report {
namespace {

using studies::TankPlace;
using studies::TankTold;

/// The fill's place, else the chart's.
const TankPlace* section_place(const TankTold& tank) {
  if (tank.places.empty()) return nullptr;
  for (const std::string& word : {std::string("fill"), tank.chart.what}) {
    const auto found = std::find_if(tank.places.begin(), tank.places.end(),
                                    [&](const TankPlace& p) { return p.what.find(word) != std::string::npos; });
    if (found != tank.places.end()) return &*found;
  }
  return &tank.places.front();
}

}  // namespace

svg::TankScene tank_scene(const TankTold& tank, const site::Site& site, const std::string& id) {
  svg::TankScene out;
  out.id = id;
  out.title = "Tank " + tank.id + " to scale";
  out.description = "Across at one place and along, with the liquid, the sticks and the marks of 90 % and 95 %.";
  out.shows.part = "tank." + tank.tank;
  out.tone = drawing::tone_of(site, tank.product);
  for (const studies::TankPoint& p : tank.outline) out.outline.push_back({p.along, p.level});
  const TankPlace* place = section_place(tank);
  if (place == nullptr) return out;
  out.box = tank.section_width.has_value();
  out.section_height = place->stick;
  out.section_width = tank.section_width.value_or(tank.diameter.value_or(place->stick));
  out.section_foot = place->foot.level;
  out.section_surface = place->depth;
  out.section_name = "section: " + place->what;
  if (tank.now) {
    out.level = tank.now->level;
    out.water = tank.now->water_level;
  }
  for (const studies::TankRoom& room : tank.rooms)
    out.marks.push_back({room.level, number(100.0 * room.share, 0, Glyphs::unicode) + " %"});
  for (const TankPlace& p : tank.places) {
    out.sticks.push_back({p.what,
                          {p.foot.along, p.foot.level},
                          {p.head.along, p.head.level},
                          p.depth ? with_unit(Measure::bore, site.display, *p.depth) : ""});
  }
  return out;
}

svg::VolumeCurve volume_curve(const TankTold& tank, site::Display display, const std::string& id) {
  svg::VolumeCurve out;
  out.id = id;
  out.title = "Volume against depth, tank " + tank.id;
  out.description = "Volume at each depth at one place: " + tank.chart.what + ".";
  out.depth_axis = "depth, " + tank.chart.what + ", " + unit_label(Measure::bore, display);
  out.volume_axis = "volume, " + unit_label(Measure::volume, display);
  const auto point = [&](double depth, double volume) {
    return svg::Point{shown_value(Measure::bore, display, depth), shown_value(Measure::volume, display, volume)};
  };
  for (const studies::TankChartRow& row : tank.chart.rows) {
    out.curve.push_back(point(row.depth, row.volume));
    if (row.level_volume) out.level_chart.push_back(point(row.depth, *row.level_volume));
  }
  if (tank.calibration) {
    for (const studies::FittedChartRow& row : tank.calibration->chart)
      out.fitted.push_back(point(row.depth, row.fitted));
  }
  const auto here = std::find_if(tank.places.begin(), tank.places.end(),
                                 [&](const TankPlace& p) { return p.along == tank.chart.along; });
  if (here == tank.places.end()) return out;
  const auto i = static_cast<std::size_t>(here - tank.places.begin());
  const auto mark = [&](double depth, double volume, std::string name) {
    const svg::Point p = point(depth, volume);
    out.marks.push_back({p.x, p.y, std::move(name)});
  };
  for (const studies::TankRoom& room : tank.rooms) {
    if (room.depths[i]) mark(*room.depths[i], room.volume, number(100.0 * room.share, 0) + " %");
  }
  if (tank.now && here->depth && *here->depth > 0.0) mark(*here->depth, tank.now->volume, "now");
  return out;
}

svg::VolumeCurve siphon_curve(const studies::SiphonTold& siphon, site::Display display, const std::string& id) {
  svg::VolumeCurve out;
  out.id = id;
  out.title = "Volumes while the levels find each other, " + siphon_name(siphon);
  out.description = "Volume in each tank over time, from the levels now.";
  constexpr double minute = 60.0;
  out.depth_axis = "time, min";
  out.volume_axis = "volume, " + unit_label(Measure::volume, display);
  for (const studies::SiphonMoment& moment : siphon.course) {
    std::vector<svg::Point>* const lines[] = {&out.curve, &out.level_chart, &out.fitted};
    for (std::size_t i = 0; i < std::size(lines) && i < moment.volumes.size(); ++i)
      lines[i]->push_back({moment.time / minute, shown_value(Measure::volume, display, moment.volumes[i])});
  }
  return out;
}

}  // namespace forecourse::report
