#include "forecourse/report/flow/ladder/ladder_html.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/html/parts.h"

namespace forecourse::report {
namespace {

using studies::Ladder;

std::string show(site::Display display, double si) { return number(Measure::flow, display, si); }

svg::LadderSeries series(const Ladder& ladder, svg::LadderMark mark, site::Display display) {
  svg::LadderSeries out{word(ladder.order), mark, {}};
  for (const studies::LadderStep& step : ladder.steps) {
    out.flows.push_back(std::isnan(step.slowest)
                            ? std::nullopt
                            : std::optional<double>(shown_value(Measure::flow, display, step.slowest)));
  }
  return out;
}

std::string steps_table(const LadderGroup& group, site::Display display) {
  const std::string unit = unit_label(Measure::flow, display);
  html::Table table{"Slowest hose by the number open",
                    "",
                    {{"Open", "", true}, {"Worst", unit, true}, {"Slowest hose", ""}, {"Typical", unit, true}},
                    {},
                    {}};
  if (group.given != nullptr) table.columns.push_back({"Asked for", unit, true});
  table.columns.push_back({"Mean of all sets", unit, true});
  table.columns.push_back({"Total at worst", unit, true});
  table.columns.push_back({"Worst is", "", false, true});
  for (std::size_t i = 0; i < group.hoses(); ++i) {
    const studies::LadderStep& worst = group.worst->steps[i];
    html::Row row{{std::to_string(i + 1), show(display, worst.slowest), slowest_in_words(worst),
                   show(display, group.spread->steps[i].slowest)},
                  false};
    if (group.given != nullptr) {
      row.cells.push_back(show(display, i < group.given->steps.size() ? group.given->steps[i].slowest : std::nan("")));
    }
    row.cells.push_back(show(display, worst.mean_slowest.value_or(std::nan(""))));
    row.cells.push_back(show(display, worst.total));
    row.cells.emplace_back(word(worst.proof));
    row.marked = group.worst->keeps && i >= static_cast<std::size_t>(*group.worst->keeps);
    table.rows.push_back(std::move(row));
  }
  return html::table(table);
}

/// Where all is known in one way, that stands once, beside the caption.
std::string worst_table(const LadderGroup& group, site::Display display) {
  const std::vector<WorstRow> rows = worst_rows(group, true, display);
  if (rows.empty()) return {};
  const bool alike = std::all_of(rows.begin(), rows.end(), [&](const WorstRow& r) { return r.proof == rows[0].proof; });
  html::Table table{"Worst states",
                    group.states == nullptr ? std::string() : search_in_words(*group.states),
                    {{"What", ""}, {"Value", ""}, {"Open hoses", "", false, true}, {"How known", "", false, alike}},
                    {},
                    {}};
  if (alike) table.note += (table.note.empty() ? "All " : " All ") + rows[0].proof + ".";
  for (const WorstRow& row : rows) {
    table.rows.push_back({{row.what, row.value, row.open, alike ? std::string() : row.proof}, false});
  }
  return html::table(table);
}

}  // namespace

svg::LadderChart ladder_chart(const LadderGroup& group, const std::optional<double>& keep_flow, site::Display display,
                              const std::string& id) {
  svg::LadderChart chart;
  chart.id = id;
  chart.title = "The slowest hose by the number open";
  chart.description =
      "Flow of the slowest open hose against the number of hoses open, for the worst sets and the "
      "typical order; the table below holds the numbers.";
  chart.axis = "flow of the slowest hose, " + unit_label(Measure::flow, display);
  chart.decimals = decimals(Measure::flow, display);
  chart.series = {series(*group.worst, svg::LadderMark::square, display),
                  series(*group.spread, svg::LadderMark::disc, display)};
  if (group.given != nullptr) chart.series.push_back(series(*group.given, svg::LadderMark::ring, display));
  const auto limit = [&](const char* name, const std::optional<double>& si, svg::Forbidden side) {
    if (!si) return;
    chart.limits.push_back({{shown_value(Measure::flow, display, *si), name + show(display, *si)}, side});
  };
  limit("to keep ", keep_flow, svg::Forbidden::below);
  limit("cap ", group.worst->rule_cap, svg::Forbidden::above);
  return chart;
}

std::string ladder_sections(const studies::FlowResult& result, site::Display display) {
  const std::vector<LadderGroup> groups = ladder_groups(result);
  if (groups.empty()) return {};
  std::string out = html::heading(2, "How many hoses at once") + html::paragraph(ladder_terms());
  std::size_t number = 0;
  for (const LadderGroup& group : groups) {
    out += html::heading(3, group.system);
    out += html::list(ladder_in_words(group, result.options.keep_flow, display));
    if (group.hoses() > 1) {
      const std::string id = "ladder-" + std::to_string(++number);
      out += html::chart_figure(ladder_chart(group, result.options.keep_flow, display, id), ladder_note);
    }
    out += steps_table(group, display) + worst_table(group, display);
  }
  return out;
}

}  // namespace forecourse::report
