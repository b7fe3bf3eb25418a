#include "forecourse/studies/meter/yearly.h"

#include <fmt/format.h>

#include <algorithm>

namespace forecourse::studies {
namespace {

namespace records = site::records;

std::vector<const records::Sale*> sales_of(const std::string& hose, const records::Records& all,
                                           const std::optional<Day>& to) {
  std::vector<const records::Sale*> out;
  for (const records::Sale& sale : all.sales) {
    if (sale.hose.text == hose && !(to && *to < day_of(sale.at.day))) out.push_back(&sale);
  }
  std::stable_sort(out.begin(), out.end(), [](const records::Sale* a, const records::Sale* b) {
    return hours_of(a->at, 12.0) < hours_of(b->at, 12.0);
  });
  return out;
}

/// [m3] Sold behind the first day; empty where a total falls and no volume tells what was sold.
std::optional<double> sold_of(const std::vector<const records::Sale*>& sales) {
  const Day first = day_of(sales.front()->at.day);
  std::optional<double> total;
  double sold = 0.0;
  for (const records::Sale* sale : sales) {
    const std::optional<double> before = total;
    if (sale->totalizer) total = sale->totalizer->si();
    if (day_of(sale->at.day) == first) continue;
    if (sale->volume) {
      sold += sale->volume->si();
      if (!sale->totalizer && total) *total += sale->volume->si();  // the next total counts it too
    } else if (before && total && *total >= *before) {
      sold += *total - *before;
    } else {
      return std::nullopt;
    }
  }
  return sold;
}

}  // namespace

MeterYear year_of(const std::string& hose, const records::Records& all, const MeterOptions& options) {
  MeterYear out;
  for (const YearlyVolume& entered : options.yearly) {
    if (entered.hose != hose && !(entered.hose.empty() && !out.volume)) continue;
    out.volume = entered.volume;
    out.words = "as entered";
  }
  if (out.volume) return out;
  const std::vector<const records::Sale*> sales = sales_of(hose, all, options.to);
  if (sales.empty()) {
    out.words = "no sale of it is on record: enter what it sells in a year";
    return out;
  }
  const int days = day_of(sales.back()->at.day).number - day_of(sales.front()->at.day).number;
  const std::optional<double> sold = days > 0 ? sold_of(sales) : std::nullopt;
  if (!sold) {
    out.words = days > 0 ? "a total of it falls, and no volume is told: enter what it sells in a year"
                         : "one day of sales alone: enter what it sells in a year";
    return out;
  }
  out.days = days;
  out.volume = *sold * days_of_year / days;
  out.words = fmt::format("{} day{} of sales, scaled", days, days == 1 ? "" : "s");
  return out;
}

std::optional<double> total_on(const std::string& hose, Day day, const records::Records& all) {
  std::optional<double> out;
  for (const records::Sale* sale : sales_of(hose, all, day)) {
    if (sale->totalizer) out = sale->totalizer->si();
  }
  return out;
}

}  // namespace forecourse::studies
