#include "forecourse/studies/delivery/setup/setup.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "forecourse/studies/delivery/model/model.h"

namespace forecourse::studies::delivering {
namespace {

constexpr double shut_share = 0.95;   ///< \source [cfr_280, 280.20(c)(1)(ii)(A)]
constexpr double alert_share = 0.90;  ///< \source [cfr_280, 280.20(c)(1)(ii)(B)]

template <class Q>
std::optional<double> si_of(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

std::string quoted(const std::string& id) { return "tank '" + id + "'"; }

class Setting {
 public:
  Setting(const site::Site& site, const DeliveryOptions& options, const Variation& variation)
      : site_(site), options_(options), variation_(variation) {}

  Setup set() {
    find_delivery();
    if (ok()) find_drops();
    if (ok()) set_run();
    for (std::size_t t = 0; ok() && t < s_.tanks.size(); ++t) set_tank(t);
    for (std::size_t d = 0; ok() && d < s_.drops.size(); ++d) set_drop(d);
    if (ok()) set_vapor(site_, variation_, s_);
    return std::move(s_);
  }

 private:
  [[nodiscard]] bool ok() const { return s_.problem.empty(); }
  void fail(std::string why) { s_.problem = std::move(why); }

  void find_delivery() {
    const auto asked = [&](const site::Delivery& d) {
      return options_.delivery.empty() || d.id.text == options_.delivery;
    };
    const auto delivery = std::find_if(site_.deliveries.begin(), site_.deliveries.end(), asked);
    if (delivery == site_.deliveries.end())
      return fail("no delivery is described: add [[delivery]] with the truck's compartments and its hose");
    s_.delivery = &*delivery;
  }

  /// The tank that a compartment is for: the one named, or the only one with its product.
  [[nodiscard]] const site::Tank* tank_for(const site::TruckCompartment& from) const {
    const site::Tank* found = nullptr;
    for (const site::Tank& tank : site_.tanks) {
      if (!from.tank.empty() && tank.id == from.tank) return &tank;
      if (!from.tank.empty() || from.product.empty() || !(tank.product == from.product)) continue;
      if (found != nullptr) return nullptr;
      found = &tank;
    }
    return found;
  }

  void find_drops() {
    std::size_t number = 0;
    for (const site::TruckCompartment& from : s_.delivery->compartments) {
      ++number;
      const std::string name = from.id.empty() ? "compartment " + std::to_string(number) : from.id.text;
      const site::Tank* tank = tank_for(from);
      if (tank == nullptr) return fail("into which tank " + name + " is dropped is not entered: add tank");
      if (!options_.tank.empty() && tank->id.text != options_.tank) continue;
      add_drop(from, *tank, name);
    }
    if (s_.drops.empty())
      return fail(options_.tank.empty() ? "the delivery has no compartment: add [[delivery.compartment]]"
                                        : "no compartment of the delivery is for " + quoted(options_.tank));
    if (s_.drops.size() > static_cast<std::size_t>(most_drops))
      return fail("a delivery of more than " + std::to_string(most_drops) +
                  " compartments is not computed: use --tank");
  }

  void add_drop(const site::TruckCompartment& from, const site::Tank& tank, const std::string& name) {
    const auto known =
        std::find_if(s_.tanks.begin(), s_.tanks.end(), [&](const TankSetup& t) { return t.tank == &tank; });
    const auto index = static_cast<int>(known - s_.tanks.begin());
    if (known == s_.tanks.end()) {
      s_.tanks.push_back({&tank, tank.fills.empty() ? nullptr : &tank.fills.front(), {}, {}});
      s_.everything.tanks.emplace_back();
      if (tank.fills.size() > 1)
        s_.warnings.push_back(quoted(tank.id.text) + " has several fills: drops are through the first");
    }
    from_.push_back(&from);
    s_.drops.push_back({name, from.product.empty() ? tank.product.text : from.product.text, 0.0, 0.0, 0.0});
    s_.everything.drops.emplace_back().tank = index;
  }

  void set_run() {
    Case& c = s_.everything;
    const site::Delivery& d = *s_.delivery;
    const int entered = d.at_once ? static_cast<int>(d.at_once->likely) : 1;
    c.at_once = variation_.at_once > 0 ? variation_.at_once : entered;
    c.change_over = si_of(d.change_over).value_or(0.0);
    if (!is_without(variation_, DeliveryPart::driver)) c.driver_acts_in = si_of(d.driver_acts_in).value_or(never);
    c.stop_at = options_.stop_at.value_or(never);
    if (site_.atmospheric_pressure) c.atmospheric = site_.atmospheric_pressure->likely.si();
    if (s_.drops.size() > 1 && !d.change_over)
      s_.notes.emplace_back("the next drop begins as soon as one has ended: change_over is not entered");
  }

  // ---- a tank --------------------------------------------------------------------------------------

  void set_tank(std::size_t i) {
    TankSetup& told = s_.tanks[i];
    TankCase& c = s_.everything.tanks[i];
    const site::Tank& tank = *told.tank;
    auto body = body_of(tank);
    if (auto* why = std::get_if<std::string>(&body)) return fail(std::move(*why));
    c.body = std::get<TankBody>(std::move(body));
    c.level = parts::LevelCurve(c.body.inside().volume);
    c.capacity = c.body.capacity();
    c.ninety = alert_share * c.capacity;
    c.ninety_five = shut_share * c.capacity;
    s_.defaults.insert(s_.defaults.end(), c.body.inside().defaults.begin(), c.body.inside().defaults.end());
    const auto level = network::tank_level(site_, tank, nullptr, c.body.inside());
    if (!level)
      return fail("how much is in " + quoted(tank.id.text) + " is not entered: add reading = { depth = ... }");
    c.volume = c.body.volume(*level);
    told.place = told.fill != nullptr ? si_of(told.fill->at) : std::nullopt;
    warn_of_siphon(tank);
    set_fill(told, c);
    set_alarm(tank, c);
  }

  void warn_of_siphon(const site::Tank& tank) {
    if (!tank.siphoned_with.empty())
      s_.warnings.push_back("what runs from " + quoted(tank.id.text) +
                            " into tanks that it is siphoned with is left out");
  }

  void set_fill(TankSetup& told, TankCase& c) {
    if (told.fill == nullptr)
      return fail("there is no way from the truck into " + quoted(told.tank->id.text) + ": add [[tank.fill]]");
    const site::Fill& fill = *told.fill;
    if (fill.drop_tube) set_tube(*fill.drop_tube, told, c);
    if (fill.spill_container) told.container = si_of(fill.spill_container->volume);
    if (!fill.overfill_valve || is_without(variation_, DeliveryPart::overfill_valve)) return;
    const site::OverfillValve& valve = *fill.overfill_valve;
    const auto volume_to = [&](const site::Maybe<Length>& depth) {
      return depth ? c.body.volume(c.body.level_at(told.place, depth->likely.si())) : never;
    };
    c.restricts = volume_to(valve.restricts_at);
    c.closes = volume_to(valve.closes_at);
    c.restricted = si_of(valve.restricted).value_or(never);
    c.closed = si_of(valve.closed).value_or(0.0);
    if (c.restricts < never && !valve.restricted)
      s_.warnings.emplace_back("what the overfill valve of " + quoted(told.tank->id.text) +
                               " lets through while it restricts is not entered: counted as nothing held back");
    if (c.closes < never && !valve.closed)
      s_.notes.push_back("the overfill valve of " + quoted(told.tank->id.text) +
                         " is counted as shut tight: what it lets through when shut is not entered");
  }

  void set_tube(const site::DropTube& tube, const TankSetup& told, TankCase& c) {
    if (!tube.end_above_bottom) return;
    c.tube_end = c.body.level_at(told.place, tube.end_above_bottom->likely.si());
    constexpr double diameters = 2.0;  // [nfpa_77_2000, table 7.6]
    if (tube.bore) c.covered = c.body.volume(c.tube_end + diameters * tube.bore->likely.si());
  }

  void set_alarm(const site::Tank& tank, TankCase& c) {
    if (!tank.overfill_alarm || is_without(variation_, DeliveryPart::overfill_alarm)) return;
    const site::OverfillAlarm& alarm = *tank.overfill_alarm;
    if (alarm.at_depth) {
      const auto place = tank.gauge ? si_of(tank.gauge->at) : std::nullopt;
      c.alarm = c.body.volume(c.body.level_at(place, alarm.at_depth->likely.si()));
    } else if (alarm.at_share) {
      c.alarm = alarm.at_share->likely.si() * c.capacity;
    }
    c.hears_alarm = alarm.heard_at_fill.value_or(false);
  }

  // ---- a drop --------------------------------------------------------------------------------------

  void set_drop(std::size_t i) {
    DropCase& c = s_.everything.drops[i];
    const site::Delivery& d = *s_.delivery;
    const site::TruckCompartment& from = *from_[i];
    const bool ordered = options_.volume && i == 0;
    if (!ordered && !from.volume)
      return fail("how much " + s_.drops[i].compartment + " brings is not entered: add volume, or --volume");
    c.volume = ordered ? *options_.volume : from.volume->likely.si();
    std::vector<Diagnostic> problems;
    const auto liquid = network::flowing_fluid(site_, s_.drops[i].product, s_.defaults, problems);
    if (!liquid) return fail(problems.empty() ? "the product cannot be computed" : problems.front().message);
    c.density = liquid->density;
    c.in_hose = volume_in(d.truck_pipe) + volume_in(d.hose);
    set_bores(s_.drops[i], s_.tanks[static_cast<std::size_t>(c.tank)]);
    set_hose_height(c);
    if (options_.rate || d.rate) {
      c.rate = options_.rate ? *options_.rate : d.rate->likely.si();
      return;
    }
    set_heads(i, from, c);
    if (ok()) set_way(*liquid, i, s_);
  }

  void set_bores(DropSetup& told, const TankSetup& tank) const {
    const site::Delivery& d = *s_.delivery;
    if (d.hose) told.hose_bore = network::PartLaws::known_bore(*d.hose);
    if (tank.fill == nullptr || !tank.fill->drop_tube) return;
    told.tube_bore = si_of(tank.fill->drop_tube->bore).value_or(0.0);
  }

  /// A hose lies about as high as the fill.
  void set_hose_height(DropCase& c) {
    const TankSetup& tank = s_.tanks[static_cast<std::size_t>(c.tank)];
    const TankCase& into = s_.everything.tanks[static_cast<std::size_t>(c.tank)];
    const bool bottom = tank.tank->bottom_elevation.has_value();
    const auto fill = tank.fill != nullptr ? si_of(tank.fill->elevation) : std::nullopt;
    const bool computed = !options_.rate && !s_.delivery->rate;
    if (bottom && fill && computed) {
      c.hose_height = *network::level_of_elevation(*tank.tank, into.body.inside(), *fill);
      c.height_known = true;
      return;
    }
    constexpr double usual = 20.0;  // [s]
    c.drains_in = usual;
    if (!(c.in_hose > 0.0)) return;
    const std::string what = "time in which the delivery hose drains";
    const bool noted =
        std::any_of(s_.defaults.begin(), s_.defaults.end(), [&](const auto& u) { return u.what == what; });
    if (!noted)
      s_.defaults.push_back(
          {what, usual, "s", DefaultStatus::illustrative, "illustrative; enter the fill's elevation", {}});
  }

  /// Heights above level zero of the tank, for a drop by gravity.
  void set_heads(std::size_t i, const site::TruckCompartment& from, DropCase& c) {
    const site::Delivery& d = *s_.delivery;
    const TankCase& into = s_.everything.tanks[static_cast<std::size_t>(c.tank)];
    const site::Tank& tank = *s_.tanks[static_cast<std::size_t>(c.tank)].tank;
    const double level = std::max(into.body.level(into.volume), into.tube_end);
    double above = 0.0;
    if (d.surface_difference) {
      above = d.surface_difference->likely.si();
    } else if (from.elevation && tank.bottom_elevation) {
      above = *network::level_of_elevation(tank, into.body.inside(), from.elevation->likely.si()) - level;
    } else {
      return fail("how fast " + s_.drops[i].compartment +
                  " drops is not known: enter rate, or surface_difference, or the elevation of the liquid in the "
                  "truck's compartment and the tank's bottom_elevation");
    }
    if (!(above > 0.0))
      return fail("nothing drops from " + s_.drops[i].compartment +
                  ": its liquid stands no higher than that in the tank");
    if (d.surfaces && d.surfaces->value == site::Surfaces::fixed) {
      c.fixed_head = above;
      return;
    }
    if (!from.height)
      return fail("how far the liquid in " + s_.drops[i].compartment +
                  " falls is not known: enter its height, or surfaces = \"fixed\" for the delivery");
    const double height = from.height->likely.si();
    const double loaded = from.volume ? from.volume->likely.si() : c.volume;
    c.truck_area = loaded / height;
    c.truck_bottom = level + above - height;
  }

  const site::Site& site_;
  const DeliveryOptions& options_;
  const Variation& variation_;
  std::vector<const site::TruckCompartment*> from_;
  Setup s_;
};

}  // namespace

double volume_in(const std::optional<site::Pipe>& pipe) {
  if (!pipe || !pipe->length) return 0.0;
  const double bore = network::PartLaws::known_bore(*pipe);
  return 0.25 * std::numbers::pi * bore * bore * pipe->length->likely.si();
}

bool is_without(const Variation& variation, DeliveryPart part) {
  return std::find(variation.without.begin(), variation.without.end(), part) != variation.without.end();
}

Setup set_up(const site::Site& site, const DeliveryOptions& options, const Variation& variation) {
  return Setting(site, options, variation).set();
}

}  // namespace forecourse::studies::delivering
