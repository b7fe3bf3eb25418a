#include "forecourse/report/delivery/delivery_view.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::report {
namespace {

using namespace studies;

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

double most_pressure(const DeliveryRun& run) {
  double out = nothing;
  for (const UllageTold& u : run.ullages) {
    if (u.problem.empty() && !(u.highest_pressure <= out)) out = u.highest_pressure;
  }
  return out;
}

bool at_least(const DeliveryRun& run) {
  return std::any_of(run.ullages.begin(), run.ullages.end(), [](const UllageTold& u) { return u.at_least; });
}

/// What is in tanks, and what flows between tanker and tank, is told in whole units.
std::string whole(Measure measure, site::Display display, double si, Glyphs glyphs) {
  return number(shown_value(measure, display, si), 0, glyphs);
}

std::string whole_unit(Measure measure, site::Display display, double si, Glyphs glyphs) {
  return whole(measure, display, si, glyphs) + " " + unit_label(measure, display, glyphs);
}

std::string names(const std::vector<std::string>& all) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : ", ") + one;
  return out;
}

std::string names(const UllageTold& u) { return u.tanks.empty() ? "joint of " + u.joint : names(u.tanks); }

std::string how(const DeliveryRun& run) {
  if (!run.problem.empty()) return run.problem;
  if (run.stalled) return "stalls";
  if (run.moves_all) return "all is dropped";
  std::string out;
  for (const DropTold& drop : run.drops) {
    if (drop.end != DropEnd::emptied) out += (out.empty() ? "" : "; ") + drop.compartment + " " + word(drop.end);
  }
  return out;
}

std::string opens(const UllageTold& u, site::Display display, Glyphs glyphs) {
  if (!u.problem.empty()) return "not determined: " + u.problem;
  if (u.no_vent) return "no way out for the vapor";
  if (!u.opens_at && u.has_branch && u.vents.empty()) return "a branch to a shared vent";
  if (!u.opens_at) return u.vented != 0.0 ? "an open vent" : "a vapor hose alone";
  std::string out = "the vent valve opens at " + with_unit(Measure::ullage_pressure, display, *u.opens_at, glyphs);
  out += u.lifts_at ? ", first after " + time_span(*u.lifts_at, glyphs) : "; it stays shut";
  if (u.draws_at) out += "; it draws air in after " + time_span(*u.draws_at, glyphs);
  if (u.at_least) out += "; its curve is not entered, so the pressure is no less than this";
  return out;
}

/// What a drop leaves in its hose, and where it can go.
std::string hose_sentence(const DropTold& drop, const DeliveryTank& tank, site::Display display, Glyphs glyphs) {
  const auto volume = [&](double v) { return with_unit(Measure::volume, display, v, glyphs); };
  std::string out =
      volume(drop.left_in_hose) + " of " + volume(drop.hose_holds) + " stay in the hose of " + drop.compartment + ". ";
  out +=
      drop.left_in_hose <= tank.room_to_95_after
          ? "The tank has room for it below 95 %, " + volume(tank.room_to_95_after) + ", where the valve lets it in. "
          : "The tank has no room for it below 95 %. ";
  if (!tank.has_container) return out + "No spill container is listed: taken off full, it spills it all on the ground.";
  if (!tank.container) return out + "What the spill container holds is not entered.";
  const double over = drop.left_in_hose - *tank.container;
  out += "Taken off full, it spills it into the spill container, which holds " + volume(*tank.container);
  return out + (over > 0.0 ? ": " + volume(over) + " run over." : ".");
}

svg::TimeSeries level_line(const std::string& name, double end, double value, std::size_t dash) {
  return {name, {0.0, end}, {value, value}, dash, {}, {}};
}

}  // namespace

std::vector<std::string> delivery_answer(const DeliveryResult& result, site::Display display, Glyphs glyphs) {
  if (!result.problem.empty()) return {"Not determined: " + result.problem + "."};
  const DeliveryRun& run = result.runs.front();
  std::vector<std::string> out;
  const auto unit = [&](Measure m, double v) { return with_unit(m, display, v, glyphs); };
  std::string first = run.stalled     ? "The drop stalls after "
                      : run.moves_all ? "All is in the tank after "
                                      : "It ends after ";
  first += time_span(run.time, glyphs) + ": " + whole_unit(Measure::volume, display, run.dropped, glyphs) +
           " dropped, " + whole_unit(Measure::flow, display, run.mean_rate, glyphs) + " on average";
  out.push_back(first + (run.moves_all || run.stalled ? "." : " (" + how(run) + ")."));
  if (const double p = most_pressure(run); std::isfinite(p)) {
    out.push_back("The ullage reaches " + std::string(at_least(run) ? "at least " : "") +
                  unit(Measure::ullage_pressure, p) +
                  (display == site::Display::us ? " (" + number(p, 0, glyphs) + " Pa)" : "") + " above the air.");
  } else {
    out.push_back("The pressure in the ullage is not determined: " + run.ullages.front().problem +
                  ". The drop is computed as if it were that of the air.");
  }
  for (const DeliveryTank& tank : run.tanks) {
    if (tank.for_it > tank.room_to_95)
      out.push_back("Tank " + tank.tank + " has room for " +
                    whole_unit(Measure::volume, display, std::max(0.0, tank.room_to_95), glyphs) + " up to 95 %, and " +
                    whole_unit(Measure::volume, display, tank.for_it, glyphs) + " are brought.");
    if (tank.seconds_to_shut)
      out.push_back("From the alarm of tank " + tank.tank + " the driver has " +
                    time_span(*tank.seconds_to_shut, glyphs) + " until it holds 95 % or its valve is shut.");
  }
  if (result.time_range)
    out.push_back("Over the uncertain values, one at a time, it takes " + time_span(result.time_range->low, glyphs) +
                  " to " + time_span(result.time_range->high, glyphs) + " and the ullage reaches " +
                  number(Measure::ullage_pressure, display, result.pressure_range->low, glyphs) + " to " +
                  unit(Measure::ullage_pressure, result.pressure_range->high) + ".");
  return out;
}

WordTable case_table(const DeliveryResult& result, site::Display display, Glyphs glyphs) {
  const std::string pressure = unit_label(Measure::ullage_pressure, display, glyphs);
  WordTable out{{"Case", "Time", "Mean rate, " + unit_label(Measure::flow, display, glyphs), "Ullage, " + pressure,
                 "Pa", "Truck, " + pressure, "How it ends"},
                {false, true, true, true, true, true, false},
                {}};
  for (const DeliveryRun& run : result.runs) {
    const double truck = !run.truck.closed                                         ? nothing
                         : run.truck.highest_pressure > -run.truck.lowest_pressure ? run.truck.highest_pressure
                                                                                   : run.truck.lowest_pressure;
    out.rows.push_back({run.name, time_span(run.time, glyphs), whole(Measure::flow, display, run.mean_rate, glyphs),
                        number(Measure::ullage_pressure, display, most_pressure(run), glyphs),
                        number(most_pressure(run), 0, glyphs), number(Measure::ullage_pressure, display, truck, glyphs),
                        how(run)});
  }
  return out;
}

WordTable drop_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const auto head = [&](const char* what, Measure m) {
    return std::string(what) + ", " + unit_label(m, display, glyphs);
  };
  WordTable out{{"From", "Tank", "Begins", "Ends", head("Dropped", Measure::volume), head("First rate", Measure::flow),
                 head("Mean rate", Measure::flow), "End"},
                {false, false, true, true, true, true, true, false},
                {}};
  for (const DropTold& d : run.drops) {
    const auto time = [&](const std::optional<double>& t) {
      return t ? time_span(*t, glyphs) : number(nothing, 0, glyphs);
    };
    out.rows.push_back({d.compartment, d.tank, time(d.begins), time(d.ends),
                        whole(Measure::volume, display, d.dropped, glyphs),
                        whole(Measure::flow, display, d.first_rate, glyphs),
                        whole(Measure::flow, display, d.mean_rate, glyphs), word(d.end)});
  }
  return out;
}

WordTable velocity_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const std::string unit = unit_label(Measure::velocity, display, glyphs);
  WordTable out{
      {"From", "In the hose, " + unit, "limit", "In the drop tube, " + unit, "limit", "Until it is covered, " + unit},
      {false, true, true, true, true, true},
      {}};
  for (const DropTold& d : run.drops) {
    const auto velocity = [&](const std::optional<double>& v) {
      return number(Measure::velocity, display, v.value_or(nothing), glyphs);
    };
    out.rows.push_back({d.compartment, velocity(d.hose_velocity), velocity(d.hose_limit), velocity(d.tube_velocity),
                        velocity(d.tube_limit), velocity(d.start_velocity)});
  }
  return out;
}

WordTable delivery_tank_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const auto head = [&](const char* what, Measure m) {
    return std::string(what) + ", " + unit_label(m, display, glyphs);
  };
  WordTable out{
      {"Tank", head("Before", Measure::volume), head("After", Measure::volume), head("Depth before", Measure::bore),
       head("after", Measure::bore), head("Room to 90 %", Measure::volume), head("to 95 %", Measure::volume),
       head("to 95 % after", Measure::volume)},
      {false, true, true, true, true, true, true, true},
      {}};
  for (const DeliveryTank& t : run.tanks) {
    const auto volume = [&](double v) { return whole(Measure::volume, display, v, glyphs); };
    out.rows.push_back({t.tank, volume(t.volume_before), volume(t.volume_after),
                        number(Measure::bore, display, t.depth_before, glyphs),
                        number(Measure::bore, display, t.depth_after, glyphs), volume(t.room_to_90),
                        volume(t.room_to_95), volume(t.room_to_95_after)});
  }
  return out;
}

WordTable ullage_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const std::string unit = unit_label(Measure::ullage_pressure, display, glyphs);
  WordTable out{{"Ullage of", "Highest, " + unit, "Pa", "at", "Lowest, " + unit, "Vent"},
                {false, true, true, true, true, false},
                {}};
  for (const UllageTold& u : run.ullages) {
    const bool known = u.problem.empty();
    const auto pressure = [&](double p) {
      return number(Measure::ullage_pressure, display, known ? p : nothing, glyphs);
    };
    out.rows.push_back({names(u), pressure(u.highest_pressure), number(known ? u.highest_pressure : nothing, 0, glyphs),
                        known ? time_span(u.highest_at, glyphs) : "", pressure(u.lowest_pressure),
                        opens(u, display, glyphs)});
  }
  return out;
}

WordTable vapor_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const std::string unit = unit_label(Measure::volume, display, glyphs);
  WordTable out{{"Ullage of", "Vented, " + unit, "To the truck, " + unit, "Air drawn in, " + unit,
                 "Given off by the liquid, " + unit},
                {false, true, true, true, true},
                {}};
  const bool branched =
      std::any_of(run.ullages.begin(), run.ullages.end(), [](const UllageTold& u) { return u.has_branch; });
  if (branched) {
    out.heads.push_back("Through branches, " + unit);
    out.numbers.push_back(true);
  }
  for (const UllageTold& u : run.ullages) {
    if (!u.problem.empty()) continue;
    const auto volume = [&](double v) { return whole(Measure::volume, display, v, glyphs); };
    out.rows.push_back({names(u), volume(u.vented), volume(u.returned), volume(u.drawn_in), volume(u.grown)});
    if (branched) out.rows.back().push_back(volume(u.passed_on));
  }
  return out;
}

WordTable delivery_event_table(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  const auto head = [&](const char* what, Measure m) {
    return std::string(what) + ", " + unit_label(m, display, glyphs);
  };
  WordTable out{{"After", head("Rate", Measure::flow), head("Depth", Measure::bore),
                 head("Ullage", Measure::ullage_pressure), "Of", "What"},
                {true, true, true, true, false, false},
                {}};
  for (const DeliveryEvent& e : run.events) {
    out.rows.push_back({time_span(e.time, glyphs), whole(Measure::flow, display, e.rate, glyphs),
                        number(Measure::bore, display, e.depth.value_or(nothing), glyphs),
                        number(Measure::ullage_pressure, display, e.ullage_pressure.value_or(nothing), glyphs),
                        e.subject, e.words});
  }
  return out;
}

WordTable delivery_span_table(const DeliveryResult& result, site::Display display, Glyphs glyphs) {
  const std::string unit = unit_label(Measure::ullage_pressure, display, glyphs);
  WordTable out{{"Value", "Time at its low", "at its high", "Ullage at its low, " + unit, "at its high, " + unit},
                {false, true, true, true, true},
                {}};
  for (const DeliverySpan& s : result.spans) {
    out.rows.push_back({s.path, time_span(s.time_at_low, glyphs), time_span(s.time_at_high, glyphs),
                        number(Measure::ullage_pressure, display, s.pressure_at_low, glyphs),
                        number(Measure::ullage_pressure, display, s.pressure_at_high, glyphs)});
  }
  return out;
}

std::vector<std::string> hose_words(const DeliveryRun& run, site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  constexpr double crumb = 1e-5;  // [m3]
  for (const DropTold& drop : run.drops) {
    if (!(drop.hose_holds > 0.0)) {
      out.push_back("What the hose of " + drop.compartment + " holds is not entered.");
      continue;
    }
    const auto tank =
        std::find_if(run.tanks.begin(), run.tanks.end(), [&](const auto& t) { return t.tank == drop.tank; });
    if (!drop.begins || tank == run.tanks.end()) continue;
    out.push_back(drop.left_in_hose < crumb ? "The hose of " + drop.compartment + " drains into the tank."
                                            : hose_sentence(drop, *tank, display, glyphs));
  }
  return out;
}

svg::TimeChart delivery_chart(const DeliveryRun& run, site::Display display, const std::string& id) {
  svg::TimeChart chart;
  chart.id = id;
  chart.title = "Rate, pressure and depth over time";
  chart.description = "Rate of each drop, gauge pressure of the vapor, and depth of the liquid, over one axis of time.";
  chart.even = true;
  const DeliveryChart& c = run.chart;
  const auto series = [&](Measure m, const DeliveryCourse& course, std::size_t dash) {
    svg::TimeSeries s{course.name, c.time, {}, dash, {}, {}};
    for (const double v : course.value) s.value.push_back(shown_value(m, display, v));
    return s;
  };
  const auto panel = [&](const char* what, Measure m, const std::vector<DeliveryCourse>& courses) {
    svg::TimePanel p{std::string(what) + ", " + unit_label(m, display), {}};
    for (std::size_t i = 0; i < courses.size(); ++i) p.series.push_back(series(m, courses[i], i % 2));
    return p;
  };
  const double end = c.time.empty() ? 0.0 : c.time.back();
  chart.panels.push_back(panel("rate", Measure::flow, c.rate));
  if (!c.ullage.empty()) {
    svg::TimePanel p = panel("ullage", Measure::ullage_pressure, c.ullage);
    for (const UllageTold& u : run.ullages) {
      if (u.opens_at)
        p.series.push_back(
            level_line("vent opens", end, shown_value(Measure::ullage_pressure, display, *u.opens_at), 3));
    }
    if (!c.truck_pressure.empty()) p.series.push_back(series(Measure::ullage_pressure, {"truck", c.truck_pressure}, 2));
    chart.panels.push_back(std::move(p));
  }
  chart.panels.push_back(panel("depth", Measure::bore, c.depth));
  for (const DeliveryEvent& e : run.events) {
    if (e.what == DeliveryHappening::ninety) chart.marks.push_back({e.time, "90 %"});
    if (e.what == DeliveryHappening::ninety_five) chart.marks.push_back({e.time, "95 %"});
    if (e.what == DeliveryHappening::stalls) chart.marks.push_back({e.time, "stalls"});
  }
  return chart;
}

}  // namespace forecourse::report
