#pragma once

#include <optional>
#include <string>
#include <vector>

namespace forecourse::handover {

// A drawing as plain data, at true size: every length is in m of the station. What stands on paper at a fixed size
// (letters, symbols, frame) is given in m at the drawing's scale, so that a writer only moves and multiplies.

/// A point of a drawing [m]: on plan from the site's origin; in a section along the course, and above the site's datum.
struct Point {
  double x = 0.0;
  double y = 0.0;
};

enum class LineType { solid, dashed, chain, dotted };

/// What belongs together and can be shown or hidden.
struct Layer {
  std::string id;     ///< "tanks"
  std::string words;  ///< "outlines of tanks"
  int color = 7;      ///< index of the colors that drawing programs share: 1 red, 2 yellow, ... 7 black or white
  LineType line = LineType::solid;
  double width = 0.25e-3;  ///< of its lines on paper [m]
  bool printed = true;     ///< false: for programs alone, as places of parts that are too small to be drawn
};

/// Straight pieces from point to point.
struct Path {
  std::string layer;
  std::vector<Point> points;
  bool closed = false;
  bool area = false;  ///< closed, and tinted where a writer can
};

struct Circle {
  std::string layer;
  Point center;
  double radius = 0.0;  ///< [m]
  bool area = false;
};

/// A piece of a circle, counter-clockwise.
struct Arc {
  std::string layer;
  Point center;
  double radius = 0.0;  ///< [m]
  double from = 0.0;    ///< [rad] from the first axis
  double to = 0.0;      ///< [rad]
};

enum class Anchor { left, middle, right };

/// A line of letters; `at` is on its base line.
struct Text {
  std::string layer;
  Point at;
  std::string text;
  double height = 0.0;  ///< of a capital letter [m]
  Anchor anchor = Anchor::left;
  double angle = 0.0;  ///< [rad]
};

/// A measured distance, as lines and letters.
struct Dimension {
  std::string layer;
  std::string what;  ///< "cover of T1"
  Point from;        ///< between which it is measured
  Point to;
  Point line_from;  ///< of the line with the ticks
  Point line_to;
  double value = 0.0;  ///< [m]
  std::string text;    ///< as lettered
  Point text_at;       ///< middle of its base line
  double height = 0.0;
  double angle = 0.0;  ///< [rad] of the letters
};

/// How a kind of part is drawn at a fixed size on paper: lines about its place.
struct Symbol {
  std::string kind;  ///< of the parts that it stands for
  std::string words;
  std::string layer;
  std::vector<Path> paths;  ///< [m] on paper
  std::vector<Circle> circles;
};

/// Where a part is. A kind without a symbol has a point, on a layer that is not printed.
struct Mark {
  std::string kind;  ///< "shear-valve"
  std::string part;  ///< path in the site file: "dispenser.D1.inlet.regular.shear_valve"
  std::string subject;
  Point at;
  std::string place;  ///< how its place is known: "entered", "along its tank", "of its dispenser"
};

/// A part that the drawing cannot show, and what to enter so that it can.
struct NotPlaced {
  std::string kind;
  std::string part;
  std::string subject;
  std::string why;
};

/// An extent of a classified area, from a clause whose text was seen.
struct Zone {
  std::string part;  ///< path of what it surrounds
  std::string subject;
  std::string words;  ///< "Class I, Division 2, up to 18 in above grade"
  int division = 2;
  double radius = 0.0;  ///< [m]
  std::string clause;
  std::string edition;
};

/// An extent that is not drawn, and why.
struct ZoneGap {
  std::string part;
  std::string subject;
  std::string why;
};

/// A line of the station as the drawing lists it.
struct LineRow {
  std::string id;
  std::string product;
  std::optional<double> bore;    ///< [m]
  std::optional<double> length;  ///< [m] as entered
  std::optional<double> drawn;   ///< [m] straight between its places
  std::optional<double> fall;    ///< [1] as entered
  std::optional<double> burial;  ///< [m] as entered
};

struct TitleCell {
  std::string label;
  std::string text;
};

/// The paper, and how the station is laid on it.
struct DrawingSheet {
  std::string paper;    ///< "a3"
  double width = 0.0;   ///< [m]
  double height = 0.0;  ///< [m]
  double scale = 0.0;   ///< denominator: 100 of 1:100
  std::string words;    ///< "1:100", "1 in = 10 ft"
  Point corner;         ///< lower left corner of the paper in the drawing [m]
};

struct Drawing {
  std::string id;     ///< "plan", "section", "tank", "dispenser"
  std::string title;  ///< "Section of the course to D4.diesel-b"
  DrawingSheet sheet;
  std::vector<Layer> layers;
  std::vector<Symbol> symbols;
  std::vector<Path> paths;
  std::vector<Circle> circles;
  std::vector<Arc> arcs;
  std::vector<Text> texts;
  std::vector<Dimension> dimensions;
  std::vector<Mark> marks;
  std::vector<NotPlaced> not_placed;
  std::vector<std::string> elsewhere;  ///< paths of parts that are not on this section's course
  std::vector<LineRow> lines;
  std::vector<Zone> zones;
  std::vector<ZoneGap> zone_gaps;
  std::vector<std::string> notes;
  std::vector<TitleCell> cells;
};

}  // namespace forecourse::handover
