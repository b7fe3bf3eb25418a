#include "forecourse/studies/incident/barriers/valve_states.h"

#include "forecourse/site/places.h"
#include "forecourse/studies/incident/barriers/proofs.h"
#include "forecourse/studies/incident/fire/fire_told.h"

namespace forecourse::studies {
namespace {

/// One shear valve at its place.
struct ValveHere {
  const site::Dispenser& dispenser;
  const site::ShearValve& valve;
  std::string place;
  std::optional<site::Date> today;

  [[nodiscard]] Fault trip_test() const { return test_within_a_year("trip test", valve.tested, today); }
};

BarrierState shear_valve(const ValveHere& here) {
  return StateBuilder(Barrier::shear_valve, here.place, "shuts the riser at the base of the dispenser")
      .at(here.valve.where)
      .needs(here.valve.anchored, "whether it is anchored is not entered",
             "it is not anchored: the riser may be torn off instead")
      .needs(here.trip_test())
      .needs(groove_in_band(here.dispenser, here.valve))
      .done();
}

BarrierState upper_poppet(const ValveHere& here) {
  StateBuilder state(Barrier::upper_poppet, here.place, "holds what is in the dispenser above the groove");
  state.at(here.valve.where);
  if (!here.valve.poppet) {
    return state.needs(false, "whether it has one poppet or two is not entered: counted as one").done();
  }
  if (here.valve.poppet->value == site::Poppet::single_poppet) return state.absent("the valve has one poppet");
  return state.needs(here.trip_test()).done();
}

BarrierState fusible_link(const ValveHere& here, const Scene& scene) {
  StateBuilder state(Barrier::fusible_link, here.place, "shuts the shear valve when its link parts in the heat");
  state.at(here.valve.where);
  if (!here.valve.fusible_link) return state.absent("no fusible link is listed");
  return state.needs(here.trip_test())
      .needs(here.valve.response_index.has_value(),
             "the response index of the link is not entered: when it parts is not determined")
      .needs(!link_never_parts(scene), "the gas at the link is not hot enough to part it")
      .done();
}

BarrierState crack_trip(const ValveHere& here) {
  StateBuilder state(Barrier::crack_trip, here.place, "shuts the shear valve when its groove leaks");
  state.at(here.valve.where);
  if (!here.valve.crack_trip) return state.absent("whether it has a crack trip is not entered: counted as none");
  if (!*here.valve.crack_trip) return state.absent("the valve has no crack trip");
  return state
      .needs(here.valve.trip_volume.has_value(), "the leak at which it acts is not entered, so it is not counted on")
      .needs(here.trip_test())
      .done();
}

bool meets_valve(IncidentKind kind, bool at_dispenser) {
  return kind == IncidentKind::struck || kind == IncidentKind::drive_off || kind == IncidentKind::sump_fire ||
         (kind == IncidentKind::crack && at_dispenser);
}

}  // namespace

std::vector<BarrierState> valve_states(const Scene& scene, const EndGround& end) {
  const IncidentKind kind = scene.options.kind;
  if (end.inlet == nullptr || end.dispenser == nullptr) return {};
  if (!meets_valve(kind, !scene.ground.dispenser.empty())) return {};
  const std::string place = site::place_name(*end.dispenser, *end.inlet);
  if (!end.inlet->shear_valve) {
    return {StateBuilder(Barrier::shear_valve, place, "").absent("no shear valve is listed")};
  }
  const ValveHere here{*end.dispenser, *end.inlet->shear_valve, place, scene.options.today};
  std::vector<BarrierState> out;
  // A crack moves nothing: the valve shuts only if a crack trip shuts it.
  if (kind != IncidentKind::crack || here.valve.crack_trip.value_or(false)) out.push_back(shear_valve(here));
  if (kind == IncidentKind::struck) out.push_back(upper_poppet(here));
  if (kind == IncidentKind::sump_fire) out.push_back(fusible_link(here, scene));
  if (kind == IncidentKind::crack) out.push_back(crack_trip(here));
  return out;
}

}  // namespace forecourse::studies
