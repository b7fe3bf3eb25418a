#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/delivery/delivery_view.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {
namespace {

std::string run_html(const studies::DeliveryResult& result, const site::Site& site, std::size_t number) {
  const site::Display display = site.display;
  constexpr Glyphs glyphs = Glyphs::unicode;
  const studies::DeliveryRun& run = result.runs.front();
  std::string out;
  if (run.chart.time.size() > 1)
    out += html::chart_figure(delivery_chart(run, display, "delivery-" + std::to_string(number)),
                              "Pressures are above that of the air; a dotted line is the setting of a vent valve.");
  const auto table = [&](const WordTable& words, const char* caption, const char* note) {
    if (!words.rows.empty()) out += html::table(page_table(words, caption, note));
  };
  table(case_table(result, display, glyphs), "Cases", "The first is what was asked for; the others differ as named.");
  table(drop_table(run, display, glyphs), "Drops", "");
  table(velocity_table(run, display, glyphs), "Velocities", "Beside the limits against static charge, by the bore.");
  table(delivery_tank_table(run, display, glyphs), "Tanks", "");
  table(ullage_table(run, display, glyphs), "Pressure of the vapor", "Above that of the air.");
  table(vapor_table(run, display, glyphs), "Where the vapor goes", "Measured at the pressure of the air.");
  table(delivery_event_table(run, display, glyphs), "What happens", "");
  out += html::heading(3, "What stays in the hose") + html::list(hose_words(run, display, glyphs));
  table(delivery_span_table(result, display, glyphs), "What uncertain values do", "One at a time.");
  return out;
}

}  // namespace

std::string delivery_section(const studies::DeliveryResult& result, const site::Site& site, std::size_t number) {
  std::string out = html::heading(2, "Delivery " + result.delivery);
  if (any_under_pressure(result)) out += html::paragraph(std::string("Caution: ") + stalled_caution, "first");
  for (const std::string& sentence : delivery_answer(result, site.display, Glyphs::unicode))
    out += html::paragraph(sentence);
  if (!result.runs.empty()) out += run_html(result, site, number);
  std::vector<std::string> rests;
  for (const DefaultUsed& used : result.defaults)
    rests.push_back(used.what + ": " + default_value(used, site.display, Glyphs::unicode) + " (" + word(used.status) +
                    ": " + used.source + ")");
  rests.insert(rests.end(), result.notes.begin(), result.notes.end());
  if (!rests.empty()) out += html::heading(3, "Values that were not entered") + html::list(rests);
  std::vector<std::string> warnings;
  for (const Diagnostic& warning : result.warnings) warnings.push_back(warning.message);
  if (!warnings.empty()) out += html::heading(3, "Warnings") + html::list(warnings);
  return out;
}

std::string delivery_report(const studies::DeliveryResult& result, const std::vector<checks::Finding>& findings,
                            const site::Site& site, const DeliveryFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = "Delivery " + result.delivery;
  page.cells = {{"Station", site.name.text}, {"Study", "delivery"}};
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + result.version);
  page.caution =
      (any_under_pressure(result) ? std::string(stalled_caution) + " " : std::string()) + delivery_cautions().front();
  page.body = delivery_section(result, site) + findings_html(findings, site.display);
  page.body += html::heading(2, "Cautions") + html::list(delivery_cautions());
  if (!facts.command.empty()) page.body += html::heading(2, "Run it again") + html::paragraph(facts.command, "command");
  return html::page(page);
}

}  // namespace forecourse::report
