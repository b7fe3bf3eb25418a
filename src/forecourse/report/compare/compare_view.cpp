#include "forecourse/report/compare/compare_view.h"

#include <cmath>

namespace forecourse::report {
namespace {

using decide::DifferenceRow;
using decide::Topic;

/// Decimals a figure is shown with; a count has none.
int decimals_of(decide::Amount amount, site::Display display) {
  const auto measure = measure_of(amount);
  return measure ? decimals(*measure, display) : 0;
}

double shown(decide::Amount amount, site::Display display, double si) {
  const auto measure = measure_of(amount);
  return measure ? shown_value(*measure, display, si) : si;
}

std::string unit_of(decide::Amount amount, site::Display display, Glyphs glyphs) {
  const auto measure = measure_of(amount);
  if (!measure) return {};
  const std::string unit = unit_label(*measure, display, glyphs);
  return amount == decide::Amount::gauge_pressure ? unit + " gauge" : unit;
}

std::string figure(decide::Amount amount, site::Display display, const std::optional<double>& si, Glyphs glyphs) {
  if (!si) return number(std::nan(""), 0, glyphs);
  return number(shown(amount, display, *si), decimals_of(amount, display), glyphs);
}

std::string difference(const DifferenceRow& row, site::Display display, Glyphs glyphs) {
  if (!row.a || !row.b) return {};
  const decide::Amount amount = amount_of(row.topic);
  return difference_as_shown(shown(amount, display, *row.a), shown(amount, display, *row.b),
                             decimals_of(amount, display), row.differs, glyphs);
}

std::string percent(const DifferenceRow& row, Glyphs glyphs) {
  const auto share = row.share();
  return share ? signed_number(100.0 * *share, 1, glyphs) : std::string();
}

/// "D3.b", or "D3.b in A, D1.a in B" where another is meant.
std::string details(const DifferenceRow& row) {
  if (row.detail_a == row.detail_b || row.detail_b.empty()) return row.detail_a;
  if (row.detail_a.empty()) return row.detail_b;
  return row.detail_a + " in A, " + row.detail_b + " in B";
}

std::string of(const DifferenceRow& row, site::Display display, Glyphs glyphs) {
  if (row.bore) {
    return *row.bore > 0.0 ? with_unit(Measure::bore, display, *row.bore, glyphs) : std::string("bore not entered");
  }
  const std::string detail = details(row);
  if (detail.empty()) return row.subject;
  return row.subject + ": " + detail;
}

}  // namespace

std::string signed_number(double value, int decimals, Glyphs glyphs) {
  const std::string text = number(value, decimals, glyphs);
  return value > 0.0 && text.find_first_of("123456789") != std::string::npos ? "+" + text : text;
}

std::string difference_as_shown(double a, double b, int decimals, bool differs, Glyphs glyphs) {
  const double step = std::pow(10.0, -decimals);
  const double steps = std::round(b / step) - std::round(a / step);
  if (steps == 0.0 && differs) return "under " + number(step, decimals, glyphs);
  return signed_number(steps * step, decimals, glyphs);
}

std::optional<Measure> measure_of(decide::Amount amount) {
  switch (amount) {
    case decide::Amount::flow:
      return Measure::flow;
    case decide::Amount::pressure_difference:
    case decide::Amount::gauge_pressure:
      return Measure::pressure;
    case decide::Amount::velocity:
      return Measure::velocity;
    case decide::Amount::length:
      return Measure::length;
    case decide::Amount::count:
      return std::nullopt;
  }
  return std::nullopt;
}

std::string short_state(const std::string& state) {
  if (state == "all hoses open") return "all open";
  if (state == "one hose of each product at each dispenser") return "one each";
  return state;
}

const char* words_of(Topic topic) {
  switch (topic) {
    case Topic::hose_flow:
      return "flow of a hose";
    case Topic::slowest_flow:
      return "flow of the slowest hose";
    case Topic::total_flow:
      return "total flow";
    case Topic::spread:
      return "flow of the nearest hose less that of the farthest";
    case Topic::inlet_pressure:
      return "pressure at a dispenser, where its hoses begin";
    case Topic::slowest_pressure:
      return "pressure where the slowest hose begins";
    case Topic::pump_rise:
      return "pressure a pump adds";
    case Topic::pump_discharge:
      return "pressure at a pump's discharge";
    case Topic::line_velocity:
      return "velocity in a line";
    case Topic::line_loss:
      return "pressure a line takes";
    case Topic::line_length:
      return "length";
    case Topic::pipe_of_bore:
      return "length of pipe of one bore";
    case Topic::pipe_total:
      return "length of all pipe";
    case Topic::joints_at:
      return "joints at";
    case Topic::joints_total:
      return "joints in total";
  }
  return "";
}

ShownRow shown_row(const DifferenceRow& row, site::Display display, Glyphs glyphs) {
  const decide::Amount amount = amount_of(row.topic);
  ShownRow out;
  out.what = words_of(row.topic);
  if (!row.state.empty()) out.what += ", " + short_state(row.state);
  const std::string unit = unit_of(amount, display, glyphs);
  if (!unit.empty()) out.what += ", " + unit;
  out.of = of(row, display, glyphs);
  out.a = figure(amount, display, row.a, glyphs);
  out.b = figure(amount, display, row.b, glyphs);
  out.difference = difference(row, display, glyphs);
  out.percent = percent(row, glyphs);
  return out;
}

std::string joints_meaning() {
  return "Joints counted: each end of a line, riser and pump's leg, the outlet of a shear valve, and the inlet of one "
         "that stands on a tee without a riser (common practice, no source). Fittings along a run and joints inside a "
         "dispenser are not in a site file and not counted.";
}

std::vector<std::string> compare_cautions() {
  return {"Computed, not measured: a difference is as good as the losses and curves entered in both files.",
          "Flow alone is held against flow here; what a part costs, how it is laid and whether it is listed for the "
          "fuel is not.",
          "A change of pump or line changes what a leak detector sees and how long a line test takes."};
}

}  // namespace forecourse::report
