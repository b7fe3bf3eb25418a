#include "forecourse/studies/ledger/loss.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "forecourse/base/api_units.h"
#include "forecourse/solvers/statistics/distributions.h"
#include "forecourse/solvers/statistics/level_fit.h"
#include "forecourse/studies/ledger/explain.h"

namespace forecourse::studies {
namespace {

using namespace solvers::statistics;

constexpr double chance = 0.05;        ///< of a false alarm, and of a leak missed [cfr_280, 40(a)]
constexpr double fault_chance = 0.01;  ///< common practice, no source
constexpr std::size_t most_faults = 6;
constexpr double alike = 0.9;  ///< common practice, no source: estimates that go together are not parted

constexpr const char* steady = "steady loss";
constexpr const char* meters = "meters";
constexpr const char* deliveries = "deliveries";
constexpr const char* zero = "zero of the stick";
constexpr const char* ratio = "blend ratio";

/// What would part a term from the others.
std::string what_parts(const std::vector<std::string>& causes) {
  const auto has = [&](const char* cause) { return std::find(causes.begin(), causes.end(), cause) != causes.end(); };
  std::vector<std::string> words;
  if (has(meters)) words.emplace_back("prove the meters");
  if (has(deliveries))
    words.emplace_back("read the tank before and after each delivery and hold that against the ticket");
  if (has(ratio)) words.emplace_back("draw a blend into a measure and have its ratio told");
  if (has(zero)) words.emplace_back("read the tank at very different levels, or have its stick checked");
  if (has(steady)) words.emplace_back("read the tank before and after some days without sales or deliveries");
  std::string out;
  for (const std::string& one : words) out += (out.empty() ? "" : ", or ") + one;
  return out;
}

class Fitting {
 public:
  Fitting(const Period& period, const Explained& explained) : period_(period), explained_(explained) {
    for (const StockReading& reading : period.readings) noise_.reading.push_back(reading.deviation);
    for (std::size_t i = 0; i < period.rows.size(); ++i) {
      noise_.between.push_back(between_deviation(period.amounts[i], period.options));
      seconds_.push_back(3600.0 * period.rows[i].hours);
      left_.push_back(period.rows[i].over_short - explained.corrections[i] - explained.meter_corrections[i]);
    }
  }

  LossFit fit() {
    const std::vector<Column> base{{steady, seconds_}};
    const std::vector<LevelFault> faults = level_faults(base, left_, noise_, fault_chance, most_faults);
    std::vector<Column> columns = base;
    for (const LevelFault& fault : faults) columns.push_back(column_of(fault, left_.size()));
    const LinearFit found = fit_level(columns, left_, noise_);
    out_.problem = found.problem;
    if (out_.problem.empty() && !found.coefficients.front().standard_error) out_.problem = "nothing scatters";
    if (!out_.problem.empty()) {
      out_.problem = "there are too few readings for it: " + out_.problem;
      return std::move(out_);
    }
    rate(found);
    how_it_scatters(found);
    for (std::size_t i = 0; i < faults.size(); ++i) tell(faults[i], found.coefficients[i + 1]);
    free_fit(faults);
    decide();
    charts();
    return std::move(out_);
  }

 private:
  void rate(const LinearFit& found) {
    const double whole = std::accumulate(seconds_.begin(), seconds_.end(), 0.0);
    const double by_fit = *found.coefficients.front().standard_error;
    out_.rate = -*found.coefficients.front().value;
    out_.standard_error = std::sqrt(by_fit * by_fit + explained_.meter_square / (whole * whole));
    out_.degrees = static_cast<int>(found.degrees_of_freedom);
    const double quantile = student_quantile(1.0 - chance, out_.degrees);
    out_.threshold = quantile * out_.standard_error;
    out_.detectable = 2.0 * out_.threshold;
    out_.asked = period_.options.smallest_leak > 0.0 ? period_.options.smallest_leak : least_leak();
    out_.found_with = student_probability(out_.asked / out_.standard_error - quantile, out_.degrees);
    out_.meters_proved = explained_.meters_proved;
    if (!explained_.meters_proved) out_.open_causes.emplace_back(meters);
    if (!explained_.deliveries_known) out_.open_causes.emplace_back("temperature of deliveries");
    double sold = 0.0;
    for (const LedgerRow& row : period_.rows) sold += row.sold;
    if (sold > 0.0) out_.meter_alike = -out_.rate * whole / sold;
  }

  void how_it_scatters(const LinearFit& found) {
    out_.scatter = found.residual_deviation;
    double neighbors = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < found.residuals.size(); ++i) {
      squares += found.residuals[i] * found.residuals[i];
      if (i > 0) neighbors += found.residuals[i] * found.residuals[i - 1];
    }
    out_.neighbors = squares > 0.0 ? neighbors / squares : 0.0;
    out_.scatter_fits = std::abs(out_.neighbors) <= 2.0 / std::sqrt(static_cast<double>(found.residuals.size()));
  }

  void tell(const LevelFault& fault, const Coefficient& found) {
    if (!found.value || !found.standard_error) return;
    LedgerFault one;
    one.size = *found.value;
    one.standard_error = *found.standard_error;
    if (fault.kind == LevelFault::Kind::reading) {
      const StockReading& reading = period_.readings[fault.at];
      one.kind = LedgerFault::Kind::reading;
      one.day = reading.day;
      if (reading.surface > 0.0) one.depth = one.size / reading.surface;
      one.words = "one reading stands alone, and the next takes it back: a typo, or a stick read wrong";
    } else {
      const LedgerRow& row = period_.rows[fault.at];
      one.kind = LedgerFault::Kind::step;
      one.day = row.day;
      one.words = row.deliveries > 0
                      ? "a step on a day with a delivery: hold its ticket against the readings before and after it"
                  : one.size < 0.0
                      ? "fuel is gone in one step: a sale that was not entered, a delivery entered twice, or theft"
                      : "fuel is there that the book has not: a delivery that was not entered, or a sale entered twice";
    }
    out_.faults.push_back(std::move(one));
  }

  /// Everything that may be wrong at once, without what proving tells.
  void free_fit(const std::vector<LevelFault>& faults) {
    std::vector<Column> columns{{steady, seconds_}};
    std::vector<const char*> units{"m3/s"};
    const auto offer = [&](const char* cause, const char* unit, std::vector<double> values) {
      if (std::all_of(values.begin(), values.end(), [](double v) { return v == 0.0; })) return;
      columns.push_back({cause, std::move(values)});
      units.push_back(unit);
    };
    std::vector<double> sold, delivered, surface, blended, response;
    for (std::size_t i = 0; i < period_.rows.size(); ++i) {
      const LedgerRow& row = period_.rows[i];
      sold.push_back(row.sold);
      delivered.push_back(row.delivered);
      surface.push_back(period_.readings[i + 1].surface - period_.readings[i].surface);
      double part = 0.0;
      for (const Amount* sale : period_.amounts[i].sold) part += sale->blended ? sale->volume : 0.0;
      blended.push_back(part);
      response.push_back(row.over_short - explained_.corrections[i]);
    }
    offer(meters, "1", sold);
    offer(deliveries, "1", delivered);
    offer(zero, "m", surface);
    if (blended != sold) offer(ratio, "1", blended);
    const std::size_t terms = columns.size();
    for (const LevelFault& fault : faults) columns.push_back(column_of(fault, response.size()));
    const LinearFit found = fit_level(columns, response, noise_);
    if (!found.problem.empty()) return;
    const double quantile = student_quantile(1.0 - 0.5 * chance, static_cast<double>(found.degrees_of_freedom));
    for (std::size_t i = 0; i < terms; ++i) {
      const Coefficient& one = found.coefficients[i];
      FreeTerm term{one.name, units[i], one.value, one.standard_error, false};
      term.told_from_zero = one.value && one.standard_error && std::abs(*one.value) > quantile * *one.standard_error;
      out_.free.push_back(std::move(term));
    }
    free_degrees_ = static_cast<double>(found.degrees_of_freedom);
    not_parted(found, terms);
  }

  void not_parted(const LinearFit& found, std::size_t terms) {
    for (const Inseparable& same : found.not_separable) {
      NotParted one;
      for (const Inseparable::Share& share : same.columns) one.causes.push_back(share.name);
      one.what_would = what_parts(one.causes);
      out_.not_parted.push_back(std::move(one));
    }
    for (std::size_t i = 0; i < terms; ++i) {
      for (std::size_t j = i + 1; j < terms; ++j) {
        const double both = found.covariance[i][i] * found.covariance[j][j];
        const double correlation = both > 0.0 ? found.covariance[i][j] / std::sqrt(both) : 0.0;
        if (!(std::abs(correlation) > alike)) continue;
        NotParted one{{found.coefficients[i].name, found.coefficients[j].name}, correlation, {}};
        one.what_would = what_parts(one.causes);
        out_.not_parted.push_back(std::move(one));
      }
    }
  }

  /// The loss that the free fit finds is above its own threshold.
  [[nodiscard]] bool free_loss() const {
    if (out_.free.empty() || !out_.free.front().value || !out_.free.front().standard_error) return false;
    return -*out_.free.front().value >
           student_quantile(1.0 - chance, free_degrees_) * *out_.free.front().standard_error;
  }
  [[nodiscard]] bool free_would_show() const {
    if (out_.free.empty() || !out_.free.front().standard_error) return false;
    return 2.0 * student_quantile(1.0 - chance, free_degrees_) * *out_.free.front().standard_error <= out_.asked;
  }

  /// "meters and temperature of deliveries"
  [[nodiscard]] std::string open_words() const {
    std::string out;
    for (const std::string& cause : out_.open_causes) out += (out.empty() ? "" : " and ") + cause;
    return out;
  }

  void decide() {
    const bool nothing_open = out_.open_causes.empty();
    if (out_.rate > out_.threshold) {
      const bool alone = nothing_open || free_loss();
      out_.verdict = alone ? LossVerdict::loss : LossVerdict::loss_or_other;
      out_.why = alone ? "more is gone than chance and the known causes explain"
                       : "not known: " + open_words() + "; " +
                             fmt::format("meters that show {:.2f} % too little would look the same",
                                         -100.0 * out_.meter_alike);
    } else if (out_.detectable > out_.asked) {
      out_.verdict = LossVerdict::inconclusive;
      out_.why = "the readings scatter too much: they would not have shown the least leak asked for";
    } else if (!nothing_open && (free_loss() || !free_would_show())) {
      out_.verdict = LossVerdict::inconclusive;
      out_.why = "not known: " + open_words() + "; they can hide a loss";
    } else {
      out_.verdict = LossVerdict::none_found;
      out_.why = "a leak of the rate asked for would have been found 19 times in 20";
    }
  }

  void charts() {
    std::vector<double> values = whitened(left_, noise_);
    for (double& value : values) value /= out_.scatter;
    const std::vector<CusumPoint> sums = cusum(values, out_.cusum);
    const std::vector<EwmaPoint> averages = ewma(values, out_.ewma);
    for (std::size_t i = 0; i < values.size(); ++i) {
      out_.chart.push_back({period_.rows[i].day, values[i], sums[i], averages[i]});
    }
    static const double cusum_length = cusum_run_length(CusumChart{}, 0.0);
    static const double ewma_length = ewma_run_length(EwmaChart{}, 0.0);
    out_.cusum_run_length = cusum_length;
    out_.ewma_run_length = ewma_length;
  }

  /// \source [cfr_280, 43(h)(2)]
  static double least_leak() { return cubic_meters_from_gallons(0.2) / 3600.0; }

  const Period& period_;
  const Explained& explained_;
  LevelNoise noise_;
  std::vector<double> seconds_;
  std::vector<double> left_;  ///< [m3] what the terms leave of each row
  double free_degrees_ = 1.0;
  LossFit out_;
};

}  // namespace

const char* word(LossVerdict verdict) {
  switch (verdict) {
    case LossVerdict::none_found:
      return "no loss found";
    case LossVerdict::loss:
      return "loss";
    case LossVerdict::loss_or_other:
      return "loss or another cause";
    case LossVerdict::inconclusive:
      break;
  }
  return "inconclusive";
}

double between_deviation(const RowAmounts& row, const LedgerOptions& options) {
  const double each = options.delivery_deviation.value_or(default_delivery_deviation);
  const double sales = options.sales_deviation.value_or(default_sales_deviation);
  const double floor = cubic_meters_from_gallons(0.1);  // common practice, no source: below it nothing is measured
  double square = floor * floor;
  double sold = 0.0;
  for (const Amount* drop : row.delivered) square += std::pow(each * drop->volume, 2);
  for (const Amount* sale : row.sold) sold += sale->volume;
  return std::sqrt(square + std::pow(sales * sold, 2));
}

LossFit fit_loss(const Period& period, const Explained& explained) { return Fitting(period, explained).fit(); }

}  // namespace forecourse::studies
