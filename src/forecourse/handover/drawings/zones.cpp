#include "forecourse/handover/drawings/zones.h"

#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/plan.h"
#include "forecourse/handover/drawings/sumps.h"
#include "forecourse/handover/drawings/words.h"
#include "forecourse/handover/parts/rules_of_station.h"
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
  }

  /// Division 2 from grade upward.
  void low(const StationPart& part, Point at, double radius) {
    at_grade_.push_back({{{at.x, level(at.y)}}, radius});
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
  void tell(const StationPart& part, int division, double radius, const std::string& words) {
    out_.zones.push_back({part.path, part.kind + " " + part.subject, words, division, radius, clause, edition});
  }
  void gap(const StationPart& part, const std::string& why) {
    out_.zone_gaps.push_back({part.path, part.kind + " " + part.subject, why});
  }

  /// Across the course a section knows no distances.
  [[nodiscard]] double level(double y) const { return view_ == View::plan ? y : 0.0; }

  [[nodiscard]] static const site::Sump* sump_of(const StationPart& part) {
    const auto* sump = std::get_if<const site::Sump*>(&part.data);
    return sump == nullptr ? nullptr : *sump;
  }

  /// The inside of a sump as it is drawn, and what it covers level; empty: sizes are not entered.
  struct Pit {
    std::optional<Path> path;
    checks::Outline level;
  };
  [[nodiscard]] std::optional<Pit> pit(const site::Sump& sump, Point at) const {
    if (view_ == View::plan) {
      auto outline = sump_on_plan(sump, at);
      return outline ? std::optional(Pit{{}, std::move(*outline)}) : std::nullopt;
    }
    auto path = sump_in_section(sump, at.x);
    if (!path) return std::nullopt;
    const double left = path->points.front().x, right = path->points.back().x;
    return Pit{std::move(path), {{{left, 0.0}, {right, 0.0}}, 0.0}};
  }

  void draw_inside(const Pit& pit) {
    if (pit.level.radius > 0.0) {
      out_.circles.push_back({"zones-1", {pit.level.corners[0].x, pit.level.corners[0].y}, pit.level.radius, true});
      return;
    }
    Path inside = pit.path.value_or(Path{});
    if (!pit.path) {
      for (const checks::PlanPoint& corner : pit.level.corners) inside.points.push_back({corner.x, corner.y});
    }
    out_.paths.push_back({"zones-1", std::move(inside.points), true, true});
  }

 public:
  /// A sump that an area at grade touches is Division 1 inside; drawn over the areas.
  void inside(const StationPart& part) {
    if (at_grade_.empty()) return;
    if (part.kind == "sump-on-tank") return gap(part, "no position of it can be entered");
    if (part.kind != "tank-sump" && part.kind != "dispenser-sump") return;
    const auto mark =
        std::find_if(out_.marks.begin(), out_.marks.end(), [&](const Mark& one) { return one.part == part.path; });
    if (mark == out_.marks.end()) return gap(part, "its place is not known");
    const std::optional<Pit> found = pit(*sump_of(part), mark->at);
    if (!found) return gap(part, view_ == View::plan ? "enter sizes of the sump" : "enter depth and sizes of the sump");
    const bool touched = std::any_of(at_grade_.begin(), at_grade_.end(), [&](const checks::Outline& area) {
      return checks::distance(area, found->level) <= 0.0;
    });
    if (!touched) return;
    tell(part, 1, 0.0, "Division 1 inside, since a classified area touches it");
    draw_inside(*found);
  }

 private:
  const site::Site& site_;
  const PartPlaces& places_;
  View view_;
  Drawing& out_;
  std::vector<checks::Outline> at_grade_;  ///< areas that reach up from there
};

}  // namespace

void draw_zones(const site::Site& site, const std::vector<StationPart>& parts, const PartPlaces& places, View view,
                Drawing& out) {
  if (under_european_rules_alone(site)) {
    out.zone_gaps.push_back({"site.rules", "station", "zones of the European rule not seen"});
    return;
  }
  std::vector<const StationPart*> here;
  for (const StationPart& part : parts) {
    if (std::find(out.elsewhere.begin(), out.elsewhere.end(), part.path) == out.elsewhere.end()) here.push_back(&part);
  }
  Zones zones(site, places, view, out);
  for (const StationPart* part : here) zones.around(*part);
  for (const StationPart* part : here) zones.inside(*part);
}

}  // namespace forecourse::handover
