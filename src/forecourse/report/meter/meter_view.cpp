#include "forecourse/report/meter/meter_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace forecourse::report {
namespace {

using studies::MeterDrift;
using studies::MeterJudged;
using studies::MeterLimit;
using studies::MeterTold;
using studies::ProvingTold;

class Shown {
 public:
  Shown(site::Display display, Glyphs glyphs) : display_(display), glyphs_(glyphs) {}

  [[nodiscard]] std::string value(Measure measure, const std::optional<double>& si) const {
    return number(measure, display_, si.value_or(NAN), glyphs_);
  }
  [[nodiscard]] std::string unit(Measure measure, double si) const { return with_unit(measure, display_, si, glyphs_); }
  [[nodiscard]] std::string percent(const std::optional<double>& share) const {
    return number(100.0 * share.value_or(NAN), 3, glyphs_);
  }
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }
  [[nodiscard]] std::string amount(const std::optional<double>& money) const {
    return number(money.value_or(NAN), 2, glyphs_);
  }

 private:
  site::Display display_;
  Glyphs glyphs_;
};

const network::MeterDraw* worst_of(const ProvingTold& proving) {
  return proving.worst ? &proving.proving.draws[*proving.worst] : nullptr;
}

const char* state_of(const ProvingTold& proving) {
  if (proving.proving.as_left) return "as left";
  return proving.proving.draws.front().entered.state.empty() ? "state not told" : "as found";
}

std::string error_sentence(const MeterTold& meter, const Shown& show) {
  const ProvingTold& last = meter.provings.back();
  const std::string begin = meter.hose + ", proved on " + text(last.day) + " (" + state_of(last) + "): ";
  if (!meter.error) return begin + meter.who_loses + ".";
  const network::DrawSet& draws = last.proving.counted();
  std::string out = begin + "error " + show.percent(meter.error) + " %";
  if (meter.standard_error) out += ", standard error " + show.percent(meter.standard_error) + " %";
  out += fmt::format(", {} {}draw{}", draws.count, last.proving.fast ? "fast " : "", draws.count == 1 ? "" : "s");
  if (const auto* worst = worst_of(last)) {
    out += "; the worst draw is off by " + show.unit(Measure::draw, *worst->error_volume) + " in " +
           show.unit(Measure::volume, worst->indicated) + ", " + show.percent(worst->error) + " %";
  }
  return out + ".";
}

std::string year_sentence(const MeterTold& meter, const Shown& show) {
  const studies::MeterYear& year = meter.year;
  if (!year.volume) return "What that is in a year is not determined: " + year.words + ".";
  if (!year.error) return {};
  std::string out = "In a year, of " + show.unit(Measure::volume, *year.volume) + " (" + year.words +
                    "): " + show.unit(Measure::volume, std::abs(*year.error)) +
                    (*year.error < 0.0 ? " given and not charged" : " charged and not given");
  if (year.money) {
    out += ", " + show.amount(std::abs(*year.money)) + (year.currency.empty() ? "" : " " + year.currency);
  } else {
    out += "; in money: " + year.price_words;
  }
  return out + ".";
}

std::string when(double day) { return text(studies::Day{static_cast<int>(std::lround(day))}); }

std::string drift_sentence(const MeterDrift& drift, const Shown& show) {
  const double year = studies::days_of_year;
  if (!drift.problem.empty()) return "Drift is not determined: " + drift.problem + ".";
  std::string out = "Drift over " + std::to_string(drift.provings) + " provings: " + show.percent(*drift.slope * year) +
                    " % a year, standard error " + show.percent(*drift.standard_error * year) + " %";
  if (!drift.told_apart) return out + "; not told apart from none.";
  if (!drift.share) return out + ".";
  const std::string limit = "its limit of " + show.percent(drift.share) + " %";
  if (!drift.earliest)
    return out + "; " + limit + " is not reached up to " + when(drift.horizon) + ", as far as the provings carry.";
  return out + "; " + limit + " is reached from " + when(*drift.earliest) + " on" +
         (drift.latest ? ", at the latest on " + when(*drift.latest)
                       : ", the latest day lies further ahead than the provings carry") +
         ".";
}

std::string volume_drift_sentence(const MeterDrift& drift, site::Display display, const Shown& show) {
  if (!drift.problem.empty()) return {};
  const double much = 1e5 / shown_value(Measure::volume, display, 1.0);  // 100,000 of the unit shown
  const std::string out = "By what it sold: " + show.percent(*drift.slope * much) + " % in " +
                          show.unit(Measure::volume, much) + ", standard error " +
                          show.percent(*drift.standard_error * much) + " %";
  return out + (drift.told_apart ? "." : "; not told apart from none.");
}

/// "6.0 in3 (0.519 %)" or "0.500 %"
std::string limit_name(const MeterLimit& limit, double most, double draft, const Shown& show) {
  const std::string doubt = limit.seen == studies::LimitSeen::memory ? ", not verified" : "";
  if (limit.share && limit.base == 0.0) return show.percent(limit.share) + " %" + doubt;
  return show.unit(Measure::draw, most) + " in " + show.unit(Measure::volume, draft) + " (" +
         show.percent(most / draft) + " %)" + doubt;
}

svg::MeterDotsRow dots_of(const MeterTold& meter) {
  svg::MeterDotsRow row{meter.hose, {}, 100.0 * *meter.error, std::nullopt, {}};
  if (meter.standard_error) row.error = 100.0 * *meter.standard_error;
  for (const network::MeterDraw& draw : meter.provings.back().proving.draws) {
    if (draw.error) row.draws.push_back(100.0 * *draw.error);
  }
  for (const ProvingTold& one : meter.provings) {
    const std::optional<double>& mean = one.proving.counted().mean;
    if (mean) row.course.push_back({static_cast<double>(one.day.number), 100.0 * *mean});
  }
  return row;
}

/// The limits of a meter in use, each width once.
std::vector<svg::MeterDotsLimit> drawn_limits(const std::vector<MeterLimit>& limits, double draft, const Shown& show) {
  std::vector<svg::MeterDotsLimit> out;
  for (const MeterLimit& limit : limits) {
    const std::optional<double> most = allowed(limit, draft);
    if (!most || !limit.applies || limit.of == studies::LimitFor::acceptance) continue;
    const double at = 100.0 * *most / draft;
    const bool there = std::any_of(out.begin(), out.end(),
                                   [&](const svg::MeterDotsLimit& one) { return std::abs(one.at - at) < 1e-6; });
    const bool as_share = limit.share && limit.base == 0.0;
    if (!there) out.push_back({at, limit_name(limit, *most, draft, show), as_share});
  }
  return out;
}

}  // namespace

std::vector<std::string> meter_answer(const MeterTold& meter, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  std::vector<std::string> out{error_sentence(meter, show)};
  if (meter.error) out.push_back("So " + meter.who_loses + ".");
  for (const std::string& sentence : {year_sentence(meter, show), drift_sentence(meter.by_time, show),
                                      volume_drift_sentence(meter.by_volume, display, show)}) {
    if (!sentence.empty()) out.push_back(sentence);
  }
  return out;
}

WordTable meters_table(const studies::MeterResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable out{{"Meter", "Proved", "Error, %", "Standard error, %", "Repeatability, %",
                 show.head("Worst draw", Measure::draw), show.head("In a year", Measure::volume), "Money in a year"},
                {false, false, true, true, true, true, true, true},
                {}};
  for (const MeterTold& meter : result.meters) {
    const ProvingTold& last = meter.provings.back();
    const auto* worst = worst_of(last);
    out.rows.push_back({meter.hose, text(last.day), show.percent(meter.error), show.percent(meter.standard_error),
                        show.percent(last.proving.counted().repeatability),
                        show.value(Measure::draw, worst ? worst->error_volume : std::nullopt),
                        show.value(Measure::volume, meter.year.error), show.amount(meter.year.money)});
  }
  return out;
}

WordTable meter_limit_table(const MeterTold& meter, const studies::MeterResult& result, site::Display display,
                            Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable out{{"Limit", show.head("Allowed", Measure::draw), "Allowed, %", show.head("Worst draw", Measure::draw),
                 "Worst draw, %", "Draw", "How the limit is known"},
                {false, true, true, true, true, false, false},
                {}};
  const ProvingTold& last = meter.provings.back();
  for (const studies::WorstDraw& worst : last.against) {
    const MeterJudged& judged = worst.judged;
    const MeterLimit& limit = result.limits[judged.limit];
    std::string known = word(limit.seen);
    if (!limit.clause.empty()) known += ": " + limit.clause;
    if (!limit.applies) known += "; not under the rules of the site file";
    if (limit.applies && !limit.words.empty()) known += "; " + limit.words;
    out.rows.push_back({limit.name, show.value(Measure::draw, judged.allowed), show.percent(judged.allowed_share),
                        show.value(Measure::draw, judged.error_volume), show.percent(judged.error),
                        !judged.within   ? "for another draft"
                        : *judged.within ? "within"
                                         : "beyond",
                        known});
  }
  return out;
}

WordTable proving_table(const MeterTold& meter, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable out{{"Day", "State", "Draws", "Mean, %", "Fast, %", "Slow, %", "Scatter, %", "Standard error, %",
                 "Repeatability, %", show.head("Worst draw", Measure::draw)},
                {false, false, true, true, true, true, true, true, true, true},
                {}};
  for (const ProvingTold& one : meter.provings) {
    const network::MeterProving& p = one.proving;
    const auto* worst = worst_of(one);
    out.rows.push_back({text(one.day), state_of(one), std::to_string(p.draws.size()), show.percent(p.all.mean),
                        show.percent(p.fast ? p.fast->mean : std::nullopt),
                        show.percent(p.slow ? p.slow->mean : std::nullopt), show.percent(p.counted().deviation),
                        show.percent(p.counted().standard_error), show.percent(p.counted().repeatability),
                        show.value(Measure::draw, worst ? worst->error_volume : std::nullopt)});
  }
  return out;
}

WordTable draw_table(const MeterTold& meter, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable out{{"Day", "Draw", show.head("Flow", Measure::flow), show.head("Indicated", Measure::volume),
                 show.head("Read, above indicated", Measure::draw), show.head("Error", Measure::draw), "Error, %",
                 "Plain, %", "Not counted, because"},
                {false, false, true, true, true, true, true, true, false},
                {}};
  for (const ProvingTold& one : meter.provings) {
    for (const network::MeterDraw& draw : one.proving.draws) {
      const std::optional<double> above = draw.read ? std::optional(*draw.read - draw.indicated) : std::nullopt;
      out.rows.push_back(
          {text(one.day), draw.entered.draw.text,
           show.value(Measure::flow, draw.entered.flow ? std::optional(draw.entered.flow->si()) : std::nullopt),
           show.value(Measure::volume, draw.indicated), show.value(Measure::draw, above),
           show.value(Measure::draw, draw.error_volume), show.percent(draw.error), show.percent(draw.plain_error),
           draw.problem});
    }
  }
  return out;
}

std::vector<std::string> left_out_of(const MeterTold& meter) {
  std::vector<std::string> out;
  for (const ProvingTold& one : meter.provings) {
    for (const network::MeterDraw& draw : one.proving.draws) {
      for (const std::string& words : draw.left_out) {
        std::string sentence = "Not corrected for " + words + ".";
        if (std::find(out.begin(), out.end(), sentence) == out.end()) out.push_back(std::move(sentence));
      }
    }
  }
  return out;
}

std::vector<std::string> book_meters_answer(const studies::MetersOfBook& book, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  const auto over = [&](double volume) {
    return show.unit(Measure::volume, std::abs(volume)) + (volume < 0.0 ? " short" : " over");
  };
  const bool any = std::any_of(book.shares.begin(), book.shares.end(),
                               [](const studies::MeterShare& share) { return share.sold.volume.has_value(); });
  std::vector<std::string> out;
  out.push_back(book.book.book + ", " + text(book.book.from) + " to " + text(book.book.to) + ": " +
                over(book.book.over_short) +
                (any ? "; the meters that were proved make " + over(book.explained) + " of it, which leaves " +
                           over(book.left) + "."
                     : "; none of its meters was proved."));
  out.push_back("With all that the ledger knows besides, " + over(book.book.unexplained) + " is not explained" +
                (book.book.standard_error
                     ? ", standard error " + show.unit(Measure::volume, *book.book.standard_error) + "."
                     : "."));
  return out;
}

WordTable share_table(const studies::MetersOfBook& book, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable out{{"Meter", show.head("Sold", Measure::volume), "Error, %", show.head("Adds", Measure::volume),
                 show.head("Standard error", Measure::volume), "Would have to err by, %"},
                {false, true, true, true, true, true},
                {}};
  for (const studies::MeterShare& share : book.shares) {
    out.rows.push_back({share.sold.hose.empty() ? "sales without a hose" : share.sold.hose,
                        show.value(Measure::volume, share.sold.sold), show.percent(share.error),
                        show.value(Measure::volume, share.sold.volume),
                        show.value(Measure::volume, share.sold.standard_error), show.percent(share.alone)});
  }
  return out;
}

svg::MeterDots meter_dots(const studies::MeterResult& result, site::Display display) {
  svg::MeterDots chart;
  chart.id = "meter-errors";
  chart.title = "Error of each meter";
  chart.description = "Rings are the draws of the last proving, discs their mean, dashed and dotted lines the limits.";
  chart.axis = "error, %; right: tells more than it gives";
  std::optional<double> draft;
  for (const MeterTold& meter : result.meters) {
    if (!meter.error) continue;
    if (!draft) draft = worst_of(meter.provings.back())->indicated;
    chart.rows.push_back(dots_of(meter));
  }
  if (draft) chart.limits = drawn_limits(result.limits, *draft, Shown(display, Glyphs::unicode));
  return chart;
}

}  // namespace forecourse::report
