#include "forecourse/parts/escape/sump_volume.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace forecourse::parts {
namespace {

// Volume without parts, for heights from floor to brim. The area is the product of two sizes, each straight in the
// height; x is the share of the depth.
double room_at(const TaperedSump& s, double height) {
  const double x = height / s.depth;
  const double length = s.top_length - s.floor_length, width = s.top_width - s.floor_width;
  const double linear = 0.5 * (s.floor_length * width + s.floor_width * length);
  return height * (s.floor_length * s.floor_width + x * (linear + x * length * width / 3.0));
}

double room_at(const RoundSump& s, double height) { return std::numbers::pi / 4.0 * s.diameter * s.diameter * height; }

double room_at(const EnteredSump& s, double height) { return s.depth ? s.volume * height / *s.depth : 0.0; }

double surface_at(const TaperedSump& s, double height) {
  const double x = height / s.depth;
  return std::lerp(s.floor_length, s.top_length, x) * std::lerp(s.floor_width, s.top_width, x);
}

// Height of a volume between none and the brim: Newton's method kept inside a shrinking range.
double height_of(const TaperedSump& s, double volume) {
  double low = 0.0, high = s.depth, height = 0.5 * s.depth;
  for (int step = 0; step < 200 && high - low > 1e-13 * s.depth; ++step) {
    const double miss = room_at(s, height) - volume;
    if (miss == 0.0) break;
    (miss > 0.0 ? high : low) = height;
    double next = height - miss / surface_at(s, height);
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::abs(next - height) <= std::numeric_limits<double>::epsilon() * height) return next;
    height = next;
  }
  return height;
}

double height_of(const RoundSump& s, double volume) {
  return volume / (std::numbers::pi / 4.0 * s.diameter * s.diameter);
}

double height_of(const EnteredSump& s, double volume) { return s.depth ? *s.depth * volume / s.volume : 0.0; }

double time_to_fill(double volume, SumpFilling filling) {
  if (filling.there >= volume) return 0.0;
  if (!(filling.inflow > 0.0)) return std::numeric_limits<double>::infinity();
  return (volume - filling.there) / filling.inflow;
}

}  // namespace

TaperedSump box_sump(double length, double width, double depth) { return {length, width, length, width, depth}; }

std::optional<double> depth_of(const SumpRoom& room) {
  return std::visit([](const auto& shape) -> std::optional<double> { return shape.depth; }, room.shape);
}

double brim_volume(const SumpRoom& room) {
  const double left = 1.0 - room.parts_share;
  if (const auto* entered = std::get_if<EnteredSump>(&room.shape)) return left * entered->volume;
  return *volume_at(room, *depth_of(room));
}

std::optional<double> volume_at(const SumpRoom& room, double height) {
  if (height <= 0.0) return 0.0;
  const std::optional<double> depth = depth_of(room);
  if (!depth) return std::nullopt;
  const double wet = std::min(height, *depth);
  return (1.0 - room.parts_share) * std::visit([wet](const auto& shape) { return room_at(shape, wet); }, room.shape);
}

std::optional<double> height_at(const SumpRoom& room, double volume) {
  if (volume <= 0.0) return 0.0;
  const std::optional<double> depth = depth_of(room);
  if (!depth) return std::nullopt;
  if (volume >= brim_volume(room)) return *depth;
  const double with_parts = volume / (1.0 - room.parts_share);
  const double height = std::visit([=](const auto& shape) { return height_of(shape, with_parts); }, room.shape);
  return std::min(height, *depth);
}

std::optional<double> time_to_height(const SumpRoom& room, double height, SumpFilling filling) {
  const std::optional<double> volume = volume_at(room, height);
  if (!volume) return std::nullopt;
  return time_to_fill(*volume, filling);
}

double time_to_brim(const SumpRoom& room, SumpFilling filling) { return time_to_fill(brim_volume(room), filling); }

}  // namespace forecourse::parts
