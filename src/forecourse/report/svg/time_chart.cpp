#include "forecourse/report/svg/time_chart.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "forecourse/report/svg/shapes.h"

namespace forecourse::report::svg {
namespace {

constexpr double panel_height = 120.0;
constexpr double title_room = 14.0;   // above a panel
constexpr double legend_room = 16.0;  // above the panel of a narrow chart, between its title and it
constexpr double foot_room = 34.0;
constexpr double first_share = 1.0 / 3.0;  // of the axis, for the first second

constexpr std::array<const char*, 4> dashes{"", " stroke-dasharray=\"7 4\"", " stroke-dasharray=\"4 3\"",
                                            " stroke-dasharray=\"1.5 3\""};

double end_of(const TimeChart& chart) {
  double end = 1.0;
  for (const TimePanel& panel : chart.panels) {
    for (const TimeSeries& series : panel.series) {
      if (!series.time.empty()) end = std::max(end, series.time.back());
    }
  }
  return end;
}

/// Where two values or more follow each other that are numbers: first, and one past the last.
std::vector<std::pair<std::size_t, std::size_t>> stretches(const std::vector<double>& values) {
  std::vector<std::pair<std::size_t, std::size_t>> out;
  std::size_t first = 0;
  for (std::size_t k = 0; k <= values.size(); ++k) {
    if (k < values.size() && std::isfinite(values[k])) continue;
    if (k > first + 1) out.emplace_back(first, k);
    first = k + 1;
  }
  return out;
}

class Drawing {
 public:
  explicit Drawing(const TimeChart& chart)
      : c_(chart),
        end_(end_of(chart)),
        begin_(chart.width < wide ? 40.0 : 58.0),
        legend_(chart.width < wide ? legend_room : 0.0),
        top_(40.0 + legend_),
        gap_(40.0 + legend_) {}

  [[nodiscard]] std::string draw() const {
    const double height = top_ + static_cast<double>(c_.panels.size()) * (panel_height + gap_) - gap_ + foot_room;
    std::string out = open(c_.id, c_.width, height, c_.title, c_.description);
    for (std::size_t i = 0; i < c_.panels.size(); ++i) out += panel(i);
    return out + marks() + time_axis() + "</svg>\n";
  }

 private:
  [[nodiscard]] double x(double time) const { return begin_ + place(time) * (right() - begin_); }
  [[nodiscard]] double place(double time) const { return c_.even ? time / end_ : time_place(time, end_); }
  [[nodiscard]] double right() const { return c_.width - 12.0; }
  [[nodiscard]] double head(std::size_t i) const { return top_ + static_cast<double>(i) * (panel_height + gap_); }

  [[nodiscard]] std::string panel(std::size_t i) const {
    const TimePanel& panel = c_.panels[i];
    double low = 0.0, high = 0.0;
    for (const TimeSeries& series : panel.series) {
      for (const auto* values : {&series.value, &series.low, &series.high}) {
        for (const double v : *values) {
          low = std::min(low, v);
          high = std::max(high, v);
        }
      }
    }
    const std::vector<double> ticks = axis_marks(low, high > low ? high : low + 1.0, 4);
    const auto y = [&](double value) {
      return head(i) + panel_height * (1.0 - (value - ticks.front()) / (ticks.back() - ticks.front()));
    };
    std::string out = label({0.0, head(i) - title_room - legend_}, panel.axis, "axis-title");
    for (const double tick : ticks) {
      out += line({begin_, y(tick)}, {right(), y(tick)}, tick == 0.0 ? "zero" : "grid");
      out += label({begin_ - 8.0, y(tick) + 4.0}, mark_text(tick, ticks), "tick");
    }
    for (const TimeSeries& series : panel.series) out += band(series, y);
    for (const TimeSeries& series : panel.series) out += course(series, y);
    return out + legend(panel, head(i) - title_room);
  }

  /// Name and stroke of each series, from the right, in the line of the axis's title; on a narrow chart below it.
  [[nodiscard]] std::string legend(const TimePanel& panel, double y) const {
    constexpr double character = 6.6;
    const double sample = legend_ > 0.0 ? 18.0 : 26.0, gap = legend_ > 0.0 ? 8.0 : 18.0;
    std::string out;
    double x = right();
    for (auto series = panel.series.rbegin(); series != panel.series.rend(); ++series) {
      if (series->name.empty()) continue;
      const double text = character * static_cast<double>(length(series->name));
      out += label({x - text, y}, series->name, "bar-name");
      x -= text + 6.0;
      out += "<polyline class=\"grade\"" + std::string(dashes[std::min<std::size_t>(series->dash, 3)]) + " points=\"" +
             points({{x - sample, y - 4.0}, {x, y - 4.0}}) + "\"/>\n";
      x -= sample + gap;
    }
    return out;
  }

  /// From the least to the greatest.
  template <class Y>
  [[nodiscard]] std::string band(const TimeSeries& series, const Y& y) const {
    if (series.low.empty()) return {};
    std::string out;
    for (const auto& [first, end] : stretches(series.low)) {
      std::vector<Point> corners;
      for (std::size_t k = first; k < end; ++k) corners.push_back({x(series.time[k]), y(series.high[k])});
      for (std::size_t k = end; k-- > first;) corners.push_back({x(series.time[k]), y(series.low[k])});
      out += polygon(thinned(corners), "spread");
    }
    return out;
  }

  template <class Y>
  [[nodiscard]] std::string course(const TimeSeries& series, const Y& y) const {
    std::string out;
    for (const auto& [first, end] : stretches(series.value)) {
      std::vector<Point> corners;
      for (std::size_t k = first; k < end; ++k) corners.push_back({x(series.time[k]), y(series.value[k])});
      out += "<polyline class=\"grade\"" + std::string(dashes[std::min<std::size_t>(series.dash, 3)]) + " points=\"" +
             points(thinned(corners)) + "\"/>\n";
    }
    return out;
  }

  [[nodiscard]] std::string marks() const {
    std::string out;
    const double foot = head(c_.panels.size() - 1) + panel_height;
    double free_from = 0.0;
    for (const TimeMark& mark : c_.marks) {
      const double at = x(mark.time);
      out += line({at, top_ - legend_ - 22.0}, {at, foot}, "drop");
      const double room = 8.0 * static_cast<double>(length(mark.name)) + 6.0;
      if (at - 0.5 * room < free_from) continue;
      out += label({at, top_ - legend_ - 26.0}, mark.name, "tick-top");
      free_from = at + 0.5 * room;
    }
    return out;
  }

  /// Minutes, evenly.
  [[nodiscard]] std::string even_axis() const {
    constexpr double minute = 60.0;
    const double foot = head(c_.panels.size() - 1) + panel_height;
    const std::vector<double> ticks = axis_marks(0.0, end_ / minute, c_.width < wide ? 4 : 8);
    std::string out;
    for (const double tick : ticks) {
      if (tick * minute > end_ * (1.0 + 1e-9)) break;
      const double at = x(tick * minute);
      out += line({at, foot}, {at, foot + 5.0}, "zero");
      out += label({at, foot + 18.0}, mark_text(tick, ticks) + (tick > 0.0 ? " min" : ""), "tick-top");
    }
    return out;
  }

  [[nodiscard]] std::string time_axis() const {
    if (c_.even) return even_axis();
    struct Tick {
      double time;
      const char* text;
    };
    constexpr std::array<Tick, 12> ticks{{{0.0, "0"},
                                          {0.5, "0.5 s"},
                                          {1.0, "1 s"},
                                          {10.0, "10 s"},
                                          {60.0, "1 min"},
                                          {600.0, "10 min"},
                                          {3600.0, "1 h"},
                                          {36000.0, "10 h"},
                                          {86400.0, "1 d"},
                                          {864000.0, "10 d"},
                                          {2592000.0, "30 d"},
                                          {31536000.0, "1 y"}}};
    const double foot = head(c_.panels.size() - 1) + panel_height;
    std::string out;
    double free_from = -100.0;
    for (const Tick& tick : ticks) {
      if (tick.time > end_ * (1.0 + 1e-9)) break;
      const double at = x(tick.time);
      out += line({at, foot}, {at, foot + 5.0}, "zero");
      if (at < free_from) continue;
      const bool at_edge = at > right() - 16.0;
      out += label({at_edge ? right() : at, foot + 18.0}, tick.text, at_edge ? "tick" : "tick-top");
      free_from = at + 46.0;
    }
    return out;
  }

  const TimeChart& c_;
  double end_;
  double begin_;
  double legend_;  ///< line of its own for the legend
  double top_;
  double gap_;
};

}  // namespace

double time_place(double time, double end) {
  if (end <= 1.0) return end > 0.0 ? std::clamp(time / end, 0.0, 1.0) : 0.0;
  if (time <= 1.0) return first_share * std::max(0.0, time);
  return first_share + (1.0 - first_share) * std::log(std::min(time, end)) / std::log(end);
}

std::string draw(const TimeChart& chart) {
  const bool any = std::any_of(chart.panels.begin(), chart.panels.end(), [](const TimePanel& panel) {
    return std::any_of(panel.series.begin(), panel.series.end(), [](const TimeSeries& s) { return s.time.size() > 1; });
  });
  return any ? Drawing(chart).draw() : std::string();
}

}  // namespace forecourse::report::svg
