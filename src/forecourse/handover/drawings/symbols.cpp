#include "forecourse/handover/drawings/symbols.h"

#include <array>

#include "forecourse/base/unit_text.h"

namespace forecourse::handover {
namespace {

double mm(double value) { return to_si(value, "mm"); }

/// Lines given in mm.
Path drawn(const std::vector<Point>& points, bool closed = false, bool area = false) {
  Path out{"symbols", points, closed, area};
  for (Point& point : out.points) point = {mm(point.x), mm(point.y)};
  return out;
}

Circle round(double radius, bool area = false) { return {"symbols", {}, mm(radius), area}; }

Symbol symbol(const char* kind, const char* words, std::vector<Path> paths, std::vector<Circle> circles = {}) {
  return {kind, words, "symbols", std::move(paths), std::move(circles)};
}

Path box(double wide, double high) {
  return drawn(
      {{-0.5 * wide, -0.5 * high}, {0.5 * wide, -0.5 * high}, {0.5 * wide, 0.5 * high}, {-0.5 * wide, 0.5 * high}},
      true);
}

Symbol pump() {
  return symbol("pump", "submersible pump", {drawn({{-0.75, -1.3}, {-0.75, 1.3}, {1.5, 0.0}}, true)}, {round(1.5)});
}

Symbol fill() {
  return symbol("fill", "fill", {drawn({{-0.55, 0.0}, {0.55, 0.0}}), drawn({{0.0, -0.55}, {0.0, 0.55}})},
                {round(1.3), round(0.8)});
}

Symbol vent() {
  return symbol("vent", "outlet of a vent", {drawn({{-0.6, -0.4}, {0.0, 0.7}, {0.6, -0.4}}, true)}, {round(1.2)});
}

Symbol emergency_stop() {
  return symbol("emergency-stop", "emergency stop",
                {drawn({{-1.3, -0.54},
                        {-0.54, -1.3},
                        {0.54, -1.3},
                        {1.3, -0.54},
                        {1.3, 0.54},
                        {0.54, 1.3},
                        {-0.54, 1.3},
                        {-1.3, 0.54}},
                       true),
                 drawn({{-0.7, 0.0}, {0.7, 0.0}})});
}

Symbol extinguisher() {
  return symbol("extinguisher", "fire extinguisher",
                {box(2.2, 2.2), drawn({{-1.1, -1.1}, {1.1, 1.1}}), drawn({{-1.1, 1.1}, {1.1, -1.1}})});
}

}  // namespace

std::vector<Symbol> plan_symbols() {
  return {symbol("tank", "middle of a tank", {drawn({{-1.6, 0.0}, {1.6, 0.0}}), drawn({{0.0, -1.6}, {0.0, 1.6}})}),
          pump(),
          fill(),
          vent(),
          symbol("branch", "branch of lines", {}, {round(0.5, true)}),
          symbol("dispenser", "dispenser", {box(2.2, 4.4), drawn({{-1.1, 0.9}, {1.1, 0.9}})}),
          emergency_stop(),
          extinguisher(),
          symbol("vapor-processor", "vapor processor", {box(2.6, 2.6), drawn({{-0.8, 0.8}, {0.0, -0.8}, {0.8, 0.8}})})};
}

std::vector<Symbol> section_symbols() {
  return {
      pump(),
      fill(),
      vent(),
      symbol("branch", "branch of lines", {}, {round(0.5, true)}),
      symbol("shear-valve", "shear valve, at its groove",
             {drawn({{-0.8, -1.6}, {0.8, -1.6}, {-0.8, 1.6}, {0.8, 1.6}}, true), drawn({{-2.0, 0.0}, {2.0, 0.0}})}),
      symbol("sump-sensor", "sump sensor", {drawn({{-0.5, 0.0}, {0.5, 0.0}})}, {round(0.9)}),
      symbol("overfill-valve", "overfill valve, where it is shut",
             {drawn({{-0.7, -0.7}, {0.7, 0.7}, {-0.7, 0.7}, {0.7, -0.7}}, true)}),
      symbol("nozzle", "outlet of the nozzle", {drawn({{-0.9, 0.5}, {0.3, 0.5}, {0.9, -0.7}})}, {round(0.4, true)})};
}

std::string line_layer(const std::string& product) { return "lines-" + (product.empty() ? "unknown" : product); }

std::vector<Layer> drawing_layers(const std::vector<std::string>& products) {
  const double thin = mm(0.18), middle = mm(0.25), thick = mm(0.5);
  std::vector<Layer> out{{"ground", "ground, at the site datum", 8, LineType::solid, mm(0.35)},
                         {"lot", "lot line", 8, LineType::chain, mm(0.35)},
                         {"buildings", "building", 8, LineType::solid, middle},
                         {"ignitions", "fixed source of ignition", 1, LineType::solid, middle},
                         {"tanks", "tank, outside", 5, LineType::solid, mm(0.35)},
                         {"liquid", "liquid, as last read", 4, LineType::dashed, thin},
                         {"fills", "fill and drop tube", 5, LineType::solid, middle},
                         {"vents", "vent", 5, LineType::dotted, middle},
                         {"sumps", "sump, inside at its top", 6, LineType::solid, middle},
                         {"sumps-assumed", "sump, assumed with top at grade", 6, LineType::dashed, middle},
                         {"dispensers", "dispenser and island", 7, LineType::solid, mm(0.35)},
                         {"symbols", "symbols of parts", 7, LineType::solid, middle},
                         {"reach", "reach of the longest hose", 8, LineType::dotted, middle},
                         {"zones-1", "classified, Class I, Division 1", 1, LineType::dashed, mm(0.35)},
                         {"zones-2", "classified, Class I, Division 2", 30, LineType::dashed, middle},
                         {"dimensions", "dimensions", 3, LineType::solid, thin},
                         {"text", "names", 7, LineType::solid, thin},
                         {"leaders", "leaders of names", 8, LineType::solid, thin},
                         {"notes", "title cells, lists and notes", 7, LineType::solid, thin},
                         {"sheet", "frame of the sheet", 7, LineType::solid, middle},
                         {"parts", "places of parts without a symbol", 9, LineType::solid, thin, false}};
  constexpr std::array<std::pair<int, LineType>, 4> looks{
      {{3, LineType::solid}, {1, LineType::dashed}, {40, LineType::chain}, {6, LineType::dotted}}};
  for (std::size_t i = 0; i < products.size(); ++i) {
    const auto& [color, line] = looks[i % looks.size()];
    out.push_back({line_layer(products[i]), "line of " + (products[i].empty() ? "a product not known" : products[i]),
                   color, line, thick});
  }
  return out;
}

}  // namespace forecourse::handover
