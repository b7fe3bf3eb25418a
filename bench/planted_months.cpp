// What the ledger finds in invented months with planted faults, as the table and the curve of docs/theory/ledger.md.
//
//   planted_months [MONTHS [CURVE.svg]]
#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/html/chart_style.h"
#include "forecourse/report/svg/curve_chart.h"
#include "forecourse/site/read.h"
#include "forecourse/solvers/statistics/distributions.h"
#include "forecourse/studies/ledger/invented_month.h"
#include "forecourse/studies/ledger/ledger.h"

namespace {

using namespace forecourse;

double gph(double value) { return to_si(value, "gph"); }
double inches(double value) { return to_si(value, "in"); }

const char* const station_text = R"(
format = 1
[site]
name = "Planted"
[[product]]
id = "regular"
kind = "gasoline-e10"
density = "740 kg/m3"
[[tank]]
id = "T1"
product = "regular"
shape = { kind = "horizontal-cylinder", inside_diameter = "96 in", length = "32 ft", heads = "flat" }
)";

struct Case {
  std::string name;
  studies::PlantedFaults faults;
  bool proved = true;
  bool temperatures = true;
};

struct Shown {
  double rate = 0.0, scatter = 0.0, claimed = 0.0, above = 0.0, found_with = 0.0, signals = 0.0;
  double reading = 0.0, step = 0.0;  ///< share of months with a fault of that kind
  double verdicts[4] = {0.0, 0.0, 0.0, 0.0};
};

Shown show(const site::Site& site, const Case& what, int months) {
  studies::InventedMonth month;
  month.first = studies::day_of({2026, 11, 1, {}});
  month.daily_sales = to_si(2600, "gal");
  month.scatter = {inches(0.125), 0.002, 0.001};
  month.eighths = inches(0.125);
  month.faults = what.faults;
  month.temperatures = what.temperatures;
  studies::LedgerOptions options;
  options.month = month.first;
  if (what.proved) options.meters.push_back({"", 0.0, 0.0});
  Shown out;
  double squares = 0.0;
  double claimed = 0.0;
  const double each = 1.0 / months;
  for (int run = 0; run < months; ++run) {
    const auto result = studies::study_ledger(
        site, studies::invented_month(site, "T1", month, 5, static_cast<std::uint64_t>(run)), options);
    const studies::LossFit& fit = *result.books.front().loss;
    out.rate += each * fit.rate;
    squares += each * fit.rate * fit.rate;
    claimed += each * fit.standard_error * fit.standard_error;
    out.above += fit.rate > fit.threshold ? each : 0.0;
    out.found_with += each * fit.found_with;
    out.verdicts[static_cast<int>(fit.verdict)] += each;
    bool reading = false, step = false, signal = false;
    for (const studies::LedgerFault& fault : fit.faults) {
      (fault.kind == studies::LedgerFault::Kind::reading ? reading : step) = true;
    }
    for (const studies::ChartPoint& point : fit.chart) {
      signal = signal || point.cusum.signals_up || point.cusum.signals_down;
    }
    out.reading += reading ? each : 0.0;
    out.step += step ? each : 0.0;
    out.signals += signal ? each : 0.0;
  }
  out.scatter = std::sqrt(squares - out.rate * out.rate);
  out.claimed = std::sqrt(claimed);
  return out;
}

void print_table(const site::Site& site, int months) {
  const std::vector<Case> cases{
      {"nothing, meters proved", {}},
      {"nothing, meters not proved", {}, false},
      {"leak of 0.1 gph", {.leak = gph(0.1)}},
      {"leak of 0.2 gph", {.leak = gph(0.2)}},
      {"leak of 0.2 gph, meters not proved", {.leak = gph(0.2)}, false},
      {"meters show 0.3 % too little, not proved", {.meter_error = -0.003}, false},
      {"deliveries 10 K warmer, temperatures entered", {.warm = 10.0}},
      {"deliveries 10 K warmer, no temperatures entered", {.warm = 10.0}, true, false},
      {"stick reads 1/2 in too high at the top, 0 at the bottom", {.chart = inches(0.5)}},
      {"one reading 2 in too high", {.typo = inches(2.0)}},
      {"300 gal gone on one day", {.theft = to_si(300, "gal")}},
      {"water rises by 2 in, read at the end alone", {.water = inches(2.0)}},
      {"2,000 gal of a delivery not entered", {.unentered = to_si(2000, "gal")}},
  };
  fmt::print(
      "| planted | steady loss, mean, gph | its scatter | claimed | above threshold | loss | loss or another cause | "
      "none "
      "found | inconclusive | a reading named | a step named | sums signal |\n");
  fmt::print("|---|---|---|---|---|---|---|---|---|---|---|---|\n");
  const auto percent = [](double share) { return fmt::format("{:.1f} %", 100.0 * share); };
  for (const Case& what : cases) {
    const Shown s = show(site, what, months);
    fmt::print("| {} | {:.3f} | {:.3f} | {:.3f} | {} | {} | {} | {} | {} | {} | {} | {} |\n", what.name,
               s.rate / gph(1), s.scatter / gph(1), s.claimed / gph(1), percent(s.above), percent(s.verdicts[1]),
               percent(s.verdicts[2]), percent(s.verdicts[0]), percent(s.verdicts[3]), percent(s.reading),
               percent(s.step), percent(s.signals));
  }
}

void write_curve(const site::Site& site, int months, const char* path) {
  report::svg::Curve found{"found", {}, {}, 0}, claimed{"claimed", {}, {}, 1};
  for (int i = 0; i <= 16; ++i) {
    const double leak = gph(0.025 * i);
    const Shown s = show(site, {"", {.leak = leak}}, months);
    found.x.push_back(0.025 * i);
    found.y.push_back(100.0 * s.above);
    claimed.x.push_back(0.025 * i);
    const double quantile = solvers::statistics::student_quantile(0.95, 29.0);
    claimed.y.push_back(100.0 * solvers::statistics::student_probability(leak / s.claimed - quantile, 29.0));
  }
  report::svg::CurveChart chart;
  chart.id = "ledger-power";
  chart.title = "Share of invented months in which a leak is called";
  chart.description = "Against the planted leak, found and claimed.";
  chart.x_axis = "planted leak, gph";
  chart.y_axis = "called, %";
  chart.curves = {found, claimed};
  // a drawing that stands alone brings its own style
  std::string drawing = report::svg::draw(chart);
  drawing.replace(0, 4, "<svg xmlns=\"http://www.w3.org/2000/svg\"");
  drawing.insert(drawing.find('>') + 1, fmt::format("<style>svg{{{}background:#fff;font-family:sans-serif}}{}</style>",
                                                    report::html::paper_tokens(), report::html::chart_rules()));
  std::ofstream(path) << drawing;
}

}  // namespace

int main(int count, char** arguments) {
  const int months = count > 1 ? std::atoi(arguments[1]) : 10000;
  if (months < 1) {
    std::fputs("usage: planted_months [MONTHS [CURVE.svg]]\n", stderr);
    return 2;
  }
  const site::Site site = site::read_site(station_text).value;
  print_table(site, months);
  if (count > 2) write_curve(site, months, arguments[2]);
  return 0;
}
