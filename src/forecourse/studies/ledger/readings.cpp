#include "forecourse/studies/ledger/readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>

#include "forecourse/base/api_units.h"
#include "forecourse/solvers/statistics/robust_fit.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

constexpr double midnight = 24.0;  ///< a reading without a time closes its day

/// Where a depth is read: at the gauge, else at the first fill, else where the site's own reading was taken.
std::optional<double> read_at(const Stock& stock, const records::Dip* dip) {
  const site::Tank& tank = *stock.tank;
  const bool by_gauge = dip != nullptr && dip->by.text == "gauge";
  if (by_gauge && tank.gauge && tank.gauge->at) return tank.gauge->at->likely.si();
  if (!tank.fills.empty() && tank.fills.front().at) return tank.fills.front().at->likely.si();
  if (tank.reading && tank.reading->at) return tank.reading->at->likely.si();
  if (tank.gauge && tank.gauge->at) return tank.gauge->at->likely.si();
  return std::nullopt;
}

double level_of(const Stock& stock, const records::Dip* dip, double depth) {
  return stock.inside->volume.level_at(stock.inside->place(read_at(stock, dip)), depth);
}

/// One reading of one tank.
struct TankReading {
  const records::Dip* dip = nullptr;
  double hours = 0.0;
  double volume = 0.0;
  double deviation = 0.0;
  double surface = 0.0;
  std::optional<double> water;
};

/// What a depth that does not fit the tank was likely meant to be.
std::string typed_in(double depth, double full) {
  struct Mistaken {
    const char* words;
    double factor;
  };
  const std::array<Mistaken, 4> units{{{"was it mm, not in?", 1e-3 / meters_from_inches(1.0)},
                                       {"was it cm, not in?", 1e-2 / meters_from_inches(1.0)},
                                       {"was it in, not ft?", meters_from_inches(1.0) / meters_from_feet(1.0)},
                                       {"was it typed without its decimal mark?", 0.1}}};
  for (const Mistaken& one : units) {
    if (one.factor * depth <= full) return one.words;
  }
  return "correct the reading";
}

class TankReader {
 public:
  TankReader(const Stock& stock, std::size_t book, const LedgerOptions& options, Told& told)
      : stock_(stock), book_(book), deviation_(depth_deviation(stock, options).value), told_(told) {}

  /// By day; of two on one day the later, of two at one time the one that stands last.
  [[nodiscard]] std::map<Day, TankReading> read(const std::vector<const records::Dip*>& dips,
                                                const std::vector<Amount>& delivered) {
    std::map<Day, TankReading> out;
    for (const records::Dip* dip : dips) {
      std::optional<TankReading> one = read(*dip);
      if (!one || within_a_drop(*one, delivered)) continue;
      const auto [found, fresh] = out.emplace(day_of(dip->at.day), *one);
      if (fresh) continue;
      twice(*dip, found->second.hours == one->hours);
      if (one->hours >= found->second.hours) found->second = *one;
    }
    take_off_water(out);
    return out;
  }

 private:
  std::optional<TankReading> read(const records::Dip& dip) {
    if (!stock_.inside) return read_without_shape(dip);
    const parts::TankVolume& inside = stock_.inside->volume;
    TankReading out;
    out.dip = &dip;
    out.hours = hours_of(dip.at, midnight);
    double level = 0.0;
    if (dip.depth) {
      const double depth = dip.depth->si();
      level = level_of(stock_, &dip, depth);
      if (depth < 0.0 || level > inside.full_level() * (1.0 + 1e-9)) {
        told_.lost(book_, day_of(dip.at.day), dip.at.day.where,
                   fmt::format("the depth read in {} on {} is above the top of the tank, or below its bottom",
                               stock_.id, text(day_of(dip.at.day))),
                   typed_in(depth, inside.full_level()));
        return std::nullopt;
      }
      out.volume = inside.volume(level);
    } else if (dip.volume) {
      out.volume = dip.volume->si();
      level = inside.level(out.volume);
    } else {
      told_.lost(
          book_, day_of(dip.at.day), dip.at.day.where,
          fmt::format("the reading of {} on {} tells no depth and no volume", stock_.id, text(day_of(dip.at.day))),
          "enter one of them");
      return std::nullopt;
    }
    if (dip.water) out.water = inside.volume(level_of(stock_, &dip, dip.water->si()));
    // a difference of volumes is near enough for a deviation, and quicker than the surface itself
    const double step = meters_from_inches(0.25);
    out.surface = (inside.volume(level + step) - inside.volume(level - step)) / (2.0 * step);
    out.deviation = out.surface * deviation_;
    return out;
  }

  /// The volume that a gauge states serves for a tank of no known shape; a depth does not.
  std::optional<TankReading> read_without_shape(const records::Dip& dip) {
    if (!dip.volume) {
      told_.lost(book_, day_of(dip.at.day), dip.at.day.where,
                 fmt::format("the depth read in {} on {} tells no volume: {}", stock_.id, text(day_of(dip.at.day)),
                             stock_.problem),
                 "enter the volume of the reading");
      return std::nullopt;
    }
    TankReading out;
    out.dip = &dip;
    out.hours = hours_of(dip.at, midnight);
    out.volume = dip.volume->si();
    out.deviation = std::numeric_limits<double>::quiet_NaN();
    return out;
  }

  /// Water is read less often than fuel: what was found stands until it is read again, and before it was first read.
  static void take_off_water(std::map<Day, TankReading>& readings) {
    std::optional<double> known;
    for (const auto& [day, reading] : readings) {
      if (!known) known = reading.water;
    }
    for (auto& [day, reading] : readings) {
      if (reading.water) known = reading.water;
      if (reading.dip->depth) reading.volume -= known.value_or(0.0);
    }
  }

  bool within_a_drop(const TankReading& reading, const std::vector<Amount>& delivered) {
    for (const Amount& drop : delivered) {
      if (drop.tank != stock_.id || !drop.until || !reading.dip->at.time) continue;
      if (reading.hours <= drop.hours || reading.hours >= *drop.until) continue;
      told_.say(reading.dip->at.day.where,
                fmt::format("{} was read on {} while a delivery ran into it; the reading is not used", stock_.id,
                            text(day_of(reading.dip->at.day))),
                "read before the drop or when it has settled");
      return true;
    }
    return false;
  }

  void twice(const records::Dip& dip, bool same_time) {
    told_.say(dip.at.day.where,
              fmt::format("{} was read twice on {}{}", stock_.id, text(day_of(dip.at.day)),
                          same_time ? " at one time; the row that stands last counts" : "; the later reading counts"),
              same_time ? "leave the right one, or give both their times" : "");
  }

  const Stock& stock_;
  std::size_t book_;
  double deviation_;
  Told& told_;
};

/// A tank without a shape is read by the volumes of its readings, if they have any.
bool can_be_read(const Stock& stock, const std::vector<const records::Dip*>& dips) {
  return stock.inside || std::any_of(dips.begin(), dips.end(), [](const auto* dip) { return dip->volume.has_value(); });
}

/// The sum of the tanks' readings of a day.
StockReading summed(Day day, const std::vector<const TankReading*>& tanks) {
  StockReading out;
  out.day = day;
  double squares = 0.0;
  double heat = 0.0;
  double warm = 0.0;
  for (const TankReading* one : tanks) {
    out.hours = std::max(out.hours, one->hours);
    out.volume += one->volume;
    out.surface += one->surface;
    squares += one->deviation * one->deviation;
    if (one->water) out.water = out.water.value_or(0.0) + *one->water;
    if (one->dip->temperature) {
      heat += one->volume * one->dip->temperature->si();
      warm += one->volume;
    }
  }
  out.deviation = std::sqrt(squares);
  out.where = tanks.front()->dip->at.day.where;
  if (tanks.size() == 1 && tanks.front()->dip->depth) out.depth = tanks.front()->dip->depth->si();
  if (warm > 0.0) out.temperature = heat / warm;
  return out;
}

}  // namespace

double scatter_of_volumes(const std::vector<double>& over_short) {
  const double finest = cubic_meters_from_gallons(1.0) / std::sqrt(12.0);  // read to a whole gallon
  if (over_short.size() < 2) return finest;
  const std::vector<double> ones(over_short.size(), 1.0);
  const double scatter = solvers::statistics::robust_fit({{"each day", ones}}, over_short).scale;
  return std::max(scatter / std::sqrt(2.0), finest);
}

DepthDeviation depth_deviation(const Stock& stock, const LedgerOptions& options) {
  if (options.reading_deviation) return {*options.reading_deviation, false};
  if (stock.tank->gauge && stock.tank->gauge->uncertainty) {
    return {stock.tank->gauge->uncertainty->likely.si(), false};
  }
  return {meters_from_inches(0.125), true};
}

DipsByTank by_tank(const records::Records& all) {
  DipsByTank out;
  for (const records::Dip& dip : all.dips) out[dip.tank.text].push_back(&dip);
  return out;
}

double volume_to(const Stock& stock, double depth) {
  return stock.inside->volume.volume(level_of(stock, nullptr, depth));
}

double depth_of(const Stock& stock, double volume) {
  const parts::TankVolume& inside = stock.inside->volume;
  return inside.depth_at(stock.inside->place(read_at(stock, nullptr)), inside.level(volume));
}

std::vector<StockReading> readings_of(const BookPlan& plan, std::size_t book, const Amounts& amounts,
                                      const DipsByTank& dips, const LedgerOptions& options, Told& told) {
  std::vector<std::map<Day, TankReading>> tanks;
  for (const Stock& stock : plan.stocks) {
    const auto found = dips.find(stock.id);
    tanks.emplace_back();
    if (found != dips.end() && can_be_read(stock, found->second)) {
      tanks.back() = TankReader(stock, book, options, told).read(found->second, amounts.delivered);
    }
  }
  std::vector<StockReading> out;
  std::map<Day, std::vector<const TankReading*>> days;
  for (const auto& tank : tanks) {
    for (const auto& [day, reading] : tank) days[day].push_back(&reading);
  }
  for (const auto& [day, read] : days) {
    if (read.size() == plan.stocks.size()) {
      out.push_back(summed(day, read));
      continue;
    }
    told.say(read.front()->dip->at.day.where,
             fmt::format("on {} not every tank of {} was read; that day has no reading", text(day), plan.name),
             "read all tanks that are reconciled as one on the same day");
  }
  return out;
}

}  // namespace forecourse::studies
