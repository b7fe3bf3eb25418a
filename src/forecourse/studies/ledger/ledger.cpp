#include "forecourse/studies/ledger/ledger.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "forecourse/studies/ledger/explain.h"
#include "forecourse/studies/ledger/gauging_of.h"
#include "forecourse/studies/ledger/months.h"

namespace forecourse::studies {
namespace {

bool is_asked(const BookPlan& plan, const LedgerOptions& options) {
  if (options.tank.empty() || plan.product == options.tank || plan.name == options.tank) return true;
  return std::any_of(plan.stocks.begin(), plan.stocks.end(),
                     [&](const Stock& stock) { return stock.id == options.tank; });
}

/// A day of the last month, or of the one before while too few days of it are read for a word on it.
Day day_of_usual_month(const std::vector<LedgerRow>& rows) {
  constexpr std::size_t few = 5;  // common practice, no source
  const Day last = month_of(rows.back().day);
  if (rows.size() <= few || month_of(rows[rows.size() - few].day) == last) return last;
  return month_of(rows[rows.size() - few].day);
}

/// First and last day of what is explained.
struct Days {
  Day from;
  Day to;
};

std::optional<Days> asked_days(const std::vector<LedgerRow>& rows, const LedgerOptions& options) {
  if (rows.empty()) return std::nullopt;
  if (options.from || options.to) {
    return Days{options.from.value_or(rows.front().day), options.to.value_or(rows.back().day)};
  }
  const Day month = month_of(options.month.value_or(day_of_usual_month(rows)));
  return Days{month, {month_beside(month, 1).number - 1}};
}

LedgerBook named(const BookPlan& plan) {
  LedgerBook out;
  out.name = plan.name;
  out.product = plan.product;
  out.joined = plan.joined;
  out.buried = std::any_of(plan.stocks.begin(), plan.stocks.end(),
                           [](const Stock& stock) { return !stock.tank->above_ground.value_or(false); });
  for (const Stock& stock : plan.stocks) out.tanks.push_back(stock.id);
  return out;
}

/// Why a book of fewer than two readings reconciles nothing.
std::string too_few_readings(const BookPlan& plan, std::size_t readings) {
  for (const Stock& stock : plan.stocks) {
    if (!stock.problem.empty()) return "the volume in " + stock.id + " cannot be told: " + stock.problem;
  }
  return readings == 0 ? "no reading of it is on record" : "one reading alone reconciles nothing";
}

/// Gives volumes that came without a depth their standard deviation, by how the days scatter.
std::optional<double> find_deviation(const std::vector<LedgerRow>& rows, std::vector<StockReading>& readings) {
  const auto unknown = [](const StockReading& one) { return std::isnan(one.deviation); };
  if (std::none_of(readings.begin(), readings.end(), unknown)) return std::nullopt;
  std::vector<double> over_short;
  over_short.reserve(rows.size());
  for (const LedgerRow& row : rows) over_short.push_back(row.over_short);
  const double found = scatter_of_volumes(over_short);
  for (StockReading& one : readings) {
    if (unknown(one)) one.deviation = found;
  }
  return found;
}

/// What readings, deliveries, sales and meters leave open of the unexplained volume.
double standard_error_of(const Period& period, const Explained& explained, double scatter) {
  const double first = period.readings.front().deviation;
  const double last = period.readings.back().deviation;
  double square = first * first + last * last;
  for (const RowAmounts& row : period.amounts) square += std::pow(between_deviation(row, period.options), 2);
  return std::sqrt(scatter * scatter * square + explained.meter_square);
}

/// The rows of the period, explained.
void explain_period(const site::Site& site, const BookPlan& plan, const std::vector<StockReading>& readings,
                    const BookRows& rows, const std::vector<MeterError>& meters, const LedgerOptions& options,
                    LedgerBook& book) {
  const std::optional<Days> days = asked_days(book.rows, options);
  if (!days) return;
  const auto first =
      std::find_if(book.rows.begin(), book.rows.end(), [&](const auto& r) { return r.day >= days->from; });
  const auto last = std::find_if(first, book.rows.end(), [&](const auto& r) { return r.day > days->to; });
  book.from = static_cast<std::size_t>(first - book.rows.begin());
  book.to = static_cast<std::size_t>(last - book.rows.begin());
  const std::size_t count = book.to - book.from;
  if (count == 0) return;
  const Period period{site,
                      plan,
                      options,
                      std::span(readings).subspan(book.from, count + 1),
                      std::span<const LedgerRow>(book.rows).subspan(book.from, count),
                      std::span(rows.amounts).subspan(book.from, count),
                      meters};
  Explained explained = explain(period);
  book.loss = fit_loss(period, explained);
  const bool fitted = book.loss->problem.empty();
  explained.terms.standard_error = standard_error_of(period, explained, fitted ? book.loss->scatter : 1.0);
  book.terms = std::move(explained.terms);
  book.meters = std::move(explained.meters);
}

void add_defaults(const std::vector<BookPlan>& plans, LedgerResult& out) {
  const auto add = [&](std::string what, double value, const char* unit) {
    out.defaults.push_back(
        {std::move(what), value, unit, DefaultStatus::common_practice, "common practice, no source", {}, false});
  };
  for (const LedgerBook& book : out.books) {
    if (!book.volume_deviation) continue;
    out.defaults.push_back({"standard deviation of a volume read in " + book.name,
                            *book.volume_deviation,
                            "m3",
                            DefaultStatus::computed,
                            "by how over and short of its days scatter; its readings have no depth",
                            {},
                            false});
  }
  for (const BookPlan& plan : plans) {
    for (const Stock& stock : plan.stocks) {
      if (!stock.inside) continue;
      const DepthDeviation depth = depth_deviation(stock, out.options);
      if (depth.by_default && is_asked(plan, out.options)) {
        add("standard deviation of a depth read in " + stock.id, depth.value, "m");
      }
    }
  }
  if (!out.options.delivery_deviation)
    add("standard deviation of a delivery, of its volume", default_delivery_deviation, "");
  if (!out.options.sales_deviation) {
    add("standard deviation of what is sold between two readings, of its volume", default_sales_deviation, "");
  }
}

/// A table is worth its time from some hundreds of readings of a tank on.
parts::Ready ready_for(const site::Site& site, const site::records::Records& records) {
  constexpr std::size_t worth_a_table = 400;
  const bool many = records.dips.size() > worth_a_table * std::max<std::size_t>(site.tanks.size(), 1);
  return many ? parts::Ready::table : parts::Ready::none;
}

/// What lies before the first reading, or waits for the next, is in no row.
void tell_beside(const BookPlan& plan, const std::vector<StockReading>& readings, const Amounts& amounts, Told& told) {
  int before = 0;
  int behind = 0;
  for (const auto* all : {&amounts.delivered, &amounts.sold, &amounts.returned}) {
    for (const Amount& one : *all) {
      before += one.hours <= readings.front().hours ? 1 : 0;
      behind += one.hours > readings.back().hours ? 1 : 0;
    }
  }
  const auto rows = [](int count) { return fmt::format("{} row{}", count, count == 1 ? "" : "s"); };
  if (before > 0) {
    told.say(readings.front().where, fmt::format("{} of deliveries and sales of {} lie before its first reading on {} "
                                                 "and are in no reconciliation",
                                                 rows(before), plan.name, text(readings.front().day)));
  }
  if (behind > 0) {
    told.say(readings.back().where,
             fmt::format("{} of deliveries and sales of {} wait for the reading behind that of {}", rows(behind),
                         plan.name, text(readings.back().day)));
  }
}

LedgerBook book_of(const site::Site& site, const BookPlan& plan, std::size_t number, const Amounts& amounts,
                   const DipsByTank& dips, const std::vector<MeterError>& meters, const LedgerOptions& options,
                   Told& told) {
  LedgerBook out = named(plan);
  std::vector<StockReading> readings = readings_of(plan, number, amounts, dips, options, told);
  if (!readings.empty()) out.next = next_of(plan, readings, amounts);
  if (readings.size() < 2) {
    out.problem = too_few_readings(plan, readings.size());
    return out;
  }
  tell_beside(plan, readings, amounts, told);
  BookRows rows = rows_of(readings, amounts);
  out.rows = rows.rows;
  out.volume_deviation = find_deviation(out.rows, readings);
  out.months = months_of(out.rows, readings, number, told.unsettled);
  for (const LedgerMonth& month : out.months) {
    if (month.missing_days > 0) {
      told.say(readings.front().where,
               fmt::format("{} was not read on {} day{} of {}; the reading after them stands for them too", plan.name,
                           month.missing_days, month.missing_days == 1 ? "" : "s", month_text(month.first)),
               "the rule wants a reading on each day of business");
    }
  }
  explain_period(site, plan, readings, rows, meters, options, out);
  return out;
}

}  // namespace

LedgerResult study_ledger(const site::Site& site, const site::records::Records& records, const LedgerOptions& options,
                          const Context& context) {
  LedgerResult out;
  out.version = FORECOURSE_VERSION;
  out.options = options;
  const std::vector<BookPlan> plans = book_plans(site, ready_for(site, records));
  const DipsByTank dips = by_tank(records);
  Told told;
  const std::vector<Amounts> amounts = amounts_of(records, options, Charging(site, plans), plans.size(), told);
  const std::vector<MeterError> meters = meter_errors(site, records, options);
  std::vector<LedgerBook> books(plans.size());
  std::vector<Told> of_books(plans.size());
  for (Told& one : of_books) one.unsettled = told.unsettled;
  context.each(plans.size(), [&](std::size_t i) {
    if (is_asked(plans[i], options))
      books[i] = book_of(site, plans[i], i, amounts[i], dips, meters, options, of_books[i]);
  });
  for (std::size_t i = 0; i < plans.size(); ++i) {
    if (!is_asked(plans[i], options)) continue;
    out.books.push_back(std::move(books[i]));
    told.warnings.insert(told.warnings.end(), of_books[i].warnings.begin(), of_books[i].warnings.end());
    for (const Stock& stock : plans[i].stocks) {
      if (auto gauging = manual_gauging(stock, amounts[i], records)) out.gauging.push_back(std::move(*gauging));
    }
  }
  out.own_test = own_test(site, options, told, out.defaults);
  out.warnings = std::move(told.warnings);
  add_defaults(plans, out);
  return out;
}

std::vector<BookMeters> book_meters(const LedgerResult& result) {
  std::vector<BookMeters> out;
  for (const LedgerBook& book : result.books) {
    if (!book.terms || book.to <= book.from) continue;
    out.push_back({book.name, book.product, book.rows[book.from].day, book.rows[book.to - 1].day,
                   book.terms->over_short, book.terms->unexplained, book.terms->standard_error, book.meters});
  }
  return out;
}

std::vector<BookMeters> book_meters(const site::Site& site, const site::records::Records& records,
                                    const std::optional<Day>& from, const std::optional<Day>& to,
                                    const std::optional<double>& expansion, const Context& context) {
  if (records.dips.empty()) return {};
  LedgerOptions options;
  options.from = from;
  options.to = to;
  options.measure_expansion = expansion;
  return book_meters(study_ledger(site, records, options, context));
}

std::vector<Diagnostic> check_options(const site::Site& site, const LedgerOptions& options) {
  std::vector<Diagnostic> out;
  const std::vector<BookPlan> plans = book_plans(site, parts::Ready::none);
  if (std::none_of(plans.begin(), plans.end(), [&](const BookPlan& plan) { return is_asked(plan, options); })) {
    std::string all;
    for (const BookPlan& plan : plans) all += (all.empty() ? "" : ", ") + plan.name;
    out.push_back({Severity::error,
                   "the station has no book for '" + options.tank + "'",
                   std::nullopt,
                   all.empty() ? "enter a tank" : "there are: " + all,
                   {}});
  }
  for (const MeterError& meter : options.meters) {
    if (!meter.hose.empty() && find_hose(site, meter.hose) == nullptr) {
      out.push_back({Severity::error,
                     "the station has no hose '" + meter.hose + "' for this meter error",
                     std::nullopt,
                     "write \"0.3 %\" for all meters, or the id of a hose before it: \"D1.a=0.3 %\"",
                     {}});
    }
  }
  if (options.from && options.to && *options.to < *options.from) {
    out.push_back({Severity::error, "the period ends before it begins", std::nullopt, "", {}});
  }
  return out;
}

}  // namespace forecourse::studies
