#pragma once

#include <optional>
#include <string_view>

namespace forecourse::fuel {

/// Kind of fuel: picks the methods and defaults of `properties_of`.
enum class Kind {
  gasoline_e0,
  gasoline_e5,
  gasoline_e10,
  gasoline_e15,
  e85,
  ethanol,
  diesel_b0,
  diesel_b5,
  diesel_b7,
  diesel_b20,
  other,  ///< by entered properties only
};

/// The word of a kind as a site file writes it, such as "gasoline-e10".
[[nodiscard]] std::string_view kind_name(Kind kind);

/// The kind of a word as a site file writes it; empty for an unknown word.
[[nodiscard]] std::optional<Kind> kind_from_name(std::string_view name);

/// Gasoline up to 15 % ethanol.
[[nodiscard]] bool is_gasoline(Kind kind);

/// Diesel up to 20 % biodiesel.
[[nodiscard]] bool is_diesel(Kind kind);

/// Kinds whose density follows API MPMS 11.1: gasoline E0 to E10, diesel B0 to B20.
[[nodiscard]] bool follows_volume_correction(Kind kind);

/// Those among them for which that is an approximation, since the procedure was made for hydrocarbons.
[[nodiscard]] bool is_approximated_blend(Kind kind);

}  // namespace forecourse::fuel
