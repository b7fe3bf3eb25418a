#pragma once

#include <optional>
#include <variant>

namespace forecourse::parts {

/// A sump of four flat walls whose two horizontal sizes change evenly from floor to brim. A box has equal sizes.
struct TaperedSump {
  double floor_length = 0.0;  ///< [m], >= 0
  double floor_width = 0.0;   ///< [m], >= 0
  double top_length = 0.0;    ///< [m], > 0
  double top_width = 0.0;     ///< [m], > 0
  double depth = 0.0;         ///< floor to brim [m], > 0
};

/// A round sump with upright walls.
struct RoundSump {
  double diameter = 0.0;  ///< inside [m], > 0
  double depth = 0.0;     ///< floor to brim [m], > 0
};

/// A sump of which only the volume is known, and maybe the depth; it is then taken for one with upright walls.
struct EnteredSump {
  double volume = 0.0;          ///< to the brim [m3], > 0
  std::optional<double> depth;  ///< floor to brim [m], > 0
};

/// The room in a sump that liquid can fill. See docs/theory/sump-volume.md.
struct SumpRoom {
  std::variant<TaperedSump, RoundSump, EnteredSump> shape;
  double parts_share = 0.0;  ///< share taken by pipe and parts, the same at each height [1], 0 to below 1
};

/// A sump with upright walls and a rectangular floor.
/// \param length, width, depth inside [m], > 0
[[nodiscard]] TaperedSump box_sump(double length, double width, double depth);

/// Depth of a sump from floor to brim.
/// \return [m]; nothing where it was not entered.
/// \error none.
/// \source closed form
[[nodiscard]] std::optional<double> depth_of(const SumpRoom& room);

/// What a sump holds to the brim.
/// \return [m3], less the share of parts.
/// \error that of the share of parts.
/// \source closed form
[[nodiscard]] double brim_volume(const SumpRoom& room);

/// What a sump holds up to a height.
/// \param height above the floor [m]
/// \return [m3], 0 below the floor and the brim's volume above the brim; nothing where the depth is not known, but for
///         heights at the floor or below.
/// \error parts that stand low or high, not evenly, shift it by up to their share; the brim is right.
/// \source closed form
[[nodiscard]] std::optional<double> volume_at(const SumpRoom& room, double height);

/// Height of the liquid in a sump: the inverse of `volume_at`.
/// \param volume [m3]
/// \return height above the floor [m], 0 to the depth; nothing where the depth is not known.
/// \error rounding, relative 1e-12 of the depth.
/// \source closed form
[[nodiscard]] std::optional<double> height_at(const SumpRoom& room, double volume);

/// Liquid running into a sump.
struct SumpFilling {
  double inflow = 0.0;  ///< [m3/s], steady
  double there = 0.0;   ///< liquid in it already [m3], >= 0
};

/// Time until the liquid stands at a height.
/// \param height  above the floor [m], above the brim as the brim
/// \param filling inflow [m3/s], liquid there [m3]
/// \return time [s], 0 where it stands there already, infinite without inflow; nothing where the depth is not known.
/// \error that of the volume.
/// \source closed form
[[nodiscard]] std::optional<double> time_to_height(const SumpRoom& room, double height, SumpFilling filling);

/// Time until a sump runs over.
/// \param filling inflow [m3/s], liquid there [m3]
/// \return time [s], 0 where it is full, infinite without inflow.
/// \error that of the volume.
/// \source closed form
[[nodiscard]] double time_to_brim(const SumpRoom& room, SumpFilling filling);

}  // namespace forecourse::parts
