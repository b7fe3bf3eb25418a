// What the vapor study tells of the fuel in the tank at hand.
#include "forecourse/lesson/numbers/kinds/kinds.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

using studies::ProductVapor;

std::string product_in(const site::Site& site, const std::string& tank) {
  for (const site::Tank& one : site.tanks) {
    if (one.id.text != tank) continue;
    return one.product.empty() && !one.compartments.empty() ? one.compartments.front().product.text : one.product.text;
  }
  return {};
}

/// A value of the product in the tank at hand.
template <class Value>
Picked of_product(const From& from, Value value, const std::string& key,
                  std::string (*reason)(const ProductVapor&) = nullptr) {
  if (!from.ground.studied.vapor) return nothing("the station has no tank: add a [[tank]]");
  const auto& products = from.ground.studied.vapor->products;
  const std::string product = product_in(from.ground.site, from.at);
  const auto place = place_of(products, [&](const ProductVapor& one) { return one.product == product; });
  if (!place) return nothing("enter what is in tank " + from.at);
  const ProductVapor& told = products[*place];
  return picked(value(told), {"vapor"}, at_place("/result/products", *place) + key,
                reason == nullptr ? told.pressure_source : reason(told),
                unpublished(from.ground.studied.vapor->defaults));
}

Picked pressure(const From& from) {
  return of_product(
      from, [](const ProductVapor& told) { return told.true_vapor_pressure; }, "/true_vapor_pressure_absolute_pa");
}

/// What a loss in a month needs: what is sold, and how the tanks are filled.
std::string enter_losses(const ProductVapor& told) {
  if (!told.gasoline) return "only of gasoline";
  if (!told.throughput) return "enter what is sold of it: throughput in [operations]";
  return "enter drop_tube and vapor_return of the fills of " + told.product;
}

Picked lost(const From& from) {
  return of_product(
      from, [](const ProductVapor& told) { return told.lost; }, "/lost_kg_per_month", enter_losses);
}

Picked with_return(const From& from) {
  return of_product(
      from, [](const ProductVapor& told) { return told.with_stage_one; }, "/with_stage_one_kg_per_month", enter_losses);
}

Picked without_return(const From& from) {
  return of_product(
      from, [](const ProductVapor& told) { return told.without_stage_one; }, "/without_stage_one_kg_per_month",
      enter_losses);
}

/// Of the fuel's volume, before water and ethanol part from it.
Picked water_share(const From& from) {
  if (!from.ground.studied.vapor) return nothing("the station has no tank: add a [[tank]]");
  const auto& water = from.ground.studied.vapor->care.water;
  const auto place = place_of(water, [&](const auto& one) { return one.tank == from.at; });
  if (!place) return nothing("only of a fuel with ethanol: there is none in tank " + from.at);
  return picked(water[*place].share, {"vapor"}, at_place("/result/product_care/water", *place) + "/share",
                water[*place].words);
}

}  // namespace

std::vector<NumberKind> vapor_numbers() {
  return {{"water-taken-up", "Water that the fuel takes up before it separates", Quantity::share, water_share},
          {"true-vapor-pressure", "Vapor pressure of the fuel, absolute", Quantity::pressure, pressure},
          {"vapor-lost", "Vapor lost in a month", Quantity::mass, lost},
          {"lost-with-return", "Lost in a month with vapor return", Quantity::mass, with_return},
          {"lost-without-return", "Lost in a month without it", Quantity::mass, without_return}};
}

}  // namespace forecourse::lesson
