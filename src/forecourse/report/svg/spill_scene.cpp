#include "forecourse/report/svg/spill_scene.h"

#include <algorithm>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double cell_height = 250.0;
constexpr double grade = 120.0;  // of the slab's top, from the cell's top
constexpr double sump_depth = 84.0;
constexpr double sump_width = 84.0;
constexpr double jet_room = 78.0;

std::string liquid(const SpillMoment& moment, Point corner) {
  if (!moment.in_sump) return {};
  const double share = std::clamp(*moment.in_sump, 0.0, 1.0);
  const double height = share * (sump_depth - 6.0);
  std::string out = rectangle({corner.x, corner.y}, sump_width, sump_depth, "sump");
  if (height > 0.0) {
    const Point at_liquid{corner.x + 2.0, corner.y + sump_depth - 2.0 - height};
    out += rectangle(at_liquid, sump_width - 4.0, height, "liquid regular");
    out += hatch(at_liquid, sump_width - 4.0, height, 6.0, Strokes::level, "hatch");
  }
  return out;
}

/// The line from the side, the riser to the island's top, and the groove at its end: two notches.
std::string piping(double left, double middle, double slab) {
  std::string out = polyline({{left + 4.0, slab + 62.0}, {middle, slab + 62.0}, {middle, slab - 2.0}}, "hose");
  out += line({middle - 7.0, slab - 2.0}, {middle - 2.0, slab - 2.0}, "edge");
  return out + line({middle + 2.0, slab - 2.0}, {middle + 7.0, slab - 2.0}, "edge");
}

/// From the least to the greatest height that the jet may reach.
std::string jet(const SpillMoment& moment, double middle, double slab) {
  const double low = jet_room * std::clamp(moment.jet_low, 0.0, 1.0);
  const double high = jet_room * std::clamp(moment.jet_high, 0.0, 1.0);
  if (high < 2.0) return {};
  const double foot = slab - 6.0;
  std::string out = line({middle, foot}, {middle, foot - low}, "drop");
  out += line({middle, foot - low}, {middle, foot - high}, "edge");
  out += line({middle - 6.0, foot - low}, {middle + 6.0, foot - low}, "edge");
  return out + line({middle - 6.0, foot - high}, {middle + 6.0, foot - high}, "edge");
}

std::string cell(const SpillMoment& moment, bool level, double left, double top, double width) {
  const double middle = left + 0.5 * width;
  const double slab = top + grade;
  std::string out = rectangle({left + 4.0, slab}, width - 8.0, sump_depth + 16.0, "soil");
  out += liquid(moment, {middle - 0.5 * sump_width, slab + 8.0});
  out += rectangle({left + 4.0, slab}, width - 8.0, 8.0, "slab");
  const double half = 0.5 * (width - 24.0) * std::clamp(moment.pool, 0.0, 1.0);
  if (half > 0.5) out += rectangle({middle - half, slab - 5.0}, 2.0 * half, 5.0, "liquid regular");
  out += piping(left, middle, slab);
  if (level) {
    const double at = slab + sump_depth + 12.0;
    out += line({left + 4.0, at}, {left + width - 4.0, at}, "drop");
  }
  if (moment.standing) out += rectangle({middle - 16.0, slab - 62.0}, 32.0, 60.0, "housing");
  out += jet(moment, middle, slab);
  out += label({left + 6.0, top + 16.0}, moment.time, "name");
  double y = slab + sump_depth + 34.0;
  const auto fitting = static_cast<std::size_t>(width / 6.9);
  for (const std::string& text :
       {moment.words, moment.pool_text, moment.sump_text, moment.flow_text, moment.jet_text}) {
    if (text.empty()) continue;
    out += label({left + 6.0, y}, shortened(text, fitting), "place");
    y += 15.0;
  }
  return out;
}

}  // namespace

std::string draw(const SpillScene& scene) {
  if (scene.moments.empty()) return {};
  const bool beside = scene.width >= wide;
  const std::size_t count = std::min<std::size_t>(scene.moments.size(), 4);
  constexpr double text_room = 57.0;
  const double height = cell_height + text_room;
  const double width = beside ? scene.width / static_cast<double>(count) : scene.width;
  const double total = beside ? height : height * static_cast<double>(count);
  std::string out = open(scene.id, scene.width, total, scene.title, scene.description);
  for (std::size_t i = 0; i < count; ++i) {
    const double place = static_cast<double>(i);
    out += cell(scene.moments[i], scene.level, beside ? width * place : 0.0, beside ? 0.0 : height * place, width);
  }
  return out + "</svg>\n";
}

}  // namespace forecourse::report::svg
