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

/// Looks up one thing after the other.
class Maker {
 public:
  Maker(const Scene& scene, Inputs& inputs)
      : s_(scene), in_(inputs), asked_(scene.request.fire.value_or(site::FireRequest{})) {
    for (const EndGround& end : scene.ground.ends) {
      if (end.inlet == nullptr || !end.inlet->shear_valve) continue;
      const site::ShearValve& valve = *end.inlet->shear_valve;
      if (valve_ == nullptr || (is_whole(valve) && !is_whole(*valve_))) valve_ = &valve;
    }
  }

  FireInputs make() {
    out_.fuel = fuel_of(s_);
    set_pool();
    constexpr double usual_start = 293.15;  // [K]
    out_.start = in_.take("temperature before the fire", asked_.start_temperature,
                          {usual_start, usual_start, usual_start}, DefaultStatus::illustrative, "K", "illustrative");
    set_gas();
    if (valve_ == nullptr) return out_;
    out_.rated = in_.take("rating of the fusible link", valve_->fusible_link, "K");
    out_.response_index = in_.take("response index of the fusible link", valve_->response_index, "(m s)^0.5");
    out_.conduction = in_.take("conduction of the fusible link", valve_->conduction, "(m/s)^0.5").value_or(0.0);
    return out_;
  }

 private:
  /// The link of a valve whose figures are all there stands for those of its neighbors around the same fire.
  static bool is_whole(const site::ShearValve& valve) { return valve.fusible_link && valve.response_index; }

  void set_pool() {
    out_.diameter = in_.take("diameter of the burning pool", asked_.diameter, "m");
    if (!out_.diameter && s_.ground.sump != nullptr) {
      const double area = top_area(*s_.ground.sump);
      if (area > 0.0) out_.diameter = parts::equivalent_diameter(area);
    }
    const double density = s_.ground.network.systems[s_.ground.ends.front().system].fluid.density;
    if (out_.fuel && out_.diameter) out_.burning = parts::deep_pool_rate(*out_.fuel, *out_.diameter) / density;
  }

  /// As entered; else on the axis of the fire, of a deep pool. A link known by its height above the sump's floor is
  /// taken as that high above the fire: at first little fuel lies there.
  void set_gas() {
    out_.gas_temperature = in_.take("gas temperature at the link", asked_.gas_temperature, "K");
    out_.gas_speed = in_.take("gas speed at the link", asked_.gas_speed, "m/s");
    if ((out_.gas_temperature && out_.gas_speed) || !out_.fuel || !out_.diameter) return;
    auto above = in_.take("height of the link above the burning surface", asked_.link_above, "m");
    if (!above && valve_ != nullptr) above = in_.take("height of the link above the floor", valve_->link_height, "m");
    if (!above) return;
    const double area = 0.25 * std::numbers::pi * *out_.diameter * *out_.diameter;
    const double heat = parts::heat_release(*out_.fuel, parts::deep_pool_rate(*out_.fuel, *out_.diameter), area);
    const parts::HotGas gas = parts::axis_gas(heat, *above);
    if (!out_.gas_temperature) out_.gas_temperature = out_.start + gas.rise;
    if (!out_.gas_speed) out_.gas_speed = gas.speed;
  }

  const Scene& s_;
  Inputs& in_;
  site::FireRequest asked_;
  const site::ShearValve* valve_ = nullptr;
  FireInputs out_;
};

}  // namespace

FireInputs fire_inputs(const Scene& scene, Inputs& inputs) { return Maker(scene, inputs).make(); }

}  // namespace forecourse::studies
