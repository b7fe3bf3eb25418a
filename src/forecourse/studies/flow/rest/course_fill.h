#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "forecourse/network/piping_system.h"

namespace forecourse::studies {

/// A part on the way from a pump to a nozzle.
struct CoursePart {
  const network::Element* element = nullptr;
  double volume = 0.0;  ///< [m3] of fuel in it; 0 for a fitting
  double start = 0.0;   ///< [m] elevation where it begins
  double end = 0.0;     ///< [m]
  double limit = 0.0;   ///< [m3/s] no more passes; infinity: no limit
};

/// The shortest way, by volume, of the fuel from a running pump to a hose.
struct FillCourse {
  std::size_t pump = 0;  ///< of the system's pumps
  double surface = 0.0;  ///< [m] elevation of the liquid in its tank
  double outlet = 0.0;   ///< [m] elevation of the nozzle's outlet
  std::vector<CoursePart> parts;

  [[nodiscard]] double volume() const;
};

/// One for each hose of the system, in their order; empty where no running pump reaches it. Where a place has no
/// elevation it is taken on the straight slope between its neighbors on the way that have one.
[[nodiscard]] std::vector<std::optional<FillCourse>> fill_courses(const network::PipingSystem& system);

/// Volumes [m3] at which the front passes from part to part, from 0 to the whole course.
[[nodiscard]] std::vector<double> fill_marks(const FillCourse& course);

/// Flow [m3/s] of the pump into its line when the line stands at a pressure [Pa] above the liquid's own height.
[[nodiscard]] double flow_into(const network::PipingSystem& system, std::size_t pump, double pressure);

}  // namespace forecourse::studies
