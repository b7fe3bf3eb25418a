#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::handover {

/// A line of a course, as it is passed from the tank on.
struct CourseStep {
  const site::Line* line = nullptr;
  std::string from;
  std::string to;
};

/// The way of the fuel to one hose; what is not entered is null.
struct Course {
  const site::Tank* tank = nullptr;
  const site::Pump* pump = nullptr;
  std::vector<CourseStep> steps;
  const site::Dispenser* dispenser = nullptr;
  const site::Inlet* inlet = nullptr;
  const site::Hose* hose = nullptr;

  [[nodiscard]] double length() const;  ///< [m] of those lines whose length is entered
};

/// The tank with this id, or with a compartment of this id, as a pump names it; null: there is none.
[[nodiscard]] const site::Tank* tank_with(const site::Site& site, const std::string& id);

/// From the nearest running pump that fuel gets to the hose from, over the fewest lines; of a blended hose the course
/// of its first product. Empty: there is no such hose.
[[nodiscard]] std::optional<Course> course_to(const site::Site& site, const std::string& hose);

/// The course of the longest lines; of several the first in the file. Empty: the station has no hose.
[[nodiscard]] std::optional<Course> longest_course(const site::Site& site);

}  // namespace forecourse::handover
