#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// A tank or compartment whose fuel is counted.
struct Stock {
  std::string id;
  std::string product;
  const site::Tank* tank = nullptr;
  const site::Compartment* compartment = nullptr;
  std::optional<network::TankInside> inside;
  std::string problem;  ///< why its volume cannot be told; empty: it can
};

/// Stocks that are reconciled as one, because what is sold cannot be charged to one of them.
struct BookPlan {
  std::string name;
  std::string product;
  std::string joined;
  std::vector<Stock> stocks;
};

/// The books of a station: one for each tank or compartment, or for those of a product that feed one line, or whose
/// levels go together. In the order of the site file.
[[nodiscard]] std::vector<BookPlan> book_plans(const site::Site& site, parts::Ready ready = parts::Ready::table);

/// Nothing where the station has no such hose.
[[nodiscard]] const site::Hose* find_hose(const site::Site& site, const std::string& id);

/// A share of a sale that a book is charged with.
struct Charge {
  std::size_t book = 0;
  double share = 1.0;  ///< [1]
  bool blended = false;
};

/// Finds the books that a sale is charged to.
class Charging {
 public:
  Charging(const site::Site& site, const std::vector<BookPlan>& plans) : site_(site), plans_(plans) {}

  /// \return empty where the sale names nothing that the station has a book for
  [[nodiscard]] std::vector<Charge> of(const site::records::Sale& sale) const;
  /// The book of a tank or compartment.
  [[nodiscard]] std::optional<std::size_t> of_tank(const std::string& id) const;

 private:
  [[nodiscard]] std::vector<Charge> of_product(const std::string& product, double share, bool blended) const;

  const site::Site& site_;
  const std::vector<BookPlan>& plans_;
};

}  // namespace forecourse::studies
