#include "forecourse/checks/meter_checks.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/meter/meter_view.h"
#include "forecourse/server/answers/wants/drawing_want.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/records_told.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/ledger/ledger.h"
#include "forecourse/studies/meter/read_meter_options.h"

namespace forecourse::server {
namespace {

using report::Json;

studies::MeterOptions read_meter_want(WantReader& want) {
  studies::MeterTexts texts;
  texts.hose = want.text("hose");
  texts.from = want.text("from");
  texts.to = want.text("to");
  texts.expansion = want.text("expansion");
  texts.prices = want.texts("prices");
  texts.yearly = want.texts("yearly");
  texts.limits = want.texts("limits");
  auto read = studies::read_meter_options(texts, studies::Asker::page);
  if (!read.ok()) want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  return std::move(read.value);
}

struct ToldMeters {
  const OpenedSite* opened = nullptr;
  std::shared_ptr<const ReadRecords> records;
  std::vector<SourceText> texts;
  studies::MeterResult result;
};

/// Studies the meters; what is in the way, as an answer, else null.
Json tell_meters(const Asked& asked, WantReader& want, ToldMeters& out) {
  const studies::MeterOptions options = read_meter_want(want);
  out.opened = &asked.shared.opened(read_units(want));
  const OpenedSite& opened = *out.opened;
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  out.records = asked.records ? asked.records(opened.site) : nullptr;
  if (!out.records) return no_records();
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, options);
  if (!wrong.empty()) return refused(wrong);
  out.texts = opened.texts;
  out.texts.insert(out.texts.end(), out.records->texts.begin(), out.records->texts.end());
  if (!out.records->read.ok()) return unreadable(*out.records, out.texts);
  const site::records::Records& records = out.records->read.value;
  out.result = studies::study_meter(
      opened.site, records, options,
      studies::book_meters(opened.site, records, options.from, options.to, options.expansion, asked.context),
      asked.context);
  return {};
}

}  // namespace

Json meter_answer(const Asked& asked) {
  WantReader want(asked.want, meter_members);
  ToldMeters told;
  if (Json problem = tell_meters(asked, want, told); !problem.is_null()) return problem;
  std::vector<Diagnostic>& warnings = told.result.warnings;
  const std::vector<Diagnostic>& read = told.records->read.diagnostics;
  warnings.insert(warnings.begin(), read.begin(), read.end());
  warnings.insert(warnings.begin(), told.opened->warnings.begin(), told.opened->warnings.end());
  const report::MeterFacts facts{{}, {}, told.texts, checks::check_meter(told.result), {}, told.opened->site.display};
  return {{"document", report::meter_document(told.result, facts)}, {"records", records_json(*told.records)}};
}

Json meter_drawing(const Asked& asked) {
  WantReader reader(asked.want, meter_drawing_members);
  const DrawingWant want = read_drawing(reader);
  ToldMeters told;
  if (Json problem = tell_meters(asked, reader, told); !problem.is_null()) return problem;
  report::svg::MeterDots dots = report::meter_dots(told.result, told.opened->site.display);
  dots.id = want.prefix;
  dots.width = want.width;
  return drawn_json(want, {draw(dots), {}, "enter the draws of a proving"});
}

}  // namespace forecourse::server
