#include "forecourse/report/compare/incident/incident_compare_report.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {

std::string incident_compare_summary(const decide::IncidentComparison& comparison, site::Display display,
                                     const terminal::Style& style, const CompareFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  const std::string& name = comparison.name_a.empty() ? comparison.name_b : comparison.name_a;
  terminal::Page page(style);
  page.notice("If it has happened:", incident_first);
  page.title((name.empty() ? "Station without a name" : name) + ": " + incident_compare_title(comparison));
  page.paragraph("A: " + facts.label_a);
  page.paragraph("B: " + facts.label_b);
  page.heading("What B changes");
  for (const std::string& sentence : incident_compare_answer(comparison, display, glyphs)) page.item(sentence);
  page.remark(incident_cautions().front() + " forecourse " + comparison.b.version + ".");
  add_parts(incident_compare_parts(comparison, display, glyphs), page);
  page.heading("Cautions");
  for (const std::string& caution : incident_cautions()) page.item(caution);
  for (const std::string& path : facts.written) page.item("written: " + path);
  return page.text();
}

}  // namespace forecourse::report
