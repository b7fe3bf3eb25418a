#include "forecourse/checks/station/check_station.h"
#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/findings.h"
#include "forecourse/server/answers/station/station_parts.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/records/station_records.h"
#include "forecourse/site/has_parts.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {
namespace {

using report::Json;

/// Of the studies what requirements rest on, and no more.
checks::Studied study(const OpenedSite& opened, const Context& context) {
  const site::Site& site = opened.site;
  checks::Studied out;
  if (site::has_tank_shape(site)) out.tank = studies::study_tank(site, {}, context);
  if (site::has_sump(site)) out.containment = studies::study_containment(site, {}, context);
  if (site::has_flotation(site)) out.flotation = studies::study_flotation(site, {}, context);
  if (!site.tanks.empty()) out.vapor = studies::study_vapor(site, {}, context);
  if (!site.lines.empty()) out.line_test = studies::study_line_test(site, {}, context);
  for (const site::Delivery& delivery : site.deliveries) {
    studies::DeliveryOptions options;
    options.delivery = delivery.id.text;
    options.table = options.spans = options.charts = false;  // no requirement rests on them
    out.deliveries.push_back(studies::study_delivery(site, options, context));
  }
  return out;
}

/// Each finding with the study that it comes from, or the rule set, and with the place of its part.
Json told(const checks::CheckResult& result, const std::string& text, const std::vector<SourceText>& texts) {
  const std::vector<StationPart> parts = station_parts(site::read_document(text, 0).value.root, text);
  Json out = Json::array();
  for (const checks::FindingSet& set : result.sets) {
    Json some = report::findings_json(set.findings, texts);
    for (std::size_t i = 0; i < set.findings.size(); ++i) {
      some[i]["study"] = set.of_study ? Json(set.id) : Json();
      some[i]["set"] = set.of_study ? Json() : Json(set.title);
      const SourceSpan& where = set.findings[i].where;
      some[i]["path"] = where.text == 0 ? report::text_or_null(path_at(parts, where)) : Json();
      out.push_back(std::move(some[i]));
    }
  }
  return out;
}

}  // namespace

Json findings_answer(const Asked& asked) {
  WantReader want(asked.want, findings_members);
  const site::Date on = read_day(want);
  AskedFlow flow = asked_flow(asked, want);
  if (!flow.problem.is_null()) return flow.problem;
  flow.options.ladders = flow.options.lines_at_rest = false;  // no requirement rests on them
  const OpenedSite& opened = *flow.opened;
  checks::Studied studied = study(opened, asked.context);
  studied.flow = asked.shared.flow(opened, flow.options, asked.context);
  std::vector<SourceText> texts = opened.texts;
  // Records that cannot be read have no findings; their sheet tells why.
  const std::shared_ptr<const ReadRecords> records = asked.records ? asked.records(opened.site) : nullptr;
  const site::records::Records* read = records && records->read.ok() ? &records->read.value : nullptr;
  if (read != nullptr) {
    checks::add_records(opened.site, *read, asked.context, studied);
    texts.insert(texts.end(), records->texts.begin(), records->texts.end());
  }
  const checks::CheckResult result = checks::check_station(checks::facts_of(opened.site, studied, on, read), studied);
  report::JsonDocument document;
  document.study = "findings";
  document.version = result.version;
  document.cautions = report::checks_cautions(result);
  document.defaults = result.defaults;
  document.warnings = result.warnings;
  document.result["by_state"] = report::count_by_state(checks::all_findings(result));
  document.findings = told(result, asked.text, texts);
  return {{"document", report::document(document, texts)}};
}

}  // namespace forecourse::server
