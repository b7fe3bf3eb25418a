#include <cmath>

#include "forecourse/handover/drawings/course.h"
#include "forecourse/handover/drawings/plan.h"
#include "forecourse/handover/parts/part_list.h"
#include "forecourse/handover/parts/shared_outlet.h"
#include "forecourse/site/places.h"

namespace forecourse::handover {
namespace {

Point point(const site::Position& position) { return {position.x.si(), position.y.si()}; }

class Places {
 public:
  explicit Places(const site::Site& site) : site_(site) {}

  [[nodiscard]] PartPlaces all() {
    for (const site::Tank& tank : site_.tanks) take(tank);
    for (const site::Pump& pump : site_.pumps) take(pump);
    for (const site::Branch& branch : site_.branches)
      take(item("branch", site_.branches, branch), branch.position, "enter position of the branch");
    for (const site::Dispenser& one : site_.dispensers)
      take(item("dispenser", site_.dispensers, one), one.position, "enter position of the dispenser",
           "at its dispenser");
    for (const site::Line& line : site_.lines) take(line);
    for (const site::EmergencyStop& one : site_.emergency_stops)
      take(item("emergency_stop", site_.emergency_stops, one), one.position, "enter position of the emergency stop",
           "at its emergency stop");
    for (const site::Extinguisher& one : site_.extinguishers)
      take(item("extinguisher", site_.extinguishers, one), one.position, "enter position of the extinguisher");
    for (const site::Delivery& one : site_.deliveries)
      out_.unknown(item("delivery", site_.deliveries, one), "comes with the tanker, whose place is not entered");
    if (site_.surroundings) {
      const auto& processors = site_.surroundings->vapor_processors;
      for (const site::VaporProcessor& one : processors)
        take("surroundings." + item("vapor_processor", processors, one), one.position,
             "enter position of the vapor processor");
    }
    return std::move(out_);
  }

 private:
  bool take(const std::string& path, const std::optional<site::Position>& position, const char* enter,
            const char* within = "") {
    if (!position) {
      out_.unknown(path, enter);
      return false;
    }
    out_.at(path, point(*position), "entered", within);
    return true;
  }

  void take(const site::Tank& tank) {
    const std::string path = item("tank", site_.tanks, tank);
    take(path, tank.position, "enter position of the tank", "at its tank");
    for (const site::Fill& fill : tank.fills) {
      const std::string own = path + "." + item("fill", tank.fills, fill);
      if (take(own, fill.position, "enter position of the fill, or at with position and axis of its tank",
               "at its fill"))
        continue;
      if (const auto at = along(tank, fill.at)) out_.at(own, *at, "along its tank", "at its fill");
    }
    for (const site::Vent& vent : tank.vents) {
      const std::string own = path + "." + item("vent", tank.vents, vent);
      take(own, of_outlet(site_, vent, &site::Vent::position), "enter position of the vent", "at its vent");
    }
    if (tank.gauge) {
      if (const auto at = along(tank, tank.gauge->at)) out_.at(path + ".gauge", *at, "along its tank");
    }
    if (tank.vapor_return) out_.unknown(path + ".vapor_return", "the site file has no place for it");
    for (const site::Well& well : tank.wells)
      out_.unknown(path + "." + item("well", tank.wells, well), "the site file has no place for it");
  }

  void take(const site::Pump& pump) {
    const std::string path = item("pump", site_.pumps, pump);
    bool placed = take(path, pump.position, "enter position of the pump, or of its tank", "at its pump");
    for (const site::Tank& tank : site_.tanks) {
      if (&tank != tank_with(site_, pump.tank.text)) continue;
      if (!placed && tank.position) {
        const auto at = along(tank, pump.at);
        out_.at(path, at.value_or(point(*tank.position)), at ? "along its tank" : "at its tank", "at its pump");
        placed = true;
      }
      if (placed && tank.sump) out_.at(item("tank", site_.tanks, tank) + ".sump", *out_.find(path), "at its pump");
    }
  }

  void take(const site::Line& line) {
    const std::string path = item("line", site_.lines, line);
    const std::optional<Point> from = place(line.from.text), to = place(line.to.text);
    if (!from || !to) {
      out_.unknown(path, "enter where " + (from ? line.to.text : line.from.text) + " stands");
      return;
    }
    out_.at(path, {0.5 * (from->x + to->x), 0.5 * (from->y + to->y)}, "between its places", "at its line");
  }

  [[nodiscard]] std::optional<Point> place(const std::string& name) const {
    for (const site::Pump& pump : site_.pumps) {
      const Point* at = pump.id.text == name ? out_.find(item("pump", site_.pumps, pump)) : nullptr;
      if (at != nullptr) return *at;
    }
    const auto entered = site::position_at(site_, name);
    return entered ? std::optional(point(*entered)) : std::nullopt;
  }

  static std::optional<Point> along(const site::Tank& tank, const site::Maybe<Length>& at) {
    return at ? along_tank(tank, at->likely.si()) : std::nullopt;
  }

  const site::Site& site_;
  PartPlaces out_;
};

}  // namespace

std::optional<Point> along_tank(const site::Tank& tank, double at) {
  if (!tank.position || !tank.axis || !tank.shape || !tank.shape->length) return std::nullopt;
  const double from_middle = at - 0.5 * tank.shape->length->likely.si();
  const double axis = tank.axis->likely.si();
  const Point middle = point(*tank.position);
  return Point{middle.x + from_middle * std::cos(axis), middle.y + from_middle * std::sin(axis)};
}

PartPlaces plan_places(const site::Site& site) { return Places(site).all(); }

}  // namespace forecourse::handover
