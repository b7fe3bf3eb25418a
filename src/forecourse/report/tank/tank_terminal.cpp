#include <algorithm>

#include "forecourse/report/findings.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/tank/tank_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

constexpr std::size_t lines_on_screen = 24;

void tell_tank(terminal::Page& page, const studies::TankTold& tank, site::Display display, Glyphs glyphs,
               bool verbose) {
  page.heading("Tank " + tank.id + (tank.product.empty() ? "" : ", " + tank.product));
  if (!tank.problem.empty()) {
    page.paragraph("Not determined: " + tank.problem + ".");
    return;
  }
  page.paragraph(tank.shape + (tank.pitched ? ", pitched " + number(100.0 * tank.pitch, 2, glyphs) + " %" : "") + ".");
  page.table(terminal_table(place_table(tank, display, glyphs)));
  for (const std::string& remark : tank_remarks(tank, display, glyphs)) page.item(remark);
  page.remark("Overfill prevention, three published routes of which one is enough (40 CFR 280.20(c)(1)(ii)):");
  page.table(terminal_table(route_table(tank, display, glyphs)));
  if (!tank.overfill.set.empty()) {
    page.remark("Set now:");
    page.table(terminal_table(set_table(tank, display, glyphs)));
  }
  if (!tank.overfill.wrong.empty()) {
    page.remark("What a level chart, or a share of the height, would set:");
    page.table(terminal_table(wrong_table(tank, display, glyphs)));
  }
  page.remark("Volume chart, " + tank.chart.what + ":");
  page.table(terminal_table(chart_table(tank, display, glyphs, verbose ? tank.chart.rows.size() : lines_on_screen)));
  if (!tank.calibration) return;
  page.remark("Fitted to the calibration readings:");
  if (tank.calibration->problem.empty()) page.table(terminal_table(fit_table(*tank.calibration, display, glyphs)));
  for (const std::string& remark : fit_remarks(*tank.calibration, display, glyphs)) page.item(remark);
}

}  // namespace

std::vector<std::string> tank_cautions() {
  const std::string computed =
      "Computed from what was entered. It advises; a tank differs from its drawing, and a computed volume is not a "
      "calibration.";
  return {
      computed,
      "Never empty a tank in wet ground without an engineer's word: it may float.",
      "The local code in its local edition and the authority that applies it come first.",
      "So do the listing and the instructions of each overfill device: it is set and tested as they say.",
      "Opening a tank, and work in it, need their own permit.",
  };
}

std::string tank_summary(const studies::TankResult& result, const std::vector<checks::Finding>& findings,
                         const site::Site& site, const terminal::Style& style, const TankFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": what the tanks hold");
  page.paragraph(tank_cautions().front() + " forecourse " + result.version + ".");
  if (result.tanks.empty()) page.paragraph("No tank is listed in the site file.");
  if (!result.tanks.empty()) page.table(terminal_table(tank_table(result, site.display, glyphs)));
  if (!findings.empty()) page.heading("Findings");
  for (const FindingGroup& group : grouped(findings))
    page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
  for (const studies::TankTold& tank : result.tanks) tell_tank(page, tank, site.display, glyphs, style.verbose);
  for (const studies::SiphonTold& siphon : result.siphons) {
    page.heading("Siphoned: " + siphon_name(siphon));
    if (siphon.problem.empty()) {
      page.table(terminal_table(siphon_table(siphon, site.display, glyphs)));
      page.table(terminal_table(draw_table(siphon, site.display, glyphs)));
    }
    for (const std::string& remark : siphon_remarks(siphon, site.display, glyphs)) page.item(remark);
  }
  if (!result.defaults.empty()) page.heading("Values that were not entered");
  for (const DefaultUsed& used : result.defaults)
    page.item(used.what + ": " + default_value(used, site.display, glyphs) + ", " + word(used.status));
  if (!result.warnings.empty()) page.heading("Warnings");
  for (const Diagnostic& warning : result.warnings) page.notice("Warning", warning.message);
  page.heading("Cautions");
  for (const std::string& caution : tank_cautions()) page.item(caution);
  for (const std::string& path : facts.written) page.item("written: " + path);
  return page.text();
}

}  // namespace forecourse::report
