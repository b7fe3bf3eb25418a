#pragma once

#include "forecourse/site/entered.h"

namespace forecourse::site {

/// How much of a product is sold.
struct Throughput {
  SourceSpan where{};
  Name product;
  Maybe<Volume> per_month;
};

/// For how long records are kept.
struct RecordsKept {
  SourceSpan where{};
  Maybe<Duration> monitoring;        ///< results of sampling, testing and monitoring
  Maybe<Duration> operability;       ///< yearly tests of what detects leaks
  Maybe<Duration> claims;            ///< performance claims of it
  Maybe<Duration> repairs;           ///< calibration, maintenance and repair of it
  Maybe<Duration> schedules;         ///< its maker's schedules of calibration and maintenance
  Maybe<Duration> throughput_ready;  ///< time until records of throughput are at hand when they are asked for
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
  std::optional<RecordsKept> records_kept;
  std::optional<Date> hand_held_tested;  ///< electronic hand-held gear that detects leaks
  Maybe<Volume> sale_limit;              ///< one sale stops there until somebody acts
  Fact card_limits;                      ///< a card that is programmed before limits amount and user
  Fact warning_signs;                    ///< at the dispensers, for those who fuel
};

}  // namespace forecourse::site
