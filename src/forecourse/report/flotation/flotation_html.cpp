#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flotation/flotation_view.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {
namespace {

std::string of_tank(const studies::TankFlotation& tank, site::Display display) {
  constexpr Glyphs glyphs = Glyphs::unicode;
  std::string out = html::heading(3, "Tank " + tank.tank) + html::list(flotation_answer(tank, display, glyphs));
  const studies::FlotationState* shown = shown_state(tank);
  if (shown == nullptr) return out;
  const std::string id = "flotation-" + tank.tank;
  out += html::chart_figure(
      tank_drawing(tank, display, id + "-section"),
      tank.section.soil_counts ? "To scale; hatched: the soil that counts." : "To scale; no soil counts.");
  out += html::table(page_table(balance_table(*shown, display, glyphs), "Balance of forces",
                                "Tank " + tank.tank + ", " + state_words(*shown, display, glyphs) +
                                    ". Tank and sumps hold by their weight in air, all else by its submerged weight."));
  out += html::table(page_table(factor_table(tank, glyphs), "Factors and their definitions",
                                "A factor says nothing without its definition."));
  out +=
      html::chart_figure(level_chart(tank, display, id + "-level"), "Finished tank, with slab, backfill and deadmen.");
  if (!tank.by_fill.empty()) {
    out +=
        html::chart_figure(fill_chart(tank, display, id + "-fill"), "What is in the tank holds it down by its weight.");
  }
  return out + html::list(flotation_reserves(tank));
}

}  // namespace

std::string flotation_section(const studies::FlotationResult& result, const site::Site& site) {
  std::string out = html::heading(2, "Tanks against the ground water") + html::paragraph(flotation_first, "caution");
  if (result.tanks.empty()) out += html::paragraph("Of no tank anything is entered under flotation.");
  for (const studies::TankFlotation& tank : result.tanks) out += of_tank(tank, site.display);
  return out;
}

std::string flotation_report(const studies::FlotationResult& result, const site::Site& site,
                             const FlotationFacts& facts) {
  return study_page("Flotation", "flotation", flotation_cautions()[1],
                    flotation_section(result, site) + findings_html(facts.findings, site.display),
                    {result.version, result.defaults, result.warnings, flotation_cautions()}, site, facts);
}

}  // namespace forecourse::report
