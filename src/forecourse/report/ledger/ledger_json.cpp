#include "forecourse/report/findings.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"

namespace forecourse::report {
namespace {

using studies::LedgerBook;

Json day_json(const std::optional<studies::Day>& day) { return day ? Json(studies::text(*day)) : Json(); }

Json month_json(const studies::LedgerMonth& month) {
  return {{"month", studies::month_text(month.first)},
          {"intervals", month.intervals},
          {"missing_days", month.missing_days},
          {"sold_m3", month.sold},
          {"delivered_m3", month.delivered},
          {"over_short_m3", month.over_short},
          {"limit_m3", month.limit},
          {"deviation_m3", number_or_null(month.deviation)},
          {"state", month_state(month)},
          {"exceeds", month.exceeds},
          {"whole", month.whole},
          {"confirmed", month.confirmed},
          {"unsettled", month.unsettled}};
}

Json row_json(const studies::LedgerRow& row, const std::vector<SourceText>& texts) {
  return {{"day", studies::text(row.day)},
          {"hours_h", row.hours},
          {"opening_m3", row.opening},
          {"delivered_m3", row.delivered},
          {"deliveries", row.deliveries},
          {"sold_m3", row.sold},
          {"returned_m3", row.returned},
          {"book_m3", row.book},
          {"measured_m3", row.measured},
          {"over_short_m3", row.over_short},
          {"running_m3", row.running},
          {"limit_m3", row.limit},
          {"depth_m", number_or_null(row.depth)},
          {"water_m3", number_or_null(row.water)},
          {"temperature_k", number_or_null(row.temperature)},
          {"outside", row.outside},
          {"place", place_json(row.where, texts)}};
}

Json terms_json(const std::optional<studies::LedgerTerms>& terms) {
  if (!terms) return {};
  return {{"over_short_m3", terms->over_short},
          {"terms", array_of(terms->terms,
                             [](const studies::LedgerTerm& term) {
                               return Json{{"cause", term.cause},
                                           {"volume_m3", number_or_null(term.volume)},
                                           {"standard_error_m3", number_or_null(term.standard_error)},
                                           {"words", term.words}};
                             })},
          {"unexplained_m3", terms->unexplained},
          {"standard_error_m3", number_or_null(terms->standard_error)},
          {"net_less_gross_m3", terms->net_less_gross},
          {"returned_m3", terms->returned},
          {"water_rise_m3", number_or_null(terms->water_rise)}};
}

Json fault_json(const studies::LedgerFault& fault) {
  return {{"kind", fault.kind == studies::LedgerFault::Kind::reading ? "reading" : "step"},
          {"day", studies::text(fault.day)},
          {"size_m3", fault.size},
          {"standard_error_m3", fault.standard_error},
          {"depth_m", number_or_null(fault.depth)},
          {"words", fault.words}};
}

Json chart_json(const studies::LossFit& loss) {
  return {{"cusum_reference", loss.cusum.reference},
          {"cusum_limit", loss.cusum.limit},
          {"cusum_run_length", loss.cusum_run_length},
          {"ewma_weight", loss.ewma.weight},
          {"ewma_limit", loss.ewma.limit},
          {"ewma_run_length", loss.ewma_run_length},
          {"points", array_of(loss.chart, [](const studies::ChartPoint& point) {
             return Json{{"day", studies::text(point.day)},
                         {"value", point.value},
                         {"cusum_upper", point.cusum.upper},
                         {"cusum_lower", point.cusum.lower},
                         {"cusum_signals", point.cusum.signals_up || point.cusum.signals_down},
                         {"ewma", point.ewma.average},
                         {"ewma_limit", point.ewma.limit},
                         {"ewma_signals", point.ewma.signals}};
           })}};
}

Json loss_json(const std::optional<studies::LossFit>& loss) {
  if (!loss) return {};
  if (!loss->problem.empty()) return {{"problem", loss->problem}};
  return {{"problem", nullptr},
          {"rate_m3_per_s", loss->rate},
          {"standard_error_m3_per_s", loss->standard_error},
          {"degrees_of_freedom", loss->degrees},
          {"threshold_m3_per_s", loss->threshold},
          {"detectable_m3_per_s", loss->detectable},
          {"asked_m3_per_s", loss->asked},
          {"found_with", loss->found_with},
          {"scatter", loss->scatter},
          {"neighbors", loss->neighbors},
          {"scatter_fits", loss->scatter_fits},
          {"verdict", studies::word(loss->verdict)},
          {"why", loss->why},
          {"open_causes", loss->open_causes},
          {"meters_proved", loss->meters_proved},
          {"meter_alike", loss->meter_alike},
          {"faults", array_of(loss->faults, fault_json)},
          {"free", array_of(loss->free,
                            [](const studies::FreeTerm& term) {
                              return Json{{"cause", term.cause},
                                          {"unit", term.unit},
                                          {"value", number_or_null(term.value)},
                                          {"standard_error", number_or_null(term.standard_error)},
                                          {"told_from_zero", term.told_from_zero}};
                            })},
          {"not_parted", array_of(loss->not_parted,
                                  [](const studies::NotParted& one) {
                                    return Json{{"causes", one.causes},
                                                {"correlation", number_or_null(one.correlation)},
                                                {"what_would", one.what_would}};
                                  })},
          {"chart", chart_json(*loss)}};
}

Json next_json(const std::optional<studies::LedgerNext>& next) {
  if (!next) return {};
  return {{"day", studies::text(next->day)},
          {"time", text_or_null(next->time)},
          {"business_day", studies::text(next->business)},
          {"opening_m3", next->opening},
          {"delivered_m3", next->delivered},
          {"deliveries", next->deliveries},
          {"sold_m3", next->sold},
          {"sales", next->sales},
          {"returned_m3", next->returned},
          {"book_m3", next->book},
          {"depth_m", number_or_null(next->depth)}};
}

Json book_json(const LedgerBook& book, const LedgerFacts& facts) {
  return {{"name", book.name},
          {"product", book.product},
          {"tanks", book.tanks},
          {"joined", text_or_null(book.joined)},
          {"problem", text_or_null(book.problem)},
          {"rows", array_of(book.rows, [&](const studies::LedgerRow& row) { return row_json(row, facts.texts); })},
          {"months", array_of(book.months, month_json)},
          {"period", {{"from_row", book.from}, {"to_row", book.to}}},
          {"explained", terms_json(book.terms)},
          {"meters", array_of(book.meters,
                              [](const studies::MeterSold& meter) {
                                return Json{{"hose", text_or_null(meter.hose)},
                                            {"sold_m3", meter.sold},
                                            {"known_m3", meter.known},
                                            {"volume_m3", number_or_null(meter.volume)},
                                            {"standard_error_m3", number_or_null(meter.standard_error)}};
                              })},
          {"loss", loss_json(book.loss)},
          {"next", next_json(book.next)},
          {"answer", book_answer(book, facts.display, Glyphs::unicode)},
          {"what_next", what_next(book, facts.display, Glyphs::unicode)},
          {"not_parted", not_parted(book, Glyphs::unicode)}};
}

Json gauging_json(const studies::ManualGauging& one) {
  return {{"tank", one.tank},
          {"row", one.rule->words},
          {"hours_h", one.rule->hours},
          {"weekly_m3", one.rule->weekly},
          {"monthly_m3", one.rule->monthly},
          {"alone", one.rule->alone},
          {"mean_m3", number_or_null(one.mean)},
          {"words", text_or_null(one.words)},
          {"tests", array_of(one.tests, [](const studies::GaugingTest& test) {
             return Json{{"day", studies::text(test.day)},
                         {"hours_h", test.hours},
                         {"change_m3", test.change},
                         {"within", test.within}};
           })}};
}

Json own_json(const std::optional<studies::OwnTest>& test) {
  if (!test) return {};
  return {{"volume_m3", test->volume},          {"drift_k_per_s", test->drift},
          {"expansion_per_k", test->expansion}, {"apparent_m3_per_s", test->apparent},
          {"hides_k_per_s", test->hides},       {"must_find_m3_per_s", test->must_find}};
}

Json options_json(const studies::LedgerOptions& options) {
  return {{"tank", text_or_null(options.tank)},
          {"month", options.month ? Json(studies::month_text(*options.month)) : Json()},
          {"from", day_json(options.from)},
          {"to", day_json(options.to)},
          {"delivered_as", studies::word(options.delivered_as)},
          {"meters", array_of(options.meters,
                              [](const studies::MeterError& one) {
                                return Json{{"hose", text_or_null(one.hose)},
                                            {"error", one.error},
                                            {"standard_error", number_or_null(one.standard_error)}};
                              })},
          {"measure_expansion_per_k", number_or_null(options.measure_expansion)},
          {"evaporation", number_or_null(options.evaporation)},
          {"reading_deviation_m", number_or_null(options.reading_deviation)},
          {"delivery_deviation", number_or_null(options.delivery_deviation)},
          {"sales_deviation", number_or_null(options.sales_deviation)},
          {"smallest_leak_m3_per_s", options.smallest_leak > 0.0 ? Json(options.smallest_leak) : Json()},
          {"own_volume_m3", number_or_null(options.own_volume)},
          {"own_drift_k_per_s", number_or_null(options.own_drift)},
          {"own_expansion_per_k", number_or_null(options.own_expansion)}};
}

}  // namespace

Json ledger_document(const studies::LedgerResult& result, const LedgerFacts& facts) {
  JsonDocument out;
  out.study = "ledger";
  out.version = result.version;
  out.cautions = ledger_cautions();
  out.options = options_json(result.options);
  out.defaults = result.defaults;
  out.findings = findings_json(facts.findings, facts.texts);
  out.warnings = result.warnings;
  out.result = {{"books", array_of(result.books, [&](const LedgerBook& book) { return book_json(book, facts); })},
                {"first", ledger_falls_short(result) ? Json(ledger_first) : Json()},
                {"manual_gauging", array_of(result.gauging, gauging_json)},
                {"own_test", own_json(result.own_test)}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
