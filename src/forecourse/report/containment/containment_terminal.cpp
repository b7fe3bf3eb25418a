#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/containment/containment_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
std::vector<std::string> containment_cautions() {
  return {
      "Computed from what was entered. It advises; a computed volume is not a test of tightness.",
      "A sump is for short holding, not for storage. What stands in it is to be found out and removed.",
      "Entering a sump, and work in it, need their own permit.",
      "The local code in its local edition and the authority that applies it come first.",
      "So do the listing and the instructions of each piece of equipment.",
      "Tests of sumps and lines belong to the certified tester.",
  };
}

std::string containment_summary(const studies::ContainmentResult& result, const site::Site& site,
                                const terminal::Style& style, const ContainmentFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": what is contained, and for how long");
  page.paragraph(containment_in_short(result) + " forecourse " + result.version + ".");
  page.paragraph(containment_cautions().front());
  if (result.sumps.empty()) page.paragraph("No sump is listed in the site file.");
  if (!result.sumps.empty()) {
    page.heading("Sumps");
    page.table(terminal_table(sump_table(result, site.display, glyphs)));
    page.heading("How soon they fill");
    page.table(terminal_table(fill_table(result, site.display, glyphs)));
  }
  if (style.verbose) {
    for (const studies::ContainedSump& sump : result.sumps) {
      if (sump.points.empty()) continue;
      page.heading("Volume against height, " + sump_name(sump));
      page.table(terminal_table(height_table(sump, site.display, glyphs)));
    }
  }
  page.heading("Joints, and where fuel goes from each");
  page.table(terminal_table(joint_table(result)));
  page.heading("Lines");
  page.table(terminal_table(line_table(result)));
  if (!result.warnings.empty()) page.heading("Warnings");
  for (const Diagnostic& warning : result.warnings) page.notice("Warning", warning.message);
  page.heading("Cautions");
  for (const std::string& caution : containment_cautions()) page.item(caution);
  for (const std::string& path : facts.written) page.item("written: " + path);
  return page.text();
}

}  // namespace forecourse::report
