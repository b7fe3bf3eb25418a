#pragma once

#include <vector>

#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/containment/containment.h"
#include "forecourse/studies/delivery/delivery.h"
#include "forecourse/studies/flotation/flotation.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/ledger/ledger.h"
#include "forecourse/studies/line_test/line_test.h"
#include "forecourse/studies/meter/meter.h"
#include "forecourse/studies/tank/tank.h"
#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::checks {

/// What a station is held against rules with. A study that was not made, or for which the station has nothing, is null.
struct Facts {
  const site::Site& site;
  site::Date today;
  const site::records::Records* records = nullptr;
  const studies::FlowResult* flow = nullptr;
  const studies::ContainmentResult* containment = nullptr;
  const studies::TankResult* tank = nullptr;
  const studies::FlotationResult* flotation = nullptr;
  const studies::VaporResult* vapor = nullptr;
  const studies::LedgerResult* ledger = nullptr;
  const studies::LineTestResult* line_test = nullptr;
  const studies::MeterResult* meter = nullptr;
};

}  // namespace forecourse::checks
