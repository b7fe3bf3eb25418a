#include "forecourse/server/answers/web_units.h"

#include <fmt/format.h>

#include <array>
#include <string_view>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/units.h"

namespace forecourse::server {
namespace {

using report::Measure;
using site::Display;

struct Named {
  std::string_view name;
  Measure measure;
};

constexpr auto measures = std::to_array<Named>({{"flow", Measure::flow},
                                                {"leak", Measure::leak},
                                                {"pressure", Measure::pressure},
                                                {"\"vapor pressure\"", Measure::ullage_pressure},
                                                {"\"vapor leak\"", Measure::vapor_leak},
                                                {"length", Measure::length},
                                                {"bore", Measure::bore},
                                                {"velocity", Measure::velocity},
                                                {"volume", Measure::volume},
                                                {"temperature", Measure::temperature},
                                                {"\"temperature difference\"", Measure::temperature_difference},
                                                {"\"per degree\"", Measure::per_degree},
                                                {"caught", Measure::caught},
                                                {"draw", Measure::draw},
                                                {"force", Measure::force},
                                                {"heat", Measure::heat},
                                                {"\"heat flux\"", Measure::heat_flux}});
constexpr auto typed_flows =
    std::to_array<std::string_view>({"gpm", "gal/min", "gph", "gal/h", "L/min", "L/h", "L/s", "m3/h", "m3/s"});

/// The shortest text that reads back as the same number.
std::string exact(double value) { return fmt::format("{}", value); }

std::string shown_as(std::string_view label, std::string_view unit, bool is_temperature, bool is_difference) {
  const double size = to_si(1.0, unit, is_temperature || is_difference ? Datum::difference : Datum::none);
  const double zero = is_temperature ? to_si(0.0, unit, Datum::thermometer) : 0.0;
  return fmt::format("{{ unit: \"{}\", size: {}, zero: {} }}", label, exact(size), exact(zero));
}

std::string shown_as(Measure measure, Display display) {
  return shown_as(unit_label(measure, display), unit_label(measure, display, report::Glyphs::ascii),
                  measure == Measure::temperature, measure == Measure::temperature_difference);
}

std::string row(std::string_view name, const std::string& us, const std::string& si) {
  return fmt::format("  {}: {{\n    us: {},\n    si: {},\n  }},\n", name, us, si);
}

}  // namespace

std::string web_units() {
  std::string out = "// Made by tools/fresh.sh from the program's own units; not to be changed here.\n\n";
  out += "/** How SI values are shown: value = (SI - zero) / size. */\nexport const shownUnits = {\n";
  for (const Named& one : measures) {
    out += row(one.name, shown_as(one.measure, Display::us), shown_as(one.measure, Display::si));
  }
  out += row("\"square loss\"", shown_as("psi/gpm²", "psi/gpm^2", false, false),
             shown_as("kPa·min²/L²", "kPa.min^2/L^2", false, false));
  out += "} as const;\n\n/** Units that a flow may be typed in, and the size of one [m3/s]. */\n";
  out += "export const flowUnits: Record<string, number> = {\n";
  for (const std::string_view unit : typed_flows) out += fmt::format("  \"{}\": {},\n", unit, exact(to_si(1.0, unit)));
  return out + "};\n";
}

}  // namespace forecourse::server
