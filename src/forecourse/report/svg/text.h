#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace forecourse::report::svg {

/// A text for the content or a quoted attribute of HTML and SVG: markup characters as entities, hidden characters and
/// bytes that are no UTF-8 as U+FFFD. What comes out is always well-formed and cannot end its surroundings.
[[nodiscard]] std::string escape(std::string_view text);

/// A coordinate to a tenth, whatever the locale; anything that is no finite number is 0.
[[nodiscard]] std::string coordinate(double value);

/// Shortened to `longest` characters, with an ellipsis where something is left out.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t longest);

/// Marks of an axis from at or below `low` to at or above `high`, about `about` of them, in steps of 1, 2, 2.5 or 5
/// times a power of ten. Needs `low < high`.
[[nodiscard]] std::vector<double> axis_marks(double low, double high, int about);

/// A mark as its number, with as few decimals as the step of the axis needs.
[[nodiscard]] std::string mark_text(double mark, const std::vector<double>& marks);

/// A place in a drawing.
struct Point {
  double x = 0.0;
  double y = 0.0;
};

/// `<line .../>` and `<text ...>` with a class of the page's style sheet. `text` is escaped here.
[[nodiscard]] std::string line(Point from, Point to, std::string_view css_class);
[[nodiscard]] std::string label(Point at, std::string_view text, std::string_view css_class);
[[nodiscard]] std::string rectangle(Point corner, double width, double height, std::string_view css_class);
/// `points` as the attribute of a polyline or polygon.
[[nodiscard]] std::string points(const std::vector<Point>& points);

/// Widths that drawings are made for, in pixels at which their text has its true size.
inline constexpr double wide = 920.0;
inline constexpr double narrow = 328.0;  ///< of a phone

/// Opens a drawing that tells its title and description to those who do not see it. `id` is unique in the page; every
/// id in the drawing begins with it.
///
/// \param more further attributes, each with a blank before it
[[nodiscard]] std::string open(std::string_view id, double width, double height, std::string_view title,
                               std::string_view description, std::string_view more = "");

}  // namespace forecourse::report::svg
