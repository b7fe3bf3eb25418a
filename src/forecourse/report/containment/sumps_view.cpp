#include "forecourse/report/containment/sumps_view.h"

#include <algorithm>

#include "forecourse/report/containment/containment_view.h"
#include "forecourse/report/drawing/tone.h"
#include "forecourse/report/units.h"

namespace forecourse::report {
namespace {

using studies::ContainedSump;
using studies::ContainmentResult;
using studies::SumpFill;

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional<double>(entered->likely.si()) : std::nullopt;
}

template <class T>
const T* by_id(const std::vector<T>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& one) { return one.id.text == id; });
  return found == all.end() ? nullptr : &*found;
}

const site::Sump* entered_sump(const site::Site& site, const ContainedSump& sump) {
  if (sump.of_tank) {
    const site::Tank* tank = by_id(site.tanks, sump.owner);
    return tank != nullptr && tank->sump ? &*tank->sump : nullptr;
  }
  const site::Dispenser* dispenser = by_id(site.dispensers, sump.owner);
  return dispenser != nullptr && dispenser->sump ? &*dispenser->sump : nullptr;
}

/// The first of the two horizontal sizes, or the diameter [m].
std::optional<double> across(const site::Sump& sump, const std::optional<site::Position>& sizes) {
  if (sizes) return sizes->x.si();
  return si(sump.diameter);
}

/// Elevation of the floor: as entered, else with the brim at the site's datum [m].
std::optional<double> floor_of(const site::Sump& sump, const std::optional<double>& depth) {
  if (sump.floor_elevation) return si(sump.floor_elevation);
  return depth ? std::optional<double>(-*depth) : std::nullopt;
}

/// Adds a pipe that lies within the sump.
void add_pipe(double elevation, double floor, const std::string& tone, bool passes, svg::DrawnSump& out) {
  const double height = elevation - floor;
  if (height >= 0.0 && out.depth && height <= *out.depth) out.pipes.push_back({height, tone, passes});
}

void add_tank_pipes(const site::Site& site, const std::string& tank, double floor, svg::DrawnSump& out) {
  const site::Tank* of = by_id(site.tanks, tank);
  for (const site::Pump& pump : site.pumps) {
    if (pump.tank.text != tank || !pump.discharge_elevation) continue;
    const double elevation = pump.discharge_elevation->likely.si();
    out.pump_head = std::clamp(elevation - floor, 0.0, out.depth.value_or(0.0));
    add_pipe(elevation, floor, drawing::tone_of(site, of == nullptr ? "" : of->product.text), false, out);
  }
}

void add_dispenser_pipes(const site::Site& site, const std::string& dispenser, double floor, svg::DrawnSump& out) {
  const site::Dispenser* of = by_id(site.dispensers, dispenser);
  if (of == nullptr) return;
  for (const site::Inlet& inlet : of->inlets) {
    if (!inlet.line_elevation) continue;
    add_pipe(inlet.line_elevation->likely.si(), floor, drawing::tone_of(site, inlet.product.text),
             inlet.connection.has_value(), out);
  }
}

svg::DrawnSump drawn(const ContainedSump& sump, const site::Site& site) {
  svg::DrawnSump out;
  out.name = sump.owner;
  out.shows = {6, (sump.of_tank ? "tank." : "dispenser.") + sump.owner + ".sump"};
  out.of_tank = sump.of_tank;
  out.depth = sump.depth;
  out.sensor = sump.sensor_height;
  out.lowest_seal = sump.seal_height;
  const site::Sump* entered = entered_sump(site, sump);
  if (entered == nullptr) return out;
  out.floor = across(*entered, entered->floor);
  out.top = across(*entered, entered->top);
  const std::optional<double> floor = floor_of(*entered, out.depth);
  if (!floor || !out.depth) return out;
  out.brim = *floor + *out.depth;
  if (sump.of_tank) {
    add_tank_pipes(site, sump.owner, *floor, out);
  } else {
    add_dispenser_pipes(site, sump.owner, *floor, out);
  }
  return out;
}

/// The rows under the sumps.
class Rows {
 public:
  Rows(const ContainmentResult& result, site::Display display) : result_(result), display_(display) {}

  [[nodiscard]] std::vector<svg::SumpRow> volumes() const {
    return {row("Sensor at", [&](const ContainedSump& s) { return shown(Measure::bore, s.sensor_height); }),
            row("Holds to the sensor", [&](const ContainedSump& s) { return shown(Measure::volume, s.at_sensor); }),
            row("to the lowest seal", [&](const ContainedSump& s) { return shown(Measure::volume, s.at_seal); }),
            row("to the brim", [&](const ContainedSump& s) {
              return shown(Measure::volume, s.problem.empty() ? std::optional(s.brim) : std::nullopt);
            })};
  }
  void add_fill(std::size_t i, std::vector<svg::SumpRow>& out) const {
    const auto time = [this, i](std::optional<double> SumpFill::*which) {
      return [this, i, which](const ContainedSump& s) {
        return i < s.fills.size() ? shown(s.fills[i].*which) : shown(std::nullopt);
      };
    };
    out.push_back({"At " + inflow_words(result_.options.inflows[i], display_, Glyphs::unicode), {}});
    out.push_back(row("sensor wet after", time(&SumpFill::to_sensor)));
    out.push_back(row("lowest seal after", time(&SumpFill::to_seal)));
    out.push_back(row("over the brim after", [this, i](const ContainedSump& s) {
      return i < s.fills.size() ? shown(std::optional(s.fills[i].to_brim)) : shown(std::nullopt);
    }));
  }

 private:
  template <class Value>
  [[nodiscard]] svg::SumpRow row(const char* name, Value value) const {
    svg::SumpRow out{name, {}};
    for (const ContainedSump& sump : result_.sumps) out.values.push_back(value(sump));
    return out;
  }
  [[nodiscard]] std::string shown(Measure measure, const std::optional<double>& value) const {
    return value ? with_unit(measure, display_, *value) : "\u2013";
  }
  [[nodiscard]] static std::string shown(const std::optional<double>& seconds) {
    return seconds ? time_span(*seconds) : "\u2013";
  }

  const ContainmentResult& result_;
  site::Display display_;
};

void remark_on(const std::string& names, const char* what, std::vector<std::string>& out) {
  if (!names.empty()) out.push_back(what + names + ".");
}

void add_name(const std::string& name, std::string& names) { names.append(names.empty() ? "" : ", ").append(name); }

}  // namespace

svg::SumpChart sump_chart(const ContainmentResult& result, const site::Site& site, const std::string& id) {
  svg::SumpChart chart;
  chart.id = id;
  chart.title = "Sumps to one scale";
  chart.description =
      "Every sump under one ground line, with its sensor, its pipes and a dashed line at its lowest entry seal; under "
      "each what it holds.";
  chart.unit = 1.0 / shown_value(Measure::length, site.display, 1.0);
  chart.unit_name = unit_label(Measure::length, site.display);
  for (const ContainedSump& sump : result.sumps) chart.sumps.push_back(drawn(sump, site));
  chart.rows = Rows(result, site.display).volumes();
  return chart;
}

void add_fill_rows(const ContainmentResult& result, site::Display display, svg::SumpChart& chart) {
  const Rows rows(result, display);
  for (std::size_t i = 0; i < result.options.inflows.size(); ++i) rows.add_fill(i, chart.rows);
}

std::vector<std::string> sumps_remarks(const ContainmentResult& result, const site::Site& site) {
  std::vector<std::string> out{
      "One scale for all. Shaded: what collects until the sensor is wet. Dashed: the lowest entry seal."};
  std::string depths, brims, pipes;
  for (const ContainedSump& sump : result.sumps) {
    const site::Sump* entered = entered_sump(site, sump);
    if (!sump.depth) add_name(sump.owner, depths);
    if (sump.depth && entered != nullptr && !entered->floor_elevation) add_name(sump.owner, brims);
    if (sump.depth && drawn(sump, site).pipes.empty()) add_name(sump.owner, pipes);
  }
  remark_on(depths, "Depth not entered, drawn dashed: ", out);
  remark_on(brims, "Elevation of the floor not entered, drawn with the brim at the ground: ", out);
  remark_on(pipes, "No height of a pipe within the sump, so none drawn: ", out);
  return out;
}

}  // namespace forecourse::report
