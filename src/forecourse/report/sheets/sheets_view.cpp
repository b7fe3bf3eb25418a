#include "forecourse/report/sheets/sheets_view.h"

#include <cmath>
#include <optional>

#include "forecourse/base/unit_text.h"

namespace forecourse::report {
namespace {

using handover::Amount;
using handover::Blank;

constexpr double large_volume = 0.2;  // [m3] from here on without decimals
constexpr double long_time = 120.0;   // [s] from here on in minutes

std::optional<Measure> measure_of(Amount amount) {
  switch (amount) {
    case Amount::flow:
      return Measure::flow;
    case Amount::leak:
      return Measure::leak;
    case Amount::caught:
      return Measure::caught;
    case Amount::pressure:
      return Measure::pressure;
    case Amount::vapor_pressure:
      return Measure::ullage_pressure;
    case Amount::vapor_leak:
      return Measure::vapor_leak;
    case Amount::depth:
      return Measure::bore;
    case Amount::height:
      return Measure::length;
    case Amount::volume:
      return Measure::volume;
    case Amount::draw:
      return Measure::draw;
    case Amount::temperature:
      return Measure::temperature;
    default:
      return std::nullopt;
  }
}

const char* blank(Glyphs glyphs) { return glyphs == Glyphs::unicode ? "\u00A0" : " "; }

void join(std::string& out, const std::string& more, const char* with = "; ") {
  if (more.empty()) return;
  out += (out.empty() ? "" : with) + more;
}

}  // namespace

std::string sheet_amount(Amount amount, site::Display display, double si, Glyphs glyphs) {
  const auto measure = measure_of(amount);
  if (measure == Measure::volume && std::abs(si) >= large_volume) {
    return number(shown_value(*measure, display, si), 0, glyphs) + blank(glyphs) +
           unit_label(*measure, display, glyphs);
  }
  if (measure) return with_unit(*measure, display, si, glyphs);
  if (amount == Amount::share) return number(100.0 * si, 1, glyphs) + blank(glyphs) + "%";
  if (amount == Amount::time) return time_span(si, glyphs);
  if (amount == Amount::resistance) return number(si, 2, glyphs) + blank(glyphs) + "ohm";
  return number(si, 0, glyphs);
}

std::string RowWords::shown(Amount amount, double si) const { return sheet_amount(amount, display_, si, glyphs_); }

std::string RowWords::bare_value() const { return row_.value ? shown(row_.amount, *row_.value) : std::string(); }

std::string RowWords::value() const {
  std::string out = bare_value();
  join(out, row_.value_by, ", ");
  join(out, beside());
  return out;
}

std::string RowWords::beside() const {
  std::string out = row_.words;
  for (const handover::SheetFigure& one : row_.figures) join(out, one.label + " " + shown(one.amount, one.value));
  if (row_.missing != row_.words) join(out, row_.missing);
  if (!row_.rests_on.empty()) join(out, "rests on " + row_.rests_on);
  return out;
}

std::string RowWords::range(const std::optional<double>& low, const std::optional<double>& high) const {
  if (low && high && *low == *high) return shown(row_.amount, *low);
  if (low && high) return shown(row_.amount, *low) + " to " + shown(row_.amount, *high);
  if (low) return (row_.limit.strict ? "above " : "at least ") + shown(row_.amount, *low);
  if (high) return (row_.limit.strict ? "below " : "at most ") + shown(row_.amount, *high);
  return {};
}

std::string RowWords::tolerance() const {
  std::string out = row_.tolerance.known() ? range(row_.tolerance.low, row_.tolerance.high) : std::string();
  join(out, row_.tolerance.source, ", ");
  return out;
}

std::string RowWords::limit() const {
  const bool is_amount = row_.amount != Amount::none;
  std::string out = is_amount ? range(row_.limit.at_least, row_.limit.at_most) : std::string();
  if (row_.blank == Blank::amount && out.empty()) out = row_.limit.words;
  join(out, row_.limit.clause);
  if (row_.limit.clause.empty()) return out;
  if (!row_.limit.verified) out += " (text not seen)";
  if (!row_.limit.binds) out += " (not a rule the site names)";
  return out;
}

bool RowWords::in_seconds() const {
  const std::optional<double> size = row_.limit.at_most    ? row_.limit.at_most
                                     : row_.limit.at_least ? row_.limit.at_least
                                                           : row_.value;
  return size && *size < long_time;
}

std::string RowWords::blank_unit() const {
  if (row_.blank == Blank::yes_no) return "yes/no";
  if (row_.blank != Blank::amount) return {};
  if (row_.amount == Amount::time) return in_seconds() ? "s" : "min";
  if (row_.amount == Amount::share) return "%";
  if (const auto measure = measure_of(row_.amount)) return unit_label(*measure, display_, glyphs_);
  return handover::unit_of(row_.amount);
}

std::string in_words(const handover::ReadingTold& reading, site::Display display, Glyphs glyphs) {
  const RowWords row(reading.row, display, glyphs);
  std::string out = reading.row.part.empty() ? "" : reading.row.part + ", ";
  out += reading.row.what + ": " + reading.value;
  join(out, row.bare_value(), " against ");
  join(out, reading.reason, ", ");
  if (reading.row.tolerance.known()) join(out, "tolerance " + row.tolerance());
  join(out, row.limit());
  return out;
}

}  // namespace forecourse::report
