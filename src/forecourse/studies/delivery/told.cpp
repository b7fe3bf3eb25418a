#include "forecourse/studies/delivery/told.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/base/index.h"
#include "forecourse/parts/escape/static_limit.h"
#include "forecourse/parts/vapor/isothermal_flow.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/delivery/model/model.h"

namespace forecourse::studies::delivering {
namespace {

using Told = Model::Told;

double area(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

class Teller {
 public:
  Teller(const Setup& setup, const Context& context)
      : s_(setup), c_(setup.everything), model_(c_), start_(model_.start()) {
    result_ = seq::run_sequence(model_, start_, told_options(), {}, context);
  }

  DeliveryRun run(bool charts) {
    out_.time = result_.time;
    out_.steps = result_.steps;
    out_.chart = empty_chart();
    for (int d = 0; d < model_.drops(); ++d) begin_drop(d);
    for (int s = 0; s < model_.spaces(); ++s) begin_space(s);
    out_.truck.closed = c_.truck_closed;
    walk();
    for (int d = 0; d < model_.drops(); ++d) end_drop(d);
    for (int t = 0; t < model_.tanks(); ++t) tell_tank(t);
    for (int s = 0; s < model_.spaces(); ++s) end_space(s);
    tell_open_ullages();
    tell_status();
    tell_moves();
    tell_balance();
    if (!charts) out_.chart = {};
    return std::move(out_);
  }

 private:
  // ---- beginnings ----------------------------------------------------------------------------------

  void begin_drop(int d) {
    const DropCase& drop = c_.drops[at(d)];
    const DropSetup& name = s_.drops[at(d)];
    DropTold told;
    told.compartment = name.compartment;
    told.tank = s_.tanks[at(drop.tank)].tank->id.text;
    told.product = name.product;
    told.brought = drop.volume;
    told.first_rate = model_.first_rate(d);
    told.hose_holds = drop.in_hose;
    told.takes_pressure_into_account = !(drop.rate > 0.0);
    if (name.hose_bore > 0.0) told.hose_limit = parts::fill_velocity_limit(name.hose_bore);
    if (name.tube_bore > 0.0) told.tube_limit = parts::fill_velocity_limit(name.tube_bore);
    out_.drops.push_back(std::move(told));
  }

  void begin_space(int s) {
    UllageTold told;
    told.tanks = s_.spaces[at(s)].tanks;
    told.joint = s_.spaces[at(s)].joint;
    told.at_least = s_.spaces[at(s)].at_least;
    for (std::size_t v = 0; v < c_.vents.size(); ++v) {
      const VentCase& vent = c_.vents[v];
      if (vent.space != s) continue;
      told.vents.push_back(s_.vents[v]);
      if (vent.out.opens_at() > 0.0 && !(told.opens_at && *told.opens_at < vent.out.opens_at()))
        told.opens_at = vent.out.opens_at();
      if (vent.in.opens_at() > 0.0 && !(told.vacuum_opens_at && *told.vacuum_opens_at < vent.in.opens_at()))
        told.vacuum_opens_at = vent.in.opens_at();
    }
    told.no_vent = !has_way_out(s);
    out_.ullages.push_back(std::move(told));
  }

  [[nodiscard]] bool opens_outward(int s) const {
    if (!c_.spaces[at(s)].to_truck.shut() && c_.truck_closed) return true;
    return std::any_of(c_.vents.begin(), c_.vents.end(),
                       [&](const VentCase& vent) { return vent.space == s && !vent.out.shut(); });
  }

  /// Of its own, or of a space that it reaches through branches.
  [[nodiscard]] bool has_way_out(int s) const {
    std::vector<int> reached{s};
    for (std::size_t k = 0; k < reached.size(); ++k) {
      if (opens_outward(reached[k])) return true;
      for (const BranchCase& branch : c_.branches) {
        if (branch.from != reached[k] && branch.to != reached[k]) continue;
        const int other = branch.from == reached[k] ? branch.to : branch.from;
        if (std::find(reached.begin(), reached.end(), other) == reached.end()) reached.push_back(other);
      }
    }
    return false;
  }

  void tell_open_ullages() {
    for (int t = 0; t < model_.tanks(); ++t) {
      if (c_.tanks[at(t)].space >= 0) continue;
      UllageTold open;
      open.tanks = {s_.tanks[at(t)].tank->id.text};
      open.problem = s_.open_because[at(t)];
      out_.ullages.push_back(std::move(open));
    }
  }

  [[nodiscard]] DeliveryChart empty_chart() const {
    DeliveryChart chart;
    for (const DropSetup& drop : s_.drops) {
      for (auto* courses : {&chart.rate, &chart.truck, &chart.hose}) courses->push_back({drop.compartment, {}});
    }
    for (const TankSetup& tank : s_.tanks) {
      for (auto* courses : {&chart.volume, &chart.depth}) courses->push_back({tank.tank->id.text, {}});
    }
    for (const SpaceSetup& space : s_.spaces) {
      std::string name;
      for (const std::string& tank : space.tanks) name += (name.empty() ? "" : ", ") + tank;
      if (space.tanks.empty()) name = space.joint;
      chart.ullage.push_back({name, {}});
      chart.returned.push_back({name, {}});
      if (space.has_return) chart.riser.push_back({name, {}});
      if (!space.to_truck.hose.empty()) chart.hose_pressure.push_back({name, {}});
    }
    for (const std::string& vent : s_.vents) chart.vent.push_back({vent, {}});
    for (const std::string& branch : s_.branches) chart.branch.push_back({branch, {}});
    return chart;
  }

  // ---- the run, moment by moment --------------------------------------------------------------------

  /// Every step, and beside it what the events at its end changed, so that a jump shows as one.
  void walk() {
    std::vector<double> flows(at(model_.links()), 0.0);
    flags_ = 0;
    add(0.0, start_.amounts, flows);
    std::size_t event = 0;
    const seq::Trace& trace = result_.trace;
    const auto add_events = [&](double until) {
      for (; event < trace.events.size() && trace.events[event].event.time <= until; ++event) {
        flags_ = trace.events[event].flags_after;
        add(trace.events[event].event.time, trace.amounts(event), trace.flows(event));
        tell_event(event);
      }
    };
    add_events(0.0);
    for (std::size_t i = 0; i < trace.steps.size(); ++i) {
      const auto state = trace.state(i);
      add(trace.steps[i].time, state.subspan(0, at(model_.compartments())), state.subspan(at(model_.compartments())));
      add_events(trace.steps[i].time);
    }
    tell_end();
  }

  [[nodiscard]] double depth(int t, double volume) const {
    const TankCase& tank = c_.tanks[at(t)];
    return tank.body.depth_at(s_.tanks[at(t)].place, tank.level.level(volume));
  }

  /// Loss of parts passed one after the other, with the sign of the flow. [Pa]
  static double loss_of(const std::vector<network::Element>& parts, double flow) {
    double sum = 0.0;
    for (const network::Element& part : parts) sum += network::loss(part, std::abs(flow)).pressure_loss;
    return std::copysign(sum, flow);
  }

  /// In the vapor return at grade, before its dry break. [Pa] gauge
  [[nodiscard]] double at_grade(const ReturnWay& way, double ullage, double flow) const {
    return parts::pressure_after(ullage, loss_of(way.riser, flow), c_.atmospheric);
  }

  /// Midway in the vapor hose. [Pa] gauge
  [[nodiscard]] double in_hose(const ReturnWay& way, double ullage, double flow) const {
    const double before = loss_of(way.riser, flow) + loss_of(way.dry_break, flow);
    return parts::pressure_after(ullage, before + 0.5 * loss_of(way.hose, flow), c_.atmospheric);
  }

  void add(double time, std::span<const double> amounts, std::span<const double> flows) {
    const seq::SequenceView view{amounts, {}, {}, flags_};
    DeliveryChart& chart = out_.chart;
    chart.time.push_back(time);
    for (int d = 0; d < model_.drops(); ++d) {
      const double rate = flows[at(model_.drop_link(d))] + flows[at(model_.drain_link(d))];
      chart.rate[at(d)].value.push_back(rate);
      chart.truck[at(d)].value.push_back(amounts[at(Model::truck(d))]);
      chart.hose[at(d)].value.push_back(amounts[at(model_.hose(d))]);
      watch_drop(d, time, rate, flows[at(model_.drop_link(d))], amounts[at(model_.tank(c_.drops[at(d)].tank))]);
    }
    for (int t = 0; t < model_.tanks(); ++t) {
      chart.volume[at(t)].value.push_back(amounts[at(model_.tank(t))]);
      chart.depth[at(t)].value.push_back(depth(t, amounts[at(model_.tank(t))]));
    }
    std::size_t risers = 0;
    std::size_t hoses = 0;
    for (int s = 0; s < model_.spaces(); ++s) {
      const double pressure = model_.ullage_pressure(view, s);
      chart.ullage[at(s)].value.push_back(pressure);
      const double flow = flows[at(model_.return_link(s))];
      chart.returned[at(s)].value.push_back(flow);
      const SpaceSetup& space = s_.spaces[at(s)];
      if (space.has_return) chart.riser[risers++].value.push_back(at_grade(space.to_truck, pressure, flow));
      if (!space.to_truck.hose.empty())
        chart.hose_pressure[hoses++].value.push_back(in_hose(space.to_truck, pressure, flow));
      UllageTold& told = out_.ullages[at(s)];
      if (pressure > told.highest_pressure) {
        told.highest_pressure = pressure;
        told.highest_at = time;
      }
      told.lowest_pressure = std::min(told.lowest_pressure, pressure);
      told.last_pressure = pressure;
    }
    for (int v = 0; v < model_.vents(); ++v) chart.vent[at(v)].value.push_back(flows[at(model_.vent_link(v))]);
    for (int b = 0; b < model_.branches(); ++b) chart.branch[at(b)].value.push_back(flows[at(model_.branch_link(b))]);
    if (!c_.truck_closed) return;
    const double pressure = model_.truck_pressure(view);
    chart.truck_pressure.push_back(pressure);
    out_.truck.highest_pressure = std::max(out_.truck.highest_pressure, pressure);
    out_.truck.lowest_pressure = std::min(out_.truck.lowest_pressure, pressure);
  }

  void watch_drop(int d, double /*time*/, double rate, double from_truck, double in_tank) {
    DropTold& told = out_.drops[at(d)];
    const DropSetup& name = s_.drops[at(d)];
    told.highest_rate = std::max(told.highest_rate, rate);
    if (name.hose_bore > 0.0)
      told.hose_velocity = std::max(told.hose_velocity.value_or(0.0), from_truck / area(name.hose_bore));
    if (!(name.tube_bore > 0.0)) return;
    const double velocity = rate / area(name.tube_bore);
    told.tube_velocity = std::max(told.tube_velocity.value_or(0.0), velocity);
    const double covered = c_.tanks[at(c_.drops[at(d)].tank)].covered;
    if (!(covered < never)) return;
    if (!told.start_velocity) told.start_velocity = 0.0;
    if (in_tank < covered) told.start_velocity = std::max(*told.start_velocity, velocity);
  }

  // ---- events --------------------------------------------------------------------------------------

  void tell(double time, DeliveryHappening what, std::string subject, std::string words, int t) {
    DeliveryEvent event{time, what, std::move(subject), std::move(words), 0.0, {}, {}};
    for (const DeliveryCourse& rate : out_.chart.rate) event.rate += rate.value.back();
    if (t >= 0) {
      event.depth = out_.chart.depth[at(t)].value.back();
      if (const int space = c_.tanks[at(t)].space; space >= 0)
        event.ullage_pressure = out_.chart.ullage[at(space)].value.back();
    }
    out_.events.push_back(std::move(event));
  }

  void tell_event(std::size_t i) {
    const seq::Event& event = result_.trace.events[i].event;
    if (event.source == seq::EventSource::timed) return tell_timed(event);
    const Model::Guard& guard = model_.guard(event.id);
    const auto tank_of_drop = [&](int d) { return c_.drops[at(d)].tank; };
    const auto of_drop = [&](DeliveryHappening what, const char* words) {
      tell(event.time, what, s_.drops[at(guard.of)].compartment, words, tank_of_drop(guard.of));
    };
    const auto of_tank = [&](DeliveryHappening what, const char* words) {
      tell(event.time, what, s_.tanks[at(guard.of)].tank->id.text, words, guard.of);
    };
    using enum DeliveryHappening;
    switch (guard.what) {
      case Told::truck_empty:
        return of_drop(truck_empty, "the compartment is empty");
      case Told::hose_empty:
        end_of_drop(guard.of, event.time);
        return of_drop(hose_drained, "the hose has drained into the tank");
      case Told::drain_stalls:
        end_of_drop(guard.of, event.time);
        return of_drop(hose_stays, "the hose drains no further");
      case Told::stalls:
        return of_drop(stalls, "the drop stalls: pressure in the ullage holds the liquid up");
      case Told::restricts:
        return of_tank(restricts, "the overfill valve begins to shut");
      case Told::closes:
        return of_tank(closes, "the overfill valve is shut");
      case Told::alarm:
        out_alarm_.resize(c_.tanks.size());
        out_alarm_[at(guard.of)] = Alarm{event.time, rate_into(guard.of)};
        return of_tank(alarm, "the overfill alarm sounds");
      case Told::ninety:
        return of_tank(ninety, "the tank holds 90 % of its capacity");
      case Told::ninety_five:
        return of_tank(ninety_five, "the tank holds 95 % of its capacity");
      case Told::fills:
        return of_tank(tank_full, "the tank is full: what still comes would run out of its openings");
      case Told::covered:
        return tell_covered(guard.of, event.time);
      case Told::lifts:
        return of_vent(guard.of, event.time, lifts, "the vent valve opens outward");
      case Told::draws:
        return of_vent(guard.of, event.time, draws, "the vent valve opens and draws air in");
      case Told::truck_over:
        return tell(event.time, truck_over, "truck", "the pressure in the truck passes its limit", -1);
      case Told::truck_under:
        return tell(event.time, truck_under, "truck", "the vacuum in the truck passes its limit", -1);
    }
  }

  void of_vent(int vent, double time, DeliveryHappening what, const char* words) {
    const int space = c_.vents[at(vent)].space;
    UllageTold& told = out_.ullages[at(space)];
    std::optional<double>& first = what == DeliveryHappening::lifts ? told.lifts_at : told.draws_at;
    if (!first) first = time;
    int tank = -1;
    for (int t = 0; t < model_.tanks() && tank < 0; ++t) {
      if (c_.tanks[at(t)].space == space) tank = t;
    }
    tell(time, what, s_.vents[at(vent)], words, tank);
  }

  void tell_covered(int t, double time) {
    for (int d = 0; d < model_.drops(); ++d) {
      if (c_.drops[at(d)].tank == t) out_.drops[at(d)].covered_at = time;
    }
    if (time > 0.0)
      tell(time, DeliveryHappening::covered, s_.tanks[at(t)].tank->id.text, "the end of the drop tube is covered", t);
  }

  void tell_timed(const seq::Event& event) {
    if (Model::is_start(event.id)) {
      const int d = static_cast<int>(event.value);
      if (!(flags_ >> static_cast<unsigned>(Model::runs(d)) & 1U)) return;
      out_.drops[at(d)].begins = event.time;
      return tell(event.time, DeliveryHappening::begins, s_.drops[at(d)].compartment, "the drop begins",
                  c_.drops[at(d)].tank);
    }
    const int tank = Model::is_driver(event.id) ? static_cast<int>(event.value) : -1;
    const std::string subject = tank >= 0 ? s_.tanks[at(tank)].tank->id.text : "truck";
    tell(event.time, DeliveryHappening::truck_shut, subject, "the truck's valve is shut", tank);
  }

  void end_of_drop(int d, double time) { out_.drops[at(d)].ends = time; }

  [[nodiscard]] double rate_into(int t) const {
    double rate = 0.0;
    for (int d = 0; d < model_.drops(); ++d) {
      if (c_.drops[at(d)].tank == t) rate += out_.chart.rate[at(d)].value.back();
    }
    return rate;
  }

  void tell_end() {
    if (result_.status == seq::SequenceStatus::stopped && result_.stop_reason == Model::all_done)
      tell(result_.time, DeliveryHappening::ends, {}, "the delivery ends", -1);
  }

  // ---- ends ----------------------------------------------------------------------------------------

  [[nodiscard]] bool flag(int i) const { return (result_.flags >> static_cast<unsigned>(i) & 1U) != 0; }

  void end_drop(int d) {
    DropTold& told = out_.drops[at(d)];
    const int t = c_.drops[at(d)].tank;
    told.left_in_truck = std::max(0.0, result_.amounts[at(Model::truck(d))]);
    told.left_in_hose = std::max(0.0, result_.amounts[at(model_.hose(d))]);
    told.dropped = result_.passed(model_.drop_link(d)) + result_.passed(model_.drain_link(d));
    constexpr double crumb = 1e-5;  // [m3]
    const bool stalls = result_.status == seq::SequenceStatus::stopped && result_.stop_reason == Model::stalled;
    if (!told.begins) {
      told.end = DropEnd::not_begun;
    } else if (told.left_in_truck < crumb) {
      told.end = DropEnd::emptied;
    } else if (flag(Model::full(t))) {
      told.end = DropEnd::tank_full;
    } else if (flag(Model::closed(t)) && !flag(Model::shut(d))) {
      told.end = DropEnd::held;
    } else if (stalls) {
      told.end = DropEnd::stalled;
    } else if (flag(Model::ended(d)) || flag(Model::shut(d))) {
      told.end = DropEnd::stopped;
    } else {
      told.end = DropEnd::going_on;
    }
    if (!told.begins) return;
    const double until = last_from_truck(d);
    if (!told.ends) told.ends = until;
    if (until > *told.begins) told.mean_rate = result_.passed(model_.drop_link(d)) / (until - *told.begins);
  }

  /// Last moment at which the truck gave something [s].
  [[nodiscard]] double last_from_truck(int d) const {
    const std::vector<double>& left = out_.chart.truck[at(d)].value;
    for (std::size_t k = left.size(); k-- > 1;) {
      if (left[k] != left[k - 1]) return out_.chart.time[k];
    }
    return 0.0;
  }

  void tell_tank(int t) {
    const TankCase& c = c_.tanks[at(t)];
    const TankSetup& setup = s_.tanks[at(t)];
    DeliveryTank told;
    told.tank = setup.tank->id.text;
    told.capacity = c.capacity;
    told.volume_before = c.volume;
    told.volume_after = result_.amounts[at(model_.tank(t))];
    told.depth_before = depth(t, c.volume);
    told.depth_after = depth(t, told.volume_after);
    told.room_to_90 = c.ninety - c.volume;
    told.room_to_95 = c.ninety_five - c.volume;
    told.room_to_95_after = c.ninety_five - told.volume_after;
    for (const DropCase& drop : c_.drops) told.for_it += drop.tank == t ? drop.volume : 0.0;
    told.container = setup.container;
    told.has_container = setup.fill != nullptr && setup.fill->spill_container.has_value();
    if (at(t) < out_alarm_.size() && out_alarm_[at(t)]) tell_alarm(t, *out_alarm_[at(t)], told);
    out_.tanks.push_back(std::move(told));
  }

  struct Alarm {
    double time = 0.0;
    double rate = 0.0;
  };

  /// From the alarm until 95 %, or until the valve is shut where that is lower: as it was, or at the rate of the alarm
  /// where it did not come that far.
  void tell_alarm(int t, const Alarm& alarm, DeliveryTank& told) const {
    const TankCase& c = c_.tanks[at(t)];
    told.alarm_at = alarm.time;
    const double limit = std::min(c.ninety_five, c.closes);
    const std::vector<double>& volume = out_.chart.volume[at(t)].value;
    for (std::size_t k = 0; k < volume.size(); ++k) {
      if (volume[k] >= limit - 1e-9) {
        told.seconds_to_shut = std::max(0.0, out_.chart.time[k] - alarm.time);
        return;
      }
    }
    if (alarm.rate > 0.0) told.seconds_to_shut = std::max(0.0, limit - c.alarm) / alarm.rate;
  }

  void end_space(int s) {
    UllageTold& told = out_.ullages[at(s)];
    for (int v = 0; v < model_.vents(); ++v) {
      if (c_.vents[at(v)].space != s) continue;
      const double net = result_.passed(model_.vent_link(v));
      (net > 0.0 ? told.vented : told.drawn_in) += std::abs(net);
    }
    for (int b = 0; b < model_.branches(); ++b) {
      const BranchCase& branch = c_.branches[at(b)];
      if (branch.from != s && branch.to != s) continue;
      const double net = result_.passed(model_.branch_link(b));
      told.passed_on += branch.from == s ? net : -net;
      told.has_branch = true;
    }
    told.returned = result_.passed(model_.return_link(s));
    told.grown = result_.passed(model_.growth_link(s));
    told.stored = result_.amounts[at(model_.vapor(s))] - result_.passed(model_.filling_link(s));
  }

  void tell_status() {
    using enum seq::SequenceStatus;
    out_.truck.stored = result_.amounts[at(model_.truck_vapor())] + result_.passed(model_.emptying_link());
    out_.stalled = result_.status == stopped && result_.stop_reason == Model::stalled;
    out_.under_pressure = out_.stalled;
    for (const UllageTold& u : out_.ullages)
      out_.under_pressure = out_.under_pressure || (u.no_vent && u.last_pressure > pascal_from_inches_of_water(1.0));
    out_.moves_all = true;
    double active = 0.0;
    for (const DropTold& drop : out_.drops) {
      out_.dropped += drop.dropped;
      out_.moves_all = out_.moves_all && drop.end == DropEnd::emptied;
      active = std::max(active, drop.ends.value_or(0.0));
    }
    if (active > 0.0) out_.mean_rate = out_.dropped / active;
    if (result_.status == balance_violated) out_.problem = "what moved does not explain what is there";
    if (result_.status == finished) out_.problem = "it was not over after a day: this is what it had by then";
    if (result_.status != stopped && out_.problem.empty()) out_.problem = "it was not carried to its end";
  }

  [[nodiscard]] std::string vapor_name(int s) const {
    const std::string& name = out_.chart.ullage[at(s)].name;
    return s_.spaces[at(s)].tanks.empty() ? "joint of the branches to " + name : "ullage of " + name;
  }

  [[nodiscard]] std::string name_of(int compartment) const {
    if (compartment < model_.hose(0)) return s_.drops[at(compartment)].compartment;
    if (compartment < model_.tank(0)) return "hose of " + s_.drops[at(compartment - model_.hose(0))].compartment;
    if (compartment < model_.vapor(0)) return "tank " + s_.tanks[at(compartment - model_.tank(0))].tank->id.text;
    if (compartment < model_.truck_vapor()) return vapor_name(compartment - model_.vapor(0));
    if (compartment == model_.truck_vapor()) return "vapor space of the truck";
    return compartment == model_.air() ? "open air" : "given off by the liquid";
  }

  void tell_moves() {
    for (const seq::LedgerRow& row : result_.ledger) {
      if (row.net == 0.0 || row.from == model_.room() || row.to == model_.room()) continue;
      const bool liquid = row.from < model_.vapor(0);
      out_.moves.push_back({name_of(row.from), name_of(row.to), liquid ? "liquid" : "vapor", row.net});
    }
  }

  /// Change of what is held, against what the ledger says passed, for liquid and vapor each.
  void tell_balance() {
    std::array<double, 2> largest{}, unexplained{}, total{};
    for (int c = 0; c < model_.compartments(); ++c) {
      const std::size_t kind = c < model_.vapor(0) ? 0 : 1;
      double explained = 0.0;
      for (const seq::LedgerRow& row : result_.ledger) {
        if (row.from == c) explained -= row.net;
        if (row.to == c) explained += row.net;
        if (row.from == c || row.to == c) largest[kind] = std::max(largest[kind], row.gross);
      }
      const double change = result_.amounts[at(c)] - start_.amounts[at(c)];
      unexplained[kind] = std::max(unexplained[kind], std::abs(change - explained));
      total[kind] += change;
    }
    const auto share = [&](std::size_t kind) {
      return largest[kind] > 0.0 ? std::max(unexplained[kind], std::abs(total[kind])) / largest[kind] : 0.0;
    };
    out_.liquid_balance = share(0);
    out_.vapor_balance = share(1);
  }

  const Setup& s_;
  const Case& c_;
  Model model_;
  seq::SequenceStart start_;
  seq::SequenceResult result_;
  std::uint64_t flags_ = 0;
  std::vector<std::optional<Alarm>> out_alarm_;
  DeliveryRun out_;
};

}  // namespace

DeliveryRun tell_run(const Setup& setup, bool charts, const Context& context) {
  return Teller(setup, context).run(charts);
}

}  // namespace forecourse::studies::delivering
