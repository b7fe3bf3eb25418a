#include <iterator>

#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/tank/tank_drawings.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/tank/tank_view.h"

namespace forecourse::report {
namespace {

constexpr Glyphs glyphs = Glyphs::unicode;
constexpr std::size_t whole_chart = 130;  // lines

std::string drawings(const studies::TankTold& tank, const site::Site& site, const std::string& id) {
  std::string out;
  const svg::TankScene scene = tank_scene(tank, site, "tank-" + id);
  if (!scene.outline.empty())
    out +=
        html::chart_figure(scene,
                           "Both sections to one scale. Dashed: the liquid now, and the levels of 90 % and 95 % of the "
                           "capacity. Under each stick the depth that it shows.");
  const svg::VolumeCurve curve = volume_curve(tank, site.display, "volume-" + id);
  std::string note = "As the tank lies.";
  if (!curve.level_chart.empty()) note += " Long dashes: what a level chart tells at the same depth.";
  if (!curve.fitted.empty()) note += " Short dashes: fitted to the calibration readings.";
  return out + html::chart_figure(curve, note);
}

std::string tank_part(const studies::TankTold& tank, const site::Site& site, const std::string& id,
                      std::size_t chart_lines) {
  const site::Display display = site.display;
  std::string out = html::heading(3, "Tank " + tank.id + (tank.product.empty() ? "" : ", " + tank.product));
  if (!tank.problem.empty()) return out + html::paragraph("Not determined: " + tank.problem + ".");
  out += html::paragraph(tank.shape +
                         (tank.pitched ? ", pitched " + number(100.0 * tank.pitch, 2, glyphs) + " %" : "") + ".");
  out += drawings(tank, site, id);
  out += html::table(page_table(place_table(tank, display, glyphs), "Dips along tank " + tank.id,
                                "Depths square to the axis, from the inside bottom at the place."));
  out += html::list(tank_remarks(tank, display, glyphs));
  out +=
      html::table(page_table(route_table(tank, display, glyphs), "Overfill prevention, tank " + tank.id,
                             "Three published routes (40 CFR 280.20(c)(1)(ii)); one is enough. Depths at the device's "
                             "own place: of an alarm the gauge, else the fill."));
  if (!tank.overfill.set.empty())
    out += html::table(page_table(set_table(tank, display, glyphs), "What is set now, tank " + tank.id));
  if (!tank.overfill.wrong.empty())
    out += html::table(
        page_table(wrong_table(tank, display, glyphs), "What a chart that does not fit would set, tank " + tank.id,
                   "A level chart takes the pitched tank as level; a share of the height is no share of the "
                   "volume."));
  if (tank.calibration) {
    if (tank.calibration->problem.empty()) {
      out += html::table(
          page_table(fit_table(*tank.calibration, display, glyphs), "Fitted to the readings, tank " + tank.id));
      out +=
          html::table(page_table(fit_chart_table(*tank.calibration, display, glyphs), "Fitted chart, tank " + tank.id));
    }
    out += html::list(fit_remarks(*tank.calibration, display, glyphs));
  }
  const char* more = chart_lines < whole_chart ? ". The whole chart comes from the command tank." : ".";
  return out + html::table(page_table(chart_table(tank, display, glyphs, chart_lines), "Volume chart, tank " + tank.id,
                                      "Place: " + tank.chart.what + more));
}

/// What each line of the course is: "T1 solid, T2 long dashes".
std::string lines_of(const studies::SiphonTold& siphon) {
  constexpr const char* looks[] = {" solid", " long dashes", " short dashes"};
  std::string out;
  for (std::size_t i = 0; i < siphon.ids.size() && i < std::size(looks); ++i)
    out += (i == 0 ? "" : ", ") + siphon.ids[i] + looks[i];
  return out + ".";
}

std::string siphon_part(const studies::SiphonTold& siphon, site::Display display, const std::string& id) {
  std::string out = html::heading(3, "Siphoned: " + siphon_name(siphon));
  if (siphon.problem.empty()) {
    out += html::table(page_table(siphon_table(siphon, display, glyphs), "Levels and volumes"));
    const svg::VolumeCurve course = siphon_curve(siphon, display, "siphon-" + id);
    if (!course.curve.empty()) out += html::chart_figure(course, lines_of(siphon));
    out += html::table(page_table(draw_table(siphon, display, glyphs), "While a pump draws from one of them",
                                  "From one level. One gauge: its level taken for all of the tanks."));
  }
  return out + html::list(siphon_remarks(siphon, display, glyphs));
}

}  // namespace

std::string tank_section(const studies::TankResult& result, const site::Site& site, std::size_t chart_lines) {
  std::string out = html::heading(2, "Tanks");
  if (result.tanks.empty()) return out + html::paragraph("No tank is listed in the site file.");
  out += html::table(page_table(tank_table(result, site.display, glyphs), "What the tanks hold",
                                "Shares are of the whole inside, to the very top."));
  for (std::size_t i = 0; i < result.tanks.size(); ++i)
    out += tank_part(result.tanks[i], site, std::to_string(i + 1), chart_lines);
  for (std::size_t i = 0; i < result.siphons.size(); ++i)
    out += siphon_part(result.siphons[i], site.display, std::to_string(i + 1));
  return out;
}

std::string tank_report(const studies::TankResult& result, const std::vector<checks::Finding>& findings,
                        const site::Site& site, const TankFacts& facts) {
  return study_page("Tanks", "tank", tank_cautions().front(),
                    findings_html(findings, site.display) + tank_section(result, site, whole_chart),
                    {result.version, result.defaults, result.warnings, tank_cautions()}, site,
                    {facts.date, facts.command, facts.texts});
}

}  // namespace forecourse::report
