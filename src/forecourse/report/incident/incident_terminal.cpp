#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/incident/incident_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

std::vector<std::string> incident_cautions() {
  return {
      "Computed from what was entered. It advises; a computed figure is no test, and no reassurance.",
      "No strength, closing time, trip pressure or human delay in it is a fact beyond what the list of figures says.",
      "Left out: wind, drag of air on jets, fuel vapor and its ignition, air that enters a line, pressure waves.",
      "No distance from a spill or a fire is to be taken from it.",
      "The local code in its local edition and the authority that applies it come first.",
      "So do the listing and the instructions of each piece of equipment.",
      "Decisions that need a license belong to the licensed engineer, electrician or tester.",
      "Entry into a sump and hot work need their own permit.",
  };
}

void add_parts(const std::vector<IncidentPart>& parts, terminal::Page& page) {
  for (const IncidentPart& part : parts) {
    page.heading(part.title);
    for (const std::string& sentence : part.sentences) page.paragraph(sentence);
    for (const auto& [caption, table] : part.tables) {
      page.paragraph(caption + ":");
      page.table(terminal_table(table));
    }
    for (const std::string& item : part.items) page.item(item);
  }
}

std::string incident_summary(const studies::IncidentResult& result, const site::Site& site,
                             const terminal::Style& style, const IncidentFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.notice("If it has happened:", incident_first);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": " + incident_title(result));
  for (const std::string& sentence : incident_answer(result, site.display, glyphs)) page.paragraph(sentence);
  page.paragraph(incident_cautions().front() + " forecourse " + result.version + ".");
  add_parts(incident_parts(result, site.display, glyphs), page);
  page.heading("Cautions");
  for (const std::string& caution : incident_cautions()) page.item(caution);
  for (const std::string& path : facts.written) page.item("written: " + path);
  return page.text();
}

}  // namespace forecourse::report
