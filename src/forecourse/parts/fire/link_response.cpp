#include "forecourse/parts/fire/link_response.h"

#include <cmath>
#include <limits>

namespace forecourse::parts {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

// ln(1 - reached) below zero; -infinity when the end is never passed.
double log_left(double reached) { return reached < 1.0 ? std::log1p(-reached) : -never; }

}  // namespace

double operating_time(const HeatLink& link, const HotGas& gas, double operating_rise) {
  if (operating_rise <= 0.0) return 0.0;
  const double least = least_gas_rise(link, gas.speed, operating_rise);
  if (!(gas.speed > 0.0) || !(gas.rise > least)) return never;
  return -link.response_index / (std::sqrt(gas.speed) + link.conduction) * log_left(least / gas.rise);
}

double heating_rate(const HeatLink& link, const HotGas& gas, double link_rise) {
  const double root = std::sqrt(gas.speed);
  return (root * gas.rise - (root + link.conduction) * link_rise) / link.response_index;
}

double link_rise_after(const HeatLink& link, const HotGas& gas, double time) {
  const double root = std::sqrt(gas.speed);
  const double both = root + link.conduction;
  if (!(root > 0.0)) return 0.0;
  return root * gas.rise / both * -std::expm1(-time * both / link.response_index);
}

double least_gas_rise(const HeatLink& link, double speed, double operating_rise) {
  if (link.conduction == 0.0) return operating_rise;
  return operating_rise * (1.0 + link.conduction / std::sqrt(speed));
}

double response_index(double time, const HotGas& gas, double operating_rise, double conduction) {
  const double root = std::sqrt(gas.speed);
  const double reached = operating_rise * (1.0 + conduction / root) / gas.rise;
  if (!(reached > 0.0 && reached < 1.0)) return std::numeric_limits<double>::quiet_NaN();
  return -time * (root + conduction) / log_left(reached);
}

double operating_time(const RadiatedLink& link, double operating_rise) {
  if (operating_rise <= 0.0) return 0.0;
  if (link.cooling == 0.0) return link.heat_capacity * operating_rise / link.absorbed_flux;
  return -link.heat_capacity / link.cooling * log_left(link.cooling * operating_rise / link.absorbed_flux);
}

double heating_rate(const RadiatedLink& link, double link_rise) {
  return (link.absorbed_flux - link.cooling * link_rise) / link.heat_capacity;
}

}  // namespace forecourse::parts
