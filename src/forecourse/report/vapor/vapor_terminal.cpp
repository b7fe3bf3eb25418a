#include "forecourse/report/findings.h"
#include "forecourse/report/terminal/page.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/report/vapor/vapor_view.h"

namespace forecourse::report {
namespace {

void tell_care(const studies::ProductCare& care, site::Display display, Glyphs glyphs, bool verbose,
               terminal::Page& page) {
  page.heading("Product care: water in blends with ethanol");
  if (care.water.empty()) page.paragraph("No tank holds a blend with ethanol.");
  if (!care.water.empty()) page.table(terminal_table(water_table(care, display, glyphs)));
  if (!care.stock.empty()) {
    page.heading("Product care: volume between delivery and sale");
    page.table(terminal_table(stock_table(care, display, glyphs)));
  }
  page.heading("Product care: materials");
  page.table(terminal_table(tank_material_table(care)));
  if (!verbose) return;
  page.heading("Water that gasoline with 10 % ethanol holds");
  page.table(terminal_table(uptake_table(care, display, glyphs)));
  page.heading("Materials against E85");
  page.table(terminal_table(material_table(care)));
}

}  // namespace

std::vector<std::string> vapor_cautions() {
  return {
      "Computed from what was entered and from published means. It advises; an emission is measured, not computed.",
      "Factors marked \"from memory, not verified\" are for a first view, not for a report to an authority.",
      "State and local rules can ask for more, or for other tests, than the federal one.",
      "Vapor burns: tests with nitrogen, and work at vents, belong to the certified tester.",
      "Water under a blend with ethanol is not drained like water: it is fuel waste, and burns.",
  };
}

std::string vapor_summary(const studies::VaporResult& result, const site::Site& site, const terminal::Style& style,
                          const VaporFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": vapor, and product care");
  page.paragraph(vapor_cautions().front() + " forecourse " + result.version + ".");
  for (const std::string& sentence : vapor_answer(result, site.display, glyphs)) page.item(sentence);
  if (!facts.findings.empty()) {
    page.heading("Requirements: " + count_by_state(facts.findings));
    for (const FindingGroup& group : grouped(facts.findings)) {
      page.notice(checks::word(group.findings.front()->state), in_words(group, site.display, glyphs));
    }
  }
  page.heading("True vapor pressure");
  page.table(terminal_table(pressure_table(result, site.display, glyphs)));
  for (const studies::ProductVapor& product : result.products) {
    if (product.losses.empty()) continue;
    page.heading("Vapor lost, " + product.product);
    page.table(terminal_table(loss_table(product, site.display, glyphs)));
  }
  page.heading("What the federal rule asks by throughput");
  page.table(terminal_table(tier_table(result)));
  if (style.verbose) {
    page.heading("Static pressure test: least pressure left after 5 minutes from 2 in of water");
    page.table(terminal_table(static_table(result, site.display, glyphs)));
    page.heading("Leak limits of vent valves");
    page.table(terminal_table(leak_table(site.display, glyphs)));
  }
  tell_care(result.care, site.display, glyphs, style.verbose, page);
  tell_end({result.version, result.defaults, result.warnings, vapor_cautions()}, site.display, glyphs, facts.written,
           page);
  return page.text();
}

}  // namespace forecourse::report
