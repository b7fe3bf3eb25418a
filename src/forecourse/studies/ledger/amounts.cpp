#include "forecourse/studies/ledger/amounts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/base/api_units.h"

namespace forecourse::studies {
namespace {

namespace records = site::records;

constexpr double noon = 12.0;

template <class Row>
std::vector<const Row*> by_time(const std::vector<Row>& rows) {
  std::vector<const Row*> out;
  out.reserve(rows.size());
  for (const Row& row : rows) out.push_back(&row);
  std::stable_sort(out.begin(), out.end(),
                   [](const Row* a, const Row* b) { return hours_of(a->at, noon) < hours_of(b->at, noon); });
  return out;
}

/// Volume of each sale; of a row that tells only the meter's total, the difference from the total before.
class Metered {
 public:
  Metered(const Charging& charging, Told& told) : charging_(charging), told_(told) {}

  /// [m3]; empty: nothing can be said of it, and that was told
  std::optional<double> volume(const records::Sale& sale) {
    const std::optional<double> before = take(sale);
    if (sale.volume) return sold(sale, sale.volume->si());
    if (!sale.totalizer) {
      return lost(sale, sale.at.day.where, "this sale tells no volume and no total of its meter", "enter one of them");
    }
    if (!before) return 0.0;  // the first total of a meter: where it stands
    const double now = sale.totalizer->si();
    return now >= *before ? now - *before : turned(sale, *before, now);
  }

 private:
  /// The total before this one, which takes its place.
  std::optional<double> take(const records::Sale& sale) {
    if (!sale.totalizer) return std::nullopt;
    const double now = sale.totalizer->si();
    const auto [found, fresh] = totals_.emplace(sale.hose.text, now);
    const std::optional<double> before = fresh ? std::nullopt : std::optional(found->second);
    found->second = now;
    return before;
  }

  std::optional<double> sold(const records::Sale& sale, double volume) {
    if (volume >= 0.0) return volume;
    return lost(
        sale, sale.at.day.where, fmt::format("a sale below zero on {}", text(day_of(sale.at.day))),
        "fuel that went back into the tank belongs in returns.csv; a correction goes into the row that it corrects");
  }

  /// A total that is lower than before: the meter has turned over at a power of ten, or is another one.
  std::optional<double> turned(const records::Sale& sale, double before, double now) {
    for (const double unit : {cubic_meters_from_gallons(1.0), 1e-3}) {
      const double end = unit * std::pow(10.0, std::ceil(std::log10(before / unit)));
      const double volume = end - before + now;
      if (volume > 0.05 * end) continue;  // it stood nowhere near its end
      told_.say(sale.at.day.where,
                fmt::format("the total of {} turned over on {}; what it sold is counted through the turn",
                            sale.hose.text, text(day_of(sale.at.day))));
      return volume;
    }
    return lost(sale, sale.at.day.where,
                fmt::format("the total of {} is lower than before on {}: was its meter replaced?", sale.hose.text,
                            text(day_of(sale.at.day))),
                "enter the volume of this row: what the old meter and the new one told together");
  }

  std::optional<double> lost(const records::Sale& sale, const SourceSpan& where, const std::string& message,
                             const std::string& hint) {
    const std::vector<Charge> charges = charging_.of(sale);
    if (charges.empty()) told_.lost(std::nullopt, day_of(sale.at.day), where, message, hint);
    for (std::size_t i = 0; i < charges.size(); ++i) {
      if (i == 0) told_.lost(charges[i].book, day_of(sale.at.day), where, message, hint);
      if (i > 0) told_.unsettled.push_back({charges[i].book, day_of(sale.at.day), message});
    }
    return std::nullopt;
  }

  const Charging& charging_;
  Told& told_;
  std::map<std::string, double> totals_;
};

Amount delivery_of(const records::Delivered& row, std::size_t book, DeliveredAs as, Told& told) {
  Amount out;
  out.hours = hours_of(row.at, noon);
  if (row.at.time && row.duration) out.until = out.hours + row.duration->si() / 3600.0;
  out.tank = row.tank.text;
  if (row.temperature) out.temperature = row.temperature->si();
  const std::optional<double> gross = row.gross ? std::optional(row.gross->si()) : std::nullopt;
  const std::optional<double> net = row.net ? std::optional(row.net->si()) : std::nullopt;
  const bool as_asked = as == DeliveredAs::gross ? gross.has_value() : net.has_value();
  out.volume = as == DeliveredAs::gross ? gross.value_or(net.value_or(0.0)) : net.value_or(gross.value_or(0.0));
  if (gross && net) out.net_less_gross = *net - *gross;
  if (gross && net && *gross > 0.0) out.factor_net = *net / *gross;
  const std::string of = fmt::format("the delivery of {} into {}", text(day_of(row.at.day)), row.tank.text);
  if (!gross && !net) {
    told.lost(book, day_of(row.at.day), row.at.day.where, of + " tells no volume", "enter it from the ticket");
  } else if (!as_asked) {
    told.say(row.at.day.where,
             fmt::format("{} tells no {} volume; its {} one is counted", of, word(as), gross ? "gross" : "net"),
             "enter it from the ticket");
  }
  return out;
}

}  // namespace

const char* word(DeliveredAs as) { return as == DeliveredAs::net ? "net" : "gross"; }

namespace {

void add_deliveries(const records::Records& all, DeliveredAs as, const Charging& charging, Told& told,
                    std::vector<Amounts>& out) {
  for (const records::Delivered* row : by_time(all.deliveries)) {
    const std::optional<std::size_t> book = charging.of_tank(row->tank.text);
    if (book) {
      out[*book].delivered.push_back(delivery_of(*row, *book, as, told));
    } else {
      told.lost(
          std::nullopt, day_of(row->at.day), row->tank.where,
          fmt::format("the station has no tank '{}' for the delivery of {}", row->tank.text, text(day_of(row->at.day))),
          "name the tank or compartment it went into");
    }
  }
}

/// "hose D1.a", "tank T1", "product regular"
std::string seller(const records::Sale& sale) {
  if (!sale.tank.empty()) return "tank '" + sale.tank.text + "'";
  return sale.hose.empty() ? "product '" + sale.product.text + "'" : "hose '" + sale.hose.text + "'";
}

void add_sales(const records::Records& all, const Charging& charging, Told& told, std::vector<Amounts>& out) {
  Metered metered(charging, told);
  for (const records::Sale* row : by_time(all.sales)) {
    const std::optional<double> volume = metered.volume(*row);
    if (!volume) continue;
    const std::vector<Charge> charges = charging.of(*row);
    if (charges.empty()) {
      told.lost(std::nullopt, day_of(row->at.day), row->at.day.where,
                fmt::format("what {} sold on {} belongs to no one book of the station", seller(*row),
                            text(day_of(row->at.day))),
                "name a hose of the site file, or the tank");
    }
    for (const Charge& charge : charges) {
      Amount one;
      one.hours = hours_of(row->at, noon);
      one.volume = charge.share * *volume;
      one.hose = row->hose.text;
      one.blended = charge.blended;
      out[charge.book].sold.push_back(std::move(one));
    }
  }
}

void add_returns(const records::Records& all, const Charging& charging, Told& told, std::vector<Amounts>& out) {
  for (const records::Returned* row : by_time(all.returns)) {
    const std::optional<std::size_t> book = charging.of_tank(row->tank.text);
    if (!book || !row->volume) {
      told.lost(
          book, day_of(row->at.day), row->at.day.where,
          fmt::format("what went back on {} names no tank of the station, or no volume", text(day_of(row->at.day))),
          "enter tank and volume");
      continue;
    }
    Amount one;
    one.hours = hours_of(row->at, noon);
    one.volume = row->volume->si();
    out[*book].returned.push_back(std::move(one));
  }
}

}  // namespace

std::vector<Amounts> amounts_of(const records::Records& all, const LedgerOptions& options, const Charging& charging,
                                std::size_t books, Told& told) {
  std::vector<Amounts> out(books);
  add_deliveries(all, options.delivered_as, charging, told, out);
  add_sales(all, charging, told, out);
  add_returns(all, charging, told, out);
  return out;
}

}  // namespace forecourse::studies
