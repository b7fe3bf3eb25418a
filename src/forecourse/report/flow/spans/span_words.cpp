#include "forecourse/report/flow/spans/span_words.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/quantity.h"
#include "forecourse/base/unit_text.h"

namespace forecourse::report {
namespace {

using studies::FlowSpan;
using studies::SpanKind;

std::string subject(const FlowSpan& span) {
  switch (span.kind) {
    case SpanKind::level:
      return "level in " + span.subject;
    case SpanKind::filter:
      return "filters of " + span.system;
    case SpanKind::temperature:
      return span.likely ? "fuel temperature of " + span.system : "fuel temperature of " + span.subject;
    case SpanKind::entered_value:
      break;
  }
  return span.subject;
}

/// The SI unit of a kind as the writers know it; empty for a number, and for what has no unit that people read.
const char* si_unit(const QuantityKind* kind) {
  if (kind == nullptr) return "";
  if (kind == &Temperature::kind()) return "K";
  if (kind->datum == Datum::difference && kind->dimension.temperature != 0) return "";
  if (kind->dimension == Dimension{0, 1, 0, 0}) return "m";
  if (kind->dimension == Dimension{0, 3, -1, 0}) return "m3/s";
  if (kind->dimension == Dimension{1, -1, -2, 0}) return "Pa";
  if (kind->dimension == Dimension{1, -3, 0, 0}) return "kg/m3";
  if (kind->dimension == Dimension{1, -1, -1, 0}) return "Pa s";
  return "";
}

/// The unit in which a site file has a loss per flow or flow squared; empty for other kinds.
const char* loss_unit(const QuantityKind* kind, site::Display display) {
  const bool us = display == site::Display::us;
  if (kind == &SquareLoss::kind()) return us ? "psi/gpm^2" : "kPa.min^2/L^2";
  if (kind == &LinearLoss::kind()) return us ? "psi/gpm" : "kPa.min/L";
  return "";
}

std::string end_text(const FlowSpan& span, const std::optional<double>& si, site::Display display, Glyphs glyphs) {
  if (!si) return {};
  if (const char* loss = loss_unit(span.quantity, display); *loss != '\0') return show_quantity(*si, loss);
  const char* unit = si_unit(span.quantity);
  const bool has_unit = span.quantity == nullptr || *unit != '\0' || span.quantity->dimension == Dimension{};
  if (!has_unit) return "as entered";
  return default_value({{}, *si, unit, {}, {}, {}}, display, glyphs);
}

/// Difference of two flows as they are shown, so that it agrees with them; in the unit shown.
double shown_change(double from, double to, site::Display display) {
  const double steps = std::pow(10.0, decimals(Measure::flow, display));
  const auto rounded = [&](double si) { return std::round(shown_value(Measure::flow, display, si) * steps); };
  return (rounded(to) - rounded(from)) / steps;
}

std::string change(const SpanRow& row, site::Display display, Glyphs glyphs) {
  if (!row.at_likely) return {};
  const double less = shown_change(*row.at_likely, row.least, display);
  const double more = shown_change(*row.at_likely, row.most, display);
  const auto show = [&](double value) {
    return (value > 0.0 ? "+" : "") + number(value, decimals(Measure::flow, display), glyphs);
  };
  if (less == 0.0 && more == 0.0) return "none";
  if (more == 0.0) return show(less);
  return less == 0.0 ? show(more) : show(less) + " to " + show(more);
}

std::optional<double> slowest_of(const std::optional<studies::SpanFlows>& flows) {
  return flows ? std::optional(flows->slowest) : std::nullopt;
}

SpanRow row_of(const FlowSpan& span, site::Display display, Glyphs glyphs) {
  SpanRow row;
  row.what = subject(span);
  row.from = end_text(span, span.low, display, glyphs);
  row.to = end_text(span, span.high, display, glyphs);
  if (span.kind == SpanKind::filter && span.at_high) {
    row.from = "as entered";
    row.to = "loaded";
  }
  row.at_low = slowest_of(span.at_low);
  row.at_likely = slowest_of(span.at_likely);
  row.at_high = slowest_of(span.at_high);
  row.note = span.note;
  row.reason = span.reason;
  const double likely = row.at_likely.value_or(0.0);
  row.least = std::min({row.at_low.value_or(likely), likely, row.at_high.value_or(likely)});
  row.most = std::max({row.at_low.value_or(likely), likely, row.at_high.value_or(likely)});
  if (row.reason.empty()) row.change = change(row, display, glyphs);
  return row;
}

/// Puts what is not determined for one reason into one row: "filters of regular, premium".
void add_reason(const SpanRow& row, std::vector<SpanRow>& rows) {
  const auto same = std::find_if(rows.begin(), rows.end(), [&](const SpanRow& r) { return r.reason == row.reason; });
  if (same == rows.end()) {
    rows.push_back(row);
    return;
  }
  const std::size_t name = std::min(row.what.rfind(' '), row.what.size() - 1) + 1;
  same->what += ", " + row.what.substr(name);
  same->from.clear();
  same->to.clear();
}

}  // namespace

std::vector<SpanRow> span_rows(const studies::FlowResult& result, site::Display display, Glyphs glyphs) {
  std::vector<SpanRow> rows;
  std::vector<SpanRow> reasons;
  if (result.spans.sets.empty()) return rows;
  for (const FlowSpan& span : result.spans.sets.front().flows) {
    const SpanRow row = row_of(span, display, glyphs);
    if (row.reason.empty()) {
      rows.push_back(row);
    } else {
      add_reason(row, reasons);
    }
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const SpanRow& a, const SpanRow& b) { return a.most - a.least > b.most - b.least; });
  for (SpanRow& row : reasons) {
    row.at_low = row.at_likely = row.at_high = std::nullopt;
    rows.push_back(row);
  }
  return rows;
}

std::vector<std::string> spans_in_words(const studies::FlowResult& result) {
  std::vector<std::string> out;
  std::string idle;
  for (const std::string& path : result.spans.without_effect) idle += (idle.empty() ? "" : ", ") + path;
  if (!idle.empty()) out.push_back("Uncertain, and moves no flow here: " + idle + ".");
  if (!result.spans.monotone) {
    out.emplace_back(
        "A value moves a flow the same way at both of its ends: the ranges are the widest of what was solved, and may "
        "be wider in truth.");
  }
  return out;
}

}  // namespace forecourse::report
