#include "forecourse/server/answers/wants/drawing_want.h"

#include <string_view>
#include <utility>

#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {
namespace {

/// Ids stand in lists that blanks part.
bool is_plain(const std::string& prefix) {
  constexpr std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_";
  return prefix.size() <= 64 && prefix.find_first_not_of(plain) == std::string::npos;
}

}  // namespace

const std::vector<std::string>& drawing_words() {
  static const std::vector<std::string> words{"section",         "plan",           "grade-line",     "ladder",
                                              "budget",          "sumps",          "scene",          "flotation",
                                              "factor-by-water", "factor-by-fill", "vapor-pressure", "static-test",
                                              "volume-test",     "shut-pressure",  "meter-errors"};
  return words;
}

DrawingWant read_drawing(WantReader& want) {
  constexpr double widest = 4000.0;
  DrawingWant out;
  out.drawing = want.word("drawing", drawing_words());
  out.prefix = want.text("prefix");
  if (!is_plain(out.prefix)) want.refuse("'prefix' has letters, digits, - and _ alone, 64 at most", "write \"left\"");
  if (out.prefix.empty()) out.prefix = out.drawing;
  out.width = want.number("width", report::svg::narrow, widest).value_or(report::svg::wide);
  return out;
}

report::Json drawn_json(const DrawingWant& want, Drawn drawn) {
  if (drawn.svg.empty()) return refused("there is nothing to draw for the " + want.drawing, drawn.instead);
  return {{"svg", std::move(drawn.svg)}, {"remarks", std::move(drawn.remarks)}};
}

}  // namespace forecourse::server
