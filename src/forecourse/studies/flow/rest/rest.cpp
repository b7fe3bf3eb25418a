#include "forecourse/studies/flow/rest/rest.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/network/pack/held_line.h"
#include "forecourse/network/pack/stretches.h"
#include "forecourse/studies/flow/rest/course_fill.h"
#include "forecourse/studies/flow/rest/fill_time.h"
#include "forecourse/studies/flow/rest/filling.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::PumpPoint;

const site::Pump* find_pump(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.pumps.begin(), site.pumps.end(), [&](const site::Pump& p) { return p.id.text == id; });
  return found == site.pumps.end() ? nullptr : &*found;
}

class RestTeller {
 public:
  RestTeller(const site::Site& site, const PipingSystem& system) : site_(site), system_(system), fill_times_(system) {}

  LineAtRest tell() {
    out_.system = system_.id;
    out_.product = system_.product;
    if (!system_.graph) {
      out_.reason = system_.problems.empty() ? "its piping is not complete" : system_.problems.front().message;
      return std::move(out_);
    }
    find_held();
    tell_places();
    tell_stretches();
    tell_detectors();
    const std::vector<std::optional<FillCourse>> courses = fill_courses(system_);
    for (std::size_t i = 0; i < courses.size(); ++i) tell_hose(system_.hoses[i], courses[i]);
    return std::move(out_);
  }

 private:
  void find_held() {
    network::HeldLine line = network::held_line(site_, system_);
    decayed_ = line.decayed;
    held_ = line.held;
    shutoff_ = line.shutoff;
    out_.held_pressure = line.held_pressure();
    out_.held_by = std::move(line.held_by);
  }

  void add_place(const std::string& id, double elevation, bool is_shown) {
    const double weight = system_.weight_of(elevation);
    RestPlace place{id, {}, {}, decayed_ - weight, decayed_ < weight, {}};
    if (is_shown) place.elevation = elevation;
    if (held_) place.held_gauge = *held_ - weight;
    if (shutoff_) place.shutoff_gauge = *shutoff_ - weight;
    out_.places.push_back(std::move(place));
  }

  void tell_places() {
    for (const network::Place& place : system_.places) {
      if (system_.elevations_known && place.elevation_entered) {
        add_place(place.id, place.elevation, true);
      } else {
        out_.places.push_back({place.id, {}, {}, {}, false, {}});
      }
    }
    for (const network::HosePoint& hose : system_.hoses) {
      const int node = system_.runs[at(hose.run)].to;
      add_place("nozzle of " + hose.id, system_.openings[at(node) - system_.places.size()].elevation,
                system_.elevations_known);
    }
  }

  void tell_stretches() {
    out_.stretches = stretches_of(site_, system_);
    double compliance = 0.0;
    for (const RestStretch& stretch : out_.stretches) {
      if (stretch.behind_dispenser) continue;
      out_.line_volume += stretch.volume;
      compliance += stretch.compliance.value_or(0.0);
      if (!stretch.compliance && out_.compliance_reason.empty()) {
        out_.compliance_reason = stretch.part + " " + stretch.id + ": " + stretch.reason;
      }
    }
    if (out_.compliance_reason.empty()) out_.line_compliance = compliance;
  }

  void tell_detectors() {
    for (const PumpPoint& pump : system_.pumps) {
      const site::Pump* entered = find_pump(site_, pump.id);
      if (!pump.running || entered == nullptr || !entered->leak_detector) continue;
      const site::LeakDetector& detector = *entered->leak_detector;
      if (detector.opening_time && detector.restricted) {
        out_.opening_time = std::max(out_.opening_time.value_or(0.0), detector.opening_time->likely.si());
        out_.restricted = out_.restricted.value_or(0.0) + detector.restricted->likely.si();
      } else {
        out_.detector_note = "leak detector of pump " + pump.id + ": enter opening_time and restricted";
      }
    }
  }

  [[nodiscard]] const site::LeakDetector* detector_of(const FillCourse& course) const {
    const site::Pump* pump = find_pump(site_, system_.pumps[course.pump].id);
    return pump != nullptr && pump->leak_detector ? &*pump->leak_detector : nullptr;
  }

  /// Pumps with the leak detector of the course's pump; without it the time is known.
  void pump(const FillCourse& course, const std::vector<double>& marks, const std::function<double(double)>& flow,
            FirstFlow& out) const {
    out.volume = marks.back();
    if (!out.without_detector) {
      out.reason = "the pump does not bring the fuel to the nozzle";
      return;
    }
    const site::LeakDetector* detector = detector_of(course);
    if (detector == nullptr) {
      out.time = out.without_detector;
    } else if (detector->opening_time && detector->restricted) {
      out.time =
          time_to_pump(marks, flow, Detector{detector->restricted->likely.si(), detector->opening_time->likely.si()});
    } else {
      out.reason = "what the leak detector lets through at first is not known: enter its opening_time and restricted";
    }
  }

  [[nodiscard]] FirstFlow first_flow_decayed(const FillCourse& course) const {
    FirstFlow out;
    const double pressure = system_.weight_of(course.outlet) - decayed_;
    if (pressure <= 0.0) {
      out.time = out.without_detector = 0.0;
      return out;
    }
    if (!out_.line_compliance) {
      out.reason = "how the line yields to pressure is not known: " + out_.compliance_reason;
      return out;
    }
    const double below = system_.weight_of(course.surface) - decayed_;
    const std::vector<double> marks{0.0, *out_.line_compliance * pressure};
    const auto flow = [&](double volume) {
      return flow_into(system_, course.pump, volume / *out_.line_compliance - below);
    };
    out.without_detector = time_to_pump(marks, flow, std::nullopt);
    pump(course, marks, flow, out);
    return out;
  }

  [[nodiscard]] FirstFlow first_flow_held(const FillCourse& course, const FirstFlow& decayed) const {
    if (!held_) {
      FirstFlow out = decayed;
      out.reason = "the line is not held" + (decayed.reason.empty() ? std::string() : "; " + decayed.reason);
      return out;
    }
    FirstFlow out;
    if (*held_ > system_.weight_of(course.outlet)) {
      out.time = out.without_detector = 0.0;
    } else {
      out.reason = "the pressure held does not reach the nozzle";
    }
    return out;
  }

  [[nodiscard]] FirstFlow first_flow_empty(const FillCourse& course) {
    FirstFlow out;
    Filling filling(system_, course);
    out.without_detector = fill_times_.time(course);
    pump(
        course, fill_marks(course), [&](double filled) { return filling.flow(filled); }, out);
    return out;
  }

  void tell_hose(const network::HosePoint& hose, const std::optional<FillCourse>& course) {
    RestHose row{hose.id, {}, {}, {}};
    if (!course || hose.share < 1.0) {
      const char* reason = course ? "a blended hose draws on several lines" : "no running pump reaches it";
      for (FirstFlow* flow : {&row.held, &row.decayed, &row.empty}) flow->reason = reason;
      out_.hoses.push_back(std::move(row));
      return;
    }
    row.decayed = first_flow_decayed(*course);
    row.held = first_flow_held(*course, row.decayed);
    row.empty = first_flow_empty(*course);
    out_.hoses.push_back(std::move(row));
  }

  const site::Site& site_;
  const PipingSystem& system_;
  FillTimes fill_times_;
  double decayed_ = 0.0;        ///< [Pa] piezometric, once the line has fallen to the liquid
  std::optional<double> held_;  ///< [Pa] piezometric
  std::optional<double> shutoff_;
  LineAtRest out_;
};

}  // namespace

std::vector<LineAtRest> lines_at_rest(const site::Site& site, const network::StationNetwork& network) {
  std::vector<LineAtRest> out;
  for (const PipingSystem& system : network.systems) out.push_back(RestTeller(site, system).tell());
  return out;
}

}  // namespace forecourse::studies
