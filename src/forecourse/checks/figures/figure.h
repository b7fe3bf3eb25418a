#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/quantity.h"
#include "forecourse/checks/finding.h"
#include "forecourse/checks/rules/facts.h"

namespace forecourse::checks {

/// A figure of one part of a station.
struct FigureAt {
  std::string subject;             ///< id of the part; of the station: "station"
  SourceSpan where{};              ///< of the value, else of the part
  std::optional<double> value;     ///< [SI] of an amount
  std::optional<bool> fact;        ///< of a fact
  std::optional<site::Date> day;   ///< of a day
  std::optional<double> at_least;  ///< [SI] the limit that this part has of its own
  std::optional<double> at_most;
  std::optional<double> deviation;   ///< [SI] standard deviation of the value
  std::string enter;                 ///< where it is not known: what to enter
  std::string rests_on;              ///< an unpublished default that the value rests on; empty: none
  std::string exempt;                ///< why no requirement on it applies to this part; empty: one may
  std::optional<site::Date> failed;  ///< of a day: on which the last test failed, which no later one was passed after
};

enum class FigureKind { amount, fact, day };

/// Something of a station that a requirement can be set on.
struct Figure {
  std::string_view id;     ///< "hose-length"
  std::string_view words;  ///< "length of a hanging hose, whip and curb hose together"
  FigureKind kind = FigureKind::fact;
  const QuantityKind* quantity = nullptr;  ///< of an amount; null: a count
  const char* unit = "";                   ///< SI unit of an amount, as a finding has it: "m", "m3/s", "share"
  Measured of = Measured::fuel;
  std::vector<FigureAt> (*read)(const Facts& facts) = nullptr;
};

using ReadFigure = std::vector<FigureAt> (*)(const Facts& facts);
[[nodiscard]] inline Figure fact_figure(std::string_view id, std::string_view words, ReadFigure read) {
  return {id, words, FigureKind::fact, nullptr, "", Measured::fuel, read};
}
[[nodiscard]] inline Figure day_figure(std::string_view id, std::string_view words, ReadFigure read) {
  return {id, words, FigureKind::day, nullptr, "", Measured::age, read};
}
/// A time between two days.
[[nodiscard]] inline Figure time_figure(std::string_view id, std::string_view words, ReadFigure read) {
  return {id, words, FigureKind::amount, &Duration::kind(), "s", Measured::age, read};
}
[[nodiscard]] inline Figure length_figure(std::string_view id, std::string_view words, ReadFigure read) {
  return {id, words, FigureKind::amount, &Length::kind(), "m", Measured::fuel, read};
}
[[nodiscard]] inline Figure leak_figure(std::string_view id, std::string_view words, ReadFigure read) {
  return {id, words, FigureKind::amount, &VolumeFlow::kind(), "m3/s", Measured::leak, read};
}

/// Every figure, in the order of the course of the fuel.
[[nodiscard]] const std::vector<Figure>& figures();

/// Null where there is none.
[[nodiscard]] const Figure* find_figure(std::string_view id);

// The figures of one kind of part each; a new one is a line in one of these.
[[nodiscard]] std::vector<Figure> tank_figures();
[[nodiscard]] std::vector<Figure> monitoring_figures();
[[nodiscard]] std::vector<Figure> probability_figures();
[[nodiscard]] std::vector<Figure> well_figures();
[[nodiscard]] std::vector<Figure> spill_figures();
[[nodiscard]] std::vector<Figure> vapor_figures();
[[nodiscard]] std::vector<Figure> line_figures();
[[nodiscard]] std::vector<Figure> repair_figures();
[[nodiscard]] std::vector<Figure> sump_figures();
[[nodiscard]] std::vector<Figure> dispenser_figures();
[[nodiscard]] std::vector<Figure> tank_place_figures();
[[nodiscard]] std::vector<Figure> protected_tank_figures();
[[nodiscard]] std::vector<Figure> burial_figures();
[[nodiscard]] std::vector<Figure> piping_test_figures();
[[nodiscard]] std::vector<Figure> access_figures();
[[nodiscard]] std::vector<Figure> extinguisher_figures();
[[nodiscard]] std::vector<Figure> hose_figures();
[[nodiscard]] std::vector<Figure> spout_figures();
[[nodiscard]] std::vector<Figure> meter_figures();
[[nodiscard]] std::vector<Figure> safety_figures();
[[nodiscard]] std::vector<Figure> ground_figures();
[[nodiscard]] std::vector<Figure> equipment_figures();
[[nodiscard]] std::vector<Figure> listing_figures();
[[nodiscard]] std::vector<Figure> pressure_figures();
[[nodiscard]] std::vector<Figure> recovery_figures();
[[nodiscard]] std::vector<Figure> practice_figures();
[[nodiscard]] std::vector<Figure> study_figures();
[[nodiscard]] std::vector<Figure> record_figures();

/// A figure of a part that is entered or not.
[[nodiscard]] FigureAt entered_fact(std::string subject, SourceSpan where, const site::Fact& fact, std::string enter);
[[nodiscard]] FigureAt entered_day(std::string subject, SourceSpan where, const std::optional<site::Date>& day,
                                   std::string enter);
template <class Q>
[[nodiscard]] FigureAt entered_amount(std::string subject, SourceSpan where, const site::Maybe<Q>& amount,
                                      std::string enter) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = amount ? amount->where : where;
  if (amount) {
    out.value = amount->likely.si();
  } else {
    out.enter = std::move(enter);
  }
  return out;
}

}  // namespace forecourse::checks
