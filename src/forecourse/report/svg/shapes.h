#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// `<circle>`, `<path>`, `<polygon>` and `<polyline>` with a class of the page's style sheet.
[[nodiscard]] std::string circle(Point center, double radius, std::string_view css_class);
[[nodiscard]] std::string path(std::string_view commands, std::string_view css_class);
[[nodiscard]] std::string polygon(const std::vector<Point>& corners, std::string_view css_class);
[[nodiscard]] std::string polyline(const std::vector<Point>& corners, std::string_view css_class);

/// A line with as few of its corners as leave every other one within a tenth of a pixel of what is drawn; its ends
/// stay. It is split at its farthest corner until none is far.
[[nodiscard]] std::vector<Point> thinned(const std::vector<Point>& corners);

/// What of the station a piece of a drawing shows, so that a page can tell which one was touched.
struct Shows {
  int stop = 0;      ///< of the course, counted from 1; 0: none
  std::string part;  ///< path in the site file: "tank.T1"; empty: none
};

/// ` data-NAME="VALUE"`: a number to a thousandth, whatever the locale.
[[nodiscard]] std::string data(std::string_view name, double value);
[[nodiscard]] std::string data(std::string_view name, std::string_view value);

/// A piece of a drawing as a `<g>` with `data-stop` and `data-part`; the piece itself if it shows nothing of these.
///
/// \param more further attributes, each with a blank before it
[[nodiscard]] std::string group(const Shows& shows, std::string_view piece, std::string_view css_class = "",
                                std::string_view more = "");

/// "x y" of a place, for the commands of a path.
[[nodiscard]] std::string at(Point point);

/// Parallel strokes across a rectangle, `spacing` apart: level, or slanting upward to the right. One path.
enum class Strokes { level, slanting };
[[nodiscard]] std::string hatch(Point corner, double width, double height, double spacing, Strokes strokes,
                                std::string_view css_class);

/// Slanting ticks below a ground line from `from` to `to`, as earth is drawn in sections. One path.
[[nodiscard]] std::string earth_ticks(Point from, double to, std::string_view css_class);

/// Where a dimension line runs, and what stands on it.
struct Dimension {
  double from = 0.0;
  double to = 0.0;
  double y = 0.0;
  std::string text;
};

/// A level dimension line with ticks at its ends and its text in the middle.
[[nodiscard]] std::string dimension(const Dimension& dimension);

/// A text broken between words into lines of at most `longest` characters; what does not fit into `most` lines ends
/// with an ellipsis.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t longest, std::size_t most);

/// Characters of a text, not bytes.
[[nodiscard]] std::size_t length(std::string_view text);

}  // namespace forecourse::report::svg
