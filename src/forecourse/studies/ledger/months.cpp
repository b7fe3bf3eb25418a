#include "forecourse/studies/ledger/months.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"

namespace forecourse::studies {
namespace {

/// The amounts that lie before an hour, taken one after the other.
class Taken {
 public:
  explicit Taken(const std::vector<Amount>& all) : all_(all) {}

  std::vector<const Amount*> until(double hours) {
    std::vector<const Amount*> out;
    for (; next_ < all_.size() && all_[next_].hours <= hours; ++next_) out.push_back(&all_[next_]);
    return out;
  }

 private:
  const std::vector<Amount>& all_;
  std::size_t next_ = 0;
};

double sum(const std::vector<const Amount*>& amounts) {
  double out = 0.0;
  for (const Amount* one : amounts) out += one->volume;
  return out;
}

}  // namespace

double monthly_limit(double sold) { return 0.01 * sold + cubic_meters_from_gallons(130.0); }

BookRows rows_of(const std::vector<StockReading>& readings, const Amounts& amounts) {
  BookRows out;
  if (readings.empty()) return out;
  Taken delivered(amounts.delivered), sold(amounts.sold), returned(amounts.returned);
  const double first = readings.front().hours;
  delivered.until(first);  // before the book begins
  sold.until(first);
  returned.until(first);
  double running = 0.0;
  double through = 0.0;
  for (std::size_t i = 1; i < readings.size(); ++i) {
    const StockReading& before = readings[i - 1];
    const StockReading& now = readings[i];
    RowAmounts moved{delivered.until(now.hours), sold.until(now.hours), sum(returned.until(now.hours))};
    LedgerRow row;
    row.day = now.day;
    row.hours = now.hours - before.hours;
    row.opening = before.volume;
    row.delivered = sum(moved.delivered);
    row.sold = sum(moved.sold);
    row.returned = moved.returned;
    row.book = row.opening + row.delivered + row.returned - row.sold;
    row.measured = now.volume;
    row.over_short = row.measured - row.book;
    if (i == 1 || month_of(now.day) != month_of(before.day)) running = through = 0.0;
    running += row.over_short;
    through += row.sold;
    row.running = running;
    row.limit = monthly_limit(through);
    row.outside = std::abs(running) > row.limit;
    row.depth = now.depth;
    row.water = now.water;
    row.temperature = now.temperature;
    row.deliveries = static_cast<int>(moved.delivered.size());
    row.where = now.where;
    out.rows.push_back(row);
    out.amounts.push_back(std::move(moved));
  }
  return out;
}

LedgerNext next_of(const BookPlan& plan, const std::vector<StockReading>& readings, const Amounts& amounts) {
  constexpr double noon = 12.0;
  constexpr double midnight = 24.0;
  const StockReading& last = readings.back();
  const auto since = [&](const std::vector<Amount>& all, int& rows) {
    double out = 0.0;
    for (const Amount& one : all) {
      if (one.hours <= last.hours) continue;
      out += one.volume;
      ++rows;
    }
    return out;
  };
  LedgerNext out;
  out.day = {last.day.number + 1};
  const double time = last.hours - midnight * last.day.number;
  if (time < midnight) {
    const int minutes = static_cast<int>(std::lround(60.0 * time));
    out.time = fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
  }
  out.business = time < noon ? last.day : out.day;
  out.opening = last.volume;
  int returns = 0;
  out.delivered = since(amounts.delivered, out.deliveries);
  out.sold = since(amounts.sold, out.sales);
  out.returned = since(amounts.returned, returns);
  out.book = out.opening + out.delivered + out.returned - out.sold;
  const double full = out.book + last.water.value_or(0.0);
  if (plan.stocks.size() == 1 && plan.stocks.front().inside && full >= 0.0 &&
      full <= plan.stocks.front().inside->volume.capacity()) {
    out.depth = depth_of(plan.stocks.front(), full);
  }
  return out;
}

std::vector<LedgerMonth> months_of(const std::vector<LedgerRow>& rows, const std::vector<StockReading>& readings,
                                   std::size_t book, const std::vector<Unsettled>& unsettled) {
  std::vector<LedgerMonth> out;
  double first_deviation = 0.0;
  bool from_first_day = false;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const LedgerRow& row = rows[i];
    const Day first = month_of(row.day);
    if (out.empty() || out.back().first != first) {
      out.emplace_back();
      out.back().first = first;
      first_deviation = readings[i].deviation;
      from_first_day = readings[i].day <= first;
    }
    LedgerMonth& month = out.back();
    ++month.intervals;
    month.sold += row.sold;
    month.delivered += row.delivered;
    month.over_short += row.over_short;
    month.missing_days += row.day.number - readings[i].day.number - 1;
    const double last = readings[i + 1].deviation;
    month.deviation = std::sqrt(first_deviation * first_deviation + last * last);
    month.limit = monthly_limit(month.sold);
    month.exceeds = std::abs(month.over_short) > month.limit;
    month.whole = from_first_day && row.day.number + 1 == month_beside(first, 1).number;
  }
  for (std::size_t i = 1; i < out.size(); ++i) {
    const bool next = out[i - 1].first == month_beside(out[i].first, -1);
    out[i].follows_excess = next && out[i - 1].exceeds;
    out[i].follows_whole = next && out[i - 1].whole;
    out[i].confirmed = out[i].follows_excess && out[i].exceeds;
  }
  for (LedgerMonth& month : out) {
    for (const Unsettled& one : unsettled) {
      if (one.book.value_or(book) == book && month_of(one.day) == month.first) month.unsettled.push_back(one.words);
    }
  }
  return out;
}

}  // namespace forecourse::studies
