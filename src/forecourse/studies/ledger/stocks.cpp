#include "forecourse/studies/ledger/stocks.h"

#include <algorithm>

#include "forecourse/network/place_groups.h"

namespace forecourse::studies {
namespace {

Stock stock_of(const site::Tank& tank, const site::Compartment* compartment, parts::Ready ready) {
  Stock out;
  out.id = compartment == nullptr ? tank.id.text : compartment->id.text;
  out.product = compartment == nullptr || compartment->product.empty() ? tank.product.text : compartment->product.text;
  out.tank = &tank;
  out.compartment = compartment;
  auto inside = network::tank_inside(tank, compartment, ready);
  if (auto* found = std::get_if<network::TankInside>(&inside)) {
    out.inside = std::move(*found);
  } else {
    out.problem = std::get<std::string>(inside);
  }
  return out;
}

std::vector<Stock> stocks_of(const site::Site& site, parts::Ready ready) {
  std::vector<Stock> out;
  for (const site::Tank& tank : site.tanks) {
    if (tank.compartments.empty()) out.push_back(stock_of(tank, nullptr, ready));
    for (const site::Compartment& compartment : tank.compartments) out.push_back(stock_of(tank, &compartment, ready));
  }
  return out;
}

/// Which stocks belong to one book, by the number of the first of them.
class Joins {
 public:
  explicit Joins(const std::vector<Stock>& stocks) : stocks_(stocks), first_(stocks.size()), why_(stocks.size()) {
    for (std::size_t i = 0; i < first_.size(); ++i) first_[i] = i;
  }

  void join(const std::string& a, const std::string& b, const std::string& why) {
    const std::optional<std::size_t> one = index(a);
    const std::optional<std::size_t> other = index(b);
    if (!one || !other || stocks_[*one].product != stocks_[*other].product) return;
    const std::size_t low = std::min(first_[*one], first_[*other]);
    const std::size_t high = std::max(first_[*one], first_[*other]);
    if (low == high) return;
    for (std::size_t& first : first_) first = first == high ? low : first;
    if (why_[low].empty()) why_[low] = why;
  }
  [[nodiscard]] std::size_t first_of(std::size_t i) const { return first_[i]; }
  [[nodiscard]] const std::string& why(std::size_t first) const { return why_[first]; }

 private:
  [[nodiscard]] std::optional<std::size_t> index(const std::string& id) const {
    for (std::size_t i = 0; i < stocks_.size(); ++i) {
      if (stocks_[i].id == id) return i;
    }
    return std::nullopt;
  }

  const std::vector<Stock>& stocks_;
  std::vector<std::size_t> first_;
  std::vector<std::string> why_;
};

Joins joined(const site::Site& site, const std::vector<Stock>& stocks) {
  Joins joins(stocks);
  for (const site::Tank& tank : site.tanks) {
    for (const site::Name& other : tank.siphoned_with) {
      joins.join(tank.id.text, other.text, "their levels go together");
    }
  }
  for (const network::PlaceGroup& group : network::place_groups(site)) {
    for (const site::Pump* pump : group.pumps) {
      joins.join(group.pumps.front()->tank.text, pump->tank.text, "their pumps feed one line");
    }
  }
  return joins;
}

}  // namespace

const site::Hose* find_hose(const site::Site& site, const std::string& id) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (hose.id.text == id) return &hose;
    }
  }
  return nullptr;
}

std::vector<BookPlan> book_plans(const site::Site& site, parts::Ready ready) {
  const std::vector<Stock> stocks = stocks_of(site, ready);
  const Joins joins = joined(site, stocks);
  std::vector<BookPlan> out;
  for (std::size_t first = 0; first < stocks.size(); ++first) {
    if (joins.first_of(first) != first) continue;
    BookPlan plan;
    plan.product = stocks[first].product;
    plan.joined = joins.why(first);
    for (std::size_t i = first; i < stocks.size(); ++i) {
      if (joins.first_of(i) != first) continue;
      plan.name += (plan.name.empty() ? "" : " + ") + stocks[i].id;
      plan.stocks.push_back(stocks[i]);
    }
    out.push_back(std::move(plan));
  }
  return out;
}

std::optional<std::size_t> Charging::of_tank(const std::string& id) const {
  for (std::size_t i = 0; i < plans_.size(); ++i) {
    for (const Stock& stock : plans_[i].stocks) {
      if (stock.id == id) return i;
    }
  }
  return std::nullopt;
}

std::vector<Charge> Charging::of_product(const std::string& product, double share, bool blended) const {
  std::vector<Charge> out;
  for (std::size_t i = 0; i < plans_.size(); ++i) {
    if (plans_[i].product == product) out.push_back({i, share, blended});
  }
  if (out.size() > 1) out.clear();  // which of the books it left is not told
  return out;
}

std::vector<Charge> Charging::of(const site::records::Sale& sale) const {
  if (!sale.tank.empty()) {
    const std::optional<std::size_t> book = of_tank(sale.tank.text);
    return book ? std::vector<Charge>{{*book}} : std::vector<Charge>{};
  }
  const site::Hose* hose = sale.hose.empty() ? nullptr : find_hose(site_, sale.hose.text);
  if (hose == nullptr) return of_product(sale.product.text, 1.0, false);
  if (hose->blend.empty()) return of_product(hose->product.text, 1.0, false);
  std::vector<Charge> out;
  for (const site::BlendShare& part : hose->blend) {
    const std::vector<Charge> one = of_product(part.product.text, part.share.likely.si(), true);
    if (one.empty()) return {};
    out.insert(out.end(), one.begin(), one.end());
  }
  return out;
}

}  // namespace forecourse::studies
