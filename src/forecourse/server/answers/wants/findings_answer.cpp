#include "forecourse/checks/delivery_checks.h"
#include "forecourse/checks/flotation_checks.h"
#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/checks/line_test_checks.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/checks/vapor_checks.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/station/station_studies.h"
#include "forecourse/server/answers/station/station_parts.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/records/station_records.h"
#include "forecourse/site/text/document.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::server {
namespace {

using report::Json;

/// The findings of every study that the station has something for, each with the study it comes from.
class AllFindings {
 public:
  AllFindings(const OpenedSite& opened, const std::string& text)
      : texts_(opened.texts), parts_(station_parts(site::read_document(text, 0).value.root, text)) {}

  template <class Result>
  void add(const char* study, const Result& result, const std::vector<checks::Finding>& found) {
    Json told = report::findings_json(found, texts_);
    for (std::size_t i = 0; i < found.size(); ++i) {
      told[i]["study"] = study;
      told[i]["path"] = found[i].where.text == 0 ? report::text_or_null(path_at(parts_, found[i].where)) : Json();
      out_.findings.push_back(std::move(told[i]));
    }
    all_.insert(all_.end(), found.begin(), found.end());
    out_.version = result.version;
    out_.defaults.insert(out_.defaults.end(), result.defaults.begin(), result.defaults.end());
    out_.warnings.insert(out_.warnings.end(), result.warnings.begin(), result.warnings.end());
  }

  void add_texts(const std::vector<SourceText>& texts) { texts_.insert(texts_.end(), texts.begin(), texts.end()); }

  [[nodiscard]] Json document() {
    out_.study = "findings";
    out_.result["by_state"] = report::count_by_state(all_);
    return report::document(out_, texts_);
  }

 private:
  std::vector<SourceText> texts_;  ///< the site file, and behind it those of the records
  std::vector<StationPart> parts_;
  std::vector<checks::Finding> all_;
  report::JsonDocument out_;
};

void add_tanks(AllFindings& all, const site::Site& site, const site::Date& on, const Context& context) {
  if (report::has_tank_shape(site)) {
    const studies::TankResult tank = studies::study_tank(site, {}, context);
    all.add("tank", tank, checks::check_tanks(site, tank));
  }
  if (report::has_flotation(site)) {
    const studies::FlotationResult flotation = studies::study_flotation(site, {}, context);
    all.add("flotation", flotation, checks::check_flotation(flotation));
  }
  if (!site.tanks.empty()) {
    const studies::VaporResult vapor = studies::study_vapor(site, {}, context);
    all.add("vapor", vapor, checks::check_vapor(site, vapor, on));
  }
}

/// No requirement rests on the cases beside the delivery that was entered, nor on its ranges.
void add_deliveries(AllFindings& all, const site::Site& site, const Context& context) {
  for (const site::Delivery& delivery : site.deliveries) {
    studies::DeliveryOptions options;
    options.delivery = delivery.id.text;
    options.table = options.spans = options.charts = false;
    const studies::DeliveryResult result = studies::study_delivery(site, options, context);
    all.add("delivery", result, checks::check_delivery(site, result));
  }
}

void add_line_test(AllFindings& all, const site::Site& site, const site::Date& on, const Context& context) {
  if (site.lines.empty()) return;
  const studies::LineTestResult result = studies::study_line_test(site, {}, context);
  all.add("line-test", result, checks::check_line_test(site, result, on));
}

/// Records that cannot be read have no findings; their sheet tells why.
void add_records(AllFindings& all, const OpenedSite& opened, const Asked& asked) {
  const std::shared_ptr<const ReadRecords> records = asked.records ? asked.records(opened.site) : nullptr;
  if (!records || !records->read.ok()) return;
  const studies::LedgerResult ledger = studies::study_ledger(opened.site, records->read.value, {}, asked.context);
  all.add_texts(records->texts);
  all.add("ledger", ledger, checks::check_ledger(ledger));
  const studies::MeterResult meters =
      studies::study_meter(opened.site, records->read.value, {}, studies::book_meters(ledger), asked.context);
  all.add("meter", meters, checks::check_meter(meters));
}

}  // namespace

Json findings_answer(const Asked& asked) {
  WantReader want(asked.want, findings_members);
  const site::Date on = read_day(want);
  AskedFlow flow = asked_flow(asked, want);
  if (!flow.problem.is_null()) return flow.problem;
  flow.options.ladders = flow.options.lines_at_rest = false;  // no requirement rests on them
  const OpenedSite& opened = *flow.opened;
  AllFindings all(opened, asked.text);
  const studies::FlowResult& result = asked.shared.flow(opened, flow.options, asked.context);
  all.add("flow", result, checks::check_flow(opened.site, result));
  add_tanks(all, opened.site, on, asked.context);
  add_deliveries(all, opened.site, asked.context);
  add_line_test(all, opened.site, on, asked.context);
  add_records(all, opened, asked);
  return {{"document", all.document()}};
}

}  // namespace forecourse::server
