#include "forecourse/studies/incident/release/told_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "forecourse/studies/incident/release/state_told.h"

namespace forecourse::studies::release {
namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t most_points = 240;  // at least; up to twice as many, and those of the first second

/// What a course does from point to point. Where it has no value it is not a number.
class Follower {
 public:
  Follower(std::vector<double>& points, CourseBetween& between) : points_(points), between_(between) {}

  void pass(double value) {
    low_ = std::fmin(low_, value);
    high_ = std::fmax(high_, value);
    now_ = value;
  }

  /// A straight line to a value.
  void step(double value, double length) {
    if (std::isfinite(now_ + value)) {
      sum_ += 0.5 * (now_ + value) * length;
      span_ += length;
    }
    pass(value);
  }

  /// \param amount that moved since the point before; empty: as the steps say
  void point(double value, std::optional<double> amount) {
    points_.push_back(value);
    between_.mean.push_back(span_ > 0.0 ? amount.value_or(sum_) / span_ : value);
    pass(value);
    between_.low.push_back(low_);
    between_.high.push_back(high_);
    sum_ = span_ = 0.0;
    low_ = high_ = value;
  }

  [[nodiscard]] bool has_values() const {
    return std::any_of(points_.begin(), points_.end(), [](double value) { return std::isfinite(value); });
  }

  /// True if between two points it leaves their values by more than a share of all that it spans.
  [[nodiscard]] bool leaves_points() const {
    constexpr double share = 0.01;
    double low = none, high = none;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      low = std::fmin(low, between_.low[i]);
      high = std::fmax(high, between_.high[i]);
    }
    const double much = share * (high - low);
    for (std::size_t i = 1; i < points_.size(); ++i) {
      const auto [lower, upper] = std::minmax(points_[i - 1], points_[i]);
      if (between_.low[i] < lower - much || between_.high[i] > upper + much) return true;
    }
    return false;
  }

 private:
  std::vector<double>& points_;
  CourseBetween& between_;
  double now_ = none, low_ = none, high_ = none;
  double sum_ = 0.0, span_ = 0.0;
};

/// A moment of a run.
struct Moment {
  double time = 0.0;  ///< [s]
  seq::SequenceView state;
  std::span<const double> flows;
};

class Teller {
 public:
  Teller(const Case& given, const Model& model) : c_(given), model_(model), layout_(model.layout()) {
    chart_.held.assign(all_holders.size(), {});
  }

  void pass(const Moment& now) {
    escaping_.pass(escaping(layout_, now.flows));
    pumped_.pass(total(layout_, now.flows, Layout::pumping));
    elsewhere_.pass(total(layout_, now.flows, Layout::elsewhere));
    pressure_.pass(pressure_at(now));
  }

  void step(const Moment& now, double length) {
    escaping_.step(escaping(layout_, now.flows), length);
    pumped_.step(total(layout_, now.flows, Layout::pumping), length);
    elsewhere_.step(total(layout_, now.flows, Layout::elsewhere), length);
    pressure_.step(pressure_at(now), length);
  }

  void point(const Moment& now) { point(now, pressure_at(now)); }

  /// \param pressure gauge, in the line [Pa]
  void point(const Moment& now, double pressure) {
    const std::vector<double> amounts = held(layout_, now.state.amounts);
    chart_.time.push_back(now.time);
    const double escaped = escaped_of(layout_, now.state.amounts);
    escaping_.point(escaping(layout_, now.flows), escaped - escaped_);
    pumped_.point(total(layout_, now.flows, Layout::pumping), last(Holder::tank) - of(amounts, Holder::tank));
    elsewhere_.point(total(layout_, now.flows, Layout::elsewhere),
                     of(amounts, Holder::vehicle) - last(Holder::vehicle));
    pressure_.point(pressure, {});
    if (c_.fire.response_index > 0.0) {
      chart_.link_temperature.push_back(c_.fire.start + now.state.auxiliaries[at(layout_.link_temperature())]);
    }
    for (std::size_t h = 0; h < amounts.size(); ++h) chart_.held[h].push_back(amounts[h]);
    escaped_ = escaped;
  }

  /// \param thinned some steps are no points
  [[nodiscard]] IncidentChart chart(bool thinned) {
    if (!pressure_.has_values()) {
      chart_.pressure.clear();
      between_.pressure = {};
    }
    if (!thinned) return std::move(chart_);
    if (escaping_.leaves_points() || pumped_.leaves_points() || elsewhere_.leaves_points() || pressure_.leaves_points())
      chart_.between = std::move(between_);
    return std::move(chart_);
  }

 private:
  [[nodiscard]] double pressure_at(const Moment& now) const {
    return model_.line_pressure(now.time, now.state).value_or(none);
  }
  static std::size_t place(Holder holder) {
    return static_cast<std::size_t>(std::find(all_holders.begin(), all_holders.end(), holder) - all_holders.begin());
  }
  static double of(const std::vector<double>& amounts, Holder holder) { return amounts[place(holder)]; }
  /// Of the point before [m3].
  [[nodiscard]] double last(Holder holder) const {
    const std::vector<double>& course = chart_.held[place(holder)];
    return course.empty() ? 0.0 : course.back();
  }

  const Case& c_;
  const Model& model_;
  const Layout& layout_;
  IncidentChart chart_;
  ChartBetween between_;
  double escaped_ = 0.0;  ///< [m3] at the point before
  Follower escaping_{chart_.escaping, between_.escaping};
  Follower pumped_{chart_.pumped, between_.pumped};
  Follower elsewhere_{chart_.elsewhere, between_.elsewhere};
  Follower pressure_{chart_.pressure, between_.pressure};
};

}  // namespace

IncidentChart tell_chart(const Case& given, const Model& model, const seq::SequenceStart& start,
                         const seq::SequenceResult& result) {
  const Layout& layout = model.layout();
  const seq::Trace& trace = result.trace;
  const std::size_t count = trace.steps.size();
  const std::size_t each = std::max<std::size_t>(1, count / most_points);
  Teller teller(given, model);
  std::vector<double> flows(at(layout.links())), rates(at(layout.auxiliaries()));
  seq::SequenceView state{start.amounts, start.auxiliaries, start.marks, start.flags};
  model.flows(0.0, state, flows, rates);
  teller.point({0.0, state, flows}, model.pressure_before().value_or(none));
  std::size_t event = 0;
  const auto pass_events = [&](double until) {
    for (; event < trace.events.size() && trace.events[event].event.time <= until; ++event) {
      state = {trace.amounts(event), trace.auxiliary_values(event), trace.mark_values(event),
               trace.events[event].flags_after};
      teller.pass({until, state, trace.flows(event)});
    }
  };
  pass_events(0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const auto values = trace.state(i);
    const auto aside = at(layout.compartments()), moving = at(layout.compartments() + layout.auxiliaries());
    state.amounts = values.subspan(0, aside);
    state.auxiliaries = values.subspan(aside, moving - aside);
    const Moment now{trace.steps[i].time, state, values.subspan(moving)};
    teller.step(now, trace.steps[i].length);
    if (now.time <= 1.0 || i % each == 0 || i + 1 == count) teller.point(now);
    pass_events(now.time);
  }
  return teller.chart(each > 1);
}

}  // namespace forecourse::studies::release
