#pragma once

#include <optional>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/handover/kit/kit.h"
#include "forecourse/site/has_parts.h"
#include "forecourse/studies/containment/containment.h"
#include "forecourse/studies/delivery/delivery.h"
#include "forecourse/studies/flotation/flotation.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/ledger/ledger.h"
#include "forecourse/studies/line_test/line_test.h"
#include "forecourse/studies/meter/meter.h"
#include "forecourse/studies/tank/tank.h"
#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::report {

/// What one report of a station tells of.
struct StationStudies {
  std::optional<studies::FlowResult> flow;  ///< empty: the station has no hose
  std::vector<checks::Finding> findings;
  std::optional<studies::ContainmentResult> containment;  ///< empty: no sump is entered
  std::vector<studies::DeliveryResult> deliveries;        ///< one for each [[delivery]] of the site file, in its order
  std::optional<studies::TankResult> tank;                ///< empty: no tank has a shape or a chart
  std::optional<studies::FlotationResult> flotation;      ///< empty: of no tank anything is entered under flotation
  std::optional<studies::VaporResult> vapor;              ///< empty: no tank is entered
  std::optional<studies::LineTestResult> line_test;       ///< empty: no line is entered
  std::optional<studies::LedgerResult> ledger;            ///< empty: no records are given
  std::vector<checks::Finding> flotation_findings;
  std::vector<checks::Finding> vapor_findings;
  std::vector<checks::Finding> line_test_findings;
  std::vector<checks::Finding> ledger_findings;
  std::optional<studies::MeterResult> meter;  ///< empty: no records are given, or no draw is among them
  std::vector<checks::Finding> meter_findings;
  std::vector<checks::FindingSet> rule_sets;       ///< that the site names, against all of these
  std::optional<handover::Calendar> calendar;      ///< of what comes back under these and the studies
  std::optional<handover::Kit> kit;                ///< empty: no part is entered
  std::vector<studies::IncidentResult> incidents;  ///< one for each [[incident]] of the site file, in its order
};

using site::has_flotation;
using site::has_hose;
using site::has_sump;
using site::has_tank_shape;

/// Every study that the station has something for.
///
/// \param options of the flow study
/// \param on      the day by which tests are judged overdue
[[nodiscard]] StationStudies study_station(const site::Site& site, const studies::FlowOptions& options,
                                           const site::Date& on, const Context& context = {});

/// Holds the studies against the rule sets that the site names, and tells what comes back under both. Tests in the
/// records count for the findings on vapor and on lines too.
void add_rule_sets(const site::Site& site, const site::Date& on, const site::records::Records* records,
                   StationStudies& out);

/// Containment, tanks and incidents alone.
[[nodiscard]] StationStudies study_without_flow(const site::Site& site, const site::Date& on,
                                                const Context& context = {});

}  // namespace forecourse::report
