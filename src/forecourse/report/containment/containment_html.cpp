#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/containment/containment_view.h"
#include "forecourse/report/containment/sumps_view.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {
namespace {

std::string sumps_figure(const studies::ContainmentResult& result, const site::Site& site) {
  std::string note;
  for (const std::string& remark : sumps_remarks(result, site)) note += (note.empty() ? "" : " ") + remark;
  return html::chart_figure(sump_chart(result, site, "sumps"), note);
}

}  // namespace

std::string containment_section(const studies::ContainmentResult& result, const site::Site& site) {
  const site::Display display = site.display;
  constexpr Glyphs glyphs = Glyphs::unicode;
  std::string out =
      html::heading(2, "What is contained, and for how long") + html::paragraph(containment_in_short(result));
  if (result.sumps.empty()) out += html::paragraph("No sump is listed in the site file.");
  if (!result.sumps.empty()) {
    out += sumps_figure(result, site);
    out += html::table(page_table(sump_table(result, display, glyphs), "Sumps",
                                  "Volumes less the share that parts take, the same at every height."));
    out += html::table(page_table(fill_table(result, display, glyphs), "How soon they fill",
                                  "At a steady inflow from empty; a dash: not entered."));
    for (const studies::ContainedSump& sump : result.sumps) {
      if (sump.points.empty()) continue;
      out += html::table(page_table(height_table(sump, display, glyphs), "Volume against height, " + sump_name(sump)));
    }
  }
  out += html::table(page_table(joint_table(result), "Joints, and where fuel goes from each"));
  if (!result.lines.empty()) {
    out += html::table(page_table(line_table(result), "Lines, and where what leaks between two walls runs"));
  }
  return out;
}

std::string containment_report(const studies::ContainmentResult& result, const site::Site& site,
                               const ContainmentFacts& facts) {
  return study_page("Containment", "containment", containment_cautions().front(), containment_section(result, site),
                    {result.version, result.defaults, result.warnings, containment_cautions()}, site,
                    {facts.date, facts.command, facts.texts});
}

}  // namespace forecourse::report
