#include "forecourse/parts/fire/burning_fuels.h"

#include <algorithm>
#include <array>

namespace forecourse::parts {
namespace {

// SOURCE: [nureg_1805_sheets, table of fuels of the heat release sheets, after the SFPE Handbook]
constexpr std::array fuels{
    BurningFuel{"methanol", 0.017, 20.0e6, 100.0},  //
    BurningFuel{"ethanol", 0.015, 26.8e6, 100.0},   //
    BurningFuel{"gasoline", 0.055, 43.7e6, 2.1},    //
    BurningFuel{"kerosene", 0.039, 43.2e6, 3.5},    //
    BurningFuel{"diesel", 0.045, 44.4e6, 2.1},      //
    BurningFuel{"heptane", 0.101, 44.6e6, 1.1},     //
};

}  // namespace

std::span<const BurningFuel> burning_fuels() { return fuels; }

std::optional<BurningFuel> find_burning_fuel(std::string_view name) {
  const auto* const hit = std::find_if(fuels.begin(), fuels.end(), [name](const auto& f) { return f.name == name; });
  return hit == fuels.end() ? std::nullopt : std::optional(*hit);
}

std::optional<BurningFuel> burning_fuel_of_kind(std::string_view kind) {
  if (kind.starts_with("gasoline-e")) return find_burning_fuel("gasoline");
  if (kind.starts_with("diesel-b")) return find_burning_fuel("diesel");  // "diesel-exhaust-fluid" is no fuel
  if (kind == "kerosene" || kind == "ethanol") return find_burning_fuel(kind);
  return std::nullopt;
}

}  // namespace forecourse::parts
