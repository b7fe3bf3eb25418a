// Worked examples from textbooks, entered as stations: what is asked of them is answered as printed.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/questions/ask.h"
#include "lesson/questions/ground_of.h"

namespace forecourse::test {
namespace {

double answer_of(const StudiedStation& station, const char* kind) {
  const lesson::Asked asked = ask_kind(*lesson::find_question(kind), station.ground(), 1);
  const auto* question = std::get_if<lesson::Question>(&asked);
  if (question == nullptr) {
    ADD_FAILURE() << std::get<lesson::LeftOut>(asked).reason;
    return 0.0;
  }
  return question->answer->value;
}

/// Pressure of a height of water of 1000 kg/m3 [psi].
double psi_of_feet(double feet) {
  return from_si(1000.0 * standard_gravity * to_si(feet, "ft"), "psi", Datum::difference);
}

// A pump of h = 82.5 - 0.201 Q^2 against 30 + 0.160 Q^2, in ft and ft3/s, is printed to give 12.051 ft3/s. With these
// rounded coefficients it is sqrt(52.5 / 0.361) = 12.0594, 0.07 % more, which is the tolerance.
// SOURCE: [hydr_watres, examples 7.1 to 7.3]
TEST(Textbook, PumpAgainstASystem) {
  const double cubic_foot_in_gpm = from_si(to_si(1.0, "ft") * to_si(1.0, "ft") * to_si(1.0, "ft"), "gal/min");
  const double squared = cubic_foot_in_gpm * cubic_foot_in_gpm;
  const StudiedStation station(fmt::format(R"toml(format = 1
[site]
name = "Pump against a system (invented station)"
[[product]]
id = "water"
kind = "other"
density = "1000 kg/m3"
viscosity = "1.0 mPa.s"
[[tank]]
id = "T1"
product = "water"
bottom_elevation = "-10 ft"
reading = {{ depth = "10 ft" }}
[[pump]]
id = "P1"
tank = "T1"
curve = {{ shutoff = "{:.9f} psi", per_flow_squared = "{:.12e} psi/gpm^2" }}
check_valve = true
[[line]]
id = "main"
from = "P1"
to = "D1.water"
length = "0 ft"
bore = "24 in"
loss = {{ per_flow_squared = "{:.12e} psi/gpm^2" }}
[[dispenser]]
id = "D1"
  [[dispenser.inlet]]
  product = "water"
  [[dispenser.hose]]
  id = "D1.a"
  product = "water"
  outlet_elevation = "30 ft"
  loss = "0 psi/gpm^2"
)toml",
                                           psi_of_feet(82.5), psi_of_feet(0.201) / squared,
                                           psi_of_feet(0.160) / squared));
  const double flow = from_si(answer_of(station, "hose-flow-alone"), "gal/min") / cubic_foot_in_gpm;
  EXPECT_NEAR(flow, 12.051, 0.0008 * 12.051);
  EXPECT_NEAR(flow, 12.059410, 1e-5);  // by hand, as above
}

// A lying cylinder of 108 in by 156 in with elliptical heads of 42 in holds 2380.9565 gal at 36 in.
// SOURCE: row TANK-ellip of check_values.csv, a published tank volume; closed form
TEST(Textbook, TankWithEllipticalHeads) {
  const StudiedStation station(R"toml(format = 1
[site]
name = "Elliptical heads (invented station)"
[[product]]
id = "regular"
kind = "gasoline-e10"
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "108 in", length = "156 in", heads = "elliptical", head_depth = "42 in" }
reading = { depth = "36 in", at = "5 ft" }
)toml");
  EXPECT_NEAR(from_si(answer_of(station, "volume-at-reading"), "gal"), 2380.9565, 1e-3);
}

/// What a page of the built-in lesson shows.
double number_on(const StudiedStation& station, const std::string& page, const std::string& number) {
  for (const lesson::Page& one : lesson::make_lesson(lesson::built_in_lesson(), station.ground()).pages) {
    if (one.page != page) continue;
    for (const lesson::Number& told : one.numbers) {
      if (told.number == number) return told.value.value_or(0.0);
    }
  }
  return 0.0;
}

// A link of index 55 (m s)^0.5 that starts at 16.6 degC, in gas 62.388863463 K warmer that passes at 0.935689932 m/s,
// reaches 68 degC after 98.735336325 s. The gas is entered to a billionth of a degree.
// SOURCE: [nureg_1805_sheets, sprinkler activation, heat release 262.5 kW]
TEST(Textbook, LinkInHotGas) {
  const StudiedStation station(R"toml(
format = 1
[site]
name = "Link, textbook (invented station)"
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "738 kg/m3"
viscosity = "0.52 mPa.s"
[[tank]]
id = "T1"
product = "regular"
bottom_elevation = "-14 ft"
reading = { depth = "50 in" }
[[pump]]
id = "P1"
tank = "T1"
curve = { shutoff = "30 psi", per_flow_squared = "0.002 psi/gpm^2" }
check_valve = true
[[line]]
id = "trunk"
from = "P1"
to = "D1.regular"
length = "100 ft"
bore = "2 in"
[[dispenser]]
id = "D1"
sump = { kind = "tapered", floor = ["20 in", "30 in"], top = ["20 in", "30 in"], depth = "36 in" }
  [[dispenser.inlet]]
  product = "regular"
  line_elevation = "-2 ft"
  riser = { length = "2 ft", bore = "1.6 in" }
  shear_valve = { groove_elevation = "0 in", fusible_link = "68 degC", response_index = 55 }
  [[dispenser.hose]]
  id = "D1.a"
  product = "regular"
  outlet_elevation = "3 ft"
  loss = "0.17 psi/gpm^2"
[[incident]]
id = "fire"
kind = "sump-fire"
at = "D1"
stop_at = "5 min"
open_area = "0.02 in2"
fire = { diameter = "20 in", gas_temperature = "78.988863463 degC", gas_speed = "0.935689932 m/s", start_temperature = "16.6 degC" }
)toml");
  EXPECT_NEAR(number_on(station, "shear-link", "link-parts"), 98.735336325, 1e-6);
}

}  // namespace
}  // namespace forecourse::test
