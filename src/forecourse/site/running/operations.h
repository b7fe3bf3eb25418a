#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site {

/// How much of a product is sold.
struct Throughput {
  SourceSpan where{};
  Name product;
  Maybe<Volume> per_month;
};

/// How a station is run.
struct Operations {
  SourceSpan where{};
  Name opens;   ///< "06:00"
  Name closes;  ///< "22:00"; equal to `opens`: never closed
  Fact attended;
  std::vector<Throughput> throughput;
  std::vector<Entered<double>> arrivals;  ///< vehicles in each hour of a day, 24 numbers from midnight
  Maybe<Volume> sale;                     ///< volume of one sale
  Maybe<Duration> fueling_time;           ///< fuel flows
  Maybe<Duration> visit_time;             ///< the position is taken
  Maybe<Volume> sale_limit;               ///< one sale stops there until somebody acts
  Fact card_limits;                       ///< a card that is programmed before limits amount and user
  Fact warning_signs;                     ///< at the dispensers, for those who fuel
};

}  // namespace forecourse::site
