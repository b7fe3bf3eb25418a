#include "forecourse/report/flow/flow_html_course.h"

#include <algorithm>

#include "forecourse/report/drawing/course_paths.h"
#include "forecourse/report/drawing/section_view.h"
#include "forecourse/report/drawing/tone.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/studies/flow/course_stops.h"

namespace forecourse::report {
namespace {

using studies::GradePoint;
using studies::HoseFlow;

bool falls_below_pipe(const HoseFlow& hose) {
  return std::any_of(hose.grade_line.begin(), hose.grade_line.end(),
                     [](const GradePoint& p) { return p.grade < p.elevation - 1e-6; });
}

/// A place without its product: "D4" of "D4.regular"; where the riser ends: "inlet".
std::string short_name(const GradePoint& p) {
  if (!p.part.empty()) return p.part;
  return p.place.ends_with(" at the dispenser") ? "inlet" : p.place;
}

svg::GradeChart grade_stops(const HoseFlow& hose, const site::Site& site, const std::string& product,
                            bool heights_known) {
  const site::Display display = site.display;
  const char* datum = heights_known ? " above the site's datum" : " above the liquid in the tank";
  svg::GradeChart chart;
  chart.axis = unit_label(Measure::head, display) + datum;
  chart.tone = drawing::tone_of(site, product);
  chart.ground = heights_known;
  const studies::CourseStops stops = studies::course_stops(hose);
  const auto paths = drawing::course_paths(site, drawing::listed_on(site, stops, hose), stops);
  for (std::size_t i = 0; i < hose.grade_line.size(); ++i) {
    const GradePoint& p = hose.grade_line[i];
    const bool is_place = p.part.empty();
    if (is_place && p.place == stops.pump) chart.length_from = i;
    if (is_place && p.place == stops.inlet) chart.length_to = i;
    chart.stops.push_back({short_name(p), is_place ? with_unit(Measure::length, display, p.distance) : "",
                           shown_value(Measure::head, display, p.elevation),
                           shown_value(Measure::head, display, p.grade),
                           number(Measure::pressure, display, p.pressure_gauge), p.distance, !is_place,
                           drawing::shown_at(p, stops, paths)});
  }
  chart.length_text = with_unit(Measure::length, display, stops.line_length) + ", to length";
  return chart;
}

bool takes_heights(const HoseFlow& hose) {
  return std::any_of(hose.grade_line.begin(), hose.grade_line.end(),
                     [](const GradePoint& p) { return !p.height_entered; });
}

std::string grade_line(const HoseFlow& hose, const site::Site& site, const std::string& product, bool heights_known,
                       const std::string& title, const std::string& id) {
  svg::GradeChart chart = grade_chart(hose, site, product, heights_known, id);
  chart.title = title;
  return html::chart_figure(chart, grade_note(hose, site.display, heights_known));
}

std::string grade_table(const HoseFlow& hose, site::Display display) {
  const auto column = [&](const char* head, Measure measure, const char* more = "") {
    return html::Column{head, unit_label(measure, display) + more, true};
  };
  html::Table table{"Grade line to " + hose.id,
                    "",
                    {{"Place", ""},
                     column("Along the course", Measure::length),
                     column("Pipe", Measure::length),
                     column("Grade line", Measure::head),
                     column("Pressure", Measure::pressure, " gauge")},
                    {},
                    {}};
  for (const GradePoint& p : hose.grade_line) {
    table.rows.push_back(
        {{p.part.empty() ? p.place : p.place + ", " + p.part, number(Measure::length, display, p.distance),
          number(Measure::length, display, p.elevation), number(Measure::head, display, p.grade),
          number(Measure::pressure, display, p.pressure_gauge)}});
  }
  return html::table(table);
}

std::string budget_figure(const HoseFlow& hose, const ShownBudget& budget, site::Display display,
                          const std::string& id) {
  return html::chart_figure(budget_chart(hose, budget, display, id), "Each bar starts where the one above it ended.");
}

std::string budget_table(const HoseFlow& hose, const ShownBudget& budget, site::Display display) {
  const std::string pressure = unit_label(Measure::pressure, display);
  html::Table table{"Pressure budget of " + hose.id,
                    "Rounded so that what is shown adds up.",
                    {{"Part", ""},
                     {"Of", ""},
                     {"Flow", unit_label(Measure::flow, display), true},
                     {"Velocity", unit_label(Measure::velocity, display), true},
                     {"Adds or takes", pressure, true},
                     {"Left", pressure, true}},
                    {},
                    {}};
  for (const ShownBudgetRow& row : budget.rows) {
    const std::string velocity = row.velocity > 0.0 ? number(Measure::velocity, display, row.velocity) : "";
    table.rows.push_back({{row.part, row.owner, number(Measure::flow, display, row.flow), velocity,
                           budget.signed_text(row.change), budget.text(row.left)}});
  }
  table.total = {"Pumps " + budget.signed_text(budget.added) + ", all other parts " +
                     budget.signed_text(budget.rows.back().left - budget.added),
                 "",
                 "",
                 "",
                 budget.signed_text(budget.rows.back().left),
                 budget.text(budget.rows.back().left)};
  return html::table(table);
}

}  // namespace

svg::GradeChart grade_chart(const HoseFlow& hose, const site::Site& site, const std::string& product,
                            bool heights_known, const std::string& id) {
  svg::GradeChart chart = grade_stops(hose, site, product, heights_known);
  chart.id = id;
  chart.title = "Grade line to " + hose.id;
  chart.description = "Height of the pipe and of the grade line at each place from the tank to " + hose.id +
                      "; the table below holds the numbers.";
  return chart;
}

std::string grade_note(const HoseFlow& hose, site::Display display, bool heights_known) {
  std::string note = "The gap between pipe and grade line is the pressure, in " +
                     unit_label(Measure::pressure, display) +
                     " gauge at each place. What is not marked as to length is spread evenly.";
  if (takes_heights(hose) && heights_known) {
    note += " A part without a height of its own stands at that of the place next to it.";
  }
  if (falls_below_pipe(hose))
    note += " Where the grade line runs below the pipe, the pressure is below that of the air.";
  return note;
}

svg::BudgetChart budget_chart(const HoseFlow& hose, const ShownBudget& budget, site::Display display,
                              const std::string& id) {
  const std::string title = "Where the pressure goes on the way to " + hose.id;
  svg::BudgetChart chart{id,
                         svg::wide,
                         title,
                         "Bars from the tank to the nozzle: what the pump adds and what each part takes, down to "
                         "nothing left. The table below holds the numbers.",
                         "pressure left to drive the flow, " + unit_label(Measure::pressure, display),
                         {}};
  for (const ShownBudgetRow& row : budget.rows) {
    chart.bars.push_back({row.part, row.owner, budget.value(row.left - row.change), budget.value(row.left),
                          budget.signed_text(row.change)});
  }
  return chart;
}

std::string section_figure(const site::Site& site, const studies::SystemFlow& system, bool heights_known,
                           const std::string& id) {
  const HoseFlow* least = slowest(system);
  if (least == nullptr || least->grade_line.size() < 2) return {};
  const drawing::Section section =
      drawing::section_of(site, system, *least, site.display, heights_known, id + "-section");
  const std::string svg = draw(section);
  if (svg.empty()) return {};
  std::string note;
  for (const std::string& remark : drawing::remarks(section)) note += (note.empty() ? "" : " ") + remark;
  return html::drawing(section.title + ", the slowest open hose", note, svg) +
         html::table(drawing::stops_table(section));
}

std::string course_figures(const studies::SystemFlow& system, const site::Site& site, bool heights_known,
                           const std::string& id) {
  const site::Display display = site.display;
  const HoseFlow* least = slowest(system);
  if (least == nullptr || least->grade_line.size() < 2) return {};
  std::string out = grade_line(*least, site, system.product, heights_known,
                               "Grade line to " + least->id + ", the slowest open hose", id + "-slowest");
  out += grade_table(*least, display);
  const ShownBudget budget = shown_budget(*least, display);
  if (!budget.rows.empty()) {
    out += budget_figure(*least, budget, display, id + "-budget") + budget_table(*least, budget, display);
  }
  const HoseFlow* most = fastest(system);
  if (most == least || most->grade_line.size() < 2) return out;
  out += grade_line(*most, site, system.product, heights_known, "Grade line to " + most->id + ", the fastest open hose",
                    id + "-fastest");
  return out + grade_table(*most, display);
}

}  // namespace forecourse::report
