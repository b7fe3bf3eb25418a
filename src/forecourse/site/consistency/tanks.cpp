#include "forecourse/site/consistency/tanks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "forecourse/base/unit_text.h"

namespace forecourse::site {
namespace {

constexpr double same = 1e-6;  // [m] sizes entered in different units may differ by rounding

/// What of one tank does not fit together.
class TankCheck {
 public:
  TankCheck(const Site& site, const Tank& tank, Findings& findings) : site_(site), tank_(tank), findings_(findings) {
    name_ = fmt::format("tank '{}'", tank.id.text);
    if (!tank.shape) return;
    const TankShape& shape = *tank.shape;
    const bool lying = shape.kind.text != "vertical-cylinder";
    if (lying && shape.length) length_ = shape.length->likely.si();
    const Maybe<Length>& tall = shape.kind.text == "horizontal-cylinder" ? shape.inside_diameter : shape.height;
    if (tall) height_ = tall->likely.si();
    if (!lying && height_ > 0.0) height_ += 2.0 * bulge();
  }

  void check() {
    check_heads();
    check_pitch();
    check_reading(tank_.reading);
    check_compartments();
    check_places();
    check_inside();
  }

 private:
  [[nodiscard]] double diameter() const {
    return tank_.shape && tank_.shape->inside_diameter ? tank_.shape->inside_diameter->likely.si() : 0.0;
  }
  /// How far a head bulges at most, where its depth is not entered.
  [[nodiscard]] double bulge() const {
    const std::string& heads = tank_.shape->heads.text;
    if (heads.empty() || heads == "flat") return 0.0;
    return tank_.shape->head_depth ? tank_.shape->head_depth->likely.si() : 0.5 * diameter();
  }
  [[nodiscard]] std::string shown(double meters) const {
    return show_quantity(meters, site_.display == Display::si ? "m" : "in");
  }
  [[nodiscard]] std::string far(double meters) const {
    return show_quantity(meters, site_.display == Display::si ? "m" : "ft");
  }

  void check_heads() {
    if (!tank_.shape || !(diameter() > 0.0)) return;
    const TankShape& shape = *tank_.shape;
    const double half = 0.5 * diameter();
    const std::string& heads = shape.heads.text;
    if (shape.dish_radius && shape.dish_radius->likely.si() < half - same)
      findings_.error(shape.dish_radius->where,
                      fmt::format("a head of {} with a dish radius of {} does not reach its shell of {}", name_,
                                  shown(shape.dish_radius->likely.si()), shown(diameter())),
                      "a dish radius is half the inside diameter or more");
    if (shape.knuckle_radius && shape.knuckle_radius->likely.si() > half + same)
      findings_.error(shape.knuckle_radius->where,
                      fmt::format("the knuckle radius of {} is more than half its inside diameter", name_),
                      "measure it between the crown and the shell");
    if (!shape.head_depth) {
      if (heads == "conical")
        findings_.error(shape.heads.where, fmt::format("the conical heads of {} have no depth", name_),
                        "add head_depth = ...");
      return;
    }
    const double depth = shape.head_depth->likely.si();
    const SourceSpan where = shape.head_depth->where;
    if ((heads.empty() || heads == "flat") && depth > 0.0)
      findings_.error(where, fmt::format("the heads of {} are flat, but have a depth", name_),
                      "say what heads they are, or leave out head_depth");
    if (heads == "hemispherical" && std::abs(depth - half) > 1e-3 * diameter())
      findings_.error(where,
                      fmt::format("the hemispherical heads of {} are {} deep; half its inside diameter is {}", name_,
                                  shown(depth), shown(half)),
                      "leave out head_depth, or say heads = \"elliptical\" or \"dished\"");
    if (heads == "dished" && depth > half + same)
      findings_.error(
          where,
          fmt::format("the dished heads of {} are {} deep, more than half its inside diameter", name_, shown(depth)),
          "a dished head is no deeper than a hemisphere");
  }

  void check_pitch() {
    if (!tank_.shape || !tank_.shape->pitch || tank_.shape->pitch->likely.si() >= 0.0) return;
    findings_.error(tank_.shape->pitch->where, fmt::format("the pitch of {} is below zero", name_),
                    "a pitch counts upward from the low end: write it without a sign, and say low_end");
  }

  void check_reading(const std::optional<LevelReading>& reading) {
    if (!reading) return;
    if (reading->depth && height_ > 0.0 && reading->depth->likely.si() > height_ + same)
      findings_.error(reading->depth->where,
                      fmt::format("the depth in {} is {}, but it is {} high inside", name_,
                                  shown(reading->depth->likely.si()), shown(height_)),
                      "check the depth, its unit and the size of the tank");
    if (reading->depth && reading->water && reading->water->likely > reading->depth->likely)
      findings_.error(reading->water->where,
                      fmt::format("the water bottom in {} is deeper than the liquid, which it is part of", name_),
                      "depth counts water and fuel together");
    check_place(reading->at, fmt::format("the reading of {}", name_));
  }

  void check_place(const Maybe<Length>& at, const std::string& what) {
    if (!at || !(length_ > 0.0)) return;
    const double place = at->likely.si();
    if (place <= length_ + bulge() + same) return;
    findings_.error(at->where,
                    fmt::format("{} is at {}, beyond the end of the shell at {}", what, far(place), far(length_)),
                    "places along a tank count from its low end");
  }

  void check_compartments() {
    double before = 0.0;
    const Compartment* last = nullptr;
    std::vector<const Compartment*> in_order;
    for (const Compartment& c : tank_.compartments) {
      check_reading(c.reading);
      if (c.from && c.length) in_order.push_back(&c);
    }
    std::sort(in_order.begin(), in_order.end(),
              [](const Compartment* a, const Compartment* b) { return a->from->likely < b->from->likely; });
    for (const Compartment* c : in_order) {
      const double from = c->from->likely.si(), to = from + c->length->likely.si();
      if (length_ > 0.0 && to > length_ + 1e-3)
        findings_.error(c->length->where,
                        fmt::format("compartment '{}' ends at {}, beyond the end of {} at {}", c->id.text, far(to),
                                    name_, far(length_)),
                        "the compartments and the rooms between them share the length of the shell");
      if (last != nullptr && from < before - 1e-3) {
        Diagnostic& d = findings_.error(c->from->where,
                                        fmt::format("compartment '{}' begins at {}, before compartment '{}' ends at {}",
                                                    c->id.text, far(from), last->id.text, far(before)),
                                        "check from and length of both");
        relate(d, last->where, fmt::format("compartment '{}'", last->id.text));
      }
      before = to;
      last = c;
    }
  }

  void check_places() {
    for (const Fill& fill : tank_.fills) {
      check_place(fill.at, fmt::format("the fill of {}", name_));
      check_drop_tube(fill);
    }
    if (tank_.gauge) check_place(tank_.gauge->at, fmt::format("the gauge of {}", name_));
    for (const Pump& pump : site_.pumps) {
      if (pump.tank == tank_.id) check_place(pump.at, fmt::format("pump '{}'", pump.id.text));
    }
  }

  /// The surface falls toward the high end: a drop tube there may end in the open.
  void check_drop_tube(const Fill& fill) {
    if (!fill.drop_tube || !fill.drop_tube->end_above_bottom || !fill.at || !tank_.shape) return;
    if (!tank_.reading || !tank_.reading->depth || !tank_.reading->at) return;
    const double pitch = tank_.shape->pitch ? tank_.shape->pitch->likely.si() : 0.0;
    const double here =
        tank_.reading->depth->likely.si() + pitch * (tank_.reading->at->likely.si() - fill.at->likely.si());
    const double end = fill.drop_tube->end_above_bottom->likely.si();
    if (here >= end) return;
    findings_.warn(
        fill.drop_tube->end_above_bottom->where,
        fmt::format("the drop tube of {} ends {} above the bottom, but at the fill the liquid stands only {} "
                    "deep",
                    name_, shown(end), shown(std::max(0.0, here))),
        pitch > 0.0 ? "the pitch uncovers the fill: a longer drop tube, or the fill at the low end"
                    : "a longer drop tube, or more kept in the tank");
  }

  void check_inside() {
    for (const Displacement& d : tank_.displacements) {
      if (!d.to || !(height_ > 0.0) || d.to->likely.si() <= height_ + length_ + same) continue;
      findings_.error(d.to->where, fmt::format("what stands inside {} reaches higher than the tank", name_),
                      "from and to count from the lowest inside point");
    }
    if (!tank_.calibration) return;
    check_place(tank_.calibration->at, fmt::format("the calibration of {}", name_));
    const auto& points = tank_.calibration->points;
    if (!points.empty() && height_ > 0.0 && points.back().depth.si() > height_ + same)
      findings_.error(tank_.calibration->where,
                      fmt::format("a calibration reading of {} is deeper than the tank is high", name_),
                      "check the depths and their unit");
  }

  const Site& site_;
  const Tank& tank_;
  Findings& findings_;
  std::string name_;
  double length_ = 0.0;
  double height_ = 0.0;
};

}  // namespace

void check_tanks(const Site& site, Findings& findings) {
  for (const Tank& tank : site.tanks) TankCheck(site, tank, findings).check();
}

}  // namespace forecourse::site
