#pragma once

#include <map>
#include <string>
#include <variant>
#include <vector>

#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/handover/parts/station_parts.h"

namespace forecourse::handover {

/// Where things stand in one drawing, by their paths. A part that is not told for itself stands where that does which
/// its path leads through: a nozzle at its dispenser.
class PartPlaces {
 public:
  /// \param how    the place is known: "entered", "along its tank"
  /// \param within how that of the parts within it is: "at its dispenser"
  void at(const std::string& path, Point point, const std::string& how, const std::string& within = "");
  /// It cannot be placed, nor what is within it.
  void unknown(const std::string& path, const std::string& why) { spots_[path] = Unknown{why}; }
  /// It belongs to another drawing.
  void elsewhere(const std::string& path) { spots_[path] = Elsewhere{}; }

  /// Where one stands; null: it does not.
  [[nodiscard]] const Point* find(const std::string& path) const;
  /// Marks each part, or lists it as not placed or elsewhere: each goes to one of the three.
  void place(const std::vector<StationPart>& parts, Drawing& out) const;

 private:
  struct Known {
    Point point;
    std::string how, within;
  };
  struct Unknown {
    std::string why;
  };
  struct Elsewhere {};
  using Spot = std::variant<Known, Unknown, Elsewhere>;

  std::map<std::string, Spot> spots_;
};

}  // namespace forecourse::handover
