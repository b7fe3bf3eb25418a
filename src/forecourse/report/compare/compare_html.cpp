#include "forecourse/report/compare/compare_html.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/svg/ladder.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report {
namespace {

using decide::Comparison;

html::Column number_column(const char* head) { return {head, "", true}; }

std::string sentences(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : " ") + one;
  return out;
}

std::string answer(const Comparison& c, site::Display display) {
  std::string out = html::heading(2, "Is B worth it");
  for (const decide::Worth& worth : c.worth) out += html::paragraph(sentences(worth_in_words(worth, display)));
  if (c.worth.empty()) {
    out += html::paragraph("Not determined: there is no piping that both have with hoses that can be fed.");
  } else {
    out += html::paragraph(worth_meaning(c), "quiet");
  }
  for (const std::string& text : beside_worth_in_words(c, display)) out += html::paragraph(text);
  const std::vector<std::string> unchanged = unchanged_in_words(c);
  if (!unchanged.empty()) out += html::heading(3, "What B does not change") + html::list(unchanged);
  const std::vector<std::string> reasons = undetermined_in_words(c);
  if (!reasons.empty()) out += html::heading(2, "Not determined, or with a reservation") + html::list(reasons);
  return out;
}

std::string changed(const Comparison& c) {
  std::string out = html::heading(2, "Values that differ");
  html::Table table{
      "Values of the site files that differ, as written", "", {{"Key", ""}, {"A", ""}, {"B", ""}}, {}, {}};
  for (const site::ValueDifference& v : c.changed) {
    table.rows.push_back({{v.path, v.a.empty() ? "not given" : v.a, v.b.empty() ? "not given" : v.b}});
  }
  if (!table.rows.empty()) out += html::table(table);
  std::vector<std::string> only;
  for (const std::string& one : {only_in_words("A", c.only_a), only_in_words("B", c.only_b)}) {
    if (!one.empty()) only.push_back(one);
  }
  if (table.rows.empty() && only.empty()) out += html::paragraph("None.");
  return out + html::list(only);
}

std::string requirements(const Comparison& c) {
  std::vector<std::string> items;
  for (const decide::FindingChange& change : c.findings) items.push_back(in_words(change));
  for (const decide::DeadHead& dead : c.dead_heads) items.push_back(in_words(dead));
  if (items.empty() && c.findings_alike == 0) return {};
  return html::heading(2, "Requirements that stand otherwise") + html::list(items) +
         html::paragraph(std::to_string(c.findings_alike) + " of the requirements are in the same state in both.",
                         "quiet");
}

/// True for a piping that is named among those joined by blended hoses: "regular + premium".
bool is_among(const std::string& system, const std::string& joined) {
  return (" + " + joined + " + ").find(" + " + system + " + ") != std::string::npos;
}

/// Adds a limit; those of one value share a line: "cap and limiter 10.00".
void add_limit(std::vector<svg::LadderLimit>& limits, const std::string& name, double value, const std::string& text) {
  const std::string end = " " + text;
  for (svg::LadderLimit& limit : limits) {
    std::string& label = limit.at.label;
    if (!label.ends_with(end)) continue;
    const std::string names = " and " + label.substr(0, label.size() - end.size()) + " and ";
    if (names.find(" and " + name + " and ") == std::string::npos) {
      label.insert(label.size() - end.size(), " and " + name);
    }
    return;
  }
  limits.push_back({{value, name + end}});
}

/// The caps, limiters and the flow to keep, each value once, as lines of the chart.
std::vector<svg::LadderLimit> limits(const Comparison& c, const decide::Worth& worth, site::Display display) {
  std::vector<svg::LadderLimit> out;
  const auto add = [&](const char* name, const std::optional<double>& si) {
    if (si) add_limit(out, name, shown_value(Measure::flow, display, *si), number(Measure::flow, display, *si));
  };
  for (const decide::Alternative* one : {&c.a, &c.b}) {
    if (one->flow.states.empty()) continue;
    for (const studies::SystemFlow& system : one->flow.states.front().systems) {
      if (!is_among(system.system, worth.system)) continue;
      for (const studies::HoseFlow& hose : system.hoses) {
        add("cap", hose.rule_cap);
        add("limiter", hose.limit);
      }
    }
    add("to keep", one->flow.options.keep_flow);
  }
  return out;
}

std::optional<double> drawn(double si, site::Display display) {
  return std::isfinite(si) ? std::optional(shown_value(Measure::flow, display, si)) : std::nullopt;
}

std::string ladder(const Comparison& c, const decide::Worth& worth, site::Display display, std::size_t number_of) {
  const std::string unit = unit_label(Measure::flow, display);
  svg::LadderChart chart;
  chart.id = "ladder-" + std::to_string(number_of);
  chart.title = "The slowest hose against the number open, " + worth.system;
  chart.description =
      "Flow of the slowest open hose in A and in B for each number of hoses open; the table below "
      "holds the numbers.";
  chart.axis = "flow of the slowest hose, " + unit;
  chart.decimals = decimals(Measure::flow, display);
  chart.limits = limits(c, worth, display);
  chart.worth_from = worth.from;
  chart.named_at_end = true;
  chart.series = {{"A", svg::LadderMark::square, {}}, {"B", svg::LadderMark::disc, {}}};
  html::Table table{chart.title,
                    "",
                    {number_column("Open"),
                     {"A", unit, true},
                     {"Slowest in A", ""},
                     {"B", unit, true},
                     {"Slowest in B", ""},
                     {"B less A", "%", true},
                     {"Note", "", false, true}},
                    {},
                    {}};
  for (const decide::WorthStep& s : worth.steps) {
    chart.series[0].flows.push_back(drawn(s.slowest_a, display));
    chart.series[1].flows.push_back(drawn(s.slowest_b, display));
    table.rows.push_back(
        {{std::to_string(s.open), number(Measure::flow, display, s.slowest_a), s.alike_a ? "all alike" : s.hose_a,
          number(Measure::flow, display, s.slowest_b), s.alike_b ? "all alike" : s.hose_b,
          (s.gain > 0.0 ? "+" : "") + number(100.0 * s.gain, 1), step_note(s)}});
  }
  return html::chart_figure(chart, "A solid with squares, B dashed with discs.") + html::table(table);
}

std::string rows(const Comparison& c, site::Display display, bool every) {
  html::Table table{every ? "All figures" : "Figures that differ",
                    "A dash: this one does not have it, or it is not determined.",
                    {{"What", "", false, true},
                     {"Of", ""},
                     number_column("A"),
                     number_column("B"),
                     number_column("B less A"),
                     {"B less A", "%", true}},
                    {},
                    {}};
  for (const decide::DifferenceRow& row : c.rows) {
    if (!row.differs && !every) continue;
    const ShownRow shown = shown_row(row, display, Glyphs::unicode);
    table.rows.push_back({{shown.what, shown.of, shown.a, shown.b, shown.difference, shown.percent}});
  }
  return table.rows.empty() ? html::paragraph("None.") : html::table(table);
}

html::Page around(const Comparison& c, site::Display display, const CompareFacts& facts) {
  html::Page page;
  page.station = c.a.name.empty() ? "Station without a name" : c.a.name;
  page.study = "A against B";
  page.cells = {{"Station", c.a.name}, {"Study", "compare"}, {"A", facts.label_a}, {"B", facts.label_b}};
  if (!facts.date.empty()) page.cells.emplace_back("Date", facts.date);
  page.cells.emplace_back("Units", display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + c.b.flow.version);
  page.caution = compare_cautions().front();
  return page;
}

}  // namespace

std::string compare_report(const Comparison& comparison, site::Display display, const CompareFacts& facts) {
  html::Page page = around(comparison, display, facts);
  page.body = answer(comparison, display);
  std::size_t number_of = 0;
  for (const decide::Worth& worth : comparison.worth) {
    const bool same = std::all_of(worth.steps.begin(), worth.steps.end(), [](const auto& s) { return s.nothing; });
    if (!same) page.body += ladder(comparison, worth, display, ++number_of);
  }
  page.body += changed(comparison) + requirements(comparison);
  page.body += html::heading(2, "Figures that differ") + rows(comparison, display, false) +
               html::paragraph(joints_meaning(), "quiet");
  page.body += "<details class=\"screen\"><summary>All figures, also those that do not differ</summary>\n" +
               rows(comparison, display, true) + "</details>\n";
  const std::vector<std::string> warnings = warnings_in_words(comparison, facts.texts);
  if (!warnings.empty()) page.body += html::heading(2, "About the site files") + html::list(warnings);
  page.body += html::heading(2, "Cautions") + html::list(compare_cautions());
  if (!facts.command_line.empty()) {
    page.body +=
        html::heading(2, "How to make this comparison again") + "<pre>" + svg::escape(facts.command_line) + "</pre>\n";
  }
  return html::page(page);
}

}  // namespace forecourse::report
