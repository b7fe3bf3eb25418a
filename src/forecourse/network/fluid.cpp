#include "forecourse/network/fluid.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/properties.h"

namespace forecourse::network {
namespace {

constexpr double sixty_fahrenheit = kelvin_from_fahrenheit(60.0);

const site::Product* find(const site::Site& site, const std::string& product) {
  const auto found = std::find_if(site.products.begin(), site.products.end(),
                                  [&](const site::Product& p) { return p.id.text == product; });
  return found == site.products.end() ? nullptr : &*found;
}

double flowing_temperature(const site::Site& site, const site::Product& product, std::vector<DefaultUsed>& defaults) {
  if (product.temperature) return product.temperature->likely.si();
  if (site.ground_temperature) return site.ground_temperature->likely.si();
  const bool needed = !product.density || product.density_at || !(product.viscosity || product.kinematic_viscosity);
  if (!needed) return std::numeric_limits<double>::quiet_NaN();
  defaults.push_back({"temperature of " + product.id.text,
                      sixty_fahrenheit,
                      "K",
                      DefaultStatus::common_practice,
                      "the reference temperature; enter ground_temperature",
                      {}});
  return sixty_fahrenheit;
}

fuel::EnteredProperties entered(const site::Product& product) {
  fuel::EnteredProperties out;
  if (product.density) out.density = product.density->likely.si();
  if (product.density_at) out.density_temperature = product.density_at->likely.si();
  if (product.gravity) {
    out.density = product.gravity->likely.si();
    out.density_temperature = sixty_fahrenheit;
  }
  if (product.viscosity) out.dynamic_viscosity = product.viscosity->likely.si();
  if (product.expansion) out.thermal_expansion = product.expansion->likely.si();
  if (product.viscosity_points.size() > 1) {
    const site::ViscosityPoint& cold = product.viscosity_points.front();
    const site::ViscosityPoint& hot = product.viscosity_points.back();
    out.viscosity_law =
        fuel::fit_viscosity_law(cold.temperature.si(), cold.viscosity.si(), hot.temperature.si(), hot.viscosity.si());
  }
  return out;
}

DefaultStatus status_of(fuel::PropertyStatus status) {
  switch (status) {
    case fuel::PropertyStatus::published:
      return DefaultStatus::published;
    case fuel::PropertyStatus::common_practice:
      return DefaultStatus::common_practice;
    case fuel::PropertyStatus::computed:
    case fuel::PropertyStatus::approximation:
      return DefaultStatus::computed;
    default:
      return DefaultStatus::illustrative;
  }
}

void note(const fuel::Property& property, const std::string& what, const char* unit,
          std::vector<DefaultUsed>& defaults) {
  if (property.status == fuel::PropertyStatus::entered) return;
  defaults.push_back({what, property.value, unit, status_of(property.status), property.source, {}});
}

void miss(const site::Product& product, const char* property, const char* example, std::vector<Diagnostic>& problems) {
  problems.push_back({Severity::error,
                      std::string(property) + " of product '" + product.id.text + "' is not determined",
                      product.where,
                      std::string("enter ") + example + " in [[product]]",
                      {}});
}

}  // namespace

std::optional<Fluid> flowing_fluid(const site::Site& site, const std::string& product,
                                   std::vector<DefaultUsed>& defaults, std::vector<Diagnostic>& problems) {
  const site::Product* given = find(site, product);
  if (given == nullptr) {
    problems.push_back({Severity::error,
                        "product '" + product + "' is not defined",
                        std::nullopt,
                        "add a [[product]] with this id",
                        {}});
    return std::nullopt;
  }
  const fuel::Kind kind = fuel::kind_from_name(given->kind.text).value_or(fuel::Kind::other);
  const double temperature = flowing_temperature(site, *given, defaults);
  const double known = std::isnan(temperature) ? sixty_fahrenheit : temperature;
  const fuel::Properties found = fuel::properties_of(kind, entered(*given), known, 0.0);
  Fluid fluid{found.density.value, found.dynamic_viscosity.value, temperature};
  if (!found.density.determined()) {
    miss(*given, "density", "density = \"740 kg/m3\"", problems);
  }
  const bool viscous = given->viscosity || given->kinematic_viscosity || found.dynamic_viscosity.determined();
  if (!viscous) miss(*given, "viscosity", "viscosity = \"0.50 mPa.s\"", problems);
  if (!viscous || !found.density.determined()) return std::nullopt;
  note(found.density, "density of " + product, "kg/m3", defaults);
  if (!given->viscosity && given->kinematic_viscosity) {
    fluid.dynamic_viscosity = given->kinematic_viscosity->likely.si() * fluid.density;
  } else {
    note(found.dynamic_viscosity, "viscosity of " + product, "Pa s", defaults);
  }
  return fluid;
}

}  // namespace forecourse::network
