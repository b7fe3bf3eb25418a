#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/figures/plan.h"
#include "forecourse/checks/figures/sumps.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

// How tests were made, and what is to be done after something happened.

using Test = std::optional<site::LiquidTest>;

template <class Tell>
void each_spill_container(const site::Site& site, Tell tell) {
  each_fill_of(site, [&](const std::string& id, const site::Fill& fill, const site::Tank&) {
    if (fill.spill_container) tell(id, fill.spill_container->where, fill.spill_container->liquid_test);
  });
}

template <class Tell>
void each_tested_sump(const site::Site& site, Tell tell) {
  each_sump_of(site, [&](const std::string& id, const site::Sump& sump) { tell(id, sump.where, sump.liquid_test); });
}

template <auto member>
FigureAt of_test(const std::string& id, SourceSpan where, const Test& test) {
  using Member = std::remove_cvref_t<decltype((*test).*member)>;
  const SourceSpan place = test ? test->where : where;
  static const Member unknown;
  const Member& value = test ? (*test).*member : unknown;
  if constexpr (std::is_same_v<Member, site::Fact>) {
    return entered_fact(id, place, value, "enter liquid_test: how it was tested with water");
  } else {
    return entered_amount(id, place, value, "enter liquid_test: how it was tested with water");
  }
}

template <auto member>
std::vector<FigureAt> of_spill_test(const Facts& facts) {
  std::vector<FigureAt> out;
  each_spill_container(facts.site, [&](const std::string& id, SourceSpan where, const Test& test) {
    out.push_back(of_test<member>(id, where, test));
  });
  return out;
}

template <auto member>
std::vector<FigureAt> of_sump_test(const Facts& facts) {
  std::vector<FigureAt> out;
  each_tested_sump(facts.site, [&](const std::string& id, SourceSpan where, const Test& test) {
    out.push_back(of_test<member>(id, where, test));
  });
  return out;
}

std::vector<FigureAt> sump_tested(const Facts& facts) {
  std::vector<FigureAt> out = each_sump(facts, [&](const SumpOf& sump) {
    return last_tested(facts, sump.subject, sump.sump->where, sump.sump->tested,
                       {site::records::TestKind::sump, sump.names()}, "enter tested of the sump");
  });
  for (FigureAt& one : out) one.exempt.clear();  // the practice asks it of sumps of tanks above ground too
  return out;
}

std::vector<FigureAt> shear_valve_passes(const Facts& facts) {
  return each_shear_valve(facts, [](const std::string& id, const site::ShearValve& valve, const site::Dispenser&) {
    static const site::Maybe<VolumeFlow> unknown;
    const site::Maybe<VolumeFlow>& rate = valve.seat_leak ? valve.seat_leak->rate : unknown;
    return entered_amount(id, valve.where, rate, "enter seat_leak of the shear valve, as its trip test found it");
  });
}

std::vector<FigureAt> shear_valve_anchored(const Facts& facts) {
  return each_shear_valve(facts, [](const std::string& id, const site::ShearValve& valve, const site::Dispenser&) {
    return entered_fact(id, valve.where, valve.anchored, "enter anchored of the shear valve");
  });
}

bool is_hit(const site::records::Incident& one) { return one.kind.text == "struck" || one.kind.text == "drive-off"; }

/// Whether an incident was at a dispenser, as records may call it: by itself, one of its inlets or of its hoses.
bool is_at(const site::records::Incident& one, const site::Dispenser& dispenser) {
  return one.part == dispenser.id ||
         std::any_of(dispenser.inlets.begin(), dispenser.inlets.end(),
                     [&](const auto& inlet) { return site::place_name(dispenser, inlet) == one.part.text; }) ||
         std::any_of(dispenser.hoses.begin(), dispenser.hoses.end(),
                     [&](const auto& hose) { return hose.id == one.part; });
}

/// The last blow or drive-off that `counts`, of the records.
template <class Counts>
std::optional<site::Date> last_recorded_hit(const Facts& facts, Counts counts) {
  std::optional<site::Date> last;
  if (facts.records == nullptr) return last;
  for (const site::records::Incident& one : facts.records->incidents) {
    if (is_hit(one) && counts(one)) last = later_of(last, one.at.day);
  }
  return last;
}

std::vector<FigureAt> tested_since_hit(const Facts& facts) {
  // Where it is not on record which dispenser was hit, it may have been any.
  const auto somewhere = last_recorded_hit(facts, [](const auto& one) { return one.part.empty(); });
  return each_shear_valve(
      facts, [&](const std::string& id, const site::ShearValve& valve, const site::Dispenser& dispenser) {
        const auto here = later_of(dispenser.last_hit,
                                   last_recorded_hit(facts, [&](const auto& one) { return is_at(one, dispenser); }));
        const MaybeDay tested = shear_valve_trip(facts, id, valve).day;
        const auto since = [&](const site::Date& hit) { return days_between(hit, *tested) >= 0; };
        site::Fact fact;
        if (here && tested && !since(*here)) fact = false;
        if ((here || somewhere) && tested && (!here || since(*here)) && (!somewhere || since(*somewhere))) fact = true;
        const bool known_where = here || !somewhere;
        FigureAt out = entered_fact(id, valve.where, fact,
                                    !known_where || (here && tested) ? "record the part of each blow and drive-off"
                                    : here                           ? "enter tested of the shear valve"
                                           : "enter last_hit of the dispenser, or give the records, with incidents");
        const bool none = !here && !somewhere && facts.records != nullptr && !facts.records->incidents.empty();
        if (none) out.exempt = "no blow and no drive-off is on record";
        return out;
      });
}

/// Pumps that an emergency stop leaves running.
std::vector<FigureAt> stop_leaves(const Facts& facts) {
  return each_emergency_stop(facts, [&](const site::EmergencyStop& stop) {
    FigureAt out;
    out.subject = stop.id.text;
    out.where = stop.where;
    if (stop.stops.empty()) {
      out.enter = "enter stops of the emergency stop";
      return out;
    }
    const auto runs_on = [&](const site::Pump& pump) {
      return std::find(stop.stops.begin(), stop.stops.end(), pump.id) == stop.stops.end();
    };
    out.value = static_cast<double>(std::count_if(facts.site.pumps.begin(), facts.site.pumps.end(), runs_on));
    return out;
  });
}

std::vector<FigureAt> stop_keeps_monitoring(const Facts& facts) {
  return each_emergency_stop(facts, [](const site::EmergencyStop& stop) {
    return entered_fact(stop.id.text, stop.where, stop.keeps_monitoring,
                        "enter keeps_monitoring of the emergency stop");
  });
}

/// What was done when a breakaway was last joined again.
template <auto member>
std::vector<FigureAt> of_rejoining(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (!hose.parting || !hose.parting->rejoined) return;
    const site::Rejoining& rejoined = *hose.parting->rejoined;
    out.push_back(entered_amount(hose.id.text, rejoined.where, rejoined.*member, "enter it under rejoined"));
  });
  return out;
}

/// The shapes that a product may be marked with. A blend of gasoline with little ethanol is sold as either.
std::vector<std::string_view> marks_of(std::string_view kind) {
  if (kind == "gasoline-e0") return {"circle"};
  if (kind.starts_with("gasoline")) return {"circle", "pentagon"};
  if (kind == "e85" || kind == "ethanol") return {"pentagon"};
  if (kind.starts_with("diesel-b") || kind == "kerosene" || kind == "heating-oil") return {"hexagon"};
  return {};
}

std::vector<FigureAt> fill_mark(const Facts& facts) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](const std::string& id, const site::Fill& fill, const site::Tank& tank) {
    const site::Product* product = product_of(facts.site, tank.product);
    const auto marks = product == nullptr ? std::vector<std::string_view>() : marks_of(product->kind.text);
    site::Fact fits;
    if (!fill.mark.empty() && !marks.empty()) {
      fits = std::find(marks.begin(), marks.end(), fill.mark.text) != marks.end();
    }
    out.push_back(entered_fact(id, fill.where, fits, "enter mark of the fill, and kind of the product"));
  });
  return out;
}

/// As the network takes it: entered, else straight on the plan [m]; empty: not known.
std::optional<double> length_of(const site::Site& site, const site::Line& line) {
  if (line.pipe.length) return line.pipe.length->likely.si();
  const auto from = outline(site::position_at(site, line.from.text));
  const auto to = outline(site::position_at(site, line.to.text));
  return from && to ? std::optional(distance(*from, *to)) : std::nullopt;
}

/// The places that a pump's line reaches.
struct Reached {
  std::map<std::string, double> distances;  ///< [m] of line from the pump
  bool known = true;                        ///< false: the length of a line on the way is not
};

Reached reached_from(const site::Site& site, const std::string& pump) {
  Reached out{{{pump, 0.0}}, true};
  for (bool found = true; found;) {
    found = false;
    for (const site::Line& line : site.lines) {
      const std::optional<double> length = length_of(site, line);
      for (const auto& [a, b] : {std::pair(line.from.text, line.to.text), std::pair(line.to.text, line.from.text)}) {
        const auto start = out.distances.find(a);
        if (start == out.distances.end()) continue;
        out.known = out.known && length;
        const double there = start->second + length.value_or(0.0);
        const auto [end, fresh] = out.distances.try_emplace(b, there);
        if (fresh || there < end->second - 1e-9) {
          end->second = std::min(end->second, there);
          found = true;
        }
      }
    }
  }
  return out;
}

/// Where the leak of a detector's test belongs: the highest dispenser of its line, the farthest where they are level.
/// Empty while a height or a length is not known.
std::string farthest_and_highest(const site::Site& site, const site::Pump& pump) {
  constexpr double level = 0.01;  // [m]; heights that differ by less are the same
  const Reached reached = reached_from(site, pump.id.text);
  std::string best;
  double height = -std::numeric_limits<double>::infinity();
  double distance = 0.0;
  bool known = reached.known;
  each_inlet_of(site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser& dispenser) {
    const auto found = reached.distances.find(id);
    if (found == reached.distances.end()) return;
    const auto& elevation = inlet.elevation ? inlet.elevation : dispenser.elevation;
    known = known && elevation;
    if (!elevation) return;
    const double here = elevation->likely.si();
    if (here > height + level || (here > height - level && found->second > distance)) {
      best = id;
      height = here;
      distance = found->second;
    }
  });
  return known ? best : std::string();
}

std::vector<FigureAt> detector_tested_at(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Pump& pump : facts.site.pumps) {
    if (!pump.leak_detector) continue;
    const std::string best = farthest_and_highest(facts.site, pump);
    site::Fact fits;
    if (!best.empty() && !pump.leak_detector->tested_at.empty()) fits = pump.leak_detector->tested_at.text == best;
    out.push_back(
        entered_fact(pump.id.text, pump.leak_detector->where, fits,
                     "enter tested_at of the leak detector, elevation of the dispensers and length of lines"));
  }
  return out;
}

}  // namespace

std::vector<Figure> practice_figures() {
  using site::LiquidTest;
  constexpr auto amount = FigureKind::amount;
  constexpr auto fact = FigureKind::fact;
  constexpr auto day = FigureKind::day;
  constexpr auto fuel = Measured::fuel;
  const QuantityKind* const length = &Length::kind();
  const QuantityKind* const time = &Duration::kind();
  return {
      {"spill-test-below-top", "water below the top of a spill container as its test began", amount, length, "m", fuel,
       of_spill_test<&LiquidTest::below_top>},
      {"spill-test-settled", "time that the water in a spill container settled", amount, time, "s", fuel,
       of_spill_test<&LiquidTest::settled>},
      {"spill-test-waited", "time that a test of a spill container took", amount, time, "s", fuel,
       of_spill_test<&LiquidTest::waited>},
      {"spill-test-change", "change of level in a spill container", amount, length, "m", fuel,
       of_spill_test<&LiquidTest::change>},
      {"sump-test-above-seal", "water above the highest penetration or seam of a sump", amount, length, "m", fuel,
       of_sump_test<&LiquidTest::above_seal>},
      {"sump-test-below-top", "water below the top of a sump as its test began", amount, length, "m", fuel,
       of_sump_test<&LiquidTest::below_top>},
      {"sump-test-settled", "time that the water in a sump settled", amount, time, "s", fuel,
       of_sump_test<&LiquidTest::settled>},
      {"sump-test-waited", "time that a test of a sump took", amount, time, "s", fuel,
       of_sump_test<&LiquidTest::waited>},
      {"sump-test-change", "change of level in a sump", amount, length, "m", fuel, of_sump_test<&LiquidTest::change>},
      {"sump-test-boots", "test boots fitted for a test of a sump", fact, nullptr, "", fuel,
       of_sump_test<&LiquidTest::boots_fitted>},
      {"sump-own-test", "last test of a sump", day, nullptr, "", Measured::age, sump_tested},
      {"shear-valve-passes", "flow through a tripped shear valve", amount, &VolumeFlow::kind(), "m3/s", Measured::leak,
       shear_valve_passes},
      {"shear-valve-anchored", "a shear valve that is anchored", fact, nullptr, "", fuel, shear_valve_anchored},
      {"shear-valve-tested-since-hit", "a shear valve tested since its dispenser was hit", fact, nullptr, "", fuel,
       tested_since_hit},
      {"stop-leaves-running", "pumps that an emergency stop leaves running", amount, nullptr, "", fuel, stop_leaves},
      {"stop-keeps-monitoring", "an emergency stop that leaves the monitoring of tanks on", fact, nullptr, "", fuel,
       stop_keeps_monitoring},
      {"breakaway-purged", "volume drawn after a breakaway was joined again", amount, &Volume::kind(), "m3", fuel,
       of_rejoining<&site::Rejoining::purged>},
      {"breakaway-watched", "time that a display was watched after a breakaway was joined again", amount, time, "s",
       fuel, of_rejoining<&site::Rejoining::watched>},
      {"fill-mark-fits", "a mark on a fill that fits its product", fact, nullptr, "", fuel, fill_mark},
      {"detector-tested-at", "a leak detector tested at the highest or farthest dispenser", fact, nullptr, "", fuel,
       detector_tested_at},
  };
}

}  // namespace forecourse::checks
