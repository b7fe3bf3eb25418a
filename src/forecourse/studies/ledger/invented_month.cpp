#include "forecourse/studies/ledger/invented_month.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "forecourse/base/api_units.h"
#include "forecourse/network/volume_change.h"
#include "forecourse/solvers/sequence/random/draws.h"
#include "forecourse/studies/ledger/stocks.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

constexpr double stored_at = 288.0;  ///< [K] of the tank, invented

/// Draws of one day begin here.
enum Parameter : std::uint32_t { of_reading, of_delivery, of_sales, of_weather, kinds };

class Inventing {
 public:
  Inventing(const site::Site& site, const std::string& tank, const InventedMonth& month, std::uint64_t seed,
            std::uint64_t run)
      : products_(site.products), month_(month), draws_(seed, run), plans_(book_plans(site)) {
    for (const BookPlan& plan : plans_) {
      for (const Stock& stock : plan.stocks) {
        if (stock.id == tank) stock_ = &stock;
      }
    }
    for (const site::Dispenser& dispenser : site.dispensers) {
      for (const site::Hose& hose : dispenser.hoses) {
        if (stock_ != nullptr && hose.product.text == stock_->product) hoses_.push_back(hose.id.text);
      }
    }
  }

  records::Records make() {
    if (stock_ == nullptr || !stock_->inside) return {};
    for (const site::Product& product : products_) {
      if (product.id.text != stock_->product) continue;
      shrinks_ = network::volume_change(product, stored_at + month_.faults.warm, stored_at).factor.value_or(1.0);
    }
    volume_ = 0.6 * inside().capacity();
    read(0);
    for (int day = 1; day <= month_.days; ++day) live(day);
    return std::move(out_);
  }

 private:
  [[nodiscard]] const parts::TankVolume& inside() const { return stock_->inside->volume; }
  [[nodiscard]] double draw(int day, Parameter what) const {
    return draws_.normal(static_cast<std::uint32_t>(day) * kinds + what, 0.0, 1.0);
  }
  [[nodiscard]] records::Moment on(int day) const { return {date_of({month_.first.number - 1 + day}), std::nullopt}; }

  void live(int day) {
    const PlantedFaults& faults = month_.faults;
    const double weekend = (month_.first.number + day) % 7 < 2 ? 0.75 : 1.08;
    const double truly = month_.daily_sales * weekend * (1.0 + 0.08 * draw(day, of_weather));
    if (volume_ < 2.5 * month_.daily_sales) deliver(day);
    volume_ -= truly;
    sell(day, truly * (1.0 + faults.meter_error) * (1.0 + month_.scatter.sales * draw(day, of_sales)));
    constexpr double seconds_a_day = 86400.0;
    volume_ -= faults.leak * seconds_a_day;
    if (day == 17) volume_ -= faults.theft;
    if (day == 21) volume_ += faults.unentered;
    read(day);
  }

  /// What the ticket says scatters about what came; warm fuel shrinks to the temperature of the tank.
  void deliver(int day) {
    const double room = 0.9 * inside().capacity() - volume_;
    const double ticket = std::min(cubic_meters_from_gallons(8000.0), room);
    const double came = ticket * (1.0 + month_.scatter.delivery * draw(day, of_delivery));
    volume_ += came * shrinks_;
    records::Delivered row;
    row.at = on(day);
    row.tank = {stock_->id, {}};
    row.product = {stock_->product, {}};
    row.gross = Volume::from_si(ticket);
    if (month_.temperatures) row.temperature = Temperature::from_si(stored_at + month_.faults.warm);
    out_.deliveries.push_back(std::move(row));
  }

  void sell(int day, double metered) {
    if (hoses_.empty()) {
      records::Sale row;
      row.at = on(day);
      row.tank = {stock_->id, {}};
      row.volume = Volume::from_si(metered);
      out_.sales.push_back(std::move(row));
    }
    for (const std::string& hose : hoses_) {
      records::Sale row;
      row.at = on(day);
      row.hose = {hose, {}};
      row.volume = Volume::from_si(metered / static_cast<double>(hoses_.size()));
      out_.sales.push_back(std::move(row));
    }
  }

  void read(int day) {
    const PlantedFaults& faults = month_.faults;
    const double share = static_cast<double>(day) / month_.days;
    const double water = faults.water * share;
    const parts::DipPlace place = stock_->inside->place(std::nullopt);
    const double under = faults.water > 0.0 ? inside().volume(inside().level_at(place, water)) : 0.0;
    double depth = inside().depth_at(place, inside().level(volume_ + under));
    depth += month_.scatter.reading * draw(day, of_reading) + faults.chart * depth / inside().full_level();
    if (day == 11) depth += faults.typo;
    if (month_.eighths) depth = *month_.eighths * std::round(depth / *month_.eighths);
    records::Dip row;
    row.at = on(day);
    row.tank = {stock_->id, {}};
    row.depth = Length::from_si(depth);
    if (month_.temperatures) row.temperature = Temperature::from_si(stored_at);
    if (faults.water > 0.0 && (day == 0 || day == month_.days)) row.water = Length::from_si(water);
    out_.dips.push_back(std::move(row));
  }

  const std::vector<site::Product>& products_;
  const InventedMonth& month_;
  solvers::sequence::Draws draws_;
  std::vector<BookPlan> plans_;
  const Stock* stock_ = nullptr;
  std::vector<std::string> hoses_;
  double shrinks_ = 1.0;  ///< volume of a delivery in the tank over that on its ticket [1]
  double volume_ = 0.0;   ///< [m3] of fuel that is truly there
  records::Records out_;
};

}  // namespace

records::Records invented_month(const site::Site& site, const std::string& tank, const InventedMonth& month,
                                std::uint64_t seed, std::uint64_t run) {
  return Inventing(site, tank, month, seed, run).make();
}

}  // namespace forecourse::studies
