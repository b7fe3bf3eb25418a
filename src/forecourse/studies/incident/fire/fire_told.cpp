#include "forecourse/studies/incident/fire/fire_told.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

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

/// What share of its heat the flame radiates: measured for alcohols, for others as worked examples take it.
parts::RadiativeFraction radiated_share(const parts::BurningFuel& fuel) {
  return fuel.name == "ethanol" ? parts::alcohol_radiative_fraction : parts::hydrocarbon_radiative_fraction;
}

/// By two laws, from the lower of one rate to the higher of the other.
Spread flame_height(const parts::BurningFuel& fuel, const Spread& rate, double diameter, double area) {
  const auto tall = [&](double r) {
    return parts::flame_height_heskestad(parts::heat_release(fuel, r, area), diameter);
  };
  const auto short_of_it = [&](double r) { return parts::flame_height_thomas(r, diameter); };
  return {std::min(tall(rate.low), short_of_it(rate.low)), 0.5 * (tall(rate.likely) + short_of_it(rate.likely)),
          std::max(tall(rate.high), short_of_it(rate.high))};
}

void tell_flames(const parts::BurningFuel& fuel, FireTold& told) {
  const double diameter = told.pool_diameter;
  const double area = 0.25 * std::numbers::pi * diameter * diameter;
  const parts::BurningRate rate = parts::thin_layer_rate(fuel, diameter);
  told.burning_rate = {rate.low, 0.5 * (rate.low + rate.high), rate.high};
  const auto heat = [&](double r) { return parts::heat_release(fuel, r, area); };
  told.heat_release = {heat(rate.low), heat(told.burning_rate.likely), heat(rate.high)};
  told.flame_height = flame_height(fuel, told.burning_rate, diameter, area);
  const parts::RadiativeFraction share = radiated_share(fuel);
  for (const double distance : {2.0, 5.0, 10.0}) {
    const double from_axis = distance + 0.5 * diameter;
    told.distances.push_back(distance);
    told.radiation.push_back(
        {parts::point_source_flux(told.heat_release.low, share.low, from_axis),
         parts::point_source_flux(told.heat_release.likely, 0.5 * (share.low + share.high), from_axis),
         parts::point_source_flux(told.heat_release.high, share.high, from_axis)});
  }
}

/// Why the moment at which the link parts is not determined; empty if it is.
std::string not_determined(const FireInputs& fire) {
  if (!fire.rated) return "no fusible link is listed";
  if (*fire.rated <= fire.start) return "the link is rated below its temperature before the fire";
  if (!fire.response_index) return "the response index of the link is not entered";
  if (fire.gas_temperature && fire.gas_speed) return {};
  if (!fire.fuel) return "no published burning figures stand for the product, and the gas at the link is not entered";
  return "gas temperature and speed at the link are not entered, nor how high it stands above the fire";
}

/// When the link parts [s]; infinite: never. Empty where it is not determined.
std::optional<double> parts_at(const FireInputs& fire) {
  if (!not_determined(fire).empty()) return std::nullopt;
  const parts::HeatLink link{*fire.response_index, fire.conduction};
  return parts::operating_time(link, {*fire.gas_temperature - fire.start, *fire.gas_speed}, *fire.rated - fire.start);
}

void tell_link(const FireInputs& fire, FireTold& told) {
  told.gas_temperature = fire.gas_temperature;
  told.gas_speed = fire.gas_speed;
  told.start_temperature = fire.start;
  told.response_index = fire.response_index;
  told.rated = fire.rated;
  told.link_reason = not_determined(fire);
  const auto time = parts_at(fire);
  if (!time) return;
  told.link_never_parts = !std::isfinite(*time);
  if (told.link_never_parts) {
    told.link_reason = "the gas at the link is not hot enough to part it";
  } else {
    told.link_parts_at = *time;
  }
}

}  // namespace

bool link_never_parts(const Scene& scene) {
  Inputs inputs;
  const auto time = parts_at(fire_inputs(scene, inputs));
  return time && !std::isfinite(*time);
}

FireTold fire_told(const Scene& scene, Inputs& inputs, const IncidentRun* with, const IncidentRun* without) {
  FireTold told;
  const FireInputs fire = fire_inputs(scene, inputs);
  told.pool_diameter = fire.diameter.value_or(0.0);
  if (fire.fuel) told.fuel = std::string(fire.fuel->name);
  if (fire.fuel && told.pool_diameter > 0.0) tell_flames(*fire.fuel, told);
  tell_link(fire, told);
  if (with != nullptr) {
    told.isolated_at = with->isolated_at;
    told.fed_with_link = fed(*with);
  }
  if (without != nullptr) told.fed_without_link = fed(*without);
  return told;
}

}  // namespace forecourse::studies
