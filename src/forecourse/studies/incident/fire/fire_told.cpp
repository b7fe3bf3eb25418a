#include "forecourse/studies/incident/fire/fire_told.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "forecourse/network/containment/sump_room.h"
#include "forecourse/parts/fire/burning_fuels.h"
#include "forecourse/parts/fire/flame_radiation.h"
#include "forecourse/parts/fire/link_response.h"
#include "forecourse/parts/fire/pool_fire.h"
#include "forecourse/studies/incident/fire/fire_inputs.h"

namespace forecourse::studies {
namespace {

/// What went out of the lines in a run [m3].
double fed(const IncidentRun& run) {
  double sum = 0.0;
  for (const LedgerLine& line : run.ledger) {
    const bool out =
        line.from == Holder::line && (line.to == Holder::sump || line.to == Holder::slab || line.to == Holder::ground);
    if (out) sum += line.amount;
  }
  return sum;
}

void tell_flames(const parts::BurningFuel& fuel, FireTold& told) {
  const double diameter = told.pool_diameter;
  const double area = 0.25 * std::numbers::pi * diameter * diameter;
  const parts::BurningRate rate = parts::thin_layer_rate(fuel, diameter);
  const double middle = 0.5 * (rate.low + rate.high);
  told.burning_rate = {rate.low, middle, rate.high};
  const auto heat = [&](double r) { return parts::heat_release(fuel, r, area); };
  told.heat_release = {heat(rate.low), heat(middle), heat(rate.high)};
  const auto heights = [&](double r) {
    return std::minmax(parts::flame_height_heskestad(heat(r), diameter), parts::flame_height_thomas(r, diameter));
  };
  told.flame_height = {std::max(0.0, heights(rate.low).first), 0.5 * (heights(middle).first + heights(middle).second),
                       heights(rate.high).second};
  const parts::RadiativeFraction share = parts::hydrocarbon_radiative_fraction;
  for (const double distance : {2.0, 5.0, 10.0}) {
    const double from_axis = distance + 0.5 * diameter;
    told.distances.push_back(distance);
    told.radiation.push_back(
        {parts::point_source_flux(told.heat_release.low, share.low, from_axis),
         parts::point_source_flux(told.heat_release.likely, 0.5 * (share.low + share.high), from_axis),
         parts::point_source_flux(told.heat_release.high, share.high, from_axis)});
  }
}

void tell_link(const Scene& scene, const FireInputs& fire, FireTold& told) {
  told.gas_temperature = fire.gas_temperature;
  told.gas_speed = fire.gas_speed;
  told.start_temperature = fire.start;
  told.response_index = fire.response_index;
  told.rated = fire.rated;
  static_cast<void>(scene);
  if (!fire.rated) {
    told.link_reason = "no fusible link is listed";
  } else if (!fire.response_index) {
    told.link_reason = "the response index of the link is not entered";
  } else if (!fire.gas_temperature || !fire.gas_speed) {
    told.link_reason = "gas temperature and speed at the link are not entered, nor how high it stands above the fire";
  } else {
    const parts::HeatLink link{*fire.response_index, fire.conduction};
    const double time =
        parts::operating_time(link, {*fire.gas_temperature - fire.start, *fire.gas_speed}, *fire.rated - fire.start);
    if (std::isfinite(time)) told.link_parts_at = time;
    if (!std::isfinite(time)) told.link_reason = "the gas at the link is not hot enough: it never parts";
  }
}

}  // namespace

FireTold fire_told(const Scene& scene, Inputs& inputs, const IncidentRun* with, const IncidentRun* without) {
  FireTold told;
  const FireInputs fire = fire_inputs(scene, inputs);
  told.pool_diameter = fire.diameter.value_or(0.0);
  if (fire.fuel) told.fuel = std::string(fire.fuel->name);
  if (fire.fuel && told.pool_diameter > 0.0) tell_flames(*fire.fuel, told);
  tell_link(scene, fire, told);
  if (with != nullptr) {
    told.isolated_at = with->isolated_at;
    told.fed_with_link = fed(*with);
  }
  if (without != nullptr) told.fed_without_link = fed(*without);
  return told;
}

}  // namespace forecourse::studies
