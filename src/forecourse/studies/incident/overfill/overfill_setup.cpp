#include "forecourse/studies/incident/overfill/overfill_setup.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/network/escape/broken_end.h"
#include "forecourse/network/fluid.h"
#include "forecourse/network/part_laws.h"

namespace forecourse::studies::overfilling {
namespace {

constexpr DefaultStatus illustrative = DefaultStatus::illustrative;
constexpr Spread driver_stand_in{15.0, 45.0, 120.0};  // [s]
constexpr Spread container_stand_in{0.0, 0.0, 0.0};   // [m3] none listed: none there
constexpr double published_shut_share = 0.95;         ///< \source [cfr_280, 280.20(c)(1)(ii)(A)]
constexpr double published_alarm_share = 0.90;        ///< \source [cfr_280, 280.20(c)(1)(ii)(B)]

template <class Q>
double si(const site::Maybe<Q>& entered, double other) {
  return entered ? entered->likely.si() : other;
}

class Setting {
 public:
  Setting(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs)
      : site_(site), request_(request), in_(inputs) {}

  Setup set() {
    find();
    if (ok()) set_tank();
    if (ok()) set_truck();
    if (ok()) set_way();
    if (ok()) set_barriers();
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool ok() const { return out_.problem.empty(); }
  void fail(std::string why) {
    if (ok()) out_.problem = std::move(why);
  }

  void find() {
    for (const site::Tank& tank : site_.tanks) {
      if (request_.at.empty() || tank.id == request_.at) {
        if (out_.tank == nullptr) out_.tank = &tank;
      }
    }
    if (out_.tank == nullptr)
      return fail("there is no tank '" + request_.at.text + "' to overfill: add --at with a tank");
    out_.product = out_.tank->product.text;
    if (!out_.tank->fills.empty()) out_.fill = &out_.tank->fills.front();
    for (const site::Delivery& delivery : site_.deliveries) {
      if (!request_.delivery.empty() && !(delivery.id == request_.delivery)) continue;
      if (out_.delivery == nullptr) out_.delivery = &delivery;
    }
    if (out_.delivery == nullptr)
      return fail("no delivery is described: add [[delivery]] with a rate, or with the truck's compartment and hose");
    for (const site::TruckCompartment& c : out_.delivery->compartments) {
      const bool here = c.tank == out_.tank->id || (c.tank.empty() && c.product == out_.tank->product);
      if (here && out_.compartment == nullptr) out_.compartment = &c;
    }
  }

  void set_tank() {
    const site::Tank& tank = *out_.tank;
    Case& c = out_.everything;
    if (!tank.chart.empty()) {
      parts::DipChart chart;
      for (const site::ChartPoint& p : tank.chart) chart.points.push_back({p.depth.si(), p.volume.si()});
      c.tank = chart;
    } else if (!tank.shape) {
      return fail("the shape of tank '" + tank.id.text + "' is not entered, nor a chart");
    } else if (!set_shape(*tank.shape)) {
      return;
    }
    if (!tank.reading || !tank.reading->depth)
      return fail("how much is in tank '" + tank.id.text + "' is not entered: add reading = { depth = ... }");
    c.in_tank = parts::volume_at_depth(c.tank, tank.reading->depth->likely.si());
  }

  bool set_shape(const site::TankShape& shape) {
    Case& c = out_.everything;
    if (shape.pitch && shape.pitch->likely.si() != 0.0) {
      out_.warnings.push_back("tank '" + out_.tank->id.text + "' is taken as level: its pitch is left out here");
    }
    if (shape.kind.text == "horizontal-cylinder" && shape.inside_diameter && shape.length) {
      if (!shape.heads.empty() && shape.heads.text != "flat") {
        out_.warnings.push_back("the heads of tank '" + out_.tank->id.text +
                                "' are taken as flat: it holds a little more");
      }
      c.tank = parts::LevelCylinder{shape.inside_diameter->likely.si(), shape.length->likely.si()};
      return true;
    }
    if (shape.kind.text == "vertical-cylinder" && shape.inside_diameter && shape.height) {
      const double d = shape.inside_diameter->likely.si();
      c.tank = parts::UprightTank{0.25 * std::numbers::pi * d * d, shape.height->likely.si()};
      return true;
    }
    if (shape.kind.text == "rectangular" && shape.length && shape.width && shape.height) {
      c.tank = parts::UprightTank{shape.length->likely.si() * shape.width->likely.si(), shape.height->likely.si()};
      return true;
    }
    fail("the sizes of tank '" + out_.tank->id.text + "' are not all entered, nor a chart");
    return false;
  }

  void set_truck() {
    Case& c = out_.everything;
    const site::TruckCompartment* from = out_.compartment;
    if (request_.ordered) {
      c.in_truck = *in_.take("what the tanker brings", request_.ordered, "m3");
    } else if (from != nullptr && from->volume) {
      c.in_truck = *in_.take("what the tanker brings", from->volume, "m3");
    } else {
      return fail("how much the tanker brings is not entered: add ordered, or a compartment with its volume");
    }
    if (out_.delivery->rate) {
      c.rate = *in_.take("rate of the delivery", out_.delivery->rate, "m3/s");
      return;
    }
    if (from == nullptr || !from->elevation || !from->height || !out_.tank->bottom_elevation) {
      return fail(
          "how fast it drops is not known: enter rate, or elevation and height of the truck's compartment and the "
          "tank's bottom_elevation");
    }
    const double height = from->height->likely.si();
    c.truck_area = c.in_truck / height;
    c.truck_bottom = from->elevation->likely.si() - height - out_.tank->bottom_elevation->likely.si();
  }

  void set_way() {
    Case& c = out_.everything;
    std::vector<DefaultUsed> defaults;
    std::vector<Diagnostic> problems;
    const auto fluid = network::flowing_fluid(site_, out_.product, defaults, problems);
    if (!fluid) return fail(problems.empty() ? "the product cannot be computed" : problems.front().message);
    c.density = fluid->density;
    const site::Delivery& d = *out_.delivery;
    if (d.hose && d.hose->bore) out_.hose_bore = d.hose->bore->likely.si();
    if (d.hose && d.hose->length && d.hose->bore) {
      const double bore = d.hose->bore->likely.si();
      c.in_hose = 0.25 * std::numbers::pi * bore * bore * d.hose->length->likely.si();
    }
    if (c.rate > 0.0) return;
    network::BrokenEnd way;
    network::PartLaws laws(*fluid, defaults, problems);
    if (d.truck_pipe) laws.add_pipe(network::ElementKind::line, "truck", "pipe of the truck", *d.truck_pipe, way.path);
    if (d.hose) laws.add_pipe(network::ElementKind::line, "hose", "delivery hose", *d.hose, way.path);
    if (out_.fill != nullptr && out_.fill->drop_tube) {
      site::Pipe tube;
      tube.length = out_.fill->drop_tube->length;
      tube.bore = out_.fill->drop_tube->bore;
      tube.roughness = out_.fill->drop_tube->roughness;
      laws.add_pipe(network::ElementKind::line, "drop tube", "drop tube", tube, way.path);
    }
    if (!problems.empty()) return fail(problems.front().message + ": " + problems.front().hint);
    if (!(out_.hose_bore > 0.0)) return fail("the bore of the delivery hose is not entered");
    const double area = 0.25 * std::numbers::pi * out_.hose_bore * out_.hose_bore;
    constexpr double most = 0.1;  // [m3/s], far above any gravity drop
    c.way.path = network::path_table(way, most);
    c.way.discharge = network::opening_loss(c.density, area, 1.0);
  }

  [[nodiscard]] double depth_at_share(double share) const {
    const auto& tank = out_.everything.tank;
    return parts::depth_of_volume(tank, share * parts::volume_at_depth(tank, parts::full_depth(tank)));
  }

  void set_barriers() {
    Case& c = out_.everything;
    if (out_.fill != nullptr && out_.fill->overfill_valve) {
      const site::OverfillValve& valve = *out_.fill->overfill_valve;
      c.restricts_at = si(valve.restricts_at, never);
      c.closes_at = si(valve.closes_at, never);
      if (c.restricts_at < never && !valve.restricted) {
        out_.warnings.emplace_back(
            "what the overfill valve lets through while it restricts is not entered: counted as nothing held back");
      }
      c.restricted = si(valve.restricted, never);
      c.closed = valve.closed ? *in_.take("flow past the shut overfill valve", valve.closed, "m3/s") : 0.0;
    }
    if (const auto& alarm = out_.tank->overfill_alarm) {
      c.alarm_at = alarm->at_depth   ? alarm->at_depth->likely.si()
                   : alarm->at_share ? depth_at_share(alarm->at_share->likely.si())
                                     : never;
      c.hears_alarm = alarm->heard_at_fill.value_or(false);
    }
    c.driver_acts_in = in_.take("time until the driver acts", request_.driver_acts_in, driver_stand_in, illustrative,
                                "s", "illustrative");
    if (out_.fill != nullptr && out_.fill->spill_container)
      c.container = si(out_.fill->spill_container->volume, container_stand_in.likely);
    if (request_.stop_at) c.stop_at = *in_.take("when it is stopped", request_.stop_at, "s");
    constexpr double usual_end = 3600.0;  // [s]
    c.end = si(request_.counts_until, usual_end);
  }

  const site::Site& site_;
  const site::IncidentRequest& request_;
  Inputs& in_;
  Setup out_;
};

BarrierState state(Barrier barrier, const std::string& owner, const char* does, std::vector<std::string> reasons) {
  return {barrier, owner, reasons.empty() ? Assurance::assured : Assurance::not_assured, std::move(reasons), does, {}};
}

}  // namespace

Setup set_up(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs) {
  return Setting(site, request, inputs).set();
}

std::vector<BarrierState> barriers_of(const Setup& setup) {
  std::vector<BarrierState> out;
  const Case& c = setup.everything;
  const double capacity = parts::volume_at_depth(c.tank, parts::full_depth(c.tank));
  const auto share = [&](double depth) { return parts::volume_at_depth(c.tank, depth) / capacity; };
  const std::string& id = setup.tank->id.text;
  std::vector<std::string> reasons;
  if (setup.fill != nullptr && setup.fill->overfill_valve) {
    if (!(c.closes_at < never)) reasons.emplace_back("the depth at which it shuts is not entered");
    if (c.closes_at < never && share(c.closes_at) > published_shut_share)
      reasons.emplace_back("it shuts above 95 % of the capacity");
    if (!setup.fill->overfill_valve->tested) reasons.emplace_back("no test is on record");
    out.push_back(state(Barrier::overfill_valve, id, "restricts the drop and then shuts it", reasons));
  } else {
    out.push_back({Barrier::overfill_valve, id, Assurance::absent, {"no overfill valve is listed"}, {}, {}});
  }
  reasons.clear();
  if (const auto& alarm = setup.tank->overfill_alarm) {
    if (!(c.alarm_at < never)) reasons.emplace_back("where it sounds is not entered");
    if (c.alarm_at < never && share(c.alarm_at) > published_alarm_share)
      reasons.emplace_back("it sounds above 90 % of the capacity");
    if (!c.hears_alarm) reasons.emplace_back("that it is heard at the fill is not entered");
    if (!alarm->tested) reasons.emplace_back("no test is on record");
    out.push_back(state(Barrier::overfill_alarm, id, "tells the driver to stop", reasons));
  } else {
    out.push_back({Barrier::overfill_alarm, id, Assurance::absent, {"no overfill alarm is listed"}, {}, {}});
  }
  out.push_back({Barrier::driver,
                 id,
                 Assurance::not_assured,
                 {"a person: he may be away, or late"},
                 "shuts the truck's valve",
                 {}});
  return out;
}

}  // namespace forecourse::studies::overfilling
