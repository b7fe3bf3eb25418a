#include "forecourse/studies/vapor/product_care.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/kinds.h"
#include "forecourse/fuel/water_uptake.h"
#include "forecourse/network/volume_change.h"

namespace forecourse::studies {
namespace {

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

const site::Product* find_product(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.products.begin(), site.products.end(), [&](const auto& p) { return p.id.text == id; });
  return found == site.products.end() ? nullptr : &*found;
}

const site::Tank* find_tank(const site::Site& site, const std::string& id) {
  const auto found = std::find_if(site.tanks.begin(), site.tanks.end(), [&](const auto& t) { return t.id.text == id; });
  return found == site.tanks.end() ? nullptr : &*found;
}

fuel::Kind kind_of(const site::Product& product) {
  return fuel::kind_from_name(product.kind.text).value_or(fuel::Kind::other);
}

/// Temperature of what is in a tank [K]: asked, read, or that of the product or the ground.
std::optional<double> stored_at(const site::Site& site, const site::Tank& tank, const site::Product* product) {
  if (tank.reading && tank.reading->temperature) return si(tank.reading->temperature);
  if (product != nullptr && product->temperature) return si(product->temperature);
  return si(site.ground_temperature);
}

TankWater water_in(const site::Site& site, const site::Tank& tank, const site::Product& product,
                   const std::optional<double>& asked) {
  TankWater out;
  out.tank = tank.id.text;
  out.product = product.id.text;
  out.temperature = asked ? asked : stored_at(site, tank, &product);
  if (tank.reading) out.water_bottom = si(tank.reading->water);
  const bool ten_percent = kind_of(product) == fuel::Kind::gasoline_e10;
  if (!ten_percent) {
    out.words = "no published curve of water uptake could be read for this blend";
    return out;
  }
  if (!out.temperature) {
    out.words = "enter its temperature: reading.temperature, or ground_temperature";
    return out;
  }
  const double share = fuel::water_uptake_e10(*out.temperature);
  if (std::isfinite(share)) out.share = share;
  out.words = out.share
                  ? "more water than that separates, and takes ethanol along; the fuel above is then off its grade"
                  : "outside 20 to 60 degF, between which alone something is published";
  if (out.water_bottom && *out.water_bottom > 0.0) {
    out.words += "; water stands at the bottom: with this blend that is water and ethanol, separated already";
  }
  return out;
}

bool has_ethanol(const site::Product& product) {
  const fuel::Kind kind = kind_of(product);
  constexpr std::array<fuel::Kind, 5> blends{fuel::Kind::gasoline_e5, fuel::Kind::gasoline_e10,
                                             fuel::Kind::gasoline_e15, fuel::Kind::e85, fuel::Kind::ethanol};
  return std::find(blends.begin(), blends.end(), kind) != blends.end() ||
         (product.ethanol && product.ethanol->likely.si() > 0.0);
}

StockChange stock_of(const site::Site& site, const site::Delivery& delivery, const site::TruckCompartment& compartment,
                     const std::optional<double>& asked) {
  StockChange out;
  out.delivery = delivery.id.text;
  out.compartment = compartment.id.text;
  out.tank = compartment.tank.text;
  out.delivered = si(compartment.volume);
  out.delivered_at = si(compartment.temperature);
  const site::Tank* tank = find_tank(site, out.tank);
  const std::string& id =
      compartment.product.empty() && tank != nullptr ? tank->product.text : compartment.product.text;
  const site::Product* product = find_product(site, id);
  if (tank != nullptr) out.stored_at = asked ? asked : stored_at(site, *tank, product);
  if (product == nullptr || !out.stored_at || !out.delivered_at) {
    out.words = !out.delivered_at ? "enter the temperature of the compartment" : "enter the temperature in the tank";
    return out;
  }
  const network::VolumeChange change = network::volume_change(*product, *out.delivered_at, *out.stored_at);
  out.factor = change.factor;
  out.words = change.words;
  if (out.factor && out.delivered) out.change = *out.delivered * (*out.factor - 1.0);
  return out;
}

constexpr const char* secondary = "public secondary text, not verified";

std::vector<MaterialTold> known_materials() {
  return {{"steel tank", Suits::suits, secondary},
          {"fiberglass tank made before 1992", Suits::not_determined,
           "may not hold it: public secondary text, not verified"},
          {"fiberglass, thermoset, made for it", Suits::suits, secondary},
          {"nitrile rubber", Suits::suits, secondary},
          {"neoprene", Suits::suits, secondary},
          {"fluorocarbon rubber", Suits::suits, secondary},
          {"polytetrafluoroethylene", Suits::suits, secondary},
          {"polypropylene", Suits::suits, secondary},
          {"natural rubber", Suits::degrades, secondary},
          {"polyurethane", Suits::degrades, secondary},
          {"cork", Suits::degrades, secondary},
          {"leather", Suits::degrades, secondary},
          {"polyvinyl chloride", Suits::degrades, secondary},
          {"polyamide", Suits::degrades, secondary},
          {"zinc, brass, lead, aluminum", Suits::not_determined, "no text that could be read"}};
}

TankMaterial material_of(const site::Tank& tank, const site::Product& product) {
  TankMaterial out;
  out.tank = tank.id.text;
  out.product = product.id.text;
  out.material = tank.material.text;
  const fuel::Kind kind = kind_of(product);
  const double ethanol = si(product.ethanol).value_or(0.0), biodiesel = si(product.biodiesel).value_or(0.0);
  constexpr double most_ethanol = 0.10, most_biodiesel = 0.20;  // above, the rule asks for proof
  out.must_be_shown = kind == fuel::Kind::gasoline_e15 || kind == fuel::Kind::e85 || kind == fuel::Kind::ethanol ||
                      ethanol > most_ethanol || biodiesel > most_biodiesel;
  out.words = out.must_be_shown
                  ? "compatibility of the whole system is to be shown, by listing or by its makers in writing, and the "
                    "authority told 30 days before"
                  : "no proof is asked for beyond that the system suits what is stored";
  if (out.material.empty()) out.words += "; what the tank is made of is not entered";
  return out;
}

}  // namespace

const char* word(Suits suits) {
  constexpr std::array<const char*, 3> words{"suits", "degrades", "not determined"};
  return words[static_cast<std::size_t>(suits)];
}

ProductCare product_care(const site::Site& site, const std::optional<double>& temperature) {
  ProductCare out;
  constexpr int steps = 8;
  for (int i = 0; i <= steps; ++i) {
    const double at = kelvin_from_fahrenheit(20.0 + 40.0 * i / steps);
    out.uptake_e10.push_back({at, fuel::water_uptake_e10(at)});
  }
  for (const site::Tank& tank : site.tanks) {
    const site::Product* product = find_product(site, tank.product.text);
    if (product == nullptr) continue;
    if (has_ethanol(*product)) out.water.push_back(water_in(site, tank, *product, temperature));
    out.tanks.push_back(material_of(tank, *product));
  }
  for (const site::Delivery& delivery : site.deliveries) {
    for (const site::TruckCompartment& compartment : delivery.compartments) {
      out.stock.push_back(stock_of(site, delivery, compartment, temperature));
    }
  }
  out.materials = known_materials();
  return out;
}

}  // namespace forecourse::studies
