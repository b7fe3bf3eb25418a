#include "forecourse/studies/incident/release/told_chart.h"

#include <algorithm>
#include <cmath>

#include "forecourse/studies/incident/release/state_told.h"

namespace forecourse::studies::release {
namespace {

constexpr std::size_t most_points = 240;  // at least; up to twice as many, and those of the first second

/// What a course does from point to point.
class Follower {
 public:
  Follower(std::vector<double>& points, CourseBetween& between) : points_(points), between_(between) {}

  void pass(double value) {
    low_ = std::min(low_, value);
    high_ = std::max(high_, value);
    now_ = value;
  }

  /// A straight line to a value.
  void step(double value, double length) {
    sum_ += 0.5 * (now_ + value) * length;
    span_ += length;
    pass(value);
  }

  /// \param amount that moved since the point before; empty: as the steps say
  void point(double value, std::optional<double> amount) {
    points_.push_back(value);
    between_.mean.push_back(span_ > 0.0 ? amount.value_or(sum_) / span_ : value);
    between_.low.push_back(std::min(low_, value));
    between_.high.push_back(std::max(high_, value));
    sum_ = span_ = 0.0;
    low_ = high_ = now_ = value;
  }

  /// True if between two points it leaves their values by more than a share of all that it spans.
  [[nodiscard]] bool leaves_points() const {
    if (points_.empty()) return false;
    constexpr double share = 0.01;
    const auto [least, most] = std::minmax_element(points_.begin(), points_.end());
    double low = *least, high = *most;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      low = std::min(low, between_.low[i]);
      high = std::max(high, between_.high[i]);
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
  double now_ = 0.0, low_ = never, high_ = -never;
  double sum_ = 0.0, span_ = 0.0;
};

/// A moment of a run.
struct Moment {
  double time = 0.0;  ///< [s]
  std::span<const double> amounts, auxiliaries, flows;
};

class Teller {
 public:
  Teller(const Case& given, const Model& model) : c_(given), layout_(model.layout()) {
    chart_.held.assign(all_holders.size(), {});
  }

  void pass(const Moment& now) {
    escaping_.pass(escaping(layout_, now.flows));
    pumped_.pass(total(layout_, now.flows, Layout::pumping));
    elsewhere_.pass(total(layout_, now.flows, Layout::elsewhere));
    if (const auto pressure = line_pressure(c_, now.amounts, now.flows)) pressure_.pass(*pressure);
  }

  void step(const Moment& now, double length) {
    escaping_.step(escaping(layout_, now.flows), length);
    pumped_.step(total(layout_, now.flows, Layout::pumping), length);
    elsewhere_.step(total(layout_, now.flows, Layout::elsewhere), length);
    if (const auto pressure = line_pressure(c_, now.amounts, now.flows)) pressure_.step(*pressure, length);
  }

  void point(const Moment& now) {
    const std::vector<double> amounts = held(layout_, now.amounts);
    chart_.time.push_back(now.time);
    const double escaped = escaped_of(layout_, now.amounts);
    escaping_.point(escaping(layout_, now.flows), escaped - escaped_);
    pumped_.point(total(layout_, now.flows, Layout::pumping), last(Holder::tank) - of(amounts, Holder::tank));
    elsewhere_.point(total(layout_, now.flows, Layout::elsewhere),
                     of(amounts, Holder::vehicle) - last(Holder::vehicle));
    if (const auto pressure = line_pressure(c_, now.amounts, now.flows)) pressure_.point(*pressure, {});
    if (c_.fire.response_index > 0.0) {
      chart_.link_temperature.push_back(c_.fire.start + now.auxiliaries[at(layout_.link_temperature())]);
    }
    for (std::size_t h = 0; h < amounts.size(); ++h) chart_.held[h].push_back(amounts[h]);
    escaped_ = escaped;
  }

  /// \param thinned some steps are no points
  [[nodiscard]] IncidentChart chart(bool thinned) {
    if (!thinned) return std::move(chart_);
    if (escaping_.leaves_points() || pumped_.leaves_points() || elsewhere_.leaves_points() || pressure_.leaves_points())
      chart_.between = std::move(between_);
    return std::move(chart_);
  }

 private:
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
  model.flows(0.0, {start.amounts, start.auxiliaries, start.marks, start.flags}, flows, rates);
  teller.point({0.0, start.amounts, start.auxiliaries, flows});
  std::size_t event = 0;
  const auto pass_events = [&](double until) {
    for (; event < trace.events.size() && trace.events[event].event.time <= until; ++event)
      teller.pass({until, trace.amounts(event), trace.auxiliary_values(event), trace.flows(event)});
  };
  pass_events(0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const auto state = trace.state(i);
    const auto aside = at(layout.compartments()), moving = at(layout.compartments() + layout.auxiliaries());
    const Moment now{trace.steps[i].time, state.subspan(0, aside), state.subspan(aside, moving - aside),
                     state.subspan(moving)};
    teller.step(now, trace.steps[i].length);
    if (now.time <= 1.0 || i % each == 0 || i + 1 == count) teller.point(now);
    pass_events(now.time);
  }
  return teller.chart(each > 1);
}

}  // namespace forecourse::studies::release
