#include "forecourse/report/incident/incident_drawings.h"

#include <algorithm>
#include <cmath>

#include "forecourse/report/html/parts.h"
#include "forecourse/report/incident/incident_scene.h"
#include "forecourse/report/svg/bars.h"
#include "forecourse/report/svg/spill_scene.h"
#include "forecourse/report/svg/time_chart.h"
#include "forecourse/report/units.h"

namespace forecourse::report {
namespace {

using studies::Happening;
using studies::Holder;
using studies::IncidentRun;

class Drawer {
 public:
  Drawer(const studies::IncidentResult& result, const site::Site& site, std::size_t number)
      : r_(result), site_(site), display_(site.display) {
    id_ = "incident-" + std::to_string(number);
  }

  [[nodiscard]] std::string all() const {
    if (r_.runs.empty()) return {};
    return scene() + bars() + courses() + exceedance();
  }

 private:
  [[nodiscard]] std::string volume(double si) const { return with_unit(Measure::volume, display_, si); }

  // ---- the scene --------------------------------------------------------------------------------------

  /// The run that shows most: the first that lacks one barrier and in which more escapes than in the told one.
  [[nodiscard]] const IncidentRun& shown_run() const {
    for (const IncidentRun& run : r_.runs) {
      if (run.missing.size() == r_.runs.front().missing.size() + 1 && run.escaped > 1.2 * r_.runs.front().escaped)
        return run;
    }
    return r_.runs.front();
  }

  static double held(const IncidentRun& run, const studies::TimelineRow& row, Holder holder) {
    const auto at = std::find(run.holders.begin(), run.holders.end(), holder) - run.holders.begin();
    return static_cast<std::size_t>(at) < row.held.size() ? row.held[static_cast<std::size_t>(at)] : 0.0;
  }

  /// The beginning, up to two moments between that change most, and the end.
  [[nodiscard]] std::vector<std::size_t> moments(const IncidentRun& run) const {
    std::vector<std::size_t> out{0};
    const std::size_t last = run.timeline.size() - 1;
    for (const Happening what : {Happening::valve_shut, Happening::sensor_wet, Happening::sump_full,
                                 Happening::pump_stops, Happening::sensor_stops, Happening::emergency_stop}) {
      for (std::size_t i = 1; i < last && out.size() < 3; ++i) {
        if (run.timeline[i].what == what && std::find(out.begin(), out.end(), i) == out.end()) {
          out.push_back(i);
          break;
        }
      }
    }
    out.push_back(last);
    std::sort(out.begin(), out.end());
    return out;
  }

  [[nodiscard]] std::string scene() const {
    const IncidentRun& run = shown_run();
    if (!has_scene(r_) || !(run.escaped > 0.0)) return {};
    svg::SpillScene scene = empty_scene(r_, site_, id_ + "-scene");
    scene.title += ", " + run.name;
    double most = 1e-9;
    for (const studies::TimelineRow& row : run.timeline) most = std::max(most, held(run, row, Holder::slab));
    const double widest = std::sqrt(most);
    const std::vector<std::size_t> told = moments(run);
    scene.moments.reserve(told.size());
    for (const std::size_t i : told) scene.moments.push_back(moment(run, run.timeline[i], widest));
    const bool jets =
        std::any_of(scene.moments.begin(), scene.moments.end(), [](const auto& m) { return m.jet_high > 0.0; });
    std::string note;
    for (const std::string& remark : scene_remarks(r_, site_, jets)) note += (note.empty() ? "" : " ") + remark;
    return html::chart_figure(scene, note);
  }

  [[nodiscard]] svg::SpillMoment moment(const IncidentRun& run, const studies::TimelineRow& row, double widest) const {
    svg::SpillMoment out;
    out.time = time_span(row.time);
    out.words = row.words;
    const double pool = held(run, row, Holder::slab), sump = held(run, row, Holder::sump);
    out.pool = std::min(1.0, std::sqrt(std::max(0.0, pool)) / widest);
    if (pool > 0.0) out.pool_text = volume(pool) + " on the slab";
    if (r_.sump_brim) {
      out.in_sump = sump / *r_.sump_brim;
      out.sump_text = volume(sump) + " in the sump";
    }
    if (row.flow > 0.0) out.flow_text = with_unit(Measure::flow, display_, row.flow) + " escaping";
    if (const auto jet = jet_at(r_, run, row.flow)) tell_jet(*jet, out);
    const std::optional<double> over = over_at(r_, run);
    out.standing = !over || row.time < *over;
    return out;
  }

  void tell_jet(const studies::JetRow& jet, svg::SpillMoment& moment) const {
    moment.jet_low = jet.height_low / jet.height_high;
    moment.jet_high = 1.0;
    moment.jet_text = "jet " + number(Measure::length, display_, jet.height_low) + " to " +
                      with_unit(Measure::length, display_, jet.height_high);
  }

  // ---- bars -------------------------------------------------------------------------------------------

  [[nodiscard]] std::string bars() const {
    if (r_.barrier_table.size() < 2) return {};
    svg::BarChart chart;
    chart.id = id_ + "-barriers";
    chart.title = "What escapes with every barrier, and without each";
    chart.description =
        "One bar for each case; its dark part leaves the containment. The table below holds the numbers.";
    for (const studies::BarrierRow& row : r_.barrier_table) {
      chart.bars.push_back({row.name, row.escaped, row.to_environment, volume(row.escaped)});
    }
    return html::chart_figure(chart, "The dark part of a bar leaves the containment.");
  }

  // ---- courses ----------------------------------------------------------------------------------------

  [[nodiscard]] std::vector<double> in(Measure measure, const std::vector<double>& si) const {
    std::vector<double> out;
    out.reserve(si.size());
    for (const double v : si) out.push_back(shown_value(measure, display_, v));
    return out;
  }

  [[nodiscard]] std::string axis(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_);
  }

  /// Means from point to point, with the band about them.
  [[nodiscard]] svg::TimeSeries stepped(const char* name, const std::vector<double>& time,
                                        const studies::CourseBetween& between, Measure measure,
                                        std::size_t dash) const {
    const auto twice = [](const std::vector<double>& values) {
      std::vector<double> out;
      for (std::size_t i = 1; i < values.size(); ++i) out.insert(out.end(), {values[i], values[i]});
      return out;
    };
    std::vector<double> ends;
    for (std::size_t i = 1; i < time.size(); ++i) ends.insert(ends.end(), {time[i - 1], time[i]});
    return {name,
            std::move(ends),
            in(measure, twice(between.mean)),
            dash,
            in(measure, twice(between.low)),
            in(measure, twice(between.high))};
  }

  [[nodiscard]] std::string courses() const {
    const IncidentRun& run = shown_run();
    if (run.chart.time.size() < 2) return {};
    svg::TimeChart chart;
    chart.id = id_ + "-courses";
    chart.title = "Over time, " + run.name;
    chart.description = "Flow, line pressure and volumes over one time axis whose first second is stretched.";
    const auto& between = run.chart.between;
    const auto course = [&](const char* name, const std::vector<double>& values, Measure measure, std::size_t dash,
                            studies::CourseBetween studies::ChartBetween::*own) {
      return between ? stepped(name, run.chart.time, (*between).*own, measure, dash)
                     : svg::TimeSeries{name, run.chart.time, in(measure, values), dash};
    };
    using studies::ChartBetween;
    svg::TimePanel flows{axis("Flow", Measure::flow),
                         {course("escaping", run.chart.escaping, Measure::flow, 0, &ChartBetween::escaping),
                          course("pumped", run.chart.pumped, Measure::flow, 1, &ChartBetween::pumped)}};
    const bool others =
        std::any_of(run.chart.elsewhere.begin(), run.chart.elsewhere.end(), [](double q) { return q > 0.0; });
    if (others)
      flows.series.push_back(
          course("at hoses elsewhere", run.chart.elsewhere, Measure::flow, 3, &ChartBetween::elsewhere));
    chart.panels.push_back(flows);
    if (run.chart.pressure.size() == run.chart.time.size()) {
      chart.panels.push_back({axis("Line pressure, gauge", Measure::pressure),
                              {course("", run.chart.pressure, Measure::pressure, 0, &ChartBetween::pressure)}});
    }
    if (!run.chart.link_temperature.empty()) {
      chart.panels.push_back({axis("Fusible link", Measure::temperature),
                              {{"", run.chart.time, in(Measure::temperature, run.chart.link_temperature), 0}}});
    }
    chart.panels.push_back(volumes(run));
    std::size_t number_of = 0;
    for (const studies::TimelineRow& row : run.timeline) {
      ++number_of;
      const bool inside = row.what != Happening::begins && row.what != Happening::counting_ends;
      if (inside && chart.marks.size() < 12) chart.marks.push_back({row.time, std::to_string(number_of)});
    }
    std::string note =
        "Numbers above the panels are the lines of the event list. The first second takes a third of the axis.";
    if (between) {
      note += " What swings faster than can be drawn is drawn as its mean, with a band from the least to the greatest.";
    }
    return html::chart_figure(chart, note);
  }

  [[nodiscard]] svg::TimePanel volumes(const IncidentRun& run) const {
    svg::TimePanel panel{axis("Volume", Measure::volume), {}};
    std::size_t dash = 0;
    for (std::size_t h = 0; h < run.holders.size(); ++h) {
      const Holder holder = run.holders[h];
      const bool outside = holder == Holder::sump || holder == Holder::slab || holder == Holder::ground ||
                           holder == Holder::air || holder == Holder::interceptor || holder == Holder::spill_container;
      const auto& held = run.chart.held[h];
      if (!outside || held.empty() || !(*std::max_element(held.begin(), held.end()) > 0.0)) continue;
      panel.series.push_back({studies::word(holder), run.chart.time, in(Measure::volume, held), dash++});
    }
    return panel;
  }

  // ---- spread -----------------------------------------------------------------------------------------

  [[nodiscard]] std::string exceedance() const {
    if (!r_.spread || r_.spread->exceeded.size() < 2 || r_.spread->weights.empty()) return {};
    svg::BarChart chart;
    chart.id = id_ + "-exceedance";
    chart.title = "How often more than this escapes";
    chart.description = "Share of all runs in which more than an amount escapes.";
    const auto& s = *r_.spread;
    for (std::size_t i = 0; i < s.exceeded.size(); i += 5) {
      const double share = s.exceedance[i];
      chart.bars.push_back({"more than " + volume(s.exceeded[i]), share, share, number(100.0 * share, 0) + " %"});
    }
    return html::chart_figure(chart, std::to_string(s.runs) + " runs with drawn inputs.");
  }

  const studies::IncidentResult& r_;
  const site::Site& site_;
  site::Display display_;
  std::string id_;
};

}  // namespace

std::string incident_drawings(const studies::IncidentResult& result, const site::Site& site, std::size_t number) {
  return Drawer(result, site, number).all();
}

}  // namespace forecourse::report
