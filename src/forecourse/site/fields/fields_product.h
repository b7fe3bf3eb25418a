#pragma once

#include "forecourse/site/fields/rules.h"
#include "forecourse/site/product_kinds.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, Product& product) {
  v.about("product", "A fuel that the station sells. Every property can be entered; what is not comes from its kind.");
  v.id("id", product.id, IdRule::plain, "Name by which tanks, inlets and hoses call it.");
  v.word("kind", product.kind, product_kinds, "Kind of fuel.");
  v.quantity("density", product.density, "Density at `density_at`, or at the flowing temperature.", fuel_density);
  v.quantity("density_at", product.density_at, "Temperature at which `density` was read.", fuel_temperature);
  v.quantity("gravity", product.gravity, "API gravity at 60 degF.", fuel_density);
  v.quantity("viscosity", product.viscosity, "Dynamic viscosity at the flowing temperature.", positive);
  v.quantity("kinematic_viscosity", product.kinematic_viscosity, "Kinematic viscosity at the flowing temperature.",
             positive);
  v.points("viscosity_points", product.viscosity_points, &ViscosityPoint::temperature, &ViscosityPoint::viscosity,
           "Pairs of temperature and kinematic viscosity; the first and the last give it at any temperature.");
  v.quantity("temperature", product.temperature, "Flowing temperature; without it that of the ground.",
             fuel_temperature);
  v.quantity("reid_vapor_pressure", product.reid_vapor_pressure, "Reid vapor pressure, at 100 degF.", not_negative);
  v.quantity("true_vapor_pressure", product.true_vapor_pressure, "True vapor pressure at the flowing temperature.",
             not_negative);
  v.number("vapor_molar_mass", product.vapor_molar_mass, "Molar mass of its vapor in g/mol, a bare number.",
           molar_mass);
  v.quantity("isothermal_bulk_modulus", product.isothermal_bulk_modulus, "Bulk modulus for slow changes.", positive);
  v.quantity("isentropic_bulk_modulus", product.isentropic_bulk_modulus, "Bulk modulus for pressure waves.", positive);
  v.quantity("expansion", product.expansion, "Thermal expansion by volume.", positive);
  v.quantity("specific_heat", product.specific_heat, "Specific heat.", positive);
  v.quantity("ethanol", product.ethanol, "Share of ethanol by volume.", share_of_one);
  v.quantity("biodiesel", product.biodiesel, "Share of biodiesel by volume.", share_of_one);
}

}  // namespace forecourse::site
