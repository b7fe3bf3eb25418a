#include "forecourse/studies/incident/fire/fire_inputs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "forecourse/network/containment/sump_room.h"
#include "forecourse/parts/fire/fire_plume.h"
#include "forecourse/parts/fire/pool_fire.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {
namespace {

/// Free surface of a full sump [m2]; 0 where its sizes are not known.
double top_area(const site::Sump& sump) {
  const auto room = network::sump_room(sump);
  const auto depth = room ? parts::depth_of(*room) : std::nullopt;
  if (!depth) return 0.0;
  constexpr double slice = 1e-3;  // of the depth
  return (*parts::volume_at(*room, *depth) - *parts::volume_at(*room, (1.0 - slice) * *depth)) / (slice * *depth);
}

std::optional<parts::BurningFuel> fuel_of(const Scene& scene) {
  const std::string& product = scene.ground.ends.front().product;
  for (const site::Product& p : scene.site.products) {
    if (p.id.text == product) return parts::burning_fuel_of_kind(p.kind.text);
  }
  return std::nullopt;
}

}  // namespace

FireInputs fire_inputs(const Scene& scene, Inputs& inputs) {
  FireInputs out;
  const site::FireRequest asked = scene.request.fire.value_or(site::FireRequest{});
  const EndGround& end = scene.ground.ends.front();
  const double density = scene.ground.network.systems[end.system].fluid.density;
  out.fuel = fuel_of(scene);
  out.diameter = inputs.take("diameter of the burning pool", asked.diameter, "m");
  if (!out.diameter && scene.ground.sump != nullptr) {
    const double area = top_area(*scene.ground.sump);
    if (area > 0.0) out.diameter = parts::equivalent_diameter(area);
  }
  constexpr double usual_start = 293.15;  // [K]
  out.start = inputs.take("temperature before the fire", asked.start_temperature,
                          {usual_start, usual_start, usual_start}, DefaultStatus::illustrative, "K", "illustrative");
  if (out.fuel && out.diameter) out.burning = parts::deep_pool_rate(*out.fuel, *out.diameter) / density;
  out.gas_temperature = inputs.take("gas temperature at the link", asked.gas_temperature, "K");
  out.gas_speed = inputs.take("gas speed at the link", asked.gas_speed, "m/s");
  const auto above = inputs.take("height of the link above the burning surface", asked.link_above, "m");
  if (!out.gas_temperature && !out.gas_speed && above && out.fuel && out.diameter) {
    const double area = 0.25 * std::numbers::pi * *out.diameter * *out.diameter;
    const double heat = parts::heat_release(*out.fuel, parts::deep_pool_rate(*out.fuel, *out.diameter), area);
    const parts::HotGas gas = parts::axis_gas(heat, *above);
    out.gas_temperature = out.start + gas.rise;
    out.gas_speed = gas.speed;
  }
  if (end.inlet == nullptr || !end.inlet->shear_valve) return out;
  const site::ShearValve& valve = *end.inlet->shear_valve;
  out.rated = inputs.take("rating of the fusible link", valve.fusible_link, "K");
  out.response_index = inputs.take("response index of the fusible link", valve.response_index, "(m s)^0.5");
  out.conduction = inputs.take("conduction of the fusible link", valve.conduction, "(m/s)^0.5").value_or(0.0);
  return out;
}

}  // namespace forecourse::studies
