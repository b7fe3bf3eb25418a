#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/incident/incident_drawings.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/incident/incident_view.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {

std::string parts_html(const std::vector<IncidentPart>& parts, int level) {
  std::string out;
  for (const IncidentPart& part : parts) {
    out += html::heading(level, part.title);
    for (const std::string& sentence : part.sentences) out += html::paragraph(sentence);
    for (const auto& [caption, table] : part.tables) out += html::table(page_table(table, caption));
    out += html::list(part.items);
  }
  return out;
}

std::string incident_section(const studies::IncidentResult& result, const site::Site& site, std::size_t number) {
  std::string out = html::heading(2, incident_title(result));
  out += html::paragraph(std::string("If it has happened: ") + incident_first, "first");
  for (const std::string& sentence : incident_answer(result, site.display, Glyphs::unicode))
    out += html::paragraph(sentence);
  out += incident_drawings(result, site, number);
  return out + parts_html(incident_parts(result, site.display, Glyphs::unicode), 3);
}

std::string incident_report(const studies::IncidentResult& result, const site::Site& site, const IncidentFacts& facts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = incident_title(result);
  page.cells = {{"Station", site.name.text}, {"Study", "incident"}};
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + result.version);
  page.caution = std::string(incident_first) + " " + incident_cautions().front();
  page.body = incident_section(result, site);
  page.body += html::heading(2, "Cautions") + html::list(incident_cautions());
  if (!facts.command.empty()) {
    page.body += html::heading(2, "How to make this report again") + "<pre>" + svg::escape(facts.command) + "</pre>\n" +
                 html::paragraph("The same site file, the same options and the same version give the same numbers.");
  }
  return html::page(page);
}

}  // namespace forecourse::report
