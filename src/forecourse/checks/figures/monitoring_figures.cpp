#include <algorithm>
#include <initializer_list>
#include <string_view>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"
#include "forecourse/studies/ledger/gauging.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

// How leaks of a tank are looked for

std::optional<bool> is_monitored_by(const site::Tank& tank, std::initializer_list<std::string_view> ways) {
  if (tank.monitored_by.empty()) return std::nullopt;
  return std::find(ways.begin(), ways.end(), tank.monitored_by.text) != ways.end();
}

constexpr const char* enter_way = "enter monitored_by of the tank";

/// By readings of the stock: by inventory control, or by a gauge, which has to meet its rules too. Of each tank, and of
/// each of its fills.
std::vector<FigureAt> by_stock(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    const auto by = is_monitored_by(tank, {"inventory", "gauge"});
    out.push_back(entered_fact(tank.id.text, tank.where, by, enter_way));
    for (const site::Fill& fill : tank.fills)
      out.push_back(entered_fact(name_of(tank, fill), fill.where, by, enter_way));
  }
  return out;
}

std::vector<FigureAt> by_readings(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, is_monitored_by(tank, {"inventory", "gauge", "manual-gauging"}),
                        enter_way);
  });
}

std::vector<FigureAt> by_manual_gauging(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, is_monitored_by(tank, {"manual-gauging"}), enter_way);
  });
}

/// Inventory control, or manual gauging in its place: both serve for ten years after the tank was installed.
std::vector<FigureAt> by_inventory(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    std::optional<bool> by = is_monitored_by(tank, {"inventory", "manual-gauging"});
    if (by.value_or(false)) {
      by = tank.installed ? std::optional(!is_before(later(*tank.installed, {10, 0, 0}), facts.today)) : std::nullopt;
    }
    return entered_fact(tank.id.text, tank.where, by, "enter monitored_by and installed of the tank");
  });
}

// The interstice

std::vector<FigureAt> interstice_alarm(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, tank.interstice ? tank.interstice->alarm : std::nullopt,
                        "enter interstice of the tank, with alarm");
  });
}

std::vector<FigureAt> interstice_monitored(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    return last_looked(facts, tank.id.text, tank.where, tank.interstice ? tank.interstice->monitored : std::nullopt,
                       {"interstice", {tank.id.text}}, "enter interstice of the tank, with monitored");
  });
}

// The gauge

template <class Read>
std::vector<FigureAt> each_gauge(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.gauge) continue;
    out.push_back(read(tank, *tank.gauge));
    if (is_above_ground(tank)) out.back().exempt = above_ground;
  }
  return out;
}

constexpr const char* a_stick = "it is a stick";
bool is_stick(const site::TankGauge& gauge) { return gauge.kind.text == "stick"; }

std::vector<FigureAt> gauge_leak_test(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    return last_tested(facts, tank.id.text, tank.where, tank.gauge ? tank.gauge->leak_tested : std::nullopt,
                       {TestKind::gauge_leak_test, {tank.id.text}}, "enter gauge of the tank, with leak_tested");
  });
}

std::vector<FigureAt> gauge_leak_rate(const Facts& facts) {
  return each_gauge(facts, [](const site::Tank& tank, const site::TankGauge& gauge) {
    FigureAt out = entered_amount(tank.id.text, gauge.where, gauge.detects, "enter detects of the gauge");
    if (is_stick(gauge)) out.exempt = a_stick;
    return out;
  });
}

std::vector<FigureAt> gauge_tested(const Facts& facts) {
  return each_gauge(facts, [&](const site::Tank& tank, const site::TankGauge& gauge) {
    FigureAt out = last_tested(facts, tank.id.text, gauge.where, gauge.tested, {TestKind::sensor, {tank.id.text}},
                               "enter tested of the gauge");
    if (is_stick(gauge)) out.exempt = a_stick;
    return out;
  });
}

std::vector<FigureAt> level_step(const Facts& facts) {
  return each_gauge(facts, [](const site::Tank& tank, const site::TankGauge& gauge) {
    return entered_amount(tank.id.text, gauge.where, gauge.reads_to, "enter reads_to of the gauge");
  });
}

/// The last reading of water at the bottom, in the site file or in the records.
std::vector<FigureAt> water_read(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    MaybeDay last = tank.reading && tank.reading->water ? tank.reading->taken : std::nullopt;
    if (facts.records != nullptr) {
      for (const site::records::Dip& dip : facts.records->dips) {
        if (dip.tank.text == tank.id.text && dip.water) last = later_of(last, dip.at.day);
      }
    }
    return entered_day(tank.id.text, tank.where, last, "enter water and taken of the reading, or give the records");
  });
}

std::vector<FigureAt> drop_tube_gap(const Facts& facts) {
  return each_fill(facts, [](const site::Tank& tank, const site::Fill& fill, std::string name) {
    const site::Maybe<Length> none;
    FigureAt out = entered_amount(std::move(name), fill.drop_tube ? fill.drop_tube->where : fill.where,
                                  fill.drop_tube ? fill.drop_tube->end_above_bottom : none,
                                  "enter drop_tube of the fill, with end_above_bottom");
    if (is_above_ground(tank)) out.exempt = above_ground;
    return out;
  });
}

// Manual gauging

/// Whether the rule rests on a diameter that is not entered.
bool diameter_is_wanted(const site::Tank& tank) {
  if (!tank.capacity || (tank.shape && tank.shape->inside_diameter)) return false;
  const auto listed = studies::gauging_rule(tank.capacity->likely.si(), to_si(48.0, "in"));
  const auto other = studies::gauging_rule(tank.capacity->likely.si(), std::nullopt);
  return listed && other && listed->hours != other->hours;
}

/// Whatever its diameter, and whatever is entered of how its leaks are looked for.
bool is_too_large_for_gauging_alone(const site::Tank& tank) {
  if (!tank.capacity) return false;
  const auto alone = [&](const std::optional<double>& diameter) {
    const auto rule = studies::gauging_rule(tank.capacity->likely.si(), diameter);
    return rule && rule->alone;
  };
  return !alone(std::nullopt) && !alone(to_si(48.0, "in")) && !alone(to_si(64.0, "in"));
}

std::optional<studies::GaugingRule> gauging_rule_of(const site::Tank& tank) {
  if (!tank.capacity || diameter_is_wanted(tank)) return std::nullopt;
  const bool wide = tank.shape && tank.shape->inside_diameter;
  return studies::gauging_rule(tank.capacity->likely.si(),
                               wide ? std::optional(tank.shape->inside_diameter->likely.si()) : std::nullopt);
}

/// The last level read by hand, in the site file or in the records.
std::vector<FigureAt> gauged(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    MaybeDay last = tank.reading && tank.reading->depth ? tank.reading->taken : std::nullopt;
    if (facts.records != nullptr) {
      for (const site::records::Dip& dip : facts.records->dips) {
        if (dip.tank.text == tank.id.text && dip.depth && dip.by.text != "gauge") last = later_of(last, dip.at.day);
      }
    }
    return entered_day(tank.id.text, tank.where, last, "enter taken of the reading, or give the records, with dips");
  });
}

/// Its limit depends on the size of the tank.
std::vector<FigureAt> gauging_quiet(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    FigureAt out = entered_amount(tank.id.text, tank.where, tank.gauging_quiet,
                                  "enter gauging_quiet, capacity and shape of the tank");
    if (const auto rule = gauging_rule_of(tank)) out.at_least = to_si(rule->hours, "h");
    if (diameter_is_wanted(tank)) out.enter = "enter shape of the tank, with inside_diameter";
    return out;
  });
}

/// Whether manual gauging may be the only method; tanks beyond its sizes are another requirement's matter.
std::vector<FigureAt> gauged_alone(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    std::optional<bool> by = is_monitored_by(tank, {"manual-gauging"});
    if (by.value_or(false)) {
      const auto rule = gauging_rule_of(tank);
      by = tank.capacity && !diameter_is_wanted(tank) ? std::optional(rule && rule->alone) : std::nullopt;
    }
    if (is_too_large_for_gauging_alone(tank)) by = false;
    return entered_fact(tank.id.text, tank.where, by, "enter monitored_by, capacity and shape of the tank");
  });
}

// Tightness tests and statistics

std::vector<FigureAt> tightness_tested(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    return last_tested(facts, tank.id.text, tank.where, tank.tested, {TestKind::tank_tightness, {tank.id.text}},
                       "enter tested of the tank");
  });
}

template <class Part, class Read>
std::vector<FigureAt> each_with(const Facts& facts, std::optional<Part> site::Tank::*part, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!(tank.*part)) continue;
    out.push_back(read(tank, *(tank.*part)));
    if (is_above_ground(tank)) out.back().exempt = above_ground;
  }
  return out;
}

std::vector<FigureAt> tightness_rate(const Facts& facts) {
  return each_with(facts, &site::Tank::tightness_test, [](const site::Tank& tank, const site::TightnessTest& test) {
    return entered_amount(tank.id.text, test.where, test.detects, "enter detects of the tightness test");
  });
}

std::vector<FigureAt> statistics_made(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    return last_tested(facts, tank.id.text, tank.where, tank.statistics ? tank.statistics->made : std::nullopt,
                       {TestKind::statistics, {tank.id.text}}, "enter statistics of the tank, with made");
  });
}

std::vector<FigureAt> statistics_rate(const Facts& facts) {
  return each_with(facts, &site::Tank::statistics, [](const site::Tank& tank, const site::Statistics& statistics) {
    return entered_amount(tank.id.text, statistics.where, statistics.detects, "enter detects of the statistics");
  });
}

/// No more than half of what the method can find.
std::vector<FigureAt> statistics_threshold(const Facts& facts) {
  return each_with(facts, &site::Tank::statistics, [](const site::Tank& tank, const site::Statistics& statistics) {
    FigureAt out = entered_amount(tank.id.text, statistics.where, statistics.threshold,
                                  "enter threshold and detects of the statistics");
    if (statistics.detects) out.at_most = 0.5 * statistics.detects->likely.si();
    return out;
  });
}

}  // namespace

std::vector<Figure> monitoring_figures() {
  return {
      fact_figure("tank-by-stock", "leaks of a tank are looked for by its stock", by_stock),
      fact_figure("tank-by-readings", "leaks of a tank are looked for by readings of its level", by_readings),
      fact_figure("tank-by-manual-gauging", "leaks of a tank are looked for by manual gauging", by_manual_gauging),
      fact_figure("tank-by-inventory", "a tank is under inventory control, within ten years of its installation",
                  by_inventory),
      fact_figure("tank-gauged-alone", "manual gauging may be the only method for a tank of this size", gauged_alone),
      fact_figure("tank-interstice-alarm", "a tank's interstice is watched all the time and somebody is told",
                  interstice_alarm),
      day_figure("tank-gauged", "last level of a tank that was read by hand", gauged),
      day_figure("tank-interstice-monitored", "last look at a tank's interstice", interstice_monitored),
      day_figure("gauge-leak-test", "last leak test of a tank by its gauge", gauge_leak_test),
      leak_figure("gauge-leak-rate", "leak rate that a gauge finds", gauge_leak_rate),
      day_figure("gauge-tested", "last test of a gauge", gauge_tested),
      length_figure("level-step", "step of the level readings of a tank", level_step),
      day_figure("water-read", "last reading of water in a tank", water_read),
      length_figure("drop-tube-gap", "height of the drop tube's end above the tank's bottom", drop_tube_gap),
      {"gauging-quiet", "time without flow in a manual gauging", FigureKind::amount, &Duration::kind(), "s",
       Measured::fuel, gauging_quiet},
      day_figure("tank-tightness-tested", "last tightness test of a tank", tightness_tested),
      leak_figure("tank-tightness-rate", "leak rate that a tank's tightness test finds", tightness_rate),
      day_figure("statistics-made", "last result of a tank's statistical reconciliation", statistics_made),
      leak_figure("statistics-leak-rate", "leak rate that a statistical reconciliation finds", statistics_rate),
      leak_figure("statistics-threshold", "leak rate above which a statistical reconciliation calls a leak",
                  statistics_threshold),
  };
}

}  // namespace forecourse::checks
