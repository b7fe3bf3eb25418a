#include <algorithm>

#include "forecourse/decide/mend/mend.h"
#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/checks/mends_report.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {
namespace {

using report::Json;

/// Each mend with the study or the rule set of its finding, as the answer of findings names them.
Json told(const decide::MendResult& result) {
  Json out = report::mends_json(result.mends);
  for (std::size_t i = 0; i < result.mends.size(); ++i) {
    const decide::MendSubject& of = result.mends[i].of;
    const auto& sets = result.before.sets;
    const auto set = std::find_if(sets.begin(), sets.end(), [&](const checks::FindingSet& one) {
      return one.id == of.set && one.of_study == of.of_study;
    });
    out[i]["study"] = of.of_study ? Json(of.set) : Json();
    out[i]["set"] = of.of_study || set == sets.end() ? Json() : Json(set->title);
  }
  return out;
}

}  // namespace

Json mends_answer(const Asked& asked) {
  WantReader want(asked.want, mends_members);
  const decide::MendWanted wanted{want.text("rule"), want.text("subject")};
  const site::Date on = read_day(want);
  const AskedFlow flow = asked_flow(asked, want);
  if (!flow.problem.is_null()) return flow.problem;
  const OpenedSite& opened = *flow.opened;
  const std::shared_ptr<const ReadRecords> records = asked.records ? asked.records(opened.site) : nullptr;
  decide::MendStation station{asked.text, on};
  if (records && records->read.ok()) station.records = &records->read.value;
  station.flow = flow.options;
  const decide::MendResult result = decide::mend_station(station, wanted, asked.context);
  report::JsonDocument document;
  document.study = "mends";
  document.version = result.before.version;
  document.cautions = report::checks_cautions(result.before);
  document.cautions.emplace_back(report::mends_caution);
  document.defaults = result.before.defaults;
  document.result["mends"] = told(result);
  return {{"document", report::document(document, opened.texts)}};
}

}  // namespace forecourse::server
