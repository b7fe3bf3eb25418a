#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/meter/meter_view.h"

namespace forecourse::report {
namespace {

using studies::MeterDrift;
using studies::MeterTold;

template <class Q>
Json quantity_json(const std::optional<Q>& value) {
  return value ? Json(value->si()) : Json();
}

Json day_json(const std::optional<studies::Day>& day) { return day ? Json(studies::text(*day)) : Json(); }

Json limit_json(const studies::MeterLimit& limit) {
  return {{"name", limit.name},
          {"share", number_or_null(limit.share)},
          {"volume_m3", number_or_null(limit.volume)},
          {"draft_m3", limit.volume ? Json(limit.draft) : Json()},
          {"in_proportion", limit.in_proportion},
          {"base_m3", limit.base},
          {"least_m3", limit.least},
          {"for", word(limit.of)},
          {"clause", text_or_null(limit.clause)},
          {"edition", text_or_null(limit.edition)},
          {"known", word(limit.seen)},
          {"verified", limit.seen == studies::LimitSeen::verified},
          {"applies", limit.applies},
          {"words", text_or_null(limit.words)}};
}

Json judged_json(const studies::MeterJudged& judged) {
  return {{"limit", judged.limit},
          {"draft_m3", judged.draft},
          {"allowed_m3", number_or_null(judged.allowed)},
          {"allowed_share", number_or_null(judged.allowed_share)},
          {"error_m3", judged.error_volume},
          {"error", judged.error},
          {"within", judged.within ? Json(*judged.within) : Json()}};
}

Json draw_json(const network::MeterDraw& draw, const std::vector<studies::MeterJudged>& judged,
               const std::vector<SourceText>& texts) {
  const site::records::Proving& entered = draw.entered;
  return {{"draw", text_or_null(entered.draw.text)},
          {"time_s", quantity_json(entered.at.time)},
          {"problem", text_or_null(draw.problem)},
          {"flow_m3_per_s", quantity_json(entered.flow)},
          {"indicated_m3", draw.indicated},
          {"read_m3", number_or_null(draw.read)},
          {"held_m3", number_or_null(draw.held)},
          {"given_m3", number_or_null(draw.given)},
          {"measure_temperature_k", quantity_json(entered.measure_temperature)},
          {"meter_temperature_k", quantity_json(entered.meter_temperature)},
          {"reference_temperature_k", draw.read ? Json(draw.reference) : Json()},
          {"expansion_per_k", draw.expansion},
          {"error", number_or_null(draw.error)},
          {"error_m3", number_or_null(draw.error_volume)},
          {"plain_error", number_or_null(draw.plain_error)},
          {"fuel_by", text_or_null(draw.fuel_by)},
          {"left_out", draw.left_out},
          {"limits", array_of(judged, judged_json)},
          {"by", text_or_null(entered.by.text)},
          {"note", text_or_null(entered.note.text)},
          {"place", place_json(entered.hose.where, texts)}};
}

Json set_json(const network::DrawSet& set) {
  return {{"draws", set.count},
          {"mean", number_or_null(set.mean)},
          {"deviation", number_or_null(set.deviation)},
          {"standard_error", number_or_null(set.standard_error)},
          {"repeatability", number_or_null(set.repeatability)}};
}

Json set_json(const std::optional<network::DrawSet>& set) { return set ? set_json(*set) : Json(); }

Json proving_json(const studies::ProvingTold& told, const std::vector<SourceText>& texts) {
  Json draws = Json::array();
  for (std::size_t i = 0; i < told.draws.size(); ++i) {
    draws.push_back(draw_json(told.proving.draws[i], told.draws[i], texts));
  }
  return {{"day", studies::text(told.day)},
          {"as_left", told.proving.as_left},
          {"state", text_or_null(told.proving.draws.front().entered.state.text)},
          {"all", set_json(told.proving.all)},
          {"fast", set_json(told.proving.fast)},
          {"slow", set_json(told.proving.slow)},
          {"worst", told.worst ? Json(*told.worst) : Json()},
          {"against", array_of(told.against,
                               [](const studies::WorstDraw& one) {
                                 return Json{{"draw", one.draw}, {"limit", one.judged.limit}};
                               })},
          {"draws", std::move(draws)}};
}

/// \param x the key of what it runs over; days are told as days
Json drift_json(const MeterDrift& drift, const std::string& x, bool days) {
  const auto at = [&](const std::optional<double>& value) -> Json {
    if (!value) return {};
    return days ? Json(studies::text(studies::Day{static_cast<int>(std::lround(*value))})) : Json(*value);
  };
  Json points = Json::array();
  for (std::size_t i = 0; i < drift.x.size(); ++i) points.push_back({{x, at(drift.x[i])}, {"error", drift.error[i]}});
  const double seconds_of_day = to_si(1.0, "d");
  const double unit = days ? seconds_of_day : 1.0;
  const char* slope = days ? "slope_per_s" : "slope_per_m3";
  const char* error = days ? "standard_error_per_s" : "standard_error_per_m3";
  return {{"problem", text_or_null(drift.problem)},
          {"provings", drift.provings},
          {"points", std::move(points)},
          {slope, drift.slope ? Json(*drift.slope / unit) : Json()},
          {error, drift.standard_error ? Json(*drift.standard_error / unit) : Json()},
          {"told_apart", drift.told_apart},
          {"limit_share", number_or_null(drift.share)},
          {"earliest_" + x, at(drift.earliest)},
          {"latest_" + x, at(drift.latest)},
          {"horizon_" + x, drift.problem.empty() ? at(drift.horizon) : Json()}};
}

Json meter_json(const MeterTold& meter, const MeterFacts& facts) {
  const std::vector<SourceText>& texts = facts.texts;
  const studies::MeterYear& year = meter.year;
  return {
      {"hose", meter.hose},
      {"product", meter.product},
      {"error", number_or_null(meter.error)},
      {"standard_error", number_or_null(meter.standard_error)},
      {"who_loses", meter.who_loses},
      {"answer", meter_answer(meter, facts.display, Glyphs::unicode)},
      {"year",
       {{"sold_m3", number_or_null(year.volume)},
        {"by", year.words},
        {"days", year.days},
        {"error_m3", number_or_null(year.error)},
        {"money", number_or_null(year.money)},
        {"currency", text_or_null(year.currency)},
        {"price_missing", text_or_null(year.price_words)}}},
      {"drift_by_time", drift_json(meter.by_time, "day", true)},
      {"drift_by_volume", drift_json(meter.by_volume, "total_m3", false)},
      {"provings", array_of(meter.provings, [&](const studies::ProvingTold& one) { return proving_json(one, texts); })},
      {"place", place_json(meter.where, texts)}};
}

Json book_json(const studies::MetersOfBook& book, const MeterFacts& facts) {
  return {{"book", book.book.book},
          {"answer", book_meters_answer(book, facts.display, Glyphs::unicode)},
          {"product", book.book.product},
          {"from", studies::text(book.book.from)},
          {"to", studies::text(book.book.to)},
          {"over_short_m3", book.book.over_short},
          {"explained_m3", book.explained},
          {"left_m3", book.left},
          {"unexplained_m3", book.book.unexplained},
          {"standard_error_m3", number_or_null(book.book.standard_error)},
          {"meters", array_of(book.shares, [](const studies::MeterShare& share) {
             return Json{{"hose", text_or_null(share.sold.hose)},
                         {"sold_m3", share.sold.sold},
                         {"known_m3", share.sold.known},
                         {"error", number_or_null(share.error)},
                         {"volume_m3", number_or_null(share.sold.volume)},
                         {"standard_error_m3", number_or_null(share.sold.standard_error)},
                         {"alone_error", number_or_null(share.alone)}};
           })}};
}

Json options_json(const studies::MeterOptions& o) {
  return {{"hose", text_or_null(o.hose)},
          {"from", day_json(o.from)},
          {"to", day_json(o.to)},
          {"expansion_per_k", number_or_null(o.expansion)},
          {"prices", array_of(o.prices,
                              [](const studies::MeterPrice& price) {
                                return Json{{"product", text_or_null(price.product)},
                                            {"price_per_m3", price.price},
                                            {"currency", text_or_null(price.currency)}};
                              })},
          {"yearly", array_of(o.yearly,
                              [](const studies::YearlyVolume& one) {
                                return Json{{"hose", text_or_null(one.hose)}, {"volume_m3", one.volume}};
                              })},
          {"limits", array_of(o.limits, limit_json)}};
}

}  // namespace

Json meter_document(const studies::MeterResult& result, const MeterFacts& facts) {
  JsonDocument out;
  out.study = "meter";
  out.version = result.version;
  out.cautions = meter_cautions();
  out.options = options_json(result.options);
  out.defaults = result.defaults;
  out.findings = findings_json(facts.findings, facts.texts);
  out.warnings = result.warnings;
  out.result = {
      {"limits", array_of(result.limits, limit_json)},
      {"meters", array_of(result.meters, [&](const MeterTold& m) { return meter_json(m, facts); })},
      {"unproved", result.unproved},
      {"books", array_of(result.books, [&](const studies::MetersOfBook& book) { return book_json(book, facts); })}};
  return document(out, facts.texts);
}

}  // namespace forecourse::report
