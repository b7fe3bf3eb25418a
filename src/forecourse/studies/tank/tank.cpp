#include "forecourse/studies/tank/tank.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/site/uncertain_values.h"
#include "forecourse/studies/tank/outline.h"

namespace forecourse::studies {
namespace {

constexpr double fill_shares[] = {0.90, 0.95};  ///< \source [cfr_280, 280.20(c)(1)(ii)]
constexpr double most_lines = 5000.0;           // of a chart

std::optional<double> likely(const site::Maybe<Length>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

/// A tank or compartment as one body, with what of the tank's equipment serves it.
struct Body {
  site::Tank tank;  ///< of a compartment: a copy with its id and what stands in its length
  const site::Compartment* compartment = nullptr;
  const site::Tank* whole = nullptr;
};

site::Tank part_of(const site::Tank& tank, const site::Compartment& c) {
  site::Tank out = tank;
  out.id = c.id;
  out.product = c.product;
  out.reading = c.reading;
  out.where = c.where;
  out.capacity.reset();
  const auto within = [&](const site::Maybe<Length>& at) {
    if (!at || !c.from || !c.length) return false;
    const double x = at->likely.si() - c.from->likely.si();
    return x >= 0.0 && x <= c.length->likely.si();
  };
  std::erase_if(out.fills, [&](const site::Fill& fill) { return !within(fill.at); });
  if (!out.gauge || !within(out.gauge->at)) {
    out.gauge.reset();
    out.overfill_alarm.reset();
  }
  return out;
}

std::vector<Body> bodies(const site::Site& site) {
  std::vector<Body> out;
  for (const site::Tank& tank : site.tanks) {
    if (tank.compartments.empty()) out.push_back({tank, nullptr, &tank});
    for (const site::Compartment& c : tank.compartments) out.push_back({part_of(tank, c), &c, &tank});
  }
  return out;
}

std::string shape_words(const parts::TankShape& shape) {
  if (std::holds_alternative<parts::DipChart>(shape)) return "as its dip chart says";
  if (std::holds_alternative<parts::BoxTank>(shape)) return "rectangular";
  const auto& round = std::get<parts::RoundTank>(shape);
  constexpr const char* heads[] = {"flat", "dished", "elliptical", "hemispherical", "conical"};
  const std::string low = heads[static_cast<std::size_t>(round.low.kind)];
  const std::string high = heads[static_cast<std::size_t>(round.high.kind)];
  constexpr double half_right_angle = 0.7854;
  return std::string(round.incline > half_right_angle ? "upright" : "lying") + " cylinder, " +
         (low == high ? low + " heads" : low + " head at its low end, " + high + " head at its high end");
}

std::optional<double> delivery_rate(const site::Site& site, const std::string& tank, const TankOptions& options) {
  if (options.rate) return options.rate;
  std::optional<double> any;
  for (const site::Delivery& delivery : site.deliveries) {
    if (!delivery.rate) continue;
    const double rate = delivery.rate->likely.si();
    const bool here = std::any_of(delivery.compartments.begin(), delivery.compartments.end(),
                                  [&](const site::TruckCompartment& c) { return c.tank.text == tank; });
    if (here) return rate;
    if (!any) any = rate;
  }
  return any;
}

/// One tank, told step by step.
class Telling {
 public:
  Telling(const site::Site& site, const Body& body, const TankOptions& options)
      : site_(site), body_(body), tank_(body.tank), options_(options) {
    out_.id = tank_.id.text;
    out_.tank = body.whole->id.text;
    out_.product = tank_.product.text;
    out_.where = tank_.where;
    if (tank_.capacity) out_.nominal = tank_.capacity->likely.si();
  }

  TankTold tell() && {
    auto inside = network::tank_inside(*body_.whole, body_.compartment);
    if (auto* why = std::get_if<std::string>(&inside)) {
      out_.problem = std::move(*why);
      return std::move(out_);
    }
    inside_.emplace(std::get<network::TankInside>(std::move(inside)));
    set_shape();
    set_now();
    set_places();
    set_rooms();
    set_chart();
    out_.overfill = overfill_routes(site_, tank_, *inside_, level_, out_.rate);
    if (body_.compartment == nullptr && tank_.calibration)
      out_.calibration = fit_calibration(*tank_.calibration, *inside_);
    return std::move(out_);
  }

 private:
  [[nodiscard]] const parts::TankVolume& volume() const { return inside_->volume; }

  void set_shape() {
    out_.shape = shape_words(volume().shape());
    out_.charted = inside_->charted;
    out_.capacity = volume().capacity();
    out_.full_level = volume().full_level();
    if (tank_.shape && tank_.shape->pitch && !out_.charted) out_.pitch = tank_.shape->pitch->likely.si();
    out_.pitched = out_.pitch > 0.0;
    if (tank_.shape && !out_.charted) out_.diameter = likely(tank_.shape->inside_diameter);
    out_.defaults = inside_->defaults;
    out_.outline = long_section(*inside_);
    if (const auto* box = std::get_if<parts::BoxTank>(&volume().shape())) out_.section_width = box->width;
    if (const auto flat = network::as_level(volume().shape()); flat && out_.pitched)
      level_.emplace(*flat, volume().fittings());
    out_.rate = delivery_rate(site_, out_.id, options_);
    if (out_.rate) out_.from_90_to_95 = 0.05 * out_.capacity / *out_.rate;
  }

  /// Where a stick of this kind stands; empty if the tank has none or its place is not entered.
  [[nodiscard]] std::optional<double> along_of(const DipAt& at) const {
    switch (at.kind) {
      case DipAt::Kind::place:
        return at.along;
      case DipAt::Kind::fill:
        return tank_.fills.empty() ? std::nullopt : likely(tank_.fills.front().at);
      case DipAt::Kind::gauge:
        return tank_.gauge ? likely(tank_.gauge->at) : std::nullopt;
      case DipAt::Kind::pump:
        for (const site::Pump& pump : site_.pumps) {
          if (pump.tank == tank_.id) return likely(pump.at);
        }
    }
    return std::nullopt;
  }

  void set_now() {
    const auto& reading = tank_.reading;
    std::optional<double> depth = options_.depth, along, water;
    if (options_.depth) {
      along = options_.at ? along_of(*options_.at) : (reading ? likely(reading->at) : std::nullopt);
    } else if (reading && reading->depth) {
      depth = reading->depth->likely.si();
      along = likely(reading->at);
    }
    if (reading) water = likely(reading->water);
    if (depth && !along && out_.pitched) {
      out_.not_read = options_.depth ? "where the depth is read along the pitched tank is not known: --at"
                                     : "where the reading was taken along the pitched tank is not entered: at = ...";
      return;
    }
    std::optional<double> level;
    if (depth) level = volume().level_at(inside_->place(along), *depth);
    if (!depth) level = network::tank_level(site_, *body_.whole, body_.compartment, *inside_);
    if (!level) {
      out_.not_read = "how much is in it is not entered: reading = { depth = ... }";
      return;
    }
    TankNow now;
    now.level = std::clamp(*level, 0.0, out_.full_level);
    now.along = along;
    now.depth = depth.value_or(volume().depth_at(inside_->place(along), now.level));
    now.volume = volume().volume(now.level);
    now.share = now.volume / out_.capacity;
    now.ullage = out_.capacity - now.volume;
    now.by_option = options_.depth.has_value();
    set_spread(inside_->place(along), now);
    if (water && !options_.depth) {
      now.water_level = volume().level_at(inside_->place(along), *water);
      now.water = volume().volume(*now.water_level);
    }
    out_.now = now;
  }

  /// How far the volume may be off by the depth alone: it rises with it.
  void set_spread(const parts::DipPlace& place, TankNow& now) const {
    if (tank_.gauge && tank_.gauge->uncertainty)
      now.standard_error = volume().surface_area(now.level) * tank_.gauge->uncertainty->likely.si();
    const auto& reading = tank_.reading;
    if (options_.depth || !reading || !reading->depth || !reading->depth->is_uncertain()) return;
    now.least = volume().volume(volume().level_at(place, reading->depth->low.si()));
    now.most = volume().volume(volume().level_at(place, reading->depth->high.si()));
  }

  void add_place(std::string what, const std::optional<double>& along) {
    if (!along && out_.pitched) return;
    const double at = along.value_or(inside_->start);
    for (TankPlace& before : out_.places) {
      if (std::abs(before.along - at) > 1e-9) continue;
      before.what += ", " + what;
      return;
    }
    TankPlace place;
    place.what = std::move(what);
    place.along = at;
    const Stick stick = stick_at(*inside_, at);
    place.stick = stick.length;
    place.foot = stick.foot;
    place.head = stick.head;
    const parts::StickRange range = volume().range_of(inside_->place(at));
    place.dry_below = volume().volume(range.bottom);
    place.covered_above = volume().volume(range.top);
    if (out_.now) place.depth = volume().depth_at(inside_->place(at), out_.now->level);
    out_.places.push_back(std::move(place));
  }

  void set_places() {
    if (options_.at) add_place("place asked", along_of(*options_.at));
    for (const site::Fill& fill : tank_.fills)
      add_place("fill" + (fill.id.empty() ? "" : " " + fill.id.text), likely(fill.at));
    if (tank_.gauge) add_place("gauge", likely(tank_.gauge->at));
    for (const site::Pump& pump : site_.pumps) {
      if (pump.tank == tank_.id) add_place("pump " + pump.id.text, likely(pump.at));
    }
    if (tank_.reading && tank_.reading->depth && !options_.depth) add_place("reading", likely(tank_.reading->at));
    if (out_.places.empty()) add_place("low end", inside_->start);
  }

  void set_rooms() {
    std::vector<double> shares(std::begin(fill_shares), std::end(fill_shares));
    if (options_.share) shares.push_back(*options_.share);
    std::sort(shares.begin(), shares.end());
    shares.erase(std::unique(shares.begin(), shares.end()), shares.end());
    for (const double share : shares) {
      TankRoom room;
      room.share = share;
      room.volume = share * out_.capacity;
      room.level = volume().level(room.volume);
      if (out_.now) room.room = room.volume - out_.now->volume;
      for (const TankPlace& place : out_.places) {
        const parts::StickRange range = volume().range_of(inside_->place(place.along));
        const bool reached = room.level >= range.bottom && room.level <= range.top;
        room.depths.push_back(reached ? std::optional(volume().depth_at(inside_->place(place.along), room.level))
                                      : std::nullopt);
      }
      out_.rooms.push_back(std::move(room));
    }
  }

  /// The chart's place: as asked, else the gauge, the reading, or whatever place is known first.
  [[nodiscard]] const TankPlace& chart_place() const {
    const auto named = [&](const char* word) {
      return std::find_if(out_.places.begin(), out_.places.end(),
                          [&](const TankPlace& p) { return p.what.find(word) != std::string::npos; });
    };
    for (const char* word : {"asked", "gauge", "reading"}) {
      if (const auto found = named(word); found != out_.places.end()) return *found;
    }
    return out_.places.front();
  }

  void set_chart() {
    const TankPlace& place = chart_place();
    TankChart& chart = out_.chart;
    chart.what = place.what;
    chart.along = place.along;
    chart.dry_below = place.dry_below;
    chart.unseen_above = out_.capacity - place.covered_above;
    const double step = *options_.step;
    const parts::DipPlace dip = inside_->place(place.along);
    const auto add = [&](double depth) {
      TankChartRow row;
      row.depth = depth;
      row.level = volume().level_at(dip, depth);
      row.volume = volume().volume(row.level);
      row.share = row.volume / out_.capacity;
      if (level_) row.level_volume = level_->volume(level_->level_at(dip, depth));
      chart.rows.push_back(row);
    };
    const double lines = std::min(most_lines, std::floor(place.stick / step * (1.0 + 1e-12)));
    for (int i = 0; i <= static_cast<int>(lines); ++i) add(step * i);
    if (place.stick - step * lines > 1e-6) add(place.stick);
  }

  const site::Site& site_;
  const Body& body_;
  const site::Tank& tank_;
  const TankOptions& options_;
  std::optional<network::TankInside> inside_;
  std::optional<parts::TankVolume> level_;
  TankTold out_;
};

Diagnostic error(std::string message, std::string hint) {
  return {Severity::error, std::move(message), std::nullopt, std::move(hint), {}};
}

void check_depth(const Body& body, const TankOptions& options, std::vector<Diagnostic>& out) {
  if (!options.depth) return;
  const auto inside = network::tank_inside(*body.whole, body.compartment);
  const auto* known = std::get_if<network::TankInside>(&inside);
  if (known == nullptr) return;
  const double along = options.at && options.at->kind == DipAt::Kind::place ? options.at->along : known->start;
  const double high = stick_at(*known, along).length;
  if (*options.depth <= high * (1.0 + 1e-9)) return;
  out.push_back(error("the depth asked for is above the top of tank '" + body.tank.id.text + "'",
                      "it is " + show_quantity(high, "in") + " (" + show_quantity(high, "m") + ") high inside there"));
}

void warn(const TankTold& tank, std::vector<Diagnostic>& out) {
  const auto add = [&](std::string message, std::string hint) {
    out.push_back({Severity::warning, std::move(message), tank.where, std::move(hint), {}});
  };
  if (tank.nominal && std::abs(*tank.nominal - tank.capacity) > 0.05 * tank.capacity)
    add("tank '" + tank.id + "' holds " + show_quantity(tank.capacity, "gal") +
            " by its shape, but its capacity is entered as " + show_quantity(*tank.nominal, "gal"),
        "shares are of what the shape holds; check the sizes, which are those of the inside");
  if (tank.id != tank.tank && tank.overfill.set.empty() && !tank.overfill.has_fill)
    add("no fill stands within the length of compartment '" + tank.id + "'", "add at = ... to the tank's fills");
}

}  // namespace

std::vector<Diagnostic> check_options(const site::Site& site, const TankOptions& options) {
  std::vector<Diagnostic> out;
  const std::vector<Body> all = bodies(site);
  if (all.empty()) out.push_back(error("the site has no tank", "add a [[tank]]"));
  if (!options.tank.empty()) {
    std::vector<std::string> ids;
    std::string list;
    for (const Body& body : all) {
      ids.push_back(body.tank.id.text);
      list += (list.empty() ? "" : ", ") + body.tank.id.text;
    }
    if (std::find(ids.begin(), ids.end(), options.tank) == ids.end()) {
      const auto near = nearest_word(options.tank, std::span<const std::string>(ids));
      out.push_back(error("there is no tank or compartment '" + options.tank + "'",
                          (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + list));
    }
  }
  if (options.depth && options.tank.empty() && all.size() > 1)
    out.push_back(
        error("a depth is of one tank, but the site has " + std::to_string(all.size()), "say which: --tank T1"));
  for (const Body& body : all) {
    if (options.tank.empty() ? all.size() == 1 : body.tank.id.text == options.tank) check_depth(body, options, out);
  }
  if (options.share && !(*options.share > 0.0 && *options.share <= 1.0))
    out.push_back(error("a share of the capacity is above 0 and at most 100 %", "write --room 85%"));
  constexpr double finest = 1e-4;  // [m]
  if (options.step && *options.step < finest)
    out.push_back(error("the step of a chart is a tenth of a millimeter at least", "write --step \"1 in\""));
  return out;
}

namespace {

/// Of uncertain values only the depth of a reading is followed; of the others the likely one is used, and that is said.
void warn_of_likely(const site::Site& site, std::vector<Diagnostic>& out) {
  for (const site::UncertainValue& value : site::uncertain_values(site)) {
    if (value.table != "tank" || value.path.ends_with("reading.depth")) continue;
    out.push_back({Severity::warning,
                   value.path + " was entered as low, likely and high: the likely value is used for the tanks",
                   value.where,
                   {},
                   {}});
  }
}

}  // namespace

TankResult study_tank(const site::Site& site, const TankOptions& options, const Context& context) {
  TankResult out;
  out.options = options;
  out.version = FORECOURSE_VERSION;
  if (!out.options.step) out.options.step = site.display == site::Display::us ? to_si(1.0, "in") : to_si(2.0, "cm");
  if (out.options.draws.empty()) {
    for (const double gallons_a_minute : {10.0, 20.0, 40.0})
      out.options.draws.push_back(to_si(gallons_a_minute, "gpm"));
  }
  std::vector<Body> all = bodies(site);
  if (!options.tank.empty()) std::erase_if(all, [&](const Body& body) { return body.tank.id.text != options.tank; });
  out.tanks.resize(all.size());
  context.each(all.size(), [&](std::size_t i) { out.tanks[i] = Telling(site, all[i], out.options).tell(); });
  out.siphons = siphons(site, out.options.draws);
  for (const TankTold& tank : out.tanks) {
    out.defaults.insert(out.defaults.end(), tank.defaults.begin(), tank.defaults.end());
    if (tank.problem.empty()) warn(tank, out.warnings);
  }
  warn_of_likely(site, out.warnings);
  for (const SiphonTold& siphon : out.siphons)
    out.defaults.insert(out.defaults.end(), siphon.defaults.begin(), siphon.defaults.end());
  return out;
}

}  // namespace forecourse::studies
