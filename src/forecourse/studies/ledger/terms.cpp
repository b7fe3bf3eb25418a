#include "forecourse/studies/ledger/terms.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/base/api_units.h"
#include "forecourse/network/meter/meter_proving.h"
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
  /// The error of a meter on a day: of what was proved up to the end of the period, and can stand for the day, the
  /// proving that is nearest to it.
  [[nodiscard]] const MeterError* error_of(const std::string& hose, Day day) const {
    const MeterError* out = nullptr;
    const auto apart = [&](const MeterError& e) { return e.proved ? std::abs(e.proved->number - day.number) : 0; };
    for (const MeterError& one : period_.meters) {
      if (hose.empty() || one.hose != hose) continue;
      const bool late = one.proved && *one.proved > period_.rows.back().day;
      if (late || (one.from && day < *one.from) || (one.until && *one.until < day)) continue;
      if (out == nullptr || apart(one) < apart(*out)) out = &one;
    }
    if (out != nullptr) return out;
    for (const MeterError& one : period_.meters) {
      if (one.hose.empty()) return &one;
    }
    return nullptr;
  }

  /// A meter that shows more than flows leaves fuel in the tank that the book has sold.
  void meters() {
    std::map<const MeterError*, double> sold;
    std::map<std::string, MeterSold> by_hose;
    std::map<std::string, std::map<const MeterError*, double>> of_hose;
    double unproved = 0.0;
    double all = 0.0;
    for (std::size_t i = 0; i < period_.rows.size(); ++i) {
      for (const Amount* sale : period_.amounts[i].sold) {
        const MeterError* error = error_of(sale->hose, period_.rows[i].day);
        MeterSold& meter = by_hose[sale->hose];
        all += sale->volume;
        meter.sold += sale->volume;
        if (error == nullptr) {
          unproved += sale->volume;
          continue;
        }
        const double adds = sale->volume * error->error / (1.0 + error->error);
        sold[error] += sale->volume;
        of_hose[sale->hose][error] += sale->volume;
        meter.known += sale->volume;
        meter.volume = meter.volume.value_or(0.0) + adds;
        out_.meter_corrections[i] += adds;
      }
    }
    for (auto& [hose, meter] : by_hose) {
      meter.hose = hose;
      meter.standard_error = error_volume(of_hose[hose]);
      out_.meters.push_back(meter);
    }
    tell_meters(sold, all, unproved);
  }

  /// [m3] Standard error of what was sold with these errors; empty where one of them has none.
  static std::optional<double> error_volume(const std::map<const MeterError*, double>& sold) {
    double square = 0.0;
    for (const auto& [error, volume] : sold) {
      if (!error->standard_error) return std::nullopt;
      square += std::pow(volume * *error->standard_error, 2);
    }
    return sold.empty() ? std::nullopt : std::optional(std::sqrt(square));
  }

  void tell_meters(const std::map<const MeterError*, double>& sold, double all, double unproved) {
    Sum sum;
    sum.term.cause = "meters";
    out_.meters_proved = all > 0.0 && unproved == 0.0;
    for (const auto& [error, volume] : sold) {
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
    sum.term.words = sold.empty()     ? "no meter was proved: enter provings, or the error of the meters"
                     : unproved > 0.0 ? fmt::format("{:.0f} % of what was sold went through meters that were proved",
                                                    100.0 * (1.0 - unproved / all))
                     : out_.meters_proved
                         ? "by proving"
                         : "as entered; without a second draw, or a standard error, it is not known how sure";
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

std::vector<MeterError> meter_errors(const site::Site& site, const records::Records& all,
                                     const LedgerOptions& options) {
  std::vector<MeterError> out = options.meters;
  const auto entered = [&](const std::string& hose) {
    return std::any_of(options.meters.begin(), options.meters.end(), [&](const auto& m) { return m.hose == hose; });
  };
  std::string hose;
  std::optional<Day> from;
  for (const network::MeterProving& proving : network::meter_provings(site, all.provings, options.measure_expansion)) {
    if (entered(proving.hose)) continue;
    if (proving.hose != hose) from.reset();
    hose = proving.hose;
    const Day day = day_of(proving.day);
    if (proving.as_left) {
      from = day;
      for (MeterError& one : out) {
        if (one.proved && one.hose == hose && !one.until) one.until = Day{day.number - 1};
      }
    }
    const network::DrawSet& draws = proving.counted();
    if (draws.mean) out.push_back({hose, *draws.mean, draws.standard_error, day, from, std::nullopt});
  }
  return out;
}

Explained explain(const Period& period) { return Explaining(period).explain(); }

}  // namespace forecourse::studies
