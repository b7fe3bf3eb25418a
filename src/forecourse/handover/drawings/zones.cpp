#include "forecourse/handover/drawings/zones.h"

#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/parts/shared_outlet.h"

namespace forecourse::handover {
namespace zone_size {

double loose_fill() { return to_si(10.0, "ft"); }
double tight_fill() { return to_si(5.0, "ft"); }
double above_grade() { return to_si(18.0, "in"); }
double vent_inner() { return to_si(3.0, "ft"); }
double vent_outer() { return to_si(5.0, "ft"); }
double pump_near() { return to_si(3.0, "ft"); }
double pump_at_grade() { return to_si(10.0, "ft"); }

}  // namespace zone_size

namespace {

constexpr const char* clause = "IFC table 5703.1.1";
constexpr const char* edition = "2018 International Fire Code as adopted in the 2020 Minnesota State Fire Code";

/// Whether what a part holds is a Class I liquid: gasoline is; empty: not known.
std::optional<bool> holds_gasoline(const site::Site& site, const StationPart& part) {
  if (part.products.empty()) return std::nullopt;
  return checks::any_is(part.products, [&](const std::string& product) {
    return checks::is_gasoline(checks::product_of(site, {product, {}}));
  });
}

class Zones {
 public:
  Zones(const site::Site& site, const PartPlaces& places, View view, Drawing& out)
      : site_(site), places_(places), view_(view), out_(out) {}

  void around(const StationPart& part) {
    if (part.kind == "dispenser") return about_dispenser(part);
    if (part.kind == "vapor-return") return gap(part, "no position of the vapor connection can be entered");
    if (part.kind == "vapor-processor") return gap(part, "text of the extent around vapor processors not seen");
    if (part.kind != "fill" && part.kind != "vent" && part.kind != "pump") return;
    const std::optional<bool> gasoline = holds_gasoline(site_, part);
    if (gasoline && !*gasoline) return;
    if (!gasoline) return gap(part, "kind of its product not entered");
    const Point* at = places_.find(part.path);
    if (at == nullptr) return gap(part, "its place is not known");
    if (part.kind == "fill") about_fill(part, *at);
    if (part.kind == "vent") about_vent(part, *at);
    if (part.kind == "pump") about_pump(part, *at);
  }

 private:
  void about_dispenser(const StationPart& part) {
    const std::optional<bool> gasoline = holds_gasoline(site_, part);
    if (gasoline && !*gasoline) return;
    gap(part, "text of the extent around and inside dispensers not seen");
  }
  void about_fill(const StationPart& part, Point at) {
    const site::Fill& fill = **std::get_if<const site::Fill*>(&part.data);
    if (!fill.tight) return gap(part, "enter tight of the fill, on which its extent hangs");
    const double radius = *fill.tight ? zone_size::tight_fill() : zone_size::loose_fill();
    low(part, at, radius);
    pits(part, at, radius);
  }
  void about_vent(const StationPart& part, Point at) {
    const site::Vent& vent = **std::get_if<const site::Vent*>(&part.data);
    const site::Fact upward = of_outlet(site_, vent, &site::Vent::upward);
    if (!upward.value_or(false)) {
      return gap(part,
                 upward ? "text of the extent around a vent that blows sideways not seen" : "enter upward of the vent");
    }
    ball(part, at, 1, zone_size::vent_inner());
    ball(part, at, 2, zone_size::vent_outer());
  }
  void about_pump(const StationPart& part, Point at) {
    ball(part, at, 2, zone_size::pump_near());
    low(part, at, zone_size::pump_at_grade());
    pits(part, at, zone_size::pump_at_grade());
  }

  /// Division 2 from grade upward.
  void low(const StationPart& part, Point at, double radius) {
    tell(part, 2, radius,
         "Division 2 within " + length_words(radius, site_.display) + ", up to " +
             length_words(zone_size::above_grade(), site_.display) + " above grade");
    if (view_ == View::plan) {
      out_.circles.push_back({"zones-2", at, radius, true});
    } else {
      const double high = zone_size::above_grade();
      out_.paths.push_back({"zones-2",
                            {{at.x - radius, 0.0}, {at.x + radius, 0.0}, {at.x + radius, high}, {at.x - radius, high}},
                            true,
                            true});
    }
  }
  void ball(const StationPart& part, Point at, int division, double radius) {
    tell(part, division, radius,
         "Division " + std::to_string(division) + " within " + length_words(radius, site_.display) +
             " in all directions");
    out_.circles.push_back({division == 1 ? "zones-1" : "zones-2", at, radius, division == 1});
  }
  /// A sump that a classified area touches is Division 1 inside.
  void pits(const StationPart& part, Point at, double radius) {
    for (const Path& sump : out_.paths) {
      if (!sump.layer.starts_with("sumps") ||
          std::find(pits_.begin(), pits_.end(), &sump - out_.paths.data()) != pits_.end())
        continue;
      const bool touched = std::any_of(sump.points.begin(), sump.points.end(), [&](Point corner) {
        const double x = corner.x - at.x, y = view_ == View::plan ? corner.y - at.y : 0.0;
        return x * x + y * y <= radius * radius;
      });
      if (!touched) continue;
      pits_.push_back(&sump - out_.paths.data());
      tell(part, 1, 0.0, "Division 1 inside the sump that its area touches");
    }
  }
  void tell(const StationPart& part, int division, double radius, const std::string& words) {
    out_.zones.push_back({part.path, part.kind + " " + part.subject, words, division, radius, clause, edition});
  }
  void gap(const StationPart& part, const std::string& why) {
    out_.zone_gaps.push_back({part.path, part.kind + " " + part.subject, why});
  }

 public:
  /// Sumps that are Division 1 inside, drawn over.
  void draw_pits() {
    for (const std::ptrdiff_t index : pits_) {
      Path pit = out_.paths[static_cast<std::size_t>(index)];
      pit.layer = "zones-1";
      pit.area = true;
      out_.paths.push_back(std::move(pit));
    }
  }

 private:
  const site::Site& site_;
  const PartPlaces& places_;
  View view_;
  Drawing& out_;
  std::vector<std::ptrdiff_t> pits_;  ///< of the drawing's paths
};

}  // namespace

void draw_zones(const site::Site& site, const std::vector<StationPart>& parts, const PartPlaces& places, View view,
                Drawing& out) {
  Zones zones(site, places, view, out);
  const auto off = [&](const StationPart& part) {
    return std::find(out.elsewhere.begin(), out.elsewhere.end(), part.path) != out.elsewhere.end();
  };
  for (const StationPart& part : parts) {
    if (!off(part)) zones.around(part);
  }
  zones.draw_pits();
}

}  // namespace forecourse::handover
