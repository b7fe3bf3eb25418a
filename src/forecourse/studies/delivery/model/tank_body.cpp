#include "forecourse/studies/delivery/model/tank_body.h"

#include <utility>

namespace forecourse::studies::delivering {

std::variant<TankBody, std::string> body_of(const site::Tank& tank) {
  if (tank.chart.empty() && !tank.compartments.empty())
    return "tank '" + tank.id.text + "' is divided by inner heads: enter the chart of its compartment";
  auto inside = network::tank_inside(tank);
  if (auto* why = std::get_if<std::string>(&inside)) return std::move(*why);
  return TankBody(std::get<network::TankInside>(std::move(inside)));
}

}  // namespace forecourse::studies::delivering
