#include <algorithm>

#include "forecourse/report/compare/incident/incident_compare_report.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/svg/bars.h"
#include "forecourse/report/svg/text.h"
#include "forecourse/report/svg/time_chart.h"

namespace forecourse::report {
namespace {

using decide::IncidentComparison;

std::string bars(const IncidentComparison& c, site::Display display) {
  svg::BarChart chart;
  chart.id = "cases";
  chart.title = "What escapes in A and in B, case by case";
  chart.description =
      "Two bars for each case; the dark part leaves the containment. The table below holds the numbers.";
  const auto add = [&](const char* which, const std::string& name, const std::optional<double>& escaped,
                       const std::optional<double>& outside) {
    if (!escaped || !outside) return;
    chart.bars.push_back(
        {std::string(which) + ", " + name, *escaped, *outside, with_unit(Measure::volume, display, *escaped)});
  };
  for (const decide::CaseRow& row : c.cases) {
    add("A", row.name, row.escaped.a, row.outside.a);
    add("B", row.name, row.escaped.b, row.outside.b);
  }
  return chart.bars.empty() ? std::string()
                            : html::chart_figure(chart, "The dark part of a bar leaves the containment.");
}

/// The course of what one holder holds in the first run; empty where there is none.
svg::TimeSeries course(const studies::IncidentRun& run, studies::Holder holder, const char* name, std::size_t dash,
                       site::Display display) {
  svg::TimeSeries out{name, {}, {}, dash};
  const auto at = std::find(run.holders.begin(), run.holders.end(), holder);
  const auto place = static_cast<std::size_t>(at - run.holders.begin());
  if (at == run.holders.end() || place >= run.chart.held.size()) return out;
  out.time = run.chart.time;
  for (const double si : run.chart.held[place]) out.value.push_back(shown_value(Measure::volume, display, si));
  return out;
}

std::string courses(const IncidentComparison& c, site::Display display) {
  svg::TimeChart chart;
  chart.id = "courses";
  chart.title = "Amounts that end otherwise in B, over time";
  chart.description = "What is held where in A and in B over one time axis whose first second is stretched.";
  for (const decide::HolderRow& row : c.holders) {
    if (!row.differs) continue;
    svg::TimePanel panel{std::string(studies::word(row.holder)) + ", " + unit_label(Measure::volume, display), {}};
    for (const svg::TimeSeries& series : {course(c.a.runs.front(), row.holder, "A", 0, display),
                                          course(c.b.runs.front(), row.holder, "B", 1, display)}) {
      if (series.time.size() > 1 && series.time.size() == series.value.size()) panel.series.push_back(series);
    }
    if (!panel.series.empty()) chart.panels.push_back(std::move(panel));
  }
  if (chart.panels.empty()) return {};
  return html::chart_figure(chart,
                            "A solid, B dashed; the first case of both. The first second takes a third of the axis.");
}

html::Page around(const IncidentComparison& c, site::Display display, const CompareFacts& facts) {
  html::Page page;
  page.station = c.name_a.empty() ? "Station without a name" : c.name_a;
  page.study = incident_compare_title(c);
  page.cells = {{"Station", c.name_a}, {"Study", "compare, one incident"}, {"A", facts.label_a}, {"B", facts.label_b}};
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + c.b.version);
  page.caution = std::string(incident_first) + " " + incident_cautions().front();
  return page;
}

}  // namespace

std::string incident_compare_report(const IncidentComparison& comparison, site::Display display,
                                    const CompareFacts& facts) {
  html::Page page = around(comparison, display, facts);
  page.body = html::paragraph(std::string("If it has happened: ") + incident_first, "first");
  page.body +=
      html::heading(2, "What B changes") + html::list(incident_compare_answer(comparison, display, Glyphs::unicode));
  if (comparison.is_determined()) page.body += bars(comparison, display) + courses(comparison, display);
  page.body += parts_html(incident_compare_parts(comparison, display, Glyphs::unicode), 2);
  page.body += html::heading(2, "Cautions") + html::list(incident_cautions());
  if (!facts.command_line.empty()) {
    page.body += html::heading(2, "How to make this report again") + "<pre>" + svg::escape(facts.command_line) +
                 "</pre>\n" + html::paragraph("The same site files, options and version give the same numbers.");
  }
  return html::page(page);
}

}  // namespace forecourse::report
