#include <algorithm>
#include <utility>

#include "forecourse/lesson/failures/kinds.h"
#include "forecourse/lesson/failures/published_hole.h"

namespace forecourse::lesson {
namespace {

using studies::Happening;

/// Nobody fuels elsewhere: what escapes is what this dispenser lets out, and it is found at once.
IncidentSide struck_side(std::string name, const std::string& at, std::vector<std::string> without = {}) {
  IncidentSide out = incident_side(std::move(name), "struck", at, std::move(without));
  out.texts.open.emplace();
  return out;
}

IncidentPlan none(const std::string& at, std::string problem) {
  IncidentPlan out;
  out.at = at;
  out.problem = std::move(problem);
  return out;
}

bool has_double_poppet(const Spot& spot) {
  return has_shear_valve(spot) && spot.inlet->shear_valve->poppet &&
         spot.inlet->shear_valve->poppet->value == site::Poppet::double_poppet;
}

bool has_crack_trip(const Spot& spot) {
  return has_shear_valve(spot) && spot.inlet->shear_valve->crack_trip.value_or(false) &&
         spot.inlet->shear_valve->trip_volume;
}

bool has_detector(const site::Site& site, const std::string& product) {
  return std::any_of(site.pumps.begin(), site.pumps.end(), [&](const site::Pump& pump) {
    return pump.leak_detector && product_at(site, pump.id.text) == product;
  });
}

bool has_link(const Spot& spot) { return has_shear_valve(spot) && spot.inlet->shear_valve->fusible_link; }

/// Whether the file says how much leaks in its incident of a kind.
bool says_leak(const site::Site& site, const char* kind) {
  for (const site::IncidentRequest& one : site.incidents) {
    if (one.kind.text == kind) return !one.readings.empty() || one.open_area;
  }
  return false;
}

/// Where the file does not say how much leaks: the hole of the published rate.
void leak_as_published(const site::Site& site, const char* kind, IncidentPlan& plan) {
  if (says_leak(site, kind)) return;
  const PublishedHole hole = published_hole(site, plan.spot.inlet->product.text);
  plan.problem = hole.problem;
  plan.fails.texts.open_area = plan.works.texts.open_area = hole.area;
}

IncidentPlan struck(const site::Site& site, const std::string& at, Fits fits, const char* enter) {
  const std::vector<Spot> spots = inlets(site, at, "struck", fits);
  if (spots.empty()) return none(at, enter);
  IncidentPlan out;
  out.spot = spots.front();
  out.at = out.spot.dispenser->id.text;
  out.works = struck_side("shear valve works", out.at);
  out.acts = Happening::valve_shut;
  out.idle = "no shear valve shuts here: enter the valve with its poppet and its closing";
  return out;
}

}  // namespace

IncidentPlan plan_struck(const site::Site& site, const std::string& at) {
  IncidentPlan out =
      struck(site, at, has_shear_valve, "no shear valve is listed: add shear_valve = { ... } to a [[dispenser.inlet]]");
  out.fails = struck_side("without shear valve", out.at, {"shear-valve"});
  return out;
}

IncidentPlan plan_single_poppet(const site::Site& site, const std::string& at) {
  IncidentPlan out = struck(site, at, has_double_poppet,
                            "no shear valve with two poppets is listed: say poppet = \"double\" of a shear_valve");
  out.fails = struck_side("without upper poppet", out.at, {"upper-poppet"});
  out.works.name = "both poppets work";
  return out;
}

IncidentPlan plan_unanchored(const site::Site& site, const std::string& at) {
  IncidentPlan out =
      struck(site, at, has_shear_valve, "no shear valve is listed: add shear_valve = { ... } to a [[dispenser.inlet]]");
  out.fails = struck_side("shear valve not anchored", out.at);
  out.fails.run = "shear valve not anchored";
  out.works.name = "shear valve anchored";
  out.fixed = {{"anchored", 0.0, 1.0}};
  return out;
}

IncidentPlan plan_cracked(const site::Site& site, const std::string& at) {
  const std::vector<Spot> spots = inlets(site, at, "crack", has_crack_trip);
  if (spots.empty()) {
    return none(at,
                "no shear valve with a crack trip is listed: say crack_trip = true of a shear_valve, and the "
                "trip_volume at which it acts");
  }
  IncidentPlan out;
  out.spot = spots.front();
  out.at = out.spot.id;
  out.fails = incident_side("without crack trip", "crack", out.at, {"crack-trip"});
  out.works = incident_side("crack trip works", "crack", out.at);
  out.acts = Happening::crack_trips;
  out.idle = "the crack leaks too little for its crack trip, or the line has too little pressure for it";
  leak_as_published(site, "crack", out);
  return out;
}

IncidentPlan plan_sump_fire(const site::Site& site, const std::string& at) {
  const std::vector<Spot> spots = inlets(site, at, "sump-fire", has_link);
  if (spots.empty()) {
    return none(at, "no shear valve with a fusible link is listed: add fusible_link = \"165 degF\" to a shear_valve");
  }
  IncidentPlan out;
  out.spot = spots.front();
  out.at = out.spot.dispenser->id.text;
  out.fails = incident_side("without fusible link", "sump-fire", out.at, {"fusible-link"});
  out.works = incident_side("fusible link works", "sump-fire", out.at);
  out.acts = Happening::link_parts;
  out.idle = "when the link parts is not determined";
  leak_as_published(site, "sump-fire", out);
  return out;
}

IncidentPlan plan_sensor_dead(const site::Site& site, const std::string& at) {
  const auto has_sensor = [](const Spot& spot) {
    const auto& sump = spot.dispenser->sump;
    return sump && (sump->sensor_height || (sump->sensor && sump->sensor->height));
  };
  std::vector<Spot> spots = inlets(site, at, "crack", has_sensor);
  if (spots.empty()) return none(at, "no sump with a sensor is listed: add sump = { ..., sensor_height = \"2 in\" }");
  IncidentPlan out;
  out.spot = spots.front();
  out.at = out.spot.id;
  out.fails = incident_side("sump sensor dead", "crack", out.at);
  out.fails.texts.dead = {"sump-sensor"};
  out.works = incident_side("sump sensor works", "crack", out.at);
  out.acts = Happening::sensor_wet;
  out.idle = "the leak does not reach the sensor in the time that is counted";
  leak_as_published(site, "crack", out);
  return out;
}

IncidentPlan plan_no_detector(const site::Site& site, const std::string& at) {
  const std::string product = product_at(site, at);
  std::string problem = "no pump with a leak detector is listed: add leak_detector = { ... } to a [[pump]]";
  for (const Spot& spot : inlets(site, at, "crack", is_any)) {
    if (!product.empty() && spot.inlet->product.text != product) continue;
    if (!has_detector(site, spot.inlet->product.text)) continue;
    const PublishedHole hole = published_hole(site, spot.inlet->product.text);
    if (!hole.problem.empty()) continue;
    IncidentPlan out;
    out.spot = spot;
    out.at = spot.id;
    out.fails = incident_side("without leak detector", "crack", out.at, {"leak-detector"});
    out.works = incident_side("leak detector works", "crack", out.at);
    out.fails.texts.open_area = out.works.texts.open_area = hole.area;
    out.acts = Happening::detector_due;
    out.idle = "whether the leak detector must see the leak is not known: enter its detects and at";
    return out;
  }
  return none(at, std::move(problem));
}

}  // namespace forecourse::lesson
