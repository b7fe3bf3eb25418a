#include "forecourse/report/flow/span_terminal.h"

#include <cmath>

namespace forecourse::report {
namespace {

using terminal::Table;

std::string subject(const studies::FlowSpan& span) {
  if (span.kind == studies::SpanKind::level) return "level in " + span.subject;
  if (span.kind == studies::SpanKind::filter) return "filters of " + span.system + ", loaded";
  return span.subject;
}

}  // namespace

void tell_spans(const studies::FlowResult& result, site::Display display, Glyphs glyphs, terminal::Page& page) {
  if (result.spans.sets.empty()) return;
  const auto show = [&](const std::optional<studies::SpanFlows>& flows) {
    return number(Measure::flow, display, flows ? flows->slowest : std::nan(""), glyphs);
  };
  Table table{{{"What", false, true}, {"At low", true}, {"Likely", true}, {"At high", true}}, {}};
  for (const studies::FlowSpan& span : result.spans.sets.front().flows) {
    if (!span.reason.empty()) continue;
    table.rows.push_back({subject(span), show(span.at_low), show(span.at_likely), show(span.at_high)});
  }
  if (table.rows.empty()) return;
  page.heading("What moves the slowest open hose, " + unit_label(Measure::flow, display, glyphs) + ", with " +
               result.spans.sets.front().open_set);
  page.table(table);
}

void tell_lines_at_rest(const studies::FlowResult& result, site::Display display, Glyphs glyphs, terminal::Page& page) {
  for (const studies::LineAtRest& line : result.lines_at_rest) {
    if (!line.reason.empty()) continue;
    page.heading(line.system + " with every hose shut");
    page.paragraph(line.held_pressure
                       ? "Held at " + with_unit(Measure::pressure, display, *line.held_pressure, glyphs) +
                             " gauge, at the height of the liquid, by the " + line.held_by + "."
                       : "Held by " + line.held_by + ".");
    Table table{{{"Hose"}, {"Held, s", true}, {"Decayed, s", true}, {"Empty, s", true}}, {}};
    const auto show = [&](const studies::FirstFlow& flow) {
      return number(flow.time.value_or(std::nan("")), 1, glyphs);
    };
    for (const studies::RestHose& hose : line.hoses) {
      table.rows.push_back({hose.id, show(hose.held), show(hose.decayed), show(hose.empty)});
    }
    page.remark("Time to first flow at the nozzle; a dash is not determined, the reason is in flow.json.");
    page.table(table);
  }
}

}  // namespace forecourse::report
