#include "forecourse/studies/incident/overfill/overfill_setup.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "forecourse/network/drop_tube.h"
#include "forecourse/network/escape/broken_end.h"
#include "forecourse/network/fluid.h"
#include "forecourse/network/part_laws.h"

namespace forecourse::studies::overfilling {
namespace {

double circle(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

/// What lies between the truck and the tank, from its beginning to its end.
class Way {
 public:
  Way(const Setup& setup, const network::Fluid& fluid, std::vector<DefaultUsed>& defaults)
      : s_(setup), laws_(fluid, defaults, problems_), fluid_(fluid) {}

  [[nodiscard]] release::Opening made() {
    const site::Delivery& d = *s_.delivery;
    if (d.truck_pipe) add("pipe of the truck", *d.truck_pipe);
    if (d.hose) add("delivery hose", *d.hose);
    if (s_.fill != nullptr) add_fill(*s_.fill);
    if (!(bore_ > 0.0)) laws_.problem("the bore of the delivery hose is not entered", d.where, "add hose = { bore }");
    if (!problems_.empty()) return {};
    constexpr double most = 0.1;  // [m3/s], far above any gravity drop
    release::Opening out;
    out.path = network::path_table(end_, most);
    out.discharge = network::opening_loss(fluid_.density, circle(bore_), 1.0);
    return out;
  }
  [[nodiscard]] const std::vector<Diagnostic>& problems() const { return problems_; }

 private:
  void add(const std::string& what, const site::Pipe& pipe) {
    laws_.add_pipe(network::ElementKind::line, what, what, pipe, end_.path);
    if (const double bore = network::PartLaws::known_bore(pipe); bore > 0.0) bore_ = bore;
  }
  void add_loss(const std::string& what, const std::optional<site::EnteredLoss>& loss) {
    if (loss) laws_.add_loss(network::ElementKind::connection, what, what, *loss, bore_, end_.path);
  }
  void add_fill(const site::Fill& fill) {
    if (fill.pipe) add("pipe of the fill", *fill.pipe);
    add_loss("fill", fill.loss);
    if (fill.drop_tube) add("drop tube", network::pipe_of(*fill.drop_tube));
    if (fill.overfill_valve) add_loss("overfill valve", fill.overfill_valve->loss);
  }

  const Setup& s_;
  std::vector<Diagnostic> problems_;
  network::PartLaws laws_;
  const network::Fluid& fluid_;
  network::BrokenEnd end_;
  double bore_ = 0.0;  ///< [m] of the last pipe so far
};

class Setting {
 public:
  Setting(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs,
          const std::optional<network::TankInside>& known)
      : site_(site), request_(request), in_(inputs) {
    out_.inside = known;
  }

  Setup set() {
    find_tank();
    if (ok()) find_delivery();
    if (ok()) set_tank(site_, in_, out_);
    if (ok()) set_truck();
    if (ok()) set_hose();
    if (ok()) set_barriers(request_, in_, out_);
    return std::move(out_);
  }

 private:
  [[nodiscard]] bool ok() const { return out_.problem.empty(); }
  void fail(std::string why) { out_.problem = std::move(why); }

  void find_tank() {
    const auto asked = [&](const site::Tank& tank) { return request_.at.empty() || tank.id == request_.at; };
    const auto tank = std::find_if(site_.tanks.begin(), site_.tanks.end(), asked);
    if (tank == site_.tanks.end())
      return fail("there is no tank '" + request_.at.text + "' to overfill: add --at with a tank");
    out_.tank = &*tank;
    out_.product = tank->product.text;
    if (!tank->fills.empty()) out_.fill = &tank->fills.front();
    if (tank->fills.size() > 1)
      out_.warnings.push_back("tank '" + tank->id.text + "' has several fills: the drop is through the first");
  }

  void find_delivery() {
    const auto asked = [&](const site::Delivery& d) { return request_.delivery.empty() || d.id == request_.delivery; };
    const auto delivery = std::find_if(site_.deliveries.begin(), site_.deliveries.end(), asked);
    if (delivery == site_.deliveries.end())
      return fail("no delivery is described: add [[delivery]] with a rate, or with the truck's compartment and hose");
    out_.delivery = &*delivery;
    std::size_t count = 0;
    for (const site::TruckCompartment& c : delivery->compartments) {
      const bool here = c.tank == out_.tank->id || (c.tank.empty() && c.product == out_.tank->product);
      if (here && count++ == 0) out_.compartment = &c;
    }
    if (count > 1) {
      out_.warnings.push_back("several compartments of the truck are for tank '" + out_.tank->id.text +
                              "': the first is dropped here");
    }
  }

  void set_truck() {
    Case& c = out_.everything;
    const site::TruckCompartment* from = out_.compartment;
    const auto& brought = request_.ordered ? request_.ordered : from != nullptr ? from->volume : request_.ordered;
    if (!brought)
      return fail("how much the tanker brings is not entered: add ordered, or a compartment with its volume");
    c.in_truck = *in_.take("what the tanker brings", brought, "m3");
    if (out_.delivery->rate) {
      c.rate = *in_.take("rate of the delivery", out_.delivery->rate, "m3/s");
    } else {
      set_heads();
    }
  }

  /// Heights from the tank's bottom, for a drop by gravity.
  void set_heads() {
    const site::Delivery& d = *out_.delivery;
    const site::TruckCompartment* from = out_.compartment;
    double above = 0.0;
    if (d.surface_difference) {
      above = *in_.take("liquid in the truck above that in the tank", d.surface_difference, "m");
    } else if (from != nullptr && from->elevation && out_.tank->bottom_elevation) {
      above = level_of(*in_.take("elevation of the liquid in the truck", from->elevation, "m")) - out_.level;
    } else {
      return fail(
          "how fast it drops is not known: enter rate, or surface_difference, or the elevation of the liquid in the "
          "truck's compartment and the tank's bottom_elevation");
    }
    if (!(above > 0.0)) return fail("nothing drops: the liquid in the truck stands no higher than that in the tank");
    set_surfaces(above);
    set_outlet();
  }

  /// \pre the elevation of the tank's bottom is entered
  [[nodiscard]] double level_of(double elevation) const {
    return *network::level_of_elevation(*out_.tank, *out_.inside, elevation);
  }

  void set_surfaces(double above) {
    Case& c = out_.everything;
    const auto& surfaces = out_.delivery->surfaces;
    if (surfaces && surfaces->value == site::Surfaces::fixed) {
      c.fixed_head = above;
      return;
    }
    if (out_.compartment == nullptr || !out_.compartment->height)
      return fail(
          "how far the liquid in the truck falls is not known: enter the height of its compartment's liquid, or "
          "surfaces = \"fixed\"");
    const double height = *in_.take("height of the liquid in the truck", out_.compartment->height, "m");
    c.truck_area = c.in_truck / height;
    c.truck_bottom = out_.level + above - height;
  }

  /// Where fuel comes out once the tank is full: no lower than its top.
  void set_outlet() {
    Case& c = out_.everything;
    c.outlet = c.tank->full_level();
    if (!out_.tank->bottom_elevation || out_.tank->above_ground.value_or(false)) return;
    const site::Maybe<Length> none;
    const site::Maybe<Length>& entered = out_.fill != nullptr ? out_.fill->elevation : none;
    const double fill = in_.take("elevation of the fill, where fuel comes out of a full tank", entered, Spread{},
                                 DefaultStatus::illustrative, "m", "illustrative: at elevation 0");
    c.outlet = std::max(c.outlet, level_of(fill));
  }

  void set_hose() {
    Case& c = out_.everything;
    std::vector<Diagnostic> problems;
    const auto fluid = network::flowing_fluid(site_, out_.product, out_.defaults, problems);
    if (!fluid) return fail(problems.empty() ? "the product cannot be computed" : problems.front().message);
    c.density = fluid->density;
    const auto& hose = out_.delivery->hose;
    if (hose) out_.hose_bore = network::PartLaws::known_bore(*hose);
    if (hose && hose->length) c.in_hose = circle(out_.hose_bore) * hose->length->likely.si();
    if (c.in_hose > 0.0 && (c.rate > 0.0 || c.fixed_head > 0.0)) {
      constexpr double drains_in = 20.0;  // [s]
      c.drains_in = in_.take({"time in which the delivery hose drains",
                              {drains_in, drains_in, drains_in},
                              "s",
                              false,
                              DefaultStatus::illustrative,
                              "illustrative"});
    }
    if (c.rate > 0.0) return;
    Way way(out_, *fluid, out_.defaults);
    c.way = way.made();
    if (!way.problems().empty()) fail(way.problems().front().message + ": " + way.problems().front().hint);
  }

  const site::Site& site_;
  const site::IncidentRequest& request_;
  Inputs& in_;
  Setup out_;
};

}  // namespace

Setup set_up(const site::Site& site, const site::IncidentRequest& request, Inputs& inputs,
             const std::optional<network::TankInside>& known) {
  return Setting(site, request, inputs, known).set();
}

}  // namespace forecourse::studies::overfilling
