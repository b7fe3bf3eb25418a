#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

void Model::on_event(const seq::Event& event, seq::Mutator& m) const {
  if (event.source == seq::EventSource::timed) return on_timed(event, m);
  const int own = Layout::guards_of_end * layout_.ends;
  if (event.id == layout_.unseen()) return;
  if (event.id >= own + Layout::shared_guards) {
    return run_dry((event.id - own - Layout::shared_guards) / Layout::guards_of_tank, m);
  }
  if (event.id < own) return on_end_guard(event.id / Layout::guards_of_end, event.id % Layout::guards_of_end, m);
  on_shared_guard(event.id - own, m);
}

void Model::on_timed(const seq::Event& event, seq::Mutator& m) const {
  const int f = end_of(event.id);
  switch (timed_of(event.id)) {
    case Timed::triggers:
      return trigger(f, m);
    case Timed::shuts:
      return shut(f, m);
    case Timed::pump_starts:
      return start_pump(f, m);
    case Timed::pump_stops:
      return stop_pump(f, m);
    case Timed::settles:
      return settle(f, m);
    case Timed::begins_at_rest:
      return disturb(f, m);
    case Timed::emergency_stop:
    case Timed::sensor_acts:
    case Timed::detector:
      return stop_all(m);
    case Timed::sensor_wakes:
      return;
  }
}

void Model::on_end_guard(int f, int which, seq::Mutator& m) const {
  if (which == Layout::runs_dry) {
    m.set_flag(Layout::flag(f, Layout::drained), true);
  } else if (which == Layout::crack_trips) {
    trigger(f, m);
  } else if (which == Layout::runs_spent && by_gravity(f, m.view())) {
    settle(f, m);  // from here the tank feeds it
  } else if (which == Layout::runs_spent) {
    m.set_flag(Layout::flag(f, Layout::spent), true);
    m.set_auxiliary(Layout::escape_flow(f), 0.0);
    m.set_flag(Layout::flag(f, Layout::settled), true);
    rest_at(f, {0.0, 0.0, 0.0, broken(f).opening.weight}, m);
  } else {  // the check valve shuts
    m.set_auxiliary(Layout::trunk_flow(f), 0.0);
    m.set_flag(Layout::flag(f, Layout::held), true);
    const Broken& b = broken(f);
    const double over = m.amount(Layout::line(f)) - b.compliance * (b.relief - b.rest_pressure);
    if (b.relief < never && over > 0.0) m.transfer(Layout::line(f), Layout::tank(f), over, cause_relief);
    if (m.flag(Layout::flag(f, Layout::shut))) settle(f, m);
  }
}

void Model::on_shared_guard(int which, seq::Mutator& m) const {
  if (which == Layout::sensor) {
    m.set_flag(layout_.wet(), true);
    if (c_->stops.sensor_acts_in < never) {
      m.schedule({m.time() + c_->stops.sensor_acts_in, stopping, timed_id(Timed::sensor_acts), 0.0});
    }
  } else if (which == Layout::seal) {
    m.set_flag(layout_.at_seal(), true);
  } else if (which == Layout::brim) {
    m.set_flag(layout_.full(), true);
  } else if (which == Layout::drain) {
    m.set_flag(layout_.at_drain(), true);
  } else if (which == Layout::interceptor_full) {
    m.set_flag(layout_.at_drain(), false);
  } else if (which == Layout::link_parts) {
    for (int f = 0; f < layout_.ends; ++f) {
      if (broken(f).shutting.by_link) trigger(f, m);
    }
  }
}

void Model::trigger(int f, seq::Mutator& m) const {
  if (m.flag(Layout::flag(f, Layout::triggered))) return;
  catch_up(f, m);
  m.set_flag(Layout::flag(f, Layout::triggered), true);
  m.set_mark(Layout::mark(f, Layout::triggered_at), m.time());
  for (const auto which : {Layout::escape_sump, Layout::escape_slab})
    m.set_cause(Layout::link(f, which), cause_closing);
  m.schedule({m.time() + parts::shut_time(broken(f).shutting.law), shutting, timed_id(Timed::shuts, f), 0.0});
  disturb(f, m);
}

void Model::shut(int f, seq::Mutator& m) const {
  m.set_flag(Layout::flag(f, Layout::shut), true);
  m.set_auxiliary(Layout::escape_flow(f), 0.0);
  for (const auto which : {Layout::escape_sump, Layout::escape_slab}) m.set_cause(Layout::link(f, which), cause_seat);
  disturb(f, m);
}

void Model::start_pump(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  if (m.flag(layout_.stopped()) || m.flag(layout_.dry(f))) return;
  if (b.runs_for < never) {
    m.schedule({m.time() + b.runs_for, stopping, timed_id(Timed::pump_stops, f), 0.0});
    m.schedule({m.time() + b.runs_for + b.rests_for, stopping, timed_id(Timed::pump_starts, f), 0.0});
  }
  if (m.flag(Layout::flag(f, Layout::pump_on))) return;
  m.set_flag(Layout::flag(f, Layout::pump_on), true);
  m.set_flag(Layout::flag(f, Layout::spent), false);
  disturb(f, m);
}

void Model::stop_pump(int f, seq::Mutator& m) const {
  if (!m.flag(Layout::flag(f, Layout::pump_on))) return;
  const Broken& b = broken(f);
  catch_up(f, m);
  m.set_flag(Layout::flag(f, Layout::pump_on), false);
  if (!by_gravity(f, m.view())) m.set_auxiliary(Layout::trunk_flow(f), 0.0);
  const double pressed = m.amount(Layout::line(f));
  const double kept = b.holds_at < never ? b.compliance * (b.holds_at - b.rest_pressure) : pressed;
  if (!b.checked) {
    if (pressed > 0.0) m.transfer(Layout::line(f), Layout::tank(f), pressed, cause_runs_back);
  } else if (pressed > kept) {
    m.transfer(Layout::line(f), Layout::tank(f), pressed - kept, cause_relief);
  }
  if (!m.flag(Layout::flag(f, Layout::triggered))) {
    for (const auto which : {Layout::escape_sump, Layout::escape_slab}) {
      if (!is_leak(b.opening)) m.set_cause(Layout::link(f, which), cause_after_stop);
    }
  }
  disturb(f, m);
}

void Model::stop_all(seq::Mutator& m) const {
  m.set_flag(layout_.stopped(), true);
  for (int f = 0; f < layout_.ends; ++f) stop_pump(f, m);
}

/// The line moves again. A leak is too small to move a column: it settles at once.
void Model::disturb(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  m.cancel(settling, timed_id(Timed::settles, f));
  m.set_flag(Layout::flag(f, Layout::settled), false);
  m.set_flag(Layout::flag(f, Layout::held), false);
  const bool on = m.flag(Layout::flag(f, Layout::pump_on)) || by_gravity(f, m.view());
  m.set_flag(Layout::flag(f, Layout::calm), is_leak(b.opening));
  m.arm(Layout::guard(f, Layout::runs_spent), !on && b.compliance > 0.0);
  m.arm(Layout::guard(f, Layout::check_shuts), false);
  const bool closing = m.flag(Layout::flag(f, Layout::triggered)) && !m.flag(Layout::flag(f, Layout::shut));
  if (is_leak(b.opening) && !closing) return settle(f, m);
  const bool columns = b.inertance > 0.0 && b.compliance > 0.0 && b.running.open.empty();
  m.arm(Layout::guard(f, Layout::check_shuts), on && columns && m.flag(Layout::flag(f, Layout::shut)));
  m.schedule({m.time() + follows_for, settling, timed_id(Timed::settles, f), 0.0});
}

/// The balance that the line comes to, taken as it stands until something moves it again.
void Model::settle(int f, seq::Mutator& m) const {
  const Broken& b = broken(f);
  const bool shut_now = m.flag(Layout::flag(f, Layout::shut));
  const bool on = m.flag(Layout::flag(f, Layout::pump_on));
  const bool leaks = shut_now ? b.opening.seat_leak > 0.0 : true;
  if (m.flag(Layout::flag(f, Layout::triggered)) && !shut_now) {  // still closing
    return m.schedule({m.time() + follows_for, settling, timed_id(Timed::settles, f), 0.0});
  }
  m.set_flag(Layout::flag(f, Layout::calm), true);
  const network::Feed& from = feed(f, m.view());
  const double stands = b.rest_pressure + (b.compliance > 0.0 ? m.amount(Layout::line(f)) / b.compliance : 0.0);
  if (!from.supplied) {
    const bool still = b.compliance == 0.0 || (!leaks && from.shut());
    if (!still) return m.arm(Layout::guard(f, Layout::runs_spent), b.compliance > 0.0);  // it springs back
    m.set_flag(Layout::flag(f, Layout::settled), true);
    // Between two runs of a pump whose line's spring is not known the line is held at the pressure that is entered.
    const bool ended = m.flag(layout_.stopped()) || m.flag(layout_.dry(f)) || !(b.runs_for < never);
    const bool held = is_leak(b.opening) && b.compliance == 0.0 && b.holds_at < never && !ended;
    return rest_at(f, held ? at_pressure(b, b.holds_at, 0.0) : Flows{0.0, 0.0, 0.0, stands}, m);
  }
  const bool springs_back =
      !on && leaks && b.compliance > 0.0 && leaks_only(f, m.view()) && stands > floor(f, m.view()) + spent_pressure;
  if (springs_back) return m.arm(Layout::guard(f, Layout::runs_spent));
  Flows is{0.0, 0.0, hoses_at(from, 0.0), from.pressure.at(0.0).value - fall(f, m.view())};
  if (leaks) is = balanced(f, m.view());
  const double excess = b.compliance * (is.pressure - b.rest_pressure);
  const bool trapped = b.compliance > 0.0 && !leaks && from.open.empty() && m.amount(Layout::line(f)) > excess;
  if (trapped) is.pressure = stands;
  const bool lent = is_leak(b.opening) && b.holds_at < never;  // a rigid line that was held gets its fuel back
  if (!trapped && (b.compliance > 0.0 || lent)) {
    m.transfer(Layout::tank(f), Layout::line(f), excess - m.amount(Layout::line(f)), cause_line_settles);
  }
  m.set_flag(Layout::flag(f, Layout::settled), true);
  rest_at(f, is, m);
}

/// The tank gives no more: it is empty to its pump's inlet, or by gravity nothing runs up to the opening.
void Model::run_dry(int f, seq::Mutator& m) const {
  if (m.flag(layout_.dry(f))) return;
  m.set_flag(layout_.dry(f), true);
  m.set_flag(Layout::flag(f, Layout::pump_on), false);
  m.set_auxiliary(Layout::trunk_flow(f), 0.0);
  if (broken(f).compliance == 0.0) m.set_auxiliary(Layout::escape_flow(f), 0.0);
  disturb(f, m);
}

/// The columns go on from the flow at which the level in the tank has left them.
void Model::catch_up(int f, seq::Mutator& m) const {
  if (!m.flag(Layout::flag(f, Layout::settled)) || !level_moves(f, m.view())) return;
  const Flows is = balanced(f, m.view());
  m.set_auxiliary(Layout::trunk_flow(f), is.in);
  m.set_auxiliary(Layout::escape_flow(f), is.out);
}

void Model::rest_at(int f, const Flows& is, seq::Mutator& m) const {
  m.set_mark(Layout::mark(f, Layout::settled_in), is.in);
  m.set_mark(Layout::mark(f, Layout::settled_out), is.out);
  m.set_mark(Layout::mark(f, Layout::settled_hoses), is.hoses);
  m.set_mark(Layout::mark(f, Layout::settled_pressure), is.pressure);
  m.set_auxiliary(Layout::trunk_flow(f), is.in);
  m.set_auxiliary(Layout::escape_flow(f), is.out);
}

}  // namespace forecourse::studies::release
