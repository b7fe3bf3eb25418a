#include "forecourse/report/drawing/section_stops.h"

#include <algorithm>
#include <initializer_list>

#include "forecourse/report/flow/flow_view.h"
#include "forecourse/site/places.h"

namespace forecourse::report::drawing {
namespace {

using network::ElementKind;
using site::Display;
using studies::CourseStops;

constexpr std::initializer_list<ElementKind> line_kinds{ElementKind::leg, ElementKind::line};
constexpr std::initializer_list<ElementKind> hose_kinds{ElementKind::whip_hose, ElementKind::breakaway,
                                                        ElementKind::curb_hose, ElementKind::swivel};

template <class T>
const T* by_id(const std::vector<T>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& one) { return one.id.text == id; });
  return found == all.end() ? nullptr : &*found;
}

/// Writes numbers of one station in its units.
class Writer {
 public:
  Writer(const Listed& listed, const CourseStops& course, const studies::HoseFlow& hose, Display display, bool heights)
      : listed_(listed),
        course_(course),
        hose_(hose),
        budget_(shown_budget(hose, display)),
        display_(display),
        heights_(heights) {}

  [[nodiscard]] std::array<Stop, 11> cells() const {
    return {tanker(), fill(), tank(), pump(), line(), sump(), shear_valve(), meter(), hose(), nozzle(), vapor()};
  }

 private:
  [[nodiscard]] Stop with(const char* name, Measure measure, double si, std::string note) const {
    return {name, number(measure, display_, si), unit_label(measure, display_), std::move(note), true};
  }
  /// What parts of these kinds take, with a minus sign: the sum of what the budget shows of them.
  [[nodiscard]] Stop takes(const char* name, std::initializer_list<ElementKind> kinds, std::string note) const {
    long steps = 0;
    for (const ShownBudgetRow& row : budget_.rows) {
      const bool counts =
          std::any_of(kinds.begin(), kinds.end(), [&](ElementKind kind) { return row.part == network::word(kind); });
      if (counts) steps += row.change;
    }
    const std::string unit = unit_label(Measure::pressure, display_);
    return {name, budget_.rows.empty() ? "" : budget_.text(steps), unit, std::move(note), true};
  }
  static Stop in_words(const char* name, std::string note, bool listed) {
    return {name, "", "", std::move(note), listed};
  }
  /// Depths are read in inches or millimeters, to a tenth or to the whole.
  [[nodiscard]] Stop depth(const char* name, double si, std::string note) const {
    const bool us = display_ == Display::us;
    return {name, forecourse::report::number(shown_value(Measure::bore, display_, si), us ? 1 : 0),
            unit_label(Measure::bore, display_), std::move(note), true};
  }

  [[nodiscard]] Stop tanker() const {
    if (listed_.delivery == nullptr) return in_words("Tanker", "no delivery entered", false);
    if (listed_.delivery->rate) {
      const double rate = shown_value(Measure::flow, display_, listed_.delivery->rate->likely.si());
      return {"Tanker", forecourse::report::number(rate, 0), unit_label(Measure::flow, display_), "drop rate, entered",
              true};
    }
    return in_words("Tanker", "drop rate not entered", true);
  }

  [[nodiscard]] Stop fill() const {
    if (listed_.tank == nullptr || listed_.tank->fills.empty()) return in_words("Fill", "not entered", false);
    const site::Fill& fill = listed_.tank->fills.front();
    if (fill.drop_tube && fill.drop_tube->end_above_bottom) {
      return depth("Fill", fill.drop_tube->end_above_bottom->likely.si(), "drop tube off bottom");
    }
    if (fill.elevation) return with("Fill", Measure::length, fill.elevation->likely.si(), "fill, height");
    return in_words("Fill", "listed, no height entered", true);
  }

  [[nodiscard]] Stop tank() const {
    const site::Tank* t = listed_.tank;
    if (t != nullptr && t->reading && t->reading->depth) {
      return depth("Tank", t->reading->depth->likely.si(), course_.tank + ", liquid");
    }
    if (t != nullptr && t->surface_elevation) {
      return with("Tank", Measure::length, t->surface_elevation->likely.si(), course_.tank + ", surface height");
    }
    return in_words("Tank", course_.tank + ", level not entered", true);
  }

  [[nodiscard]] Stop pump() const {
    if (!course_.pump_rise) return in_words("Pump", "none on this course", false);
    const std::string at = course_.pump_flow ? ", at " + with_unit(Measure::flow, display_, *course_.pump_flow) : "";
    Stop stop = with("Pump", Measure::pressure, *course_.pump_rise, course_.pump + " adds" + at);
    stop.value = "+" + stop.value;
    return stop;
  }

  [[nodiscard]] Stop line() const {
    if (!course_.line_loss) return in_words("Line", "none on this course", false);
    return takes("Line", line_kinds, "takes, to " + with_unit(Measure::velocity, display_, course_.line_velocity));
  }

  [[nodiscard]] Stop sump() const {
    const bool listed = listed_.dispenser != nullptr && listed_.dispenser->sump.has_value();
    if (!course_.sump) return in_words("Sump", "no line to it", listed);
    Stop stop = with("Sump", Measure::pressure, course_.sump->pressure_gauge, where("line, gauge", *course_.sump));
    stop.listed = listed;
    if (!listed) stop.note += "; no sump listed";
    return stop;
  }

  /// A gauge pressure says at what height it counts where the place's own is not known.
  [[nodiscard]] std::string where(const std::string& own, const studies::GradePoint& point) const {
    if (!heights_) return "at liquid height";
    return point.height_entered ? own : "gauge at datum height";
  }

  [[nodiscard]] Stop shear_valve() const {
    const bool listed = listed_.inlet != nullptr && listed_.inlet->shear_valve.has_value();
    if (!listed) return in_words("Shear valve", "not listed", false);
    if (!course_.shear_valve) return in_words("Shear valve", "listed, within the riser's loss", true);
    const char* own = listed_.inlet->shear_valve->groove_elevation ? "gauge, at the groove" : "gauge, at the inlet";
    const bool known = course_.shear_valve->height_entered || listed_.dispenser->elevation || listed_.inlet->elevation;
    return with("Shear valve", Measure::pressure, course_.shear_valve->pressure_gauge,
                !heights_ ? "at liquid height"
                : known   ? own
                          : "gauge at datum height");
  }

  [[nodiscard]] Stop meter() const {
    if (course_.meter_loss) return takes("Meter", {ElementKind::meter}, "takes");
    if (course_.lumped_loss) return in_words("Meter", "within the hose's one loss", true);
    return in_words("Meter", "not listed", false);
  }

  [[nodiscard]] Stop hose() const {
    if (course_.lumped_loss) return takes("Hose", {ElementKind::hose_set}, "dispenser and hose in one");
    if (!course_.hose_loss) return in_words("Hose", "no part listed", true);
    return takes("Hose", hose_kinds, "whip to swivel");
  }

  [[nodiscard]] Stop nozzle() const {
    Stop stop = with("Nozzle", Measure::flow, hose_.hose_flow, "");
    if (hose_.at_limit) {
      stop.note = "held by limiter";
    } else if (course_.outlet) {
      stop.note = (heights_ ? "outlet at " : "lift ") + with_unit(Measure::length, display_, course_.outlet->elevation);
    }
    return stop;
  }

  [[nodiscard]] Stop vapor() const {
    const bool listed = listed_.tank != nullptr && !listed_.tank->vents.empty();
    if (!listed) return in_words("Vapor", "vent not entered", false);
    const site::Vent& vent = listed_.tank->vents.front();
    if (vent.outlet_elevation) {
      return with("Vapor", Measure::length, vent.outlet_elevation->likely.si(), "vent outlet, height");
    }
    return in_words("Vapor", "vent listed, no height entered", true);
  }

  const Listed& listed_;
  const CourseStops& course_;
  const studies::HoseFlow& hose_;
  ShownBudget budget_;
  Display display_;
  bool heights_;
};

const site::Inlet* inlet_of(const site::Dispenser& dispenser, const std::string& place) {
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (site::place_name(dispenser, inlet) == place) return &inlet;
  }
  return nullptr;
}

const site::Delivery* delivery_to(const site::Site& site, const std::string& tank) {
  for (const site::Delivery& delivery : site.deliveries) {
    for (const site::TruckCompartment& compartment : delivery.compartments) {
      if (compartment.tank.text == tank) return &delivery;
    }
  }
  return nullptr;
}

}  // namespace

Listed listed_on(const site::Site& site, const CourseStops& course, const studies::HoseFlow& hose) {
  Listed out;
  out.tank = by_id(site.tanks, course.tank);
  out.pump = by_id(site.pumps, course.pump);
  out.dispenser = by_id(site.dispensers, hose.dispenser);
  out.delivery = delivery_to(site, course.tank);
  if (out.dispenser == nullptr) return out;
  out.inlet = inlet_of(*out.dispenser, course.inlet);
  out.hose = by_id(out.dispenser->hoses, hose.id);
  return out;
}

std::array<Stop, 11> stop_cells(const Listed& listed, const CourseStops& course, const studies::HoseFlow& hose,
                                Display display, bool heights_known) {
  return Writer(listed, course, hose, display, heights_known).cells();
}

}  // namespace forecourse::report::drawing
