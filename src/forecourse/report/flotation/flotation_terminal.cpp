#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flotation/flotation_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

void tell_tank(const studies::TankFlotation& tank, const site::Site& site, const terminal::Style& style,
               terminal::Page& page) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  page.heading("Tank " + tank.tank);
  for (const std::string& sentence : flotation_answer(tank, site.display, glyphs)) page.item(sentence);
  const studies::FlotationState* shown = shown_state(tank);
  if (shown == nullptr) return;
  page.heading("Tank " + tank.tank + ", balance of forces: " + state_words(*shown, site.display, glyphs));
  page.table(terminal_table(balance_table(*shown, site.display, glyphs)));
  page.heading("Tank " + tank.tank + ", factors and their definitions");
  page.table(terminal_table(factor_table(tank, glyphs)));
  page.blank();
  for (const std::string& sentence : flotation_reserves(tank)) page.item(sentence);
}

}  // namespace

std::vector<std::string> flotation_cautions() {
  return {
      flotation_first,
      "Computed from what was entered, by hydrostatics. It advises; anchoring is designed by a licensed engineer.",
      "The highest ground water is to be found out on the site, not guessed; a flood can stand above it.",
      "The local code in its local edition, and the instructions of tank and straps, come first.",
      "Water pumped from an excavation, or let into it, changes the figures within hours.",
  };
}

std::string flotation_summary(const studies::FlotationResult& result, const site::Site& site,
                              const terminal::Style& style, const FlotationFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": tanks against the ground water");
  page.notice("Caution", flotation_first);
  page.paragraph(flotation_cautions()[1] + " forecourse " + result.version + ".");
  if (result.tanks.empty()) page.paragraph("Of no tank anything is entered under flotation.");
  if (!facts.findings.empty()) {
    page.heading("Requirements: " + count_by_state(facts.findings));
    for (const FindingGroup& group : grouped(facts.findings)) {
      page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
    }
  }
  for (const studies::TankFlotation& tank : result.tanks) tell_tank(tank, site, style, page);
  tell_end({result.version, result.defaults, result.warnings, flotation_cautions()}, site.display, glyphs,
           facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
