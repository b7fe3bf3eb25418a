#include "forecourse/report/drawing/frame.h"

#include <algorithm>

namespace forecourse::report::drawing {
namespace {

constexpr double drawn_height = 350.0;  // pixels of sky and soil together
constexpr double tanker_height = 3.3;   // [m] drawn, not entered
constexpr double soil_below = 0.9;      // [m] under the deepest part, room for its name

}  // namespace

Frame::Frame(const Section& s) {
  top_ = std::max({tanker_height, s.outlet + 0.8, s.island + 2.2, s.vent_outlet.value_or(0.0) + 0.5,
                   s.fill_top.value_or(0.0) + 0.5});
  bottom_ = std::min({s.tank.bottom, s.tank.pump_bottom, s.tank.liquid - 0.4, s.sump_floor.value_or(0.0), -1.0});
  for (const LinePlace& place : s.line) {
    top_ = std::max(top_, place.elevation + 0.5);
    bottom_ = std::min(bottom_, place.elevation);
  }
  bottom_ -= soil_below;
  scale_ = drawn_height / (top_ - bottom_);
  length_ = std::max(s.line.back().along, 1e-3);
}

}  // namespace forecourse::report::drawing
