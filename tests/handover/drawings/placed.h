#pragma once

// A station with a place for everything, and what its drawings hold.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "forecourse/handover/drawings/drawings.h"
#include "support/stations.h"

namespace forecourse::handover {

/// A station with a place for everything. Invented.
inline const std::string placed = R"toml(format = 1
[site]
name = "Placed (invented)"
display = "si"
[[product]]
id = "regular"
kind = "gasoline-e10"
[[product]]
id = "diesel"
kind = "diesel-b5"
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "2.4 m", outside_diameter = "2.5 m", length = "10 m", heads = "flat", pitch = "1 %", low_end = "fill" }
bottom_elevation = "-4 m"
position = ["6 m", "20 m"]
axis = "0 deg"
  [[tank.fill]]
  id = "F1"
  at = "1 m"
  elevation = "-0.1 m"
  tight = true
  drop_tube = { end_above_bottom = "0.15 m" }
  [[tank.vent]]
  id = "V1"
  position = ["-3 m", "20 m"]
  outlet_elevation = "4 m"
  upward = true
[[pump]]
id = "P1"
tank = "T1"
at = "9 m"
discharge_elevation = "-0.6 m"
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "34 m"
bore = "50 mm"
[[dispenser]]
id = "D1"
position = ["40 m", "10 m"]
elevation = "0.15 m"
sump = { kind = "box", floor = ["0.5 m", "0.8 m"], top = ["0.5 m", "0.8 m"], depth = "0.9 m" }
  [[dispenser.inlet]]
  product = "regular"
  line_elevation = "-0.7 m"
  shear_valve = { groove_elevation = "0.15 m" }
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  outlet_elevation = "0.9 m"
  nozzle = { loss = { k = 1, bore = "19 mm" } }
)toml";

/// Options of which only some are given.
struct Asked {
  std::string which = {};
  std::string paper = {};
  std::string scale = {};
  std::string hose = {};
  std::string date = {};

  operator DrawingOptions() const {
    DrawingOptions out;
    out.which = which;
    out.paper = paper;
    out.scale = scale;
    out.hose = hose;
    out.date = date;
    return out;
  }
};

inline DrawingSet drawn(const std::string& text, const DrawingOptions& options = {}) {
  const site::Site site = test::station(text);
  EXPECT_THAT(check_drawing_options(site, options), testing::IsEmpty());
  return draw_station(site, options);
}

inline const Drawing& called(const DrawingSet& set, const std::string& id) {
  const auto found =
      std::find_if(set.drawings.begin(), set.drawings.end(), [&](const Drawing& one) { return one.id == id; });
  EXPECT_NE(found, set.drawings.end()) << id;
  return *found;
}

inline std::vector<Path> on_layer(const Drawing& drawing, const std::string& layer) {
  std::vector<Path> out;
  std::copy_if(drawing.paths.begin(), drawing.paths.end(), std::back_inserter(out),
               [&](const Path& path) { return path.layer == layer; });
  return out;
}

inline Point mark(const Drawing& drawing, const std::string& part) {
  for (const Mark& one : drawing.marks) {
    if (one.part == part) return one.at;
  }
  ADD_FAILURE() << "no mark " << part;
  return {};
}

inline constexpr double exact = 1e-9;  // [m]: sums of a few doubles

}  // namespace forecourse::handover
