#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "forecourse/solvers/sequence/blow_down.h"
#include "forecourse/solvers/sequence/laws.h"
#include "forecourse/solvers/sequence/run_many.h"

namespace forecourse::test {

namespace seq = solvers::sequence;

/// Parameters of a pipe that is torn off while a pump feeds it. All are illustrative, no source.
struct KnockDownCase {
  double shutoff = 207e3;       ///< pump pressure without flow [Pa]
  double run_out = 4.73e-3;     ///< pump flow without pressure [m3/s]
  double lift = -18.1e3;        ///< of the liquid level over the outlet [Pa]
  double compliance = 3e-9;     ///< of the line [m3/Pa]
  double trunk = 5.9e9;         ///< loss of the line [Pa s2/m6]
  double valve = 1.75e9;        ///< loss of the open valve [Pa s2/m6]
  double break_area = 1.14e-3;  ///< [m2]
  double discharge = 0.6;       ///< [1]
  double density = 740.0;       ///< [kg/m3]
  bool has_valve = true;        ///< closes after the break
  double closing = 0.03;        ///< [s]
  double seat_leak = 0.0;       ///< conductance of the shut valve [m3/s/sqrt(Pa)]
  double hold_up = 6.15e-3;     ///< above the break, drains back [m3]
  double drain_area = 4e-5;     ///< [m2]
  double drain_height = 1.0;    ///< of the full hold-up [m]
  double into_sump = 0.3;       ///< share of what escapes
  double sump_area = 0.4;       ///< [m2]
  double sump_volume = 0.11;    ///< [m3]
  double weir = 3.4;            ///< overflow per height^1.5 [m1.5/s]
  double sensor_height = 0.05;  ///< [m]
  bool sensor_stops_pump = false;
  double relay = 3.0;         ///< [s]
  double stop_at = 60.0;      ///< emergency stop [s]
  double evaporation = 6e-7;  ///< [m/s]
  double film = 0.002;        ///< least thickness of the pool [m]
  double end = 600.0;         ///< [s]
  double soft = 300.0;        ///< smooths square roots of pressure [Pa]
  double soft_film = 2e-3;    ///< the same for depths of the pool [m]
};

/// Tank, line, hold-up above the break, sump, pool on the ground, air.
class KnockDown {
 public:
  enum Compartment { tank, line, hold_up, sump, pool, air };
  enum Link { pumping, break_sump, break_pool, drain_sump, drain_pool, overflow, evaporating };
  enum Flag { pump_on, valve_closing, valve_shut, sump_wet, drained };
  enum Guard { sump_wets, sump_full, hold_up_dry };
  enum Timed { shut, stop_button, relay_drops };
  enum Cause { none, open_break, closing_break, leaking_seat };
  enum Kind { safety, station };

  explicit KnockDown(const KnockDownCase& given) : c_(given) {
    pump_ = c_.run_out / std::sqrt(c_.shutoff);
    const double jet = c_.density / (2.0 * c_.discharge * c_.discharge * c_.break_area * c_.break_area);
    path_ = c_.trunk + jet;
    open_path_ = 1.0 / std::sqrt(path_ + c_.valve);
    drain_ = 0.3 * 0.6 * c_.drain_area * std::sqrt(2.0 * gravity);
  }

  static constexpr int compartments() { return 6; }
  static constexpr int links() { return 7; }
  static constexpr int auxiliaries() { return 1; }
  static constexpr int guard_count() { return 3; }
  static seq::LinkEnds ends(int link) {
    constexpr seq::LinkEnds all[] = {{tank, line},    {line, sump}, {line, pool}, {hold_up, sump},
                                     {hold_up, pool}, {sump, pool}, {pool, air}};
    return all[link];
  }
  [[nodiscard]] static seq::GuardRule guard_rule(int guard) {
    if (guard == hold_up_dry) return {seq::Crossing::falling, station, 0.0, true};
    if (guard == sump_full) return {seq::Crossing::rising, station, 0.0, true};
    return {seq::Crossing::rising, safety, 0.0, true};
  }

  [[nodiscard]] double opening(double t, const seq::SequenceView& v) const {
    if (v.flag(valve_shut)) return 0.0;
    return v.flag(valve_closing) ? std::max(0.0, 1.0 - (t - v.marks[0]) / c_.closing) : 1.0;
  }

  void flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const {
    const double p = v.amounts[line] / c_.compliance;
    q[pumping] = v.flag(pump_on) ? pump_ * seq::one_way_root(c_.shutoff + c_.lift - p, c_.soft) : 0.0;
    const double open = opening(t, v);
    const double through = (open == 1.0 ? open_path_ : open / std::sqrt(open * open * path_ + c_.valve)) +
                           (v.flag(valve_shut) ? c_.seat_leak : 0.0);
    const auto escaping = seq::split(through * seq::one_way_root(p, c_.soft), c_.into_sump);
    q[break_sump] = escaping.first;
    q[break_pool] = escaping.rest;
    const double head = v.amounts[hold_up] / c_.hold_up * c_.drain_height;
    const auto draining = seq::split(v.flag(drained) ? 0.0 : drain_ * seq::one_way_root(head, 1e-3), c_.into_sump);
    q[drain_sump] = draining.first;
    q[drain_pool] = draining.rest;
    const double over = std::max(0.0, (v.amounts[sump] - c_.sump_volume) / c_.sump_area);
    q[overflow] = over > 0.0 ? c_.weir * over * std::sqrt(over) : 0.0;
    const double area = std::numbers::pi * v.auxiliaries[0] * v.auxiliaries[0];
    q[evaporating] = v.amounts[pool] > 0.0 ? c_.evaporation * area : 0.0;
    rate[0] = std::sqrt(2.0 * gravity) * seq::one_way_root(v.amounts[pool] / area - c_.film, c_.soft_film);
  }

  void guards(double /*t*/, const seq::SequenceView& v, std::span<const double> /*flows*/,
              std::span<double> value) const {
    value[sump_wets] = v.amounts[sump] / c_.sump_area - c_.sensor_height;
    value[sump_full] = v.amounts[sump] - c_.sump_volume;
    value[hold_up_dry] = v.amounts[hold_up] - 1e-3 * c_.hold_up;
  }

  void on_event(const seq::Event& event, seq::Mutator& m) const {
    if (event.source == seq::EventSource::guard) return on_guard(event.id, m);
    if (event.id == shut) {
      m.set_flag(valve_shut, true);
      for (const int link : {break_sump, break_pool}) m.set_cause(link, leaking_seat);
      if (c_.seat_leak == 0.0) {
        m.close(break_sump);
        m.close(break_pool);
      }
    } else {
      m.set_flag(pump_on, false);
    }
  }

  [[nodiscard]] seq::Pack pack(double /*t*/, const seq::SequenceView& v) const {
    const bool held = v.flag(pump_on) && (!v.flag(valve_closing) || (v.flag(valve_shut) && c_.seat_leak > 0.0));
    return {held, line, tank, 0.0, 1.1 * c_.shutoff * c_.compliance};
  }

  /// Pumping at the moment of the break, line at the pump's pressure.
  [[nodiscard]] seq::SequenceStart start() const {
    seq::SequenceStart s;
    s.end = c_.end;
    s.amounts = {20.0, (c_.shutoff + c_.lift) * c_.compliance, c_.hold_up, 0.0, 0.0, 0.0};
    s.auxiliaries = {0.1};
    s.marks = {0.0};
    s.flags = 1U << pump_on | (c_.has_valve ? 1U << valve_closing : 0U);
    if (c_.has_valve) s.timed.push_back({c_.closing, safety, shut});
    s.timed.push_back({c_.stop_at, station, stop_button});
    s.causes = {none, c_.has_valve ? closing_break : open_break, c_.has_valve ? closing_break : open_break};
    return s;
  }

 private:
  void on_guard(int guard, seq::Mutator& m) const {
    if (guard == sump_wets) {
      m.set_flag(sump_wet, true);
      if (c_.sensor_stops_pump) m.schedule({m.time() + c_.relay, safety, relay_drops});
    } else if (guard == hold_up_dry) {
      m.set_flag(drained, true);
      m.close(drain_sump);
      m.close(drain_pool);
    }
  }

  static constexpr double gravity = 9.80665;
  KnockDownCase c_;
  double pump_ = 0.0;       ///< [m3/s/sqrt(Pa)]
  double path_ = 0.0;       ///< [Pa s2/m6]
  double open_path_ = 0.0;  ///< all of it, valve open [m3/s/sqrt(Pa)]
  double drain_ = 0.0;      ///< [m3/s/sqrt(m)]
};

/// A line with a crack of q ~ sqrt(p), on a pump that runs for part of each cycle; in closed form between its events.
class PumpedCrack {
 public:
  enum Compartment { tank, line, sump };
  enum Link { pumping, leaking };
  enum Timed { starts, stops };

  PumpedCrack(double run_pressure, double compliance, seq::LeakLaw leak, double on, double off)
      : pressure_(run_pressure), compliance_(compliance), leak_(leak), on_(on), off_(off) {}

  static constexpr int compartments() { return 3; }
  static constexpr int links() { return 2; }
  static constexpr int auxiliaries() { return 0; }
  static constexpr int guard_count() { return 1; }
  static seq::LinkEnds ends(int link) {
    return link == pumping ? seq::LinkEnds{tank, line} : seq::LinkEnds{line, sump};
  }
  static seq::GuardRule guard_rule(int /*guard*/) { return {seq::Crossing::rising, 0, 0.0, true}; }

  void flows(double /*t*/, const seq::SequenceView& v, std::span<double> q, std::span<double> /*rate*/) const {
    const double p = std::max(0.0, v.amounts[line] / compliance_);
    q[leaking] = leak_.coefficient * (leak_.exponent == 0.5 ? std::sqrt(p) : std::pow(p, leak_.exponent));
    q[pumping] = v.flag(0) ? q[leaking] : 0.0;
  }
  void guards(double /*t*/, const seq::SequenceView& v, std::span<const double> /*q*/, std::span<double> value) const {
    value[0] = v.amounts[sump] - sensor;
  }
  static bool quiet(double /*t*/, const seq::SequenceView& /*v*/) { return true; }
  void advance_analytically(double from, double to, const seq::SequenceView& v, std::span<double> moved,
                            std::span<double> /*auxiliaries*/) const {
    if (v.flag(0)) {
      moved[leaking] = leak_.coefficient * std::pow(pressure_, leak_.exponent) * (to - from);
      moved[pumping] = moved[leaking];
    } else {
      moved[leaking] = seq::blow_down(v.amounts[line] / compliance_, compliance_, leak_, to - from).released;
    }
  }
  void on_event(const seq::Event& event, seq::Mutator& m) const {
    if (event.source == seq::EventSource::guard) return;
    const bool on = event.id == starts;
    m.set_flag(0, on);
    if (on) m.transfer(tank, line, pressure_ * compliance_ - m.amount(line), 0);
    m.schedule({event.time + (on ? on_ : off_), 0, on ? stops : starts});
  }
  static constexpr double sensor = 0.02;  // [m3]

 private:
  double pressure_, compliance_;
  seq::LeakLaw leak_;
  double on_, off_;
};

}  // namespace forecourse::test
