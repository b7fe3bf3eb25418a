#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/drawings/course.h"
#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/handover/drawings/part_places.h"
#include "forecourse/handover/drawings/pen.h"

namespace forecourse::handover {

/// What a section shows of its course.
enum class Reach {
  whole,      ///< from the tank to the nozzle, the lines at their whole length
  tank,       ///< the tank with what is on it, for a larger scale
  dispenser,  ///< what stands at the dispenser, for a larger scale
};

/// The developed section of a course: level distances along it from the pump's discharge head on, heights above the
/// site's datum, both to the same scale. Draws what has its size on the ground, then what depends on the scale.
class SectionDrawing {
 public:
  SectionDrawing(const site::Site& site, const Course& course, Reach reach, Drawing& out);

  void draw(const std::vector<StationPart>& parts);
  void letter();

 private:
  [[nodiscard]] bool whole() const { return reach_ == Reach::whole; }
  [[nodiscard]] bool shows_tank() const { return reach_ != Reach::dispenser; }
  [[nodiscard]] bool shows_dispenser() const { return reach_ != Reach::tank && course_.dispenser != nullptr; }
  void find_line_places();
  void find_tank();
  /// Level place of a point along the tank, counted from its low end; empty: it cannot be told.
  [[nodiscard]] std::optional<double> along(const site::Maybe<Length>& at) const;
  [[nodiscard]] std::optional<double> level_of_vent(const site::Vent& vent) const;
  [[nodiscard]] double inside_bottom(double x) const;  ///< of the tank there [m]

  void place_tank_side();
  void place_fill(const site::Fill& fill, const std::string& path);
  void place_vent(const site::Vent& vent, const std::string& path);
  void place_lines();
  void place_dispenser_side();
  void place_sump(const site::Sump& sump, const std::string& path);
  void place_inlet(const std::string& path);
  void place_hose(const std::string& path);
  void others_elsewhere();

  /// How far the tank's heads bulge, where they are arcs of a circle, outside [m]; empty: drawn flat.
  [[nodiscard]] std::optional<double> head_depth() const;
  void draw_heads();
  void draw_tank();
  void draw_lines();
  void draw_sump(const site::Sump& sump, double x);
  void draw_dispenser();

  [[nodiscard]] double half_island() const;
  void draw_island();
  void letter_ground();
  void letter_tank();
  void letter_lines();
  void letter_names();
  void letter_dispenser();
  void letter_tank_parts();
  void letter_heights(double beside);
  void letter_depths(double beside);
  void notes();

  /// A place of the line: pump, branch or inlet.
  struct LinePlace {
    std::string name;
    double x = 0.0;           ///< [m] from the pump
    std::optional<double> z;  ///< [m]
  };
  struct TankEnds {
    double left = 0.0, right = 0.0;  ///< [m]
    double left_bottom = 0.0, right_bottom = 0.0;
    double height = 0.0, shell = 0.0;
    bool low_left = true;
    bool pump_known = true;  ///< its place along the tank
  };

  const site::Site& site_;
  const Course& course_;
  Reach reach_;
  Drawing& out_;
  PartPlaces places_;
  std::vector<LinePlace> line_;
  std::optional<TankEnds> tank_;
  double inlet_x_ = 0.0;
};

}  // namespace forecourse::handover
