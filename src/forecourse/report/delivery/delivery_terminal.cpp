#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/delivery/delivery_view.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

std::vector<std::string> delivery_cautions() {
  return {
      "Computed from what was entered. It advises; a computed delivery is no permission to unload.",
      "The room in the tank is measured before each delivery, and somebody stays with it.",
      "A drop that stalls under pressure is never opened.",
      "Left out: pressure waves where a valve slams, liquid in a vent or vapor pipe, heat, wind at the vent.",
      "The local code in its local edition and the authority that applies it come first.",
      "So do the listing and the instructions of each piece of equipment, and the carrier's own procedure.",
  };
}

bool any_under_pressure(const studies::DeliveryResult& result) {
  for (const studies::DeliveryRun& run : result.runs) {
    if (run.under_pressure) return true;
  }
  return false;
}

std::string delivery_summary(const studies::DeliveryResult& result, const std::vector<checks::Finding>& findings,
                             const site::Site& site, const terminal::Style& style, const DeliveryFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  if (any_under_pressure(result)) page.notice("Caution:", stalled_caution);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": delivery " + result.delivery);
  for (const std::string& sentence : delivery_answer(result, site.display, glyphs)) page.paragraph(sentence);
  page.paragraph(delivery_cautions().front() + " forecourse " + result.version + ".");
  if (!result.runs.empty()) {
    const studies::DeliveryRun& run = result.runs.front();
    const auto table = [&](const char* heading, const WordTable& words) {
      if (words.rows.empty()) return;
      page.heading(heading);
      page.table(terminal_table(words));
    };
    table("Cases", case_table(result, site.display, glyphs));
    table("Drops", drop_table(run, site.display, glyphs));
    table("Velocities, and limits against static charge", velocity_table(run, site.display, glyphs));
    table("Tanks", delivery_tank_table(run, site.display, glyphs));
    table("Pressure of the vapor", ullage_table(run, site.display, glyphs));
    table("Where the vapor goes, measured at the pressure of the air", vapor_table(run, site.display, glyphs));
    table("What happens", delivery_event_table(run, site.display, glyphs));
    page.heading("What stays in the hose");
    for (const std::string& sentence : hose_words(run, site.display, glyphs)) page.item(sentence);
    table("What uncertain values do", delivery_span_table(result, site.display, glyphs));
  }
  if (!findings.empty()) {
    page.heading("Findings: " + count_by_state(findings));
    for (const FindingGroup& group : grouped(findings))
      page.item(std::string(word(group.findings.front()->state)) + ": " + in_words(group, site.display, glyphs));
  }
  if (!result.defaults.empty()) page.heading("Values that were not entered");
  for (const DefaultUsed& used : result.defaults)
    page.item(used.what + ": " + default_value(used, site.display, glyphs) + " (" + word(used.status) + ": " +
              used.source + ")");
  for (const std::string& note : result.notes) page.item(note);
  if (!result.warnings.empty()) page.heading("Warnings");
  for (const Diagnostic& warning : result.warnings) page.notice("Warning", warning.message);
  page.heading("Cautions");
  for (const std::string& caution : delivery_cautions()) page.item(caution);
  for (const std::string& path : facts.written) page.item("written: " + path);
  return page.text();
}

}  // namespace forecourse::report
