#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// Water that a blend with ethanol holds.
struct WaterUptake {
  double temperature = 0.0;  ///< [K]
  double share = 0.0;        ///< by volume [1]
};

/// Water and separation in one tank.
struct TankWater {
  std::string tank;
  std::string product;
  std::optional<double> temperature;   ///< of the fuel [K]
  std::optional<double> share;         ///< that it holds before it separates [1]; empty: not determined
  std::optional<double> water_bottom;  ///< depth that was read [m]
  std::string words;                   ///< what follows, or what is missing
};

/// Volume of what was delivered, at the temperature of the tank.
struct StockChange {
  std::string delivery;     ///< id; may be empty
  std::string compartment;  ///< id
  std::string tank;
  std::optional<double> delivered;     ///< [m3] at its own temperature
  std::optional<double> delivered_at;  ///< [K]
  std::optional<double> stored_at;     ///< [K]
  std::optional<double> factor;        ///< volume at the tank's temperature over that delivered [1]
  std::optional<double> change;        ///< [m3]; negative: it shrinks
  std::string words;                   ///< by which method, or what is missing
};

enum class Suits { suits, degrades, not_determined };
/// "suits", "degrades", "not determined"
[[nodiscard]] const char* word(Suits suits);

/// A material against gasoline with much ethanol (E85). No figure is known here for lower blends.
struct MaterialTold {
  const char* material;
  Suits with_e85;
  const char* source;  ///< with how well it was seen
};

/// A tank and what it is made of, against its product.
struct TankMaterial {
  std::string tank;
  std::string product;
  std::string material;        ///< as entered; may be empty
  bool must_be_shown = false;  ///< the rule asks for proof of compatibility
  std::string words;
};

struct ProductCare {
  std::vector<WaterUptake> uptake_e10;  ///< between the two published points
  std::vector<TankWater> water;
  std::vector<StockChange> stock;
  std::vector<MaterialTold> materials;
  std::vector<TankMaterial> tanks;
};

/// Water, temperature and materials: what happens to the product between delivery and sale.
/// \param temperature of the fuels [K]; empty: that of the tank's reading, the product or the ground
[[nodiscard]] ProductCare product_care(const site::Site& site, const std::optional<double>& temperature);

}  // namespace forecourse::studies
