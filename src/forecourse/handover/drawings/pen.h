#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/site/site.h"

namespace forecourse::handover {

/// A rectangle along the axes [m]; empty until something is taken in.
struct Box {
  Point low{1.0, 1.0};
  Point high{-1.0, -1.0};

  [[nodiscard]] bool empty() const { return high.x < low.x || high.y < low.y; }
  void take(Point point);
  void take(Point center, double radius);
  [[nodiscard]] Box wider(double by) const;
};

/// What all shapes, marks and measured points of a drawing cover; without letters and dimension lines.
[[nodiscard]] Box extent(const Drawing& drawing);

/// About how long a line of letters is, for letters of this height.
[[nodiscard]] double text_length(const std::string& text, double height);

/// The lines that a dimension is drawn with: two to what is measured, the one with the ticks, the ticks.
/// \param scale denominator of the drawing's scale
[[nodiscard]] std::vector<std::pair<Point, Point>> strokes(const Dimension& dimension, double scale);

/// Lays letters and dimensions on a drawing whose scale is known. Labels keep off each other and off lines.
class Pen {
 public:
  Pen(Drawing& drawing, site::Display display) : out_(drawing), display_(display) {}

  /// A length on paper, as it is on the ground [m].
  [[nodiscard]] double paper(double millimeters) const;
  [[nodiscard]] double letter() const { return letter_; }

  /// Labels keep off all shapes, marks, dimensions and letters that are there now.
  void keep_off_shapes();
  void keep_off(const Box& box) { taken_.push_back(box); }

  void text(const std::string& layer, Point at, const std::string& text, Anchor anchor = Anchor::left,
            double millimeters = 1.8);
  /// Beside a point, where there is room, with a leader where that is farther off.
  void label(Point of, const std::string& text, double clearance_mm = 1.6);
  /// Between two points, along a line that many millimeters to the left of the way from one to the other.
  void dimension(const std::string& what, Point from, Point to, double offset_mm);
  /// Upright, at `x`, with a word before its number where one is given; and level, at `y`.
  void upright(const std::string& what, Point from, Point to, double x, const std::string& word = "");
  void level(const std::string& what, Point from, Point to, double y);

 private:
  void measure(const std::string& what, Point from, Point to, Point line_from, Point line_to,
               const std::string& word = "");
  [[nodiscard]] double cost(const Box& box) const;

  /// Where a label stands.
  struct Place {
    Point at;
    Anchor anchor = Anchor::left;
    double cost = 0.0;
    bool far = false;  ///< from what it names: it wants a leader
  };
  [[nodiscard]] Place free_place(Point of, double length, double height, double clearance_mm) const;
  void lead(Point of, const Place& to, double height);

  Drawing& out_;
  site::Display display_;
  double letter_ = 1.8;  ///< of labels and dimensions [mm]
  std::vector<Box> taken_;
  std::vector<std::pair<Point, Point>> pieces_;
};

}  // namespace forecourse::handover
