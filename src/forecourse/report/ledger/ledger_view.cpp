#include "forecourse/report/ledger/ledger_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace forecourse::report {
namespace {

using studies::LedgerBook;
using studies::LedgerMonth;
using studies::LedgerRow;

/// Writes values of one display.
struct Show {
  site::Display display;
  Glyphs glyphs;

  [[nodiscard]] std::string volume(double si) const { return number(Measure::volume, display, si, glyphs); }
  [[nodiscard]] std::string volume(const std::optional<double>& si) const { return si ? volume(*si) : ""; }
  [[nodiscard]] std::string with_volume(double si) const { return with_unit(Measure::volume, display, si, glyphs); }
  [[nodiscard]] std::string leak(double si) const { return with_unit(Measure::leak, display, si, glyphs); }
  [[nodiscard]] std::string head(const std::string& words, Measure measure) const {
    return words + ", " + unit_label(measure, display, glyphs);
  }
};

const char* over_or_short(double volume) { return volume < 0.0 ? "short" : "over"; }

std::string state_of(const LedgerMonth& month) {
  const std::string state = month_state(month);
  return month.confirmed && month.unsettled.empty() ? state + ", second month" : state;
}

bool in_period(const LedgerBook& book, std::size_t i) { return i >= book.from && i < book.to; }

/// The month that holds the last row of the period; none where the period has no row.
const LedgerMonth* month_told(const LedgerBook& book) {
  if (book.months.empty() || book.to == book.from) return nullptr;
  const studies::Day first = month_of(book.rows[book.to - 1].day);
  for (const LedgerMonth& month : book.months) {
    if (month.first == first) return &month;
  }
  return nullptr;
}

std::string percent(double share, int decimals, Glyphs glyphs) {
  return number(100.0 * share, decimals, glyphs) + " %";
}

/// A coefficient of the free fit in a unit that people read.
std::string free_value(const studies::FreeTerm& term, double si, const Show& show) {
  if (term.unit == "m3/s") return show.leak(si);
  if (term.unit == "m") return with_unit(Measure::bore, show.display, si, show.glyphs);
  return percent(si, 3, show.glyphs);
}

}  // namespace

const char* month_state(const LedgerMonth& month) {
  if (!month.unsettled.empty()) return "not determined";
  if (month.exceeds) return "falls short";
  if (!month.whole) return "not determined";
  const double margin = month.limit - std::abs(month.over_short);
  return month.deviation && margin < *month.deviation ? "close" : "meets";
}

bool ledger_falls_short(const studies::LedgerResult& result) {
  return std::any_of(result.books.begin(), result.books.end(), [](const LedgerBook& book) {
    return std::any_of(book.months.begin(), book.months.end(), [](const LedgerMonth& m) { return m.exceeds; });
  });
}

WordTable month_table(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{
      {"Month", show.head("Sold", Measure::volume), show.head("Delivered", Measure::volume),
       show.head("Over or short", Measure::volume), show.head("Limit", Measure::volume), "Days not read", "State"},
      {false, true, true, true, true, true, false},
      {}};
  for (const LedgerMonth& month : book.months) {
    out.rows.push_back({studies::month_text(month.first), show.volume(month.sold), show.volume(month.delivered),
                        show.volume(month.over_short), show.volume(month.limit), std::to_string(month.missing_days),
                        state_of(month)});
  }
  return out;
}

WordTable day_table(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{{"Day", show.head("Dip", Measure::bore), show.head("In tank", Measure::volume),
                 show.head("Delivered", Measure::volume), show.head("Sold", Measure::volume),
                 show.head("Over or short", Measure::volume), show.head("Running", Measure::volume),
                 show.head("Limit", Measure::volume), "Outside"},
                {false, true, true, true, true, true, true, true, false},
                {}};
  for (std::size_t i = 0; i < book.rows.size(); ++i) {
    if (!in_period(book, i)) continue;
    const LedgerRow& row = book.rows[i];
    out.rows.push_back({studies::text(row.day), row.depth ? number(Measure::bore, display, *row.depth, glyphs) : "",
                        show.volume(row.measured), row.deliveries > 0 ? show.volume(row.delivered) : "",
                        show.volume(row.sold), show.volume(row.over_short), show.volume(row.running),
                        show.volume(row.limit), row.outside ? "outside" : ""});
  }
  return out;
}

WordTable term_table(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{{"Cause", show.head("Adds", Measure::volume), show.head("Standard error", Measure::volume), "By"},
                {false, true, true, false},
                {}};
  if (!book.terms) return out;
  out.rows.push_back({"over or short", show.volume(book.terms->over_short), "", "measured less book"});
  for (const studies::LedgerTerm& term : book.terms->terms) {
    out.rows.push_back({term.cause, term.volume ? show.volume(*term.volume) : "not known",
                        show.volume(term.standard_error), term.words});
  }
  out.rows.push_back({"not explained", show.volume(book.terms->unexplained), show.volume(book.terms->standard_error),
                      "what the causes leave"});
  return out;
}

WordTable fault_table(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{{"Day", "What", show.head("Size", Measure::volume), show.head("Standard error", Measure::volume),
                 show.head("On the stick", Measure::bore), "Look at"},
                {false, false, true, true, true, false},
                {}};
  if (!book.loss) return out;
  for (const studies::LedgerFault& fault : book.loss->faults) {
    const bool reading = fault.kind == studies::LedgerFault::Kind::reading;
    out.rows.push_back({studies::text(fault.day), reading ? "reading" : "step", show.volume(fault.size),
                        show.volume(fault.standard_error),
                        fault.depth ? number(Measure::bore, display, *fault.depth, glyphs) : "", fault.words});
  }
  return out;
}

WordTable free_table(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{{"Cause", "Value", "Standard error", "Told from zero"}, {false, true, true, false}, {}};
  if (!book.loss) return out;
  for (const studies::FreeTerm& term : book.loss->free) {
    const double sign = term.unit == "m3/s" ? -1.0 : 1.0;  // a loss is told positive
    out.rows.push_back({term.cause, term.value ? free_value(term, sign * *term.value, show) : "cannot be told",
                        term.standard_error ? free_value(term, *term.standard_error, show) : "",
                        term.told_from_zero ? "yes" : "no"});
  }
  return out;
}

WordTable gauging_table(const studies::LedgerResult& result, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  WordTable out{
      {"Tank", "Row of the table", "Quiet, h", show.head("Week", Measure::volume), show.head("Month", Measure::volume),
       "Tests", show.head("Last", Measure::volume), show.head("Mean of four", Measure::volume), "Missing"},
      {false, false, true, true, true, true, true, true, false},
      {}};
  for (const studies::ManualGauging& one : result.gauging) {
    out.rows.push_back({one.tank, one.rule->words, number(one.rule->hours, 0, glyphs), show.volume(one.rule->weekly),
                        show.volume(one.rule->monthly), std::to_string(one.tests.size()),
                        one.tests.empty() ? "" : show.volume(one.tests.back().change), show.volume(one.mean),
                        one.words});
  }
  return out;
}

std::vector<std::string> book_answer(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  if (!book.problem.empty()) return {book.problem + "."};
  std::vector<std::string> out;
  if (const LedgerMonth* month = month_told(book)) {
    const char* so_far = month->whole ? "" : " so far";
    out.push_back(fmt::format("{}: {} {}{}, the limit{} {} ({}).", studies::month_text(month->first),
                              show.with_volume(std::abs(month->over_short)), over_or_short(month->over_short), so_far,
                              so_far, show.with_volume(month->limit), state_of(*month)));
    if (!month->whole) out.emplace_back("Its readings do not go from its first day to its last.");
  } else {
    out.emplace_back("No reading lies in the period asked for.");
  }
  if (book.terms) {
    const double left = book.terms->unexplained;
    std::string words = fmt::format("Not explained: {} {}", show.with_volume(std::abs(left)), over_or_short(left));
    if (const auto& error = book.terms->standard_error) {
      words += fmt::format(", standard error {}{}", show.with_volume(*error),
                           std::abs(left) < 2.0 * *error ? ": not told apart from zero" : "");
    }
    out.push_back(words + ".");
  }
  if (!book.loss) return out;
  const studies::LossFit& loss = *book.loss;
  if (!loss.problem.empty()) {
    out.push_back("No steady loss can be told: " + loss.problem + ".");
    return out;
  }
  out.push_back(
      fmt::format("As a steady loss {}, standard error {}; called a loss above {}; {} would have been found "
                  "19 times in 20, {} with a probability of {}.",
                  show.leak(loss.rate), show.leak(loss.standard_error), show.leak(loss.threshold),
                  show.leak(loss.detectable), show.leak(loss.asked), percent(loss.found_with, 0, glyphs)));
  std::string verdict = studies::word(loss.verdict);
  verdict.front() = static_cast<char>(verdict.front() - 'a' + 'A');
  out.push_back(verdict + ": " + loss.why + ".");
  if (!loss.scatter_fits) {
    out.push_back(
        "Neighboring days go together more than readings and tickets taken at their deviations would: the "
        "standard error may be off. Enter how well the tank is read.");
  }
  return out;
}

std::vector<std::string> what_next(const LedgerBook& book, site::Display display, Glyphs glyphs) {
  const Show show{display, glyphs};
  std::vector<std::string> out;
  const LedgerMonth* month = month_told(book);
  if (month == nullptr) return {"Enter readings, deliveries and sales of the period, or ask for another."};
  if (!month->unsettled.empty())
    out.push_back("Mend the rows that could not be counted: " + month->unsettled.front() + ".");
  if (month->confirmed) out.emplace_back("Report a suspected release within 24 hours.");
  if (month->exceeds && !month->confirmed) {
    out.emplace_back("Check every entry of the month, and read the tank again with a second person.");
  }
  if (book.loss) {
    for (const studies::LedgerFault& fault : book.loss->faults) {
      out.push_back(fmt::format("Look at {}: {} {}; {}.", studies::text(fault.day),
                                show.with_volume(std::abs(fault.size)), over_or_short(fault.size), fault.words));
    }
    if (!book.loss->meters_proved && book.loss->problem.empty()) {
      out.emplace_back("Prove the meters, twice each, and enter the draws in provings.csv.");
    }
  }
  if (book.terms) {
    for (const studies::LedgerTerm& term : book.terms->terms) {
      if (!term.volume && term.cause != "meters") out.push_back("For " + term.cause + ": " + term.words + ".");
    }
  }
  if (month->missing_days > 0) out.emplace_back("Read the tank on every day of business.");
  if (month->exceeds) out.emplace_back("Have line and tank tested if the next days go on like this.");
  if (out.empty()) out.emplace_back("Go on reading the tank each day; these records ask for nothing else.");
  return out;
}

std::vector<std::string> not_parted(const LedgerBook& book, Glyphs glyphs) {
  std::vector<std::string> out;
  if (!book.loss) return out;
  for (const studies::NotParted& one : book.loss->not_parted) {
    std::string causes;
    for (std::size_t i = 0; i < one.causes.size(); ++i) {
      causes += (i == 0 ? "" : i + 1 == one.causes.size() ? " and " : ", ") + one.causes[i];
    }
    std::string words = causes + " cannot be told apart by these readings";
    if (one.correlation) words += " (correlation " + number(*one.correlation, 2, glyphs) + ")";
    out.push_back(words + ". To part them: " + one.what_would + ".");
    out.back().front() = static_cast<char>(std::toupper(static_cast<unsigned char>(out.back().front())));
  }
  return out;
}

std::string own_test_words(const studies::LedgerResult& result, site::Display display, Glyphs glyphs) {
  if (!result.own_test) return {};
  const Show show{display, glyphs};
  const studies::OwnTest& test = *result.own_test;
  const auto drift = [&](double kelvin_per_second) {
    constexpr double hour = 3600.0;
    const Measure degrees = Measure::temperature_difference;
    return number(shown_value(degrees, display, kelvin_per_second * hour), 4, glyphs) + " " +
           unit_label(degrees, display, glyphs);
  };
  return fmt::format("A tank's own test of {}: a drift of {} an hour looks like {}; one of {} an hour hides {}.",
                     show.with_volume(test.volume), drift(test.drift), show.leak(test.apparent), drift(test.hides),
                     show.leak(test.must_find));
}

svg::CurveChart running_chart(const LedgerBook& book, site::Display display, const std::string& number) {
  svg::CurveChart chart;
  chart.id = "ledger-running-" + number;
  chart.title = "Running over and short, " + book.name;
  chart.description =
      "The running sum of over and short of a month, as steps, between its limits; days outside are crossed out.";
  chart.x_axis = "day of the period";
  chart.y_axis = "over or short, " + unit_label(Measure::volume, display);
  svg::Curve running{"over and short", {}, {}, 0}, upper{"limit", {}, {}, 1}, lower{"", {}, {}, 1};
  const auto shown = [&](double si) { return shown_value(Measure::volume, display, si); };
  for (std::size_t i = book.from; i < book.to; ++i) {
    const LedgerRow& row = book.rows[i];
    const double day = row.day.number - book.rows[book.from].day.number + 1.0;
    if (!running.y.empty()) {
      running.x.push_back(day);
      running.y.push_back(running.y.back());
    }
    running.x.push_back(day);
    running.y.push_back(shown(row.running));
    upper.x.push_back(day);
    upper.y.push_back(shown(row.limit));
    lower.x.push_back(day);
    lower.y.push_back(-shown(row.limit));
    if (row.deliveries > 0) chart.foot_ticks.push_back(day);
    if (row.outside) chart.crosses.push_back({day, shown(row.running)});
  }
  chart.curves = {running, upper, lower};
  return chart;
}

svg::WaterfallChart term_chart(const LedgerBook& book, site::Display display, const std::string& number) {
  svg::WaterfallChart chart;
  chart.id = "ledger-terms-" + number;
  chart.title = "What explains it, " + book.name;
  chart.description = "Over or short, the known causes taken off one after the other, and what is left.";
  if (!book.terms) return chart;
  const Show show{display, Glyphs::unicode};
  const auto shown = [&](double si) { return shown_value(Measure::volume, display, si); };
  chart.falls.push_back(
      {"over or short", shown(book.terms->over_short), {}, show.with_volume(book.terms->over_short), true, false});
  for (const studies::LedgerTerm& term : book.terms->terms) {
    if (!term.volume) continue;
    const std::optional<double> error = term.standard_error ? std::optional(shown(*term.standard_error)) : std::nullopt;
    chart.falls.push_back(
        {"less " + term.cause, -shown(*term.volume), error, show.with_volume(-*term.volume), false, false});
  }
  const std::optional<double> error =
      book.terms->standard_error ? std::optional(shown(*book.terms->standard_error)) : std::nullopt;
  chart.falls.push_back(
      {"not explained", shown(book.terms->unexplained), error, show.with_volume(book.terms->unexplained), true, true});
  return chart;
}

svg::CurveChart sum_chart(const LedgerBook& book, const std::string& number) {
  svg::CurveChart chart;
  chart.id = "ledger-sums-" + number;
  chart.title = "Sums (CUSUM), " + book.name;
  chart.description = "Sums of what exceeds the reference, upward and downward, with their limit.";
  chart.x_axis = "reading of the period";
  chart.y_axis = "standard deviations";
  svg::Curve upper{"over", {}, {}, 0}, lower{"short", {}, {}, 1};
  if (!book.loss) return chart;
  for (std::size_t i = 0; i < book.loss->chart.size(); ++i) {
    const double x = static_cast<double>(i) + 1.0;
    upper.x.push_back(x);
    upper.y.push_back(book.loss->chart[i].cusum.upper);
    lower.x.push_back(x);
    lower.y.push_back(-book.loss->chart[i].cusum.lower);
  }
  chart.curves = {upper, lower};
  chart.limits = {{book.loss->cusum.limit, "limit", false}, {-book.loss->cusum.limit, "limit", true}};
  return chart;
}

svg::CurveChart average_chart(const LedgerBook& book, const std::string& number) {
  svg::CurveChart chart;
  chart.id = "ledger-averages-" + number;
  chart.title = "Averages (EWMA), " + book.name;
  chart.description = "The average that forgets, between its limits.";
  chart.x_axis = "reading of the period";
  chart.y_axis = "standard deviations";
  svg::Curve average{"average", {}, {}, 0}, upper{"limit", {}, {}, 1}, lower{"", {}, {}, 1};
  if (!book.loss) return chart;
  for (std::size_t i = 0; i < book.loss->chart.size(); ++i) {
    const double x = static_cast<double>(i) + 1.0;
    const auto& point = book.loss->chart[i].ewma;
    average.x.push_back(x);
    average.y.push_back(point.average);
    upper.x.push_back(x);
    upper.y.push_back(point.limit);
    lower.x.push_back(x);
    lower.y.push_back(-point.limit);
  }
  chart.curves = {average, upper, lower};
  return chart;
}

}  // namespace forecourse::report
