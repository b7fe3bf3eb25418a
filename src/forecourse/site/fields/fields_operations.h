#pragma once

#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

template <class Visitor>
void fields(Visitor& v, Throughput& throughput) {
  v.about("throughput", "How much of a product is sold.");
  v.reference("product", throughput.product, PartKind::product, "The product.", Need::required);
  v.quantity("per_month", throughput.per_month, "Volume sold in a month.", not_negative);
}

template <class Visitor>
void fields(Visitor& v, RecordsKept& kept) {
  v.about("records_kept", "For how long records are kept.");
  v.quantity("monitoring", kept.monitoring, "Results of sampling, testing and monitoring.", not_negative);
  v.quantity("operability", kept.operability, "Yearly tests of what detects leaks.", not_negative);
  v.quantity("claims", kept.claims, "Performance claims of what detects leaks.", not_negative);
  v.quantity("repairs", kept.repairs, "Calibration, maintenance and repair of it.", not_negative);
  v.quantity("schedules", kept.schedules, "Its maker's schedules of calibration and maintenance.", not_negative);
  v.quantity("throughput_ready", kept.throughput_ready,
             "Time until records of throughput are at hand when they are asked for.", not_negative);
}

/// \source [nfpa_30a_2003, 9.2.5.4] what the warning signs say
template <class Visitor>
void fields(Visitor& v, Operations& operations) {
  v.about("operations", "How the station is run.");
  v.clock("opens", operations.opens, "Opening time: \"06:00\".");
  v.clock("closes", operations.closes, "Closing time; the same as `opens`: never closed.");
  v.fact("attended", operations.attended, "Whether somebody is there while it is open.");
  v.list("throughput", operations.throughput, "How much is sold.");
  v.numbers("arrivals", operations.arrivals, 24, "Vehicles in each hour of a day: 24 numbers from midnight.");
  v.quantity("sale", operations.sale, "Volume of one sale.", positive);
  v.quantity("fueling_time", operations.fueling_time, "Time for which fuel flows.", positive);
  v.quantity("visit_time", operations.visit_time, "Time for which the position is taken.", positive);
  v.table("records_kept", operations.records_kept, "For how long records are kept.");
  v.date("hand_held_tested", operations.hand_held_tested, "Last test of electronic hand-held gear that detects leaks.");
  v.quantity("sale_limit", operations.sale_limit, "Volume at which a sale stops until somebody acts.", positive);
  v.fact("card_limits", operations.card_limits, "Whether a card that is programmed before limits amount and user.");
  v.fact("warning_signs", operations.warning_signs, "Whether signs at the dispensers warn those who fuel.");
}

}  // namespace forecourse::site
