#include "forecourse/server/answers/wants/ground_drawings.h"

#include <string>

#include "forecourse/report/flotation/flotation_view.h"
#include "forecourse/report/vapor/vapor_view.h"
#include "forecourse/server/answers/wants/drawing_want.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/studies/flotation/read_flotation_options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::server {
namespace {

using report::Json;

template <class Chart>
std::string drawn(Chart chart, const DrawingWant& want) {
  chart.id = want.prefix;
  chart.width = want.width;
  return draw(chart);
}

Drawn of_tank(const studies::TankFlotation& tank, site::Display display, const DrawingWant& want) {
  if (report::shown_state(tank) == nullptr) return {"", {}, "enter what the flotation of the tank needs"};
  if (want.drawing == "factor-by-water") return {drawn(report::level_chart(tank, display, want.prefix), want), {}};
  if (want.drawing == "flotation") {
    return {drawn(report::tank_drawing(tank, display, want.prefix), want),
            {tank.section.soil_counts ? "To scale; hatched: the soil that counts." : "To scale; no soil counts."}};
  }
  if (tank.by_fill.empty()) return {"", {}, "enter the density of what is in the tank"};
  return {drawn(report::fill_chart(tank, display, want.prefix), want), {}};
}

}  // namespace

bool is_flotation_drawing(const Json& drawing) {
  return drawing == "flotation" || drawing == "factor-by-water" || drawing == "factor-by-fill";
}

Json flotation_drawing(const Asked& asked) {
  WantReader reader(asked.want, flotation_drawing_members);
  const DrawingWant want = read_drawing(reader);
  const auto options = studies::read_flotation_options(
      {reader.text("tank"), reader.text("water_level"), reader.text("filled"), reader.text("factor")},
      studies::Asker::page);
  const OpenedSite& opened = asked.shared.opened(read_units(reader));
  if (!reader.good()) return reader.problem();
  if (!options.ok()) return refused(options.diagnostics);
  if (!opened.problem.is_null()) return opened.problem;
  const studies::FlotationResult result = studies::study_flotation(opened.site, options.value, asked.context);
  if (!result.errors.empty()) return refused(result.errors);
  if (result.tanks.empty()) return refused("of no tank anything is entered under flotation", "enter it on a tank");
  return drawn_json(want, of_tank(result.tanks.front(), opened.site.display, want));
}

bool is_vapor_drawing(const Json& drawing) { return drawing == "vapor-pressure" || drawing == "static-test"; }

Json vapor_drawing(const Asked& asked) {
  WantReader reader(asked.want, vapor_drawing_members);
  const DrawingWant want = read_drawing(reader);
  const auto temperature =
      studies::read_option<Temperature>("temperature", reader.text("temperature"), studies::Asker::page);
  const OpenedSite& opened = asked.shared.opened(read_units(reader));
  if (!reader.good()) return reader.problem();
  if (!temperature.ok()) return refused(temperature.diagnostics);
  if (!opened.problem.is_null()) return opened.problem;
  studies::VaporOptions options;
  if (temperature.value) options.temperature = temperature.value->likely.si();
  const studies::VaporResult result = studies::study_vapor(opened.site, options, asked.context);
  const site::Display display = opened.site.display;
  if (want.drawing == "static-test") return drawn_json(want, {drawn(report::static_chart(result, display), want), {}});
  return drawn_json(
      want, {drawn(report::pressure_chart(result, display), want), {}, "enter the vapor pressure of a product"});
}

}  // namespace forecourse::server
