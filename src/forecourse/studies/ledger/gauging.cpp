#include "forecourse/studies/ledger/gauging.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/network/volume_change.h"
#include "forecourse/studies/ledger/gauging_of.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

double gallons(double volume) { return volume / cubic_meters_from_gallons(1.0); }

/// Two readings one after the other with nothing between them: their mean.
struct Pair {
  Day day;
  double first = 0.0;  ///< [h]
  double last = 0.0;
  double volume = 0.0;
};

constexpr double one_sitting = 1.0;  ///< [h] common practice, no source: within which two readings belong together

/// By the depth, else as the reading states it.
std::optional<double> volume_of(const Stock& stock, const records::Dip& dip) {
  if (dip.depth && stock.inside) return volume_to(stock, dip.depth->si());
  return dip.volume ? std::optional(dip.volume->si()) : std::nullopt;
}

/// The published table goes by the nominal capacity, which a shape alone can miss by a few gallons.
std::string near_a_border(double capacity) {
  constexpr double near = 0.02;  // common practice, no source
  for (const double border : {550.0, 1000.0, 2000.0}) {
    if (gallons(capacity) <= border || gallons(capacity) > (1.0 + near) * border) continue;
    return fmt::format("by its shape it holds {:.0f} gal; if it is a tank of {:.0f} gal, enter capacity",
                       gallons(capacity), border);
  }
  return {};
}

std::vector<Pair> pairs_of(const Stock& stock, const records::Records& all) {
  std::vector<const records::Dip*> dips;
  for (const records::Dip& dip : all.dips) {
    if (dip.tank.text == stock.id && dip.at.time && volume_of(stock, dip)) dips.push_back(&dip);
  }
  std::stable_sort(dips.begin(), dips.end(),
                   [](const auto* a, const auto* b) { return hours_of(a->at, 0.0) < hours_of(b->at, 0.0); });
  std::vector<Pair> out;
  for (std::size_t i = 1; i < dips.size(); ++i) {
    const double first = hours_of(dips[i - 1]->at, 0.0);
    const double last = hours_of(dips[i]->at, 0.0);
    if (last - first > one_sitting) continue;
    const double mean = 0.5 * (*volume_of(stock, *dips[i - 1]) + *volume_of(stock, *dips[i]));
    out.push_back({day_of(dips[i]->at.day), first, last, mean});
    ++i;
  }
  return out;
}

bool quiet(const Amounts& amounts, double from, double to) {
  const auto none = [&](const std::vector<Amount>& all) {
    return std::none_of(all.begin(), all.end(),
                        [&](const Amount& one) { return one.volume != 0.0 && one.hours > from && one.hours < to; });
  };
  return none(amounts.sold) && none(amounts.delivered) && none(amounts.returned);
}

}  // namespace

std::optional<GaugingRule> gauging_rule(double capacity, const std::optional<double>& diameter) {
  const auto row = [](double hours, double weekly, double monthly, bool alone, const char* words) {
    return GaugingRule{hours, cubic_meters_from_gallons(weekly), cubic_meters_from_gallons(monthly), alone, words};
  };
  constexpr double near_inch = 0.5;
  const auto is = [&](double inches) {
    return diameter && std::abs(*diameter - meters_from_inches(inches)) <= meters_from_inches(near_inch);
  };
  const double size = gallons(capacity);
  if (size <= 550.5) return row(36, 10, 5, true, "up to 550 gal");
  if (size <= 1000.5 && is(64)) return row(44, 9, 4, true, "551 to 1,000 gal, 64 in wide");
  if (size <= 1000.5 && is(48)) return row(58, 12, 6, true, "551 to 1,000 gal, 48 in wide");
  if (size <= 1000.5) return row(36, 13, 7, false, "551 to 1,000 gal, with tightness tests");
  if (size <= 2000.5) return row(36, 26, 13, false, "1,001 to 2,000 gal, with tightness tests");
  return std::nullopt;
}

std::optional<ManualGauging> manual_gauging(const Stock& stock, const Amounts& amounts, const records::Records& all) {
  const bool entered = stock.tank->capacity && stock.compartment == nullptr;
  if (!entered && !stock.inside) return std::nullopt;
  const double capacity = entered ? stock.tank->capacity->likely.si() : stock.inside->volume.capacity();
  std::optional<double> diameter;
  if (stock.tank->shape && stock.tank->shape->inside_diameter) {
    diameter = stock.tank->shape->inside_diameter->likely.si();
  }
  ManualGauging out;
  out.tank = stock.id;
  out.rule = gauging_rule(capacity, diameter);
  if (!out.rule) return std::nullopt;
  const std::vector<Pair> pairs = pairs_of(stock, all);
  for (std::size_t i = 1; i < pairs.size(); ++i) {
    const double hours = pairs[i].first - pairs[i - 1].last;
    if (hours < out.rule->hours || !quiet(amounts, pairs[i - 1].first, pairs[i].last)) continue;
    const double change = pairs[i].volume - pairs[i - 1].volume;
    out.tests.push_back({pairs[i].day, hours, change, std::abs(change) <= out.rule->weekly});
  }
  constexpr std::size_t month = 4;
  if (out.tests.size() >= month) {
    double sum = 0.0;
    for (std::size_t i = out.tests.size() - month; i < out.tests.size(); ++i) sum += out.tests[i].change;
    out.mean = sum / month;
  }
  if (!entered) out.words = near_a_border(capacity);
  if (out.tests.empty()) {
    out.words +=
        fmt::format("{}no two pairs of readings with their times stand {:.0f} h apart without sales or deliveries",
                    out.words.empty() ? "" : "; ", out.rule->hours);
  }
  return out;
}

namespace {

/// The product that an own test is of: that of the tank asked for, or the only one.
const site::Product* tested_product(const site::Site& site, const std::string& asked) {
  if (asked.empty()) return site.products.size() == 1 ? &site.products.front() : nullptr;
  for (const BookPlan& plan : book_plans(site, parts::Ready::none)) {
    const bool named =
        plan.product == asked || plan.name == asked ||
        std::any_of(plan.stocks.begin(), plan.stocks.end(), [&](const Stock& s) { return s.id == asked; });
    if (!named) continue;
    for (const site::Product& product : site.products) {
      if (product.id.text == plan.product) return &product;
    }
  }
  return nullptr;
}

/// Expansion of the fuel at its temperature, else at 60 degF [1/K].
std::optional<double> expansion_of(const site::Product* product, std::vector<DefaultUsed>& defaults) {
  if (product == nullptr) return std::nullopt;
  const double at = product->temperature ? product->temperature->likely.si() : kelvin_from_fahrenheit(60.0);
  const network::VolumeChange change = network::volume_change(*product, at, at + 1.0);
  if (!change.factor) return std::nullopt;
  defaults.push_back({"expansion of " + product->id.text,
                      *change.factor - 1.0,
                      "1/K",
                      DefaultStatus::computed,
                      change.words,
                      {},
                      false});
  return *change.factor - 1.0;
}

}  // namespace

std::optional<OwnTest> own_test(const site::Site& site, const LedgerOptions& options, Told& told,
                                std::vector<DefaultUsed>& defaults) {
  if (!options.own_volume || !options.own_drift) return std::nullopt;
  const std::optional<double> expansion =
      options.own_expansion ? options.own_expansion : expansion_of(tested_product(site, options.tank), defaults);
  if (!expansion) {
    told.say({}, "what a tank's own test shows is not determined: the expansion of its fuel is not known",
             "name the tank, and enter the density of its product, or give --own-expansion");
    return std::nullopt;
  }
  OwnTest out;
  out.volume = *options.own_volume;
  out.drift = *options.own_drift;
  out.expansion = *expansion;
  out.must_find = cubic_meters_from_gallons(0.2) / 3600.0;  // [cfr_280, 43(d)]
  out.apparent = out.volume * out.expansion * out.drift;
  if (out.expansion > 0.0) out.hides = out.must_find / (out.volume * out.expansion);
  return out;
}

}  // namespace forecourse::studies
