#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/base/api_units.h"
#include "forecourse/network/volume_change.h"
#include "forecourse/studies/ledger/explain.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

const site::Product* find_product(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.products.begin(), site.products.end(), [&](const site::Product& p) { return p.id.text == id; });
  return found == site.products.end() ? nullptr : &*found;
}

/// A term that is being added up, row by row.
struct Sum {
  LedgerTerm term;
  double square = 0.0;  ///< [m6] of its standard error
  bool has_error = false;
  int known = 0;
  int missing = 0;
};

class Explaining {
 public:
  explicit Explaining(const Period& period)
      : period_(period), product_(find_product(period.site, period.plan.product)) {
    out_.corrections.assign(period.rows.size(), 0.0);
    out_.meter_corrections.assign(period.rows.size(), 0.0);
  }

  Explained explain() {
    for (const LedgerRow& row : period_.rows) out_.terms.over_short += row.over_short;
    meters();
    warm_deliveries();
    stock_temperature();
    evaporation();
    told_besides();
    double known = 0.0;
    for (const LedgerTerm& term : out_.terms.terms) known += term.volume.value_or(0.0);
    out_.terms.unexplained = out_.terms.over_short - known;
    return std::move(out_);
  }

 private:
  [[nodiscard]] const MeterError* error_of(const std::string& hose) const {
    const MeterError* all = nullptr;
    for (const MeterError& one : period_.meters) {
      if (!hose.empty() && one.hose == hose) return &one;
      if (one.hose.empty()) all = &one;
    }
    return all;
  }

  /// A meter that shows more than flows leaves fuel in the tank that the book has sold.
  void meters() {
    std::map<std::string, double> sold;
    double unproved = 0.0;
    double all = 0.0;
    for (std::size_t i = 0; i < period_.rows.size(); ++i) {
      for (const Amount* sale : period_.amounts[i].sold) {
        const MeterError* error = error_of(sale->hose);
        all += sale->volume;
        if (error == nullptr) {
          unproved += sale->volume;
          continue;
        }
        sold[error->hose] += sale->volume;
        out_.meter_corrections[i] += sale->volume * error->error / (1.0 + error->error);
      }
    }
    Sum sum;
    sum.term.cause = "meters";
    out_.meters_proved = all > 0.0 && unproved == 0.0;
    for (const auto& [hose, volume] : sold) {
      const MeterError* error = error_of(hose);
      if (error->standard_error) {
        sum.square += std::pow(volume * *error->standard_error, 2);
      } else {
        out_.meters_proved = false;
      }
    }
    if (!sold.empty()) {
      sum.term.volume = 0.0;
      for (const double one : out_.meter_corrections) *sum.term.volume += one;
      if (out_.meters_proved) sum.term.standard_error = std::sqrt(sum.square);
      out_.meter_square = sum.square;
    }
    sum.term.words = sold.empty()     ? "no meter was proved: enter meter tests, or the error of the meters"
                     : unproved > 0.0 ? fmt::format("{:.0f} % of what was sold went through meters that were proved",
                                                    100.0 * (1.0 - unproved / all))
                     : out_.meters_proved
                         ? "by proving"
                         : "as entered; without a second proving, or a standard error, it is not known how sure";
    out_.terms.terms.push_back(sum.term);
  }

  [[nodiscard]] std::optional<double> change(double from, double to) const {
    return product_ == nullptr ? std::nullopt : network::volume_change(*product_, from, to).factor;
  }

  /// Volume in the tank over volume in the book.
  [[nodiscard]] std::optional<double> grown(const Amount& drop, const std::optional<double>& stored) const {
    if (!stored) return std::nullopt;
    const double reference = kelvin_from_fahrenheit(60.0);
    if (period_.options.delivered_as == DeliveredAs::net) return change(reference, *stored);
    if (drop.temperature) return change(*drop.temperature, *stored);
    const std::optional<double> from_reference = change(reference, *stored);
    if (drop.factor_net && from_reference) return *drop.factor_net * *from_reference;
    return std::nullopt;
  }

  void warm_deliveries() {
    Sum sum;
    sum.term.cause = "temperature of deliveries";
    for (std::size_t i = 0; i < period_.rows.size(); ++i) {
      for (const Amount* drop : period_.amounts[i].delivered) {
        const std::optional<double> factor = grown(*drop, period_.rows[i].temperature);
        ++(factor ? sum.known : sum.missing);
        if (factor) add(sum, i, drop->volume * (*factor - 1.0));
      }
    }
    out_.deliveries_known = sum.missing == 0;
    close(sum, "deliveries", "enter the temperature of the deliveries, or gross and net, and that of the tank");
  }

  void stock_temperature() {
    Sum sum;
    sum.term.cause = "temperature of the stock";
    for (std::size_t i = 0; i < period_.rows.size(); ++i) {
      const LedgerRow& row = period_.rows[i];
      const std::optional<double>& before = period_.readings[i].temperature;
      const std::optional<double> factor = before && row.temperature ? change(*before, *row.temperature) : std::nullopt;
      ++(factor ? sum.known : sum.missing);
      if (!factor) continue;
      const double stayed = std::max(row.measured - row.delivered, 0.0);
      add(sum, i, 0.5 * (row.opening + stayed) * (*factor - 1.0));
    }
    close(sum, "intervals", "enter the temperature with the readings");
  }

  void evaporation() {
    Sum sum;
    sum.term.cause = "evaporation";
    if (period_.options.evaporation) {
      for (std::size_t i = 0; i < period_.rows.size(); ++i) {
        add(sum, i, -*period_.options.evaporation * period_.rows[i].sold);
      }
      sum.term.words = "the share entered, of what was sold";
    } else {
      sum.term.words = "enter the share of what is sold that is lost as vapor";
    }
    out_.terms.terms.push_back(sum.term);
  }

  void told_besides() {
    for (const RowAmounts& row : period_.amounts) {
      for (const Amount* drop : row.delivered) out_.terms.net_less_gross += drop->net_less_gross.value_or(0.0);
      out_.terms.returned += row.returned;
    }
    std::optional<double> first;
    std::optional<double> last;
    for (const StockReading& reading : period_.readings) {
      if (!first) first = reading.water;
      if (reading.water) last = reading.water;
    }
    if (first) out_.terms.water_rise = *last - *first;
  }

  void add(Sum& sum, std::size_t row, double volume) {
    sum.term.volume = sum.term.volume.value_or(0.0) + volume;
    out_.corrections[row] += volume;
  }

  void close(Sum& sum, const char* things, const char* missing) {
    if (sum.known == 0) {
      sum.term.words = sum.missing == 0 ? std::string("there were no ") + things : missing;
      if (sum.missing == 0) sum.term.volume = 0.0;
    } else if (sum.missing > 0) {
      sum.term.words = fmt::format("known of {} of {} {}", sum.known, sum.known + sum.missing, things);
    } else {
      sum.term.words = fmt::format("by the temperatures of {} {}", sum.known, things);
    }
    out_.terms.terms.push_back(sum.term);
  }

  const Period& period_;
  const site::Product* product_;
  Explained out_;
};

}  // namespace

std::vector<MeterError> meter_errors(const records::Records& all, const LedgerOptions& options) {
  std::map<std::string, std::vector<double>> errors;
  for (const records::Test& test : all.tests) {
    if (test.kind != records::TestKind::meter || !test.volume || !test.expected) continue;
    const double truly = test.expected->si();
    if (truly > 0.0) errors[test.part.text].push_back((test.volume->si() - truly) / truly);
  }
  std::vector<MeterError> out = options.meters;
  for (const auto& [id, found] : errors) {
    const std::string& hose = id;
    if (std::any_of(out.begin(), out.end(), [&](const MeterError& m) { return m.hose == hose; })) continue;
    double mean = 0.0;
    for (const double one : found) mean += one / static_cast<double>(found.size());
    double square = 0.0;
    for (const double one : found) square += (one - mean) * (one - mean);
    MeterError told{hose, mean, std::nullopt};
    const auto n = static_cast<double>(found.size());
    if (found.size() > 1) told.standard_error = std::sqrt(square / (n - 1.0) / n);
    out.push_back(std::move(told));
  }
  return out;
}

Explained explain(const Period& period) { return Explaining(period).explain(); }

}  // namespace forecourse::studies
