#include "forecourse/report/flow/spans/span_html.h"

#include <cmath>

#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/flow/spans/margin_words.h"
#include "forecourse/report/flow/spans/rest_words.h"
#include "forecourse/report/flow/spans/span_words.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/svg/span_chart.h"

namespace forecourse::report {
namespace {

constexpr std::size_t most_rows_drawn = 16;

std::string show(const std::optional<double>& flow, site::Display display) {
  return number(Measure::flow, display, flow.value_or(std::nan("")));
}

std::string figure(const std::vector<SpanRow>& rows, const std::string& set, site::Display display) {
  svg::SpanChart chart{"spans",
                       svg::wide,
                       "How far each moves the slowest open hose",
                       "",
                       "slowest open hose, " + unit_label(Measure::flow, display),
                       decimals(Measure::flow, display),
                       {}};
  const auto in_unit = [&](double si) { return shown_value(Measure::flow, display, si); };
  for (const SpanRow& row : rows) {
    if (!row.reason.empty() || !row.at_likely || chart.rows.size() == most_rows_drawn) continue;
    chart.rows.push_back({row.what, in_unit(*row.at_likely), in_unit(row.least), in_unit(row.most)});
  }
  if (chart.rows.empty()) return {};
  chart.description = "For each thing the flow of the slowest open hose over its span, with " + set + "; widest is " +
                      chart.rows.front().name + ", from " + number(chart.rows.front().least, chart.decimals) + " to " +
                      number(chart.rows.front().most, chart.decimals) + ". The table below holds the numbers.";
  return html::chart_figure(chart, "whisker: from end to end of the span of each alone; disc: with what is likely");
}

std::string table(const std::vector<SpanRow>& rows, site::Display display) {
  const std::string unit = unit_label(Measure::flow, display);
  html::Table out{"What moves the slowest open hose",
                  "Each alone, all else as likely.",
                  {{"What", "", false, true},
                   {"Span", "", true},
                   {"At its low", unit, true},
                   {"Likely", unit, true},
                   {"At its high", unit, true},
                   {"Change", unit, true},
                   {"Note", "", false, true}},
                  {},
                  {}};
  for (const SpanRow& row : rows) {
    const std::string note = row.reason.empty() ? row.note : "Not determined: " + row.reason;
    out.rows.push_back({{row.what, row.to.empty() ? row.from : row.from + " to " + row.to, show(row.at_low, display),
                         show(row.at_likely, display), show(row.at_high, display), row.change, note},
                        false});
  }
  return html::table(out);
}

std::string margins(const studies::FlowResult& result, site::Display display) {
  const std::vector<MarginRow> rows = margin_rows(result, display);
  if (rows.empty()) return {};
  const std::string unit = unit_label(Measure::pressure, display) + " absolute";
  html::Table out{"How far the fuel stands from boiling",
                  air_in_words(result, display),
                  {{"Place", "", false, true},
                   {"Temperature", "", true},
                   {"Pressure", unit, true},
                   {"Vapor pressure", unit, true},
                   {"Margin", unit_label(Measure::pressure, display), true},
                   {"Note", "", false, true}},
                  {},
                  {}};
  for (const MarginRow& row : rows) {
    const std::string note = row.reason.empty() ? "" : "Not determined: " + row.reason;
    out.rows.push_back({{row.place, row.temperature, row.absolute, row.vapor, row.margin, note}, false});
  }
  return html::table(out);
}

}  // namespace

std::string spans_section(const studies::FlowResult& result, site::Display display) {
  const std::vector<SpanRow> rows = span_rows(result, display);
  if (rows.empty()) return {};
  const std::string set = in_words(result.options.open_sets.front());
  std::string out = html::heading(2, "What moves the flow") + html::paragraph("With " + set + ".");
  out += figure(rows, set, display);
  for (const std::string& text : spans_in_words(result)) out += html::paragraph(text);
  return out + table(rows, display) + margins(result, display);
}

std::string rest_section(const studies::FlowResult& result, site::Display display) {
  if (result.lines_at_rest.empty()) return {};
  std::string out = html::heading(2, "The line at rest");
  html::Table table{
      "Every hose shut, then one opens",
      "Time from its call to first flow at its nozzle, the line held, decayed, or empty. " + rest_places(),
      {{"Piping", ""},
       {"Line", ""},
       {"Static pressure", unit_label(Measure::pressure, display) + " gauge", true},
       {"Time to first flow", "s", true},
       {"Note", "", false, true}},
      {},
      {}};
  for (const studies::LineAtRest& line : result.lines_at_rest) {
    if (!line.reason.empty()) {
      table.rows.push_back({{line.system, "", "", "", "Not determined: " + line.reason}, false});
      continue;
    }
    const std::string detector = detector_in_words(line, display);
    out +=
        html::paragraph(line.system + ". " + held_in_words(line, display) + (detector.empty() ? "" : " " + detector));
    for (const RestRow& row : rest_rows(line, display)) {
      const std::string lead = row.times.empty() ? "Not determined: " : "For the others not determined: ";
      const std::string note = row.reason.empty() ? "" : lead + row.reason;
      const std::string dash = number(std::nan(""), 0);
      table.rows.push_back({{line.system, row.state, row.pressures.empty() ? dash : row.pressures,
                             row.times.empty() ? dash : row.times, note},
                            false});
    }
  }
  return out + html::table(table);
}

}  // namespace forecourse::report
