#include "forecourse/report/svg/spill_scene.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double cell_height = 250.0;
constexpr double grade = 120.0;  // of the slab's top, from the cell's top
constexpr double sump_depth = 84.0;
constexpr double sump_width = 84.0;
constexpr double jet_room = 78.0;

/// A `<rect>` that a page moves.
std::string moved(std::string_view what, Point corner, double width, double height, std::string_view css_class,
                  std::string_view scale) {
  const std::string plain = rectangle(corner, width, height, css_class);
  return "<rect" + data("move", what) + std::string(scale) + plain.substr(std::string_view("<rect").size());
}

/// The cut at one moment, in its place of the drawing.
class Cut {
 public:
  Cut(const SpillScene& scene, const SpillMoment& moment, bool moving, Point corner, double width)
      : scene_(scene),
        moment_(moment),
        moving_(moving),
        left_(corner.x),
        width_(width),
        middle_(corner.x + 0.5 * width),
        slab_(corner.y + grade) {}

  [[nodiscard]] std::string draw() const {
    std::string out = rectangle({left_ + 4.0, slab_}, width_ - 8.0, sump_depth + 16.0, "soil");
    out += sump();
    out += rectangle({left_ + 4.0, slab_}, width_ - 8.0, 8.0, "slab");
    return out + pool() + piping() + flow() + tank_level() + dispenser() + jet();
  }

 private:
  [[nodiscard]] std::string sump() const {
    if (!moment_.in_sump) return {};
    const Point corner{middle_ - 0.5 * sump_width, slab_ + 8.0};
    const double full = sump_depth - 6.0;
    const double foot = corner.y + sump_depth - 2.0;
    const double height = full * std::clamp(*moment_.in_sump, 0.0, 1.0);
    std::string out = rectangle(corner, sump_width, sump_depth, "sump");
    if (!moving_ && !(height > 0.0)) return out;
    const Point liquid{corner.x + 2.0, foot - height};
    out += moved("sump", liquid, sump_width - 4.0, height, "liquid " + scene_.tone,
                 data("full", full) + data("foot", foot));
    if (moving_) return out;
    return out + hatch(liquid, sump_width - 4.0, height, 6.0, Strokes::level, "hatch");
  }

  [[nodiscard]] std::string pool() const {
    const double full = 0.5 * (width_ - 24.0);
    const double half = full * std::clamp(moment_.pool, 0.0, 1.0);
    if (!moving_ && !(half > 0.5)) return {};
    return moved("pool", {middle_ - half, slab_ - 5.0}, 2.0 * half, 5.0, "liquid " + scene_.tone,
                 data("full", full) + data("middle", middle_));
  }

  /// The line from the side, the riser to the island's top, and the groove at its end: two notches.
  [[nodiscard]] std::string piping() const {
    std::string out = polyline({{left_ + 4.0, slab_ + 62.0}, {middle_, slab_ + 62.0}, {middle_, slab_ - 2.0}}, "hose");
    out += line({middle_ - 7.0, slab_ - 2.0}, {middle_ - 2.0, slab_ - 2.0}, "edge");
    return out + line({middle_ + 2.0, slab_ - 2.0}, {middle_ + 7.0, slab_ - 2.0}, "edge");
  }

  /// What flows in it, as wide as its share; only where a page moves it.
  [[nodiscard]] std::string flow() const {
    if (!moving_) return {};
    constexpr double widest = 10.0;
    return "<path class=\"run " + scene_.tone + "\"" + data("move", "flow") + data("full", widest) +
           " display=\"none\" stroke-width=\"0\" d=\"M" + at({left_ + 4.0, slab_ + 62.0}) + "H" + coordinate(middle_) +
           "V" + coordinate(slab_ - 2.0) + "\"/>\n";
  }

  [[nodiscard]] std::string tank_level() const {
    if (!scene_.level) return {};
    const double y = slab_ + sump_depth + 12.0;
    const std::string plain = line({left_ + 4.0, y}, {left_ + width_ - 4.0, y}, "drop");
    return "<line" + data("move", "tank-level") + plain.substr(std::string_view("<line").size());
  }

  [[nodiscard]] std::string dispenser() const {
    if (!moving_ && !moment_.standing) return {};
    return group({}, rectangle({middle_ - 16.0, slab_ - 62.0}, 32.0, 60.0, "housing"), "", data("move", "dispenser"));
  }

  /// From the least to the greatest height that the jet may reach.
  [[nodiscard]] std::string jet() const {
    const double low = jet_room * std::clamp(moment_.jet_low, 0.0, 1.0);
    const double high = jet_room * std::clamp(moment_.jet_high, 0.0, 1.0);
    if (!moving_ && high < 2.0) return {};
    const double foot = slab_ - 6.0;
    std::string out = line({middle_, foot}, {middle_, foot - low}, "drop");
    out += line({middle_, foot - low}, {middle_, foot - high}, "edge");
    out += line({middle_ - 6.0, foot - low}, {middle_ + 6.0, foot - low}, "edge");
    out += line({middle_ - 6.0, foot - high}, {middle_ + 6.0, foot - high}, "edge");
    const std::string hidden = high < 2.0 ? " display=\"none\"" : "";
    return group({}, out, "", data("move", "jet") + data("full", jet_room) + data("foot", foot) + hidden);
  }

  const SpillScene& scene_;
  const SpillMoment& moment_;
  bool moving_;
  double left_;
  double width_;
  double middle_;
  double slab_;
};

/// What is told of a moment, above and below its cut.
std::string words(const SpillMoment& moment, Point corner, double width) {
  std::string out = label({corner.x + 6.0, corner.y + 16.0}, moment.time, "name");
  double y = corner.y + grade + sump_depth + 34.0;
  const auto fitting = static_cast<std::size_t>(width / 6.9);
  for (const std::string& text :
       {moment.words, moment.pool_text, moment.sump_text, moment.flow_text, moment.jet_text}) {
    if (text.empty()) continue;
    out += label({corner.x + 6.0, y}, shortened(text, fitting), "place");
    y += 15.0;
  }
  return out;
}

std::string told(const SpillFull& full) {
  std::string out;
  const auto tell = [&](const char* name, const std::optional<double>& value) {
    if (value) out += data(name, fmt::format("{:.6g}", *value));
  };
  tell("full-sump-m3", full.sump);
  tell("full-pool-m3", full.pool);
  tell("full-jet-m", full.jet);
  tell("full-flow-m3-per-s", full.flow);
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
    const Point corner{beside ? width * place : 0.0, beside ? 0.0 : height * place};
    out += Cut(scene, scene.moments[i], false, corner, width).draw() + words(scene.moments[i], corner, width);
  }
  return out + "</svg>\n";
}

std::string draw_moving(const SpillScene& scene, const SpillFull& full) {
  if (scene.moments.empty()) return {};
  constexpr double above = 24.0;  // no time stands above the cut
  const double height = grade - above + sump_depth + 20.0;
  return open(scene.id, scene.width, height, scene.title, scene.description, told(full)) +
         Cut(scene, scene.moments.front(), true, {0.0, -above}, scene.width).draw() + "</svg>\n";
}

}  // namespace forecourse::report::svg
