#include "forecourse/report/station/station_studies.h"

#include "forecourse/checks/delivery_checks.h"
#include "forecourse/checks/flotation_checks.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/checks/vapor_checks.h"

namespace forecourse::report {

StationStudies study_without_flow(const site::Site& site, const site::Date& on, const Context& context) {
  StationStudies out;
  if (has_sump(site)) out.containment = studies::study_containment(site, {}, context);
  if (has_tank_shape(site)) {
    out.tank = studies::study_tank(site, {}, context);
    out.findings = checks::check_tanks(site, *out.tank);
  }
  if (has_flotation(site)) {
    out.flotation = studies::study_flotation(site, {}, context);
    out.flotation_findings = checks::check_flotation(*out.flotation);
  }
  if (!site.tanks.empty()) {
    out.vapor = studies::study_vapor(site, {}, context);
    out.vapor_findings = checks::check_vapor(site, *out.vapor, on);
  }
  if (!site.lines.empty()) {
    out.line_test = studies::study_line_test(site, {}, context);
    out.line_test_findings = checks::check_line_test(site, *out.line_test, on);
  }
  for (const site::Delivery& delivery : site.deliveries) {
    studies::DeliveryOptions options;
    options.delivery = delivery.id.text;
    out.deliveries.push_back(studies::study_delivery(site, options, context));
    const std::vector<checks::Finding> found = checks::check_delivery(site, out.deliveries.back());
    out.findings.insert(out.findings.end(), found.begin(), found.end());
  }
  for (const site::IncidentRequest& request : site.incidents) {
    studies::IncidentOptions options;
    options.kind = studies::incident_kind(request.kind.text).value_or(studies::IncidentKind::struck);
    options.request = request;
    options.today = on;
    out.incidents.push_back(studies::study_incident(site, options, context));
  }
  return out;
}

StationStudies study_station(const site::Site& site, const studies::FlowOptions& options, const site::Date& on,
                             const Context& context) {
  StationStudies out = study_without_flow(site, on, context);
  if (has_hose(site)) {
    out.flow = studies::study_flow(site, options, context);
    std::vector<checks::Finding> findings = checks::check_flow(site, *out.flow);
    out.findings.insert(out.findings.begin(), findings.begin(), findings.end());
  }
  handover::Kit kit = handover::make_kit(site, {}, out.flow ? &*out.flow : nullptr);
  if (!kit.rows.empty()) out.kit = std::move(kit);
  return out;
}

void add_rule_sets(const site::Site& site, const site::Date& on, const site::records::Records* records,
                   StationStudies& out) {
  checks::Facts facts{site, on, records};
  const auto pointer = [](const auto& study) { return study ? &*study : nullptr; };
  facts.flow = pointer(out.flow);
  facts.containment = pointer(out.containment);
  facts.tank = pointer(out.tank);
  facts.flotation = pointer(out.flotation);
  facts.vapor = pointer(out.vapor);
  facts.ledger = pointer(out.ledger);
  facts.line_test = pointer(out.line_test);
  facts.meter = pointer(out.meter);
  out.rule_sets = checks::check_rule_sets(facts);
  if (records != nullptr && out.vapor) out.vapor_findings = checks::check_vapor(site, *out.vapor, on, records);
  if (records != nullptr && out.line_test)
    out.line_test_findings = checks::check_line_test(site, *out.line_test, on, records);
  checks::CheckResult all;
  all.today = on;
  all.sets.push_back({"vapor", true, "Vapor study", {}, out.vapor_findings});
  all.sets.push_back({"line-test", true, "Line tests and leak detectors", {}, out.line_test_findings});
  all.sets.insert(all.sets.end(), out.rule_sets.begin(), out.rule_sets.end());
  out.calendar = handover::calendar_of(all);
}

}  // namespace forecourse::report
