#include "forecourse/studies/tank/siphon.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/network/fluid.h"
#include "forecourse/network/gathered_run.h"
#include "forecourse/network/part_laws.h"
#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/parts/inverse.h"
#include "forecourse/parts/tank/equalizing.h"

namespace forecourse::studies {
namespace {

constexpr double day = 86400.0;
constexpr double pump_runs = 600.0;        // [s] of each draw told; illustrative
constexpr double entrance_and_exit = 1.5;  // velocity heads, where no loss is entered; common practice, no source

const site::Tank* tank_of(const site::Site& site, const std::string& id) {
  const auto found = std::find_if(site.tanks.begin(), site.tanks.end(), [&](const auto& t) { return t.id.text == id; });
  return found == site.tanks.end() ? nullptr : &*found;
}

/// One tank with its volume against elevation.
struct Member {
  const site::Tank* tank = nullptr;
  std::optional<network::TankInside> inside;
  double datum = 0.0;  ///< [m] elevation of its lowest inside point

  [[nodiscard]] double surface(double volume) const { return datum + inside->volume.level(volume); }
  [[nodiscard]] double volume(double surface) const { return inside->volume.volume(surface - datum); }
};

class Group {
 public:
  Group(const site::Site& site, std::vector<std::string> ids, const std::vector<double>& draws)
      : site_(site), draws_(draws) {
    out_.ids = std::move(ids);
  }

  SiphonTold tell() && {
    if (set_members() && set_bars() && set_now()) {
      tell_course();
      tell_draws();
      tell_loss();
    }
    return std::move(out_);
  }

 private:
  bool fail(std::string why) {
    out_.problem = std::move(why);
    return false;
  }

  bool set_members() {
    for (const std::string& id : out_.ids) {
      Member m;
      m.tank = tank_of(site_, id);
      auto inside = network::tank_inside(*m.tank);
      if (auto* why = std::get_if<std::string>(&inside)) return fail(*why);
      m.inside = std::get<network::TankInside>(std::move(inside));
      if (!m.tank->bottom_elevation)
        return fail("how tank '" + id + "' lies against the others is not entered: add bottom_elevation = ...");
      m.datum = m.tank->bottom_elevation->likely.si() - m.inside->volume.range_of(m.inside->place(0.0)).bottom;
      members_.push_back(std::move(m));
    }
    return true;
  }

  [[nodiscard]] std::size_t index(const std::string& id) const {
    return static_cast<std::size_t>(std::find(out_.ids.begin(), out_.ids.end(), id) - out_.ids.begin());
  }

  /// The law of a bar as flow against the difference of surfaces.
  bool add_bar(const site::Tank& tank, std::size_t from, std::size_t to) {
    const std::string name = "the siphon of tank '" + tank.id.text + "'";
    if (!tank.siphon || !tank.siphon->pipe)
      return fail(
          "the bar between the tanks is not entered: siphon = { pipe = { length = ..., bore = ... } } in tank '" +
          tank.id.text + "'");
    std::vector<Diagnostic> problems;
    const auto fluid = network::flowing_fluid(site_, tank.product.text, out_.defaults, problems);
    if (!fluid) return fail(problems.empty() ? "the product cannot be computed" : problems.front().message);
    network::PartLaws laws(*fluid, out_.defaults, problems);
    network::Run run;
    const site::Pipe& pipe = *tank.siphon->pipe;
    laws.add_pipe(network::ElementKind::line, tank.id.text, name, pipe, run.elements);
    const double bore = network::PartLaws::known_bore(pipe);
    if (!problems.empty() || !(bore > 0.0) || !pipe.length)
      return fail(problems.empty() ? name + " lacks its length or its bore" : problems.front().message);
    if (!pipe.loss) {
      const double area = 0.25 * std::numbers::pi * bore * bore;
      network::Element ends;
      ends.owner = tank.id.text;
      ends.law = parts::QuadraticLaw{0.0, entrance_and_exit * 0.5 * fluid->density / (area * area)};
      run.elements.push_back(ends);
      DefaultUsed used;
      used.what = "loss of " + name + ", entrance and exit";
      used.value = entrance_and_exit;
      used.status = DefaultStatus::common_practice;
      used.source = "common practice, no source";
      used.system = tank.id.text;
      out_.defaults.push_back(std::move(used));
    }
    density_ = fluid->density;
    const double weight = fluid->density * standard_gravity;
    joined_.bars.push_back({from, to, [law = network::gather(run), weight](double difference) {
                              return parts::flow_anywhere(
                                  [&](double flow) {
                                    const auto told = law.loss(flow);
                                    return parts::Loss{told.loss, told.slope};
                                  },
                                  weight * difference);
                            }});
    out_.manifold = out_.manifold || tank.siphon->kind.text == "manifold";
    if (tank.siphon->end_above_bottom) {
      for (const std::size_t end : {from, to}) {
        const double at =
            members_[end].tank->bottom_elevation->likely.si() + tank.siphon->end_above_bottom->likely.si();
        out_.lost_at = std::max(out_.lost_at.value_or(at), at);
      }
    }
    if (tank.siphon->crest_elevation) crest_ = tank.siphon->crest_elevation->likely.si();
    return true;
  }

  bool set_bars() {
    for (const Member& m : members_) {
      for (const site::Name& other : m.tank->siphoned_with) {
        const std::size_t from = index(m.tank->id.text), to = index(other.text);
        const bool told = std::any_of(joined_.bars.begin(), joined_.bars.end(), [&](const parts::JoinedTanks::Bar& b) {
          return (b.from == from && b.to == to) || (b.from == to && b.to == from);
        });
        if (told || to >= members_.size()) continue;
        const site::Tank& owner = m.tank->siphon ? *m.tank : *members_[to].tank;
        if (!add_bar(owner, from, to)) return false;
      }
    }
    for (const Member& m : members_) joined_.tanks.push_back({[&m](double volume) { return m.surface(volume); }, 0.0});
    return true;
  }

  bool set_now() {
    std::vector<std::optional<double>> levels;
    std::optional<double> any;
    for (const Member& m : members_) {
      const auto own = network::tank_level(site_, *m.tank, nullptr, *m.inside);
      levels.push_back(own && m.tank->reading && m.tank->reading->depth ? std::optional(*own + m.datum) : std::nullopt);
      if (own && !any) any = *own + m.datum;
    }
    if (!any) return fail("how much is in any of them is not entered: add reading = { depth = ... }");
    for (std::size_t i = 0; i < members_.size(); ++i) {
      const Member& m = members_[i];
      if (!levels[i])
        out_.remarks.push_back("tank '" + m.tank->id.text + "' has no reading: taken at the level of the others");
      SiphonedTank told;
      told.id = m.tank->id.text;
      told.surface = levels[i].value_or(*any);
      told.volume = m.volume(told.surface);
      told.has_gauge = m.tank->gauge.has_value();
      told.has_pump =
          std::any_of(site_.pumps.begin(), site_.pumps.end(), [&](const auto& p) { return p.tank == m.tank->id; });
      if (told.has_gauge && out_.gauge.empty()) out_.gauge = told.id;
      out_.tanks.push_back(std::move(told));
    }
    const double total = whole();
    out_.equal_surface = surface_of_whole(total);
    for (std::size_t i = 0; i < members_.size(); ++i)
      out_.tanks[i].equal_volume = members_[i].volume(out_.equal_surface);
    return true;
  }

  [[nodiscard]] double whole() const {
    double total = 0.0;
    for (const SiphonedTank& t : out_.tanks) total += t.volume;
    return total;
  }
  [[nodiscard]] double whole_at(double surface) const {
    double total = 0.0;
    for (const Member& m : members_) total += m.volume(surface);
    return total;
  }
  [[nodiscard]] double surface_of_whole(double total) const {
    double low = members_.front().datum, high = low;
    for (const Member& m : members_) {
      low = std::min(low, m.datum);
      high = std::max(high, m.datum + m.inside->volume.full_level());
    }
    for (int i = 0; i < 100; ++i) (whole_at(0.5 * (low + high)) < total ? low : high) = 0.5 * (low + high);
    return 0.5 * (low + high);
  }

  static double apart(const parts::JoinedMoment& moment) {
    const auto [low, high] = std::minmax_element(moment.surfaces.begin(), moment.surfaces.end());
    return *high - *low;
  }

  void tell_course() {
    std::vector<double> volumes;
    for (const SiphonedTank& t : out_.tanks) volumes.push_back(t.volume);
    const auto closed = [](const parts::JoinedMoment& m) { return apart(m) < close_levels(); };
    const auto rough = parts::joined_course(joined_, volumes, day, 1440, closed);
    if (closed(rough.front())) {
      out_.equal_after = 0.0;
      return;
    }
    const double end = rough.back().time;
    const auto fine = parts::joined_course(joined_, volumes, end, 120);
    for (const parts::JoinedMoment& m : fine) {
      out_.course.push_back({m.time, m.surfaces, m.volumes});
      if (!out_.equal_after && closed(m)) out_.equal_after = m.time;
    }
  }

  void tell_draws() {
    const auto pump = std::find_if(out_.tanks.begin(), out_.tanks.end(), [](const auto& t) { return t.has_pump; });
    if (pump == out_.tanks.end()) {
      out_.remarks.emplace_back("no pump draws from them");
      return;
    }
    const auto at = static_cast<std::size_t>(pump - out_.tanks.begin());
    out_.draw_time = pump_runs;
    for (const double draw : draws_) out_.draws.push_back(tell_draw(at, draw));
  }

  [[nodiscard]] SiphonDraw tell_draw(std::size_t pump, double draw) const {
    SiphonDraw out;
    out.draw = draw;
    parts::JoinedTanks drawn = joined_;
    drawn.tanks[pump].draw = draw;
    std::vector<double> volumes;
    for (const SiphonedTank& t : out_.tanks) volumes.push_back(t.equal_volume);
    const parts::JoinedMoment last = parts::joined_course(drawn, volumes, pump_runs, 10).back();
    const auto flows = parts::bar_flows(drawn, last);
    for (std::size_t i = 0; i < flows.size(); ++i) {
      if (drawn.bars[i].to == pump) out.bar_flow += flows[i];
      if (drawn.bars[i].from == pump) out.bar_flow -= flows[i];
    }
    double highest = last.surfaces[pump], total = 0.0;
    for (const double surface : last.surfaces) highest = std::max(highest, surface);
    for (const double volume : last.volumes) total += volume;
    out.difference = highest - last.surfaces[pump];
    if (!out_.gauge.empty()) out.gauge_error = whole_at(last.surfaces[index(out_.gauge)]) - total;
    const auto closed = [](const parts::JoinedMoment& m) { return apart(m) < close_levels(); };
    if (closed(last)) {
      out.recovers = 0.0;
      return out;
    }
    const auto rest = parts::joined_course(joined_, last.volumes, day, 8640, closed);
    if (closed(rest.back())) out.recovers = rest.back().time;
    return out;
  }

  void tell_loss() {
    if (out_.manifold) {
      out_.remarks.emplace_back("a manifold between the bottoms has nothing to lose: it fills itself");
      return;
    }
    if (!out_.lost_at) {
      out_.remarks.emplace_back("at what level air enters the siphon is not determined: enter end_above_bottom");
      return;
    }
    out_.lost_volume = whole_at(*out_.lost_at);
    for (std::size_t i = 0; i < members_.size(); ++i) {
      if (!out_.tanks[i].has_pump) out_.tanks[i].stranded = members_[i].volume(*out_.lost_at);
    }
    if (!crest_) return;
    out_.crest_lift = *crest_ - *out_.lost_at;
    constexpr double standard_atmosphere = 101325.0;  // [Pa]
    if (!site_.atmospheric_pressure) {
      DefaultUsed used;
      used.what = "atmospheric pressure over the siphon";
      used.value = standard_atmosphere;
      used.unit = "Pa";
      used.status = DefaultStatus::common_practice;
      used.source = "common practice, no source";
      used.system = out_.ids.front();
      out_.defaults.push_back(std::move(used));
    }
    const double air = site_.atmospheric_pressure ? site_.atmospheric_pressure->likely.si() : standard_atmosphere;
    out_.crest_pressure = air - density_ * standard_gravity * *out_.crest_lift;
    for (const site::Product& product : site_.products) {
      if (product.id == members_.front().tank->product && product.true_vapor_pressure)
        out_.vapor_pressure = product.true_vapor_pressure->likely.si();
    }
    if (!out_.vapor_pressure)
      out_.remarks.emplace_back(
          "whether the siphon parts at its crest is not determined: enter true_vapor_pressure of the product");
  }

  const site::Site& site_;
  const std::vector<double>& draws_;
  std::vector<Member> members_;
  parts::JoinedTanks joined_;
  std::optional<double> crest_;
  double density_ = 0.0;
  SiphonTold out_;
};

/// Tanks that hang together by siphons, in the order of the file.
std::vector<std::vector<std::string>> groups(const site::Site& site) {
  std::vector<std::vector<std::string>> out;
  std::vector<std::string> seen;
  const auto knows = [](const std::vector<std::string>& list, const std::string& id) {
    return std::find(list.begin(), list.end(), id) != list.end();
  };
  const auto joined = [](const site::Tank& a, const site::Tank& b) {
    const auto names = [](const site::Tank& x, const site::Tank& y) {
      return std::find(x.siphoned_with.begin(), x.siphoned_with.end(), y.id) != x.siphoned_with.end();
    };
    return names(a, b) || names(b, a);
  };
  for (const site::Tank& first : site.tanks) {
    if (knows(seen, first.id.text)) continue;
    std::vector<std::string> group{first.id.text};
    for (std::size_t i = 0; i < group.size(); ++i) {
      for (const site::Tank& other : site.tanks) {
        if (!knows(group, other.id.text) && joined(*tank_of(site, group[i]), other)) group.push_back(other.id.text);
      }
    }
    seen.insert(seen.end(), group.begin(), group.end());
    if (group.size() > 1) out.push_back(std::move(group));
  }
  return out;
}

}  // namespace

double close_levels() { return to_si(0.125, "in"); }

std::vector<SiphonTold> siphons(const site::Site& site, const std::vector<double>& draws) {
  std::vector<SiphonTold> out;
  for (auto& ids : groups(site)) out.push_back(Group(site, std::move(ids), draws).tell());
  return out;
}

}  // namespace forecourse::studies
