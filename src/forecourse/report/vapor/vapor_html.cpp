#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/report/vapor/vapor_view.h"

namespace forecourse::report {
namespace {

constexpr Glyphs glyphs = Glyphs::unicode;

std::string care_section(const studies::ProductCare& care, site::Display display) {
  std::string out = html::heading(2, "Product care");
  if (!care.water.empty()) {
    out += html::table(page_table(water_table(care, display, glyphs), "Water in blends with ethanol",
                                  "Only what is published between 20 and 60 degF for 10 % ethanol."));
    out += html::table(page_table(uptake_table(care, display, glyphs), "Water that gasoline with 10 % ethanol holds",
                                  "Two rounded points of public texts, straight between; good to 0.05 %."));
  }
  if (!care.stock.empty()) {
    out += html::table(page_table(stock_table(care, display, glyphs), "Volume between delivery and sale",
                                  "What was delivered, at the temperature in the tank."));
  }
  out += html::table(page_table(tank_material_table(care), "Tanks and what they hold"));
  return out + html::table(page_table(material_table(care), "Materials against E85",
                                      "Listing and instructions of each part come first."));
}

std::string of_products(const studies::VaporResult& result, site::Display display) {
  std::string out = html::table(page_table(pressure_table(result, display, glyphs), "True vapor pressure"));
  out += html::chart_figure(pressure_chart(result, display), "Where its equation is tabulated, 40 to 100 °F.");
  for (const studies::ProductVapor& product : result.products) {
    if (product.losses.empty()) continue;
    out += html::table(page_table(loss_table(product, display, glyphs), "Vapor lost, " + product.product,
                                  "Mass of vapor for each volume of fuel; factors and equations side by side."));
  }
  return out;
}

}  // namespace

std::string vapor_section(const studies::VaporResult& result, const site::Site& site) {
  const site::Display display = site.display;
  std::string out = html::heading(2, "Vapor") + html::list(vapor_answer(result, display, glyphs));
  out += of_products(result, display);
  out += html::table(page_table(tier_table(result), "What the federal rule asks by throughput",
                                "40 CFR 63 Subpart CCCCCC; monthly throughput is the sum of 365 days over 12."));
  out += html::chart_figure(static_chart(result, display), "For the station's count of gasoline nozzles.");
  out +=
      html::table(page_table(static_table(result, display, glyphs), "Static pressure test",
                             "Least pressure left after 5 minutes from 2 in of water. The constant of 7 to 12 nozzles "
                             "is in doubt: the one legible scan prints 571.614, the pattern gives 531.614."));
  out += html::table(page_table(leak_table(display, glyphs), "Leak limits of vent valves"));
  return out + care_section(result.care, display);
}

std::string vapor_report(const studies::VaporResult& result, const site::Site& site, const VaporFacts& facts) {
  return study_page("Vapor and product care", "vapor", vapor_cautions().front(),
                    vapor_section(result, site) + findings_html(facts.findings, site.display),
                    {result.version, result.defaults, result.warnings, vapor_cautions()}, site, facts);
}

}  // namespace forecourse::report
