#include "forecourse/checks/ledger_checks.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/records_told.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/studies/ledger/read_ledger_options.h"
#include "forecourse/studies/ledger/stocks.h"

namespace forecourse::server {
namespace {

using report::Json;

studies::LedgerOptions read_ledger_want(WantReader& want) {
  studies::LedgerAsked asked;
  asked.tank = want.text("tank");
  asked.month = want.text("month");
  asked.from = want.text("from");
  asked.to = want.text("to");
  asked.delivered_as = want.text("delivered_as");
  asked.meter_errors = want.texts("meter_errors");
  asked.evaporation = want.text("evaporation");
  asked.reading_deviation = want.text("reading_deviation");
  asked.delivery_deviation = want.text("delivery_deviation");
  asked.sales_deviation = want.text("sales_deviation");
  asked.smallest_leak = want.text("smallest_leak");
  asked.own_volume = want.text("own_volume");
  asked.own_drift = want.text("own_drift");
  asked.own_expansion = want.text("own_expansion");
  auto read = studies::read_ledger_options(asked, studies::Asker::page);
  if (!read.ok()) want.refuse(read.diagnostics.front().message, read.diagnostics.front().hint);
  return std::move(read.value);
}

/// The names of all books, whichever are asked for.
Json books_json(const site::Site& site) {
  return report::array_of(studies::book_plans(site, parts::Ready::none), [](const studies::BookPlan& plan) {
    return Json{{"name", plan.name}, {"product", plan.product}};
  });
}

}  // namespace

Json ledger_answer(const Asked& asked) {
  WantReader want(asked.want, ledger_members);
  const studies::LedgerOptions options = read_ledger_want(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  const std::shared_ptr<const ReadRecords> records = asked.records ? asked.records(opened.site) : nullptr;
  if (!records) return no_records();
  const std::vector<Diagnostic> wrong = studies::check_options(opened.site, options);
  if (!wrong.empty()) return refused(wrong);
  std::vector<SourceText> texts = opened.texts;
  texts.insert(texts.end(), records->texts.begin(), records->texts.end());
  if (!records->read.ok()) return unreadable(*records, texts);
  studies::LedgerResult result = studies::study_ledger(opened.site, records->read.value, options, asked.context);
  const std::vector<Diagnostic>& read = records->read.diagnostics;
  result.warnings.insert(result.warnings.begin(), read.begin(), read.end());
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  const report::LedgerFacts facts{{}, {}, texts, checks::check_ledger(result), {}, opened.site.display};
  return {{"document", report::ledger_document(result, facts)},
          {"records", records_json(*records)},
          {"books", books_json(opened.site)}};
}

}  // namespace forecourse::server
