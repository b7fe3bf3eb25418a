#include "forecourse/report/flow/spans/span_terminal.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/report/flow/spans/margin_words.h"
#include "forecourse/report/flow/spans/rest_words.h"
#include "forecourse/report/flow/spans/span_words.h"

namespace forecourse::report {
namespace {

using terminal::Table;

constexpr std::size_t most_rows = 6;  // unless all are asked for

std::string show(const std::optional<double>& flow, site::Display display, Glyphs glyphs) {
  return number(Measure::flow, display, flow.value_or(std::nan("")), glyphs);
}

void tell_not_determined(const std::vector<SpanRow>& rows, bool verbose, terminal::Page& page) {
  std::string names;
  for (const SpanRow& row : rows) {
    if (row.reason.empty()) continue;
    if (verbose) page.remark("Not determined, " + row.what + ": " + row.reason + ".");
    names += (names.empty() ? "" : "; ") + row.what;
  }
  if (!verbose && !names.empty()) page.remark("Not determined: " + names + " (--verbose says why).");
}

/// The notes of the first rows, alike ones together: "Level in T1, level in T2: ...".
void tell_notes(const std::vector<SpanRow>& rows, std::size_t most, terminal::Page& page) {
  std::vector<std::pair<std::string, std::string>> notes;  // note, of what
  for (std::size_t i = 0; i < rows.size() && i < most; ++i) {
    if (!rows[i].reason.empty() || rows[i].note.empty()) continue;
    const auto same = std::find_if(notes.begin(), notes.end(), [&](const auto& n) { return n.first == rows[i].note; });
    if (same == notes.end()) {
      notes.emplace_back(rows[i].note, rows[i].what);
    } else {
      same->second.append(", ").append(rows[i].what);
    }
  }
  for (const auto& [note, what] : notes) page.remark(fmt::format("{}: {}.", what, note));
}

/// Only what is determined: the report says what the others lack.
void tell_margins(const studies::FlowResult& result, site::Display display, Glyphs glyphs, terminal::Page& page) {
  const std::string unit = unit_label(Measure::pressure, display, glyphs);
  Table table{{{"Pressure over vapor pressure", false, true}, {"At"}, {unit + " absolute", true}, {"Margin", true}},
              {}};
  for (const MarginRow& row : margin_rows(result, display, glyphs)) {
    if (row.reason.empty()) table.rows.push_back({row.place, row.temperature, row.absolute, row.margin});
  }
  if (table.rows.empty()) return;
  page.blank();
  page.table(table);
  page.remark(air_in_words(result, display, glyphs));
}

}  // namespace

void tell_spans(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool verbose,
                terminal::Page& page) {
  const std::vector<SpanRow> rows = span_rows(result, display, glyphs);
  Table table{{{"What", false, true}, {"From"}, {"To"}, {"At low", true}, {"Likely", true}, {"At high", true}}, {}};
  std::size_t determined = 0;
  for (const SpanRow& row : rows) {
    if (!row.reason.empty() || (++determined > most_rows && !verbose)) continue;
    table.rows.push_back({row.what, row.from, row.to, show(row.at_low, display, glyphs),
                          show(row.at_likely, display, glyphs), show(row.at_high, display, glyphs)});
  }
  if (table.rows.empty()) return;
  page.heading("What moves the slowest open hose, " + unit_label(Measure::flow, display, glyphs) + ", with " +
               result.spans.sets.front().open_set);
  page.table(table);
  if (determined > table.rows.size()) {
    page.remark("Another " + std::to_string(determined - table.rows.size()) +
                " move it less; --verbose lists them all.");
  }
  tell_notes(rows, verbose ? rows.size() : most_rows, page);
  for (const std::string& text : spans_in_words(result)) page.remark(text);
  tell_not_determined(rows, verbose, page);
  tell_margins(result, display, glyphs, page);
}

void tell_lines_at_rest(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool verbose,
                        terminal::Page& page) {
  Table table{{{"Piping"},
               {"Line"},
               {unit_label(Measure::pressure, display, glyphs) + " gauge", true},
               {"First flow, s", true},
               {"Note", false, true}},
              {}};
  std::string held;
  for (const studies::LineAtRest& line : result.lines_at_rest) {
    for (const RestRow& row : rest_rows(line, display, glyphs)) {
      if (row.pressures.empty() && row.times.empty() && !verbose) continue;
      const std::string dash = show({}, display, glyphs);
      table.rows.push_back(
          {line.system, row.state, row.pressures.empty() ? dash : row.pressures, row.times.empty() ? dash : row.times,
           row.reason.empty() || !(verbose || row.times.empty()) ? "" : "not determined: " + row.reason});
    }
    if (verbose && line.reason.empty())
      held += (held.empty() ? "" : " ") + line.system + ". " + held_in_words(line, display, glyphs) + " " +
              detector_in_words(line, display, glyphs);
  }
  if (table.rows.empty()) return;
  page.heading("The line at rest: every hose shut, then one opens");
  page.table(table);
  page.remark(rest_places());
  if (!held.empty()) page.remark(held);
}

}  // namespace forecourse::report
