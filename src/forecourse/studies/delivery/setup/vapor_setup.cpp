#include <algorithm>
#include <numeric>
#include <utility>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/network/escape/broken_end.h"
#include "forecourse/parts/vapor/vapor_mixture.h"
#include "forecourse/parts/vapor/vent_valve.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/studies/delivery/setup/setup.h"

namespace forecourse::studies::delivering {
namespace {

using network::Element;
using network::ElementKind;
using network::PartLaws;

constexpr double most = 0.1;                ///< [m3/s]
constexpr double usual_density = 2.0;       ///< [kg/m3] gasoline vapor and air
constexpr double usual_viscosity = 1.8e-5;  ///< [Pa s]
constexpr double usual_outage = 0.03;       ///< share of what is loaded
constexpr double vapor_molar_mass = 0.066;  ///< [kg/mol]
/// [Pa s/m3] of a branch besides its own losses: a tenth of a pascal at 20 L/s. Without it two ullages joined by a wide
/// branch would be told apart by less than the tolerance of either.
constexpr double least_resistance = 5.0;

bool is_gasoline(const site::Site& site, const std::string& product) {
  for (const site::Product& p : site.products) {
    if (p.id.text != product) continue;
    const auto kind = fuel::kind_from_name(p.kind.text);
    return !kind || !fuel::is_diesel(*kind);
  }
  return true;
}

class Vapor {
 public:
  Vapor(const site::Site& site, const Variation& variation, Setup& setup)
      : site_(site), variation_(variation), s_(setup), c_(setup.everything) {}

  void set() {
    set_fluid();
    join_tanks();
    set_truck();
    for (std::size_t t = 0; t < s_.tanks.size() && s_.problem.empty(); ++t) place(t);
    for (std::size_t t = 0; t < s_.tanks.size() && s_.problem.empty(); ++t) set_return(t);
  }

 private:
  // ---- what the vapor is ---------------------------------------------------------------------------

  void set_fluid() {
    const site::Delivery& d = *s_.delivery;
    c_.growth = d.vapor_growth ? d.vapor_growth->likely.si() : 1.0;
    if (!d.vapor_growth)
      note("volumes of vapor per volume of liquid", 1.0, "",
           "the vapor takes no more room than the liquid; enter vapor_growth");
    s_.vapor.density = d.vapor_density ? d.vapor_density->likely.si() : density();
    s_.vapor.dynamic_viscosity = d.vapor_viscosity ? d.vapor_viscosity->likely.si() : usual_viscosity;
    if (!d.vapor_viscosity)
      note("viscosity of the vapor", usual_viscosity, "Pa s", "near that of air; enter vapor_viscosity");
  }

  /// Saturated, where a vapor pressure is entered for the product; else a usual figure.
  double density() {
    const std::string& product = s_.drops.front().product;
    for (const site::Product& p : site_.products) {
      if (p.id.text != product) continue;
      if (const auto saturated = saturated_density(p)) return *saturated;
    }
    const bool light = is_gasoline(site_, product);
    const double value = light ? usual_density : parts::molar_mass_of_air / molar_volume(kelvin_from_fahrenheit(60.0));
    note("density of the vapor", value, "kg/m3",
         light ? "gasoline vapor with air; enter vapor_density" : "that of air; enter vapor_density");
    return value;
  }

  [[nodiscard]] double molar_volume(double temperature) const {
    return parts::molar_gas_constant * temperature / c_.atmospheric;
  }

  std::optional<double> saturated_density(const site::Product& p) {
    if (!p.reid_vapor_pressure && !p.true_vapor_pressure) return std::nullopt;
    fuel::EnteredProperties entered;
    if (p.reid_vapor_pressure) entered.reid_vapor_pressure = p.reid_vapor_pressure->likely.si();
    if (p.true_vapor_pressure) entered.true_vapor_pressure = p.true_vapor_pressure->likely.si();
    const auto& at = p.temperature ? p.temperature : site_.ground_temperature;
    const double temperature = at ? at->likely.si() : kelvin_from_fahrenheit(60.0);
    const auto kind = fuel::kind_from_name(p.kind.text).value_or(fuel::Kind::other);
    const fuel::Property pressure = fuel::properties_of(kind, entered, temperature, 0.0).true_vapor_pressure;
    if (!pressure.determined() || !(pressure.value < c_.atmospheric)) return std::nullopt;
    const double out = parts::vapor_mixture(vapor_molar_mass, pressure.value, temperature, c_.atmospheric).density;
    note("density of the vapor", out, "kg/m3",
         "air saturated with vapor of 66 g/mol at the true vapor pressure; enter vapor_density");
    return out;
  }

  void note(const char* what, double value, const char* unit, const char* source) {
    s_.defaults.push_back({what, value, unit, DefaultStatus::illustrative, source, {}});
  }

  // ---- tanks that breathe together -----------------------------------------------------------------

  /// What can be joined: the tanks, and behind them the shared vents.
  [[nodiscard]] std::size_t index_of(const site::Tank& tank) const {
    return static_cast<std::size_t>(&tank - site_.tanks.data());
  }
  [[nodiscard]] std::size_t index_of(const site::Vent& vent) const {
    const auto known = std::find(outlets_.begin(), outlets_.end(), vent.shared.text);
    return site_.tanks.size() + static_cast<std::size_t>(known - outlets_.begin());
  }
  [[nodiscard]] std::size_t top(std::size_t i) const {
    while (group_[i] != i) i = group_[i];
    return i;
  }

  static bool share_return(const site::Tank& a, const site::Tank& b) {
    return a.vapor_return && b.vapor_return && !a.vapor_return->shared.empty() &&
           a.vapor_return->shared == b.vapor_return->shared;
  }

  /// A tank without a branch breathes right where its shared vent begins.
  void join_tanks() {
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        const bool known = std::find(outlets_.begin(), outlets_.end(), vent.shared.text) != outlets_.end();
        if (!vent.shared.empty() && !known) outlets_.push_back(vent.shared.text);
      }
    }
    group_.resize(site_.tanks.size() + outlets_.size());
    std::iota(group_.begin(), group_.end(), std::size_t{0});
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        if (!vent.shared.empty() && !vent.branch) group_[top(index_of(vent))] = top(index_of(tank));
      }
      for (const site::Tank& other : site_.tanks) {
        if (&other != &tank && share_return(tank, other)) group_[top(index_of(other))] = top(index_of(tank));
      }
    }
  }

  /// Groups that reach each other through branches, from one of them on.
  [[nodiscard]] std::vector<std::size_t> reached_from(std::size_t group) const {
    std::vector<std::size_t> out{group};
    const auto add = [&](std::size_t one) {
      if (std::find(out.begin(), out.end(), one) == out.end()) out.push_back(one);
    };
    for (std::size_t k = 0; k < out.size(); ++k) {
      for (const site::Tank& tank : site_.tanks) {
        for (const site::Vent& vent : tank.vents) {
          if (vent.shared.empty()) continue;
          if (top(index_of(tank)) == out[k]) add(top(index_of(vent)));
          if (top(index_of(vent)) == out[k]) add(top(index_of(tank)));
        }
      }
    }
    return out;
  }

  /// The tanks of a group, in the order of the file.
  [[nodiscard]] std::vector<const site::Tank*> tanks_of(std::size_t group) const {
    std::vector<const site::Tank*> out;
    for (std::size_t i = 0; i < site_.tanks.size(); ++i) {
      if (top(i) == group) out.push_back(&site_.tanks[i]);
    }
    return out;
  }

  // ---- spaces --------------------------------------------------------------------------------------

  struct Placed {
    std::size_t group = 0;
    int space = -1;
    std::string open_because;  ///< why its pressure is not determined
  };

  void place(std::size_t t) {
    const std::size_t group = top(index_of(*s_.tanks[t].tank));
    const auto is_it = [&](const Placed& one) { return one.group == group; };
    if (std::none_of(placed_.begin(), placed_.end(), is_it)) make_spaces(reached_from(group));
    const auto known = std::find_if(placed_.begin(), placed_.end(), is_it);
    s_.open_because.resize(s_.tanks.size());
    c_.tanks[t].space = known->space;
    s_.open_because[t] = known->open_because;
  }

  /// Spaces that reach each other are all determined, or none is.
  void make_spaces(const std::vector<std::size_t>& groups) {
    const std::size_t first = placed_.size();
    const auto before = static_cast<int>(c_.spaces.size());
    for (std::size_t k = 0; k < groups.size(); ++k) placed_.push_back({groups[k], before + static_cast<int>(k), {}});
    Made made;
    const std::string why = ways_between(groups, made);
    if (why.empty()) {
      std::move(made.spaces.begin(), made.spaces.end(), std::back_inserter(c_.spaces));
      std::move(made.told.begin(), made.told.end(), std::back_inserter(s_.spaces));
      std::move(made.vents.begin(), made.vents.end(), std::back_inserter(c_.vents));
      std::move(made.names.begin(), made.names.end(), std::back_inserter(s_.vents));
      std::move(made.branches.begin(), made.branches.end(), std::back_inserter(c_.branches));
      std::move(made.branch_names.begin(), made.branch_names.end(), std::back_inserter(s_.branches));
      return;
    }
    for (std::size_t i = first; i < placed_.size(); ++i) placed_[i] = {placed_[i].group, -1, why};
  }

  /// Spaces and what leads out of them and between them.
  struct Made {
    std::vector<SpaceCase> spaces;
    std::vector<SpaceSetup> told;
    std::vector<VentCase> vents;
    std::vector<std::string> names;
    std::vector<BranchCase> branches;
    std::vector<std::string> branch_names;
    std::vector<std::string> seen;  ///< shared outlets
  };

  [[nodiscard]] int space_of(std::size_t element) const {
    const std::size_t group = top(element);
    return std::find_if(placed_.begin(), placed_.end(), [&](const Placed& one) { return one.group == group; })->space;
  }

  /// \return why the pressures are not determined; empty if they are
  std::string ways_between(const std::vector<std::size_t>& groups, Made& made) {
    std::vector<const site::Tank*> tanks;
    bool listed = false;
    for (const std::size_t group : groups) {
      made.spaces.emplace_back();
      made.told.emplace_back();
      for (const site::Tank* tank : tanks_of(group)) {
        tanks.push_back(tank);
        listed = listed || !tank->vents.empty() || tank->vapor_return;
        made.told.back().tanks.push_back(tank->id.text);
        made.told.back().has_return = made.told.back().has_return || tank->vapor_return;
        made.spaces.back().other_room += other_room(*tank);
      }
      if (group >= site_.tanks.size()) set_joint(group, made);
    }
    if (!listed) return "neither a vent nor a vapor return is listed";
    for (const site::Tank* tank : tanks) {
      if (std::string why = add_vents(*tank, made); !why.empty()) return why;
    }
    return {};
  }

  /// The room in the pipes where branches join: it has no tank.
  void set_joint(std::size_t group, Made& made) {
    constexpr double least = 1e-3;  // [m3]
    const std::string& outlet = outlets_[group - site_.tanks.size()];
    made.told.back().joint = outlet;
    double room = volume_in(outlet_of(outlet).vent->pipe);
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        if (vent.shared.text == outlet) room += volume_in(vent.branch);
      }
    }
    made.spaces.back().other_room = std::max(room, least);
  }

  struct ListedVent {
    const site::Tank* tank = nullptr;
    const site::Vent* vent = nullptr;
  };

  /// Where the pipe or the valve of a shared outlet is entered first; else where it is named first.
  [[nodiscard]] ListedVent outlet_of(const std::string& shared) const {
    ListedVent named;
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        if (vent.shared.text != shared) continue;
        if (vent.pipe || vent.valve) return {&tank, &vent};
        if (named.vent == nullptr) named = {&tank, &vent};
      }
    }
    return named;
  }

  static std::string name_of(const site::Tank& tank, const site::Vent& vent) {
    if (!vent.id.empty()) return vent.id.text;
    if (!vent.shared.empty()) return vent.shared.text;
    const auto number = static_cast<std::size_t>(&vent - tank.vents.data()) + 1;
    return (tank.vents.size() > 1 ? "vent " + std::to_string(number) + " of " : "vent of ") + tank.id.text;
  }

  /// \return why the pressure is not determined; empty if it is
  std::string add_vents(const site::Tank& tank, Made& made) {
    for (const site::Vent& vent : tank.vents) {
      if (vent.branch) add_branch(tank, vent, made);
      std::string why;
      if (vent.shared.empty()) {
        if (!is_shut(tank, vent)) why = add_outlet(tank, vent, name_of(tank, vent), space_of(index_of(tank)), made);
      } else if (std::find(made.seen.begin(), made.seen.end(), vent.shared.text) == made.seen.end()) {
        const std::string& shared = made.seen.emplace_back(vent.shared.text);
        const ListedVent outlet = outlet_of(shared);
        if (!is_outlet_shut(shared))
          why = add_outlet(*outlet.tank, *outlet.vent, shared, space_of(index_of(vent)), made);
      }
      if (!why.empty()) return why;
      if (!s_.problem.empty()) return s_.problem;
    }
    return {};
  }

  std::string add_outlet(const site::Tank& tank, const site::Vent& vent, const std::string& name, int space,
                         Made& made) {
    if (!vent.pipe && !has_valve(vent)) return "the pipe of " + name_of(tank, vent) + " is not entered";
    VentCase one;
    one.space = space;
    set_vent(vent, name, one, made.told[static_cast<std::size_t>(space) - c_.spaces.size()]);
    made.vents.push_back(std::move(one));
    made.names.push_back(name);
    return {};
  }

  void add_branch(const site::Tank& tank, const site::Vent& vent, Made& made) {
    const int from = space_of(index_of(tank)), to = space_of(index_of(vent));
    if (from == to || is_shut(tank, vent)) return;
    const std::string name = "branch of " + tank.id.text + " to " + vent.shared.text;
    std::vector<Diagnostic> problems;
    PartLaws laws(s_.vapor, s_.defaults, problems);
    std::vector<Element> pipe;
    laws.add_pipe(ElementKind::line, name, name, *vent.branch, pipe);
    if (!problems.empty()) return fail(problems.front());
    pipe.push_back({ElementKind::connection, name, parts::QuadraticLaw{least_resistance, 0.0}});
    made.branches.push_back({from, to, path_of(pipe, s_.vapor.density, PartLaws::known_bore(*vent.branch))});
    made.branch_names.push_back(name);
  }

  /// Room above the liquid of a tank that is joined and not filled [m3].
  double other_room(const site::Tank& tank) {
    for (const TankSetup& filled : s_.tanks) {
      if (filled.tank == &tank) return 0.0;
    }
    auto body = body_of(tank);
    if (auto* shape = std::get_if<TankBody>(&body)) {
      const auto& reading = tank.reading;
      if (reading && reading->depth) {
        const auto at = reading->at ? std::optional(reading->at->likely.si()) : std::nullopt;
        return shape->capacity() - shape->volume(shape->level_at(at, reading->depth->likely.si()));
      }
    }
    s_.warnings.push_back("the vapor above the liquid of tank '" + tank.id.text +
                          "', which shares a vent or vapor pipe, is left out: its shape or reading is not entered");
    return 0.0;
  }

  [[nodiscard]] bool is_named(const std::string& id) const {
    return !id.empty() &&
           std::find(variation_.blocked.begin(), variation_.blocked.end(), id) != variation_.blocked.end();
  }
  [[nodiscard]] bool are_outlets_shut() const {
    return variation_.all_blocked || is_without(variation_, DeliveryPart::vent);
  }

  /// What a tank has of a vent for itself: its branch to a shared one, else all of it.
  [[nodiscard]] bool is_shut(const site::Tank& tank, const site::Vent& vent) const {
    return (!vent.branch && are_outlets_shut()) || vent.blocked.value_or(false) || is_named(vent.id.text) ||
           is_named(tank.id.text);
  }

  /// A tank without a branch has nothing of a shared vent for itself: what is blocked there is the outlet.
  [[nodiscard]] bool is_outlet_shut(const std::string& shared) const {
    if (are_outlets_shut() || is_named(shared)) return true;
    for (const site::Tank& tank : site_.tanks) {
      for (const site::Vent& vent : tank.vents) {
        if (vent.shared.text == shared && !vent.branch && is_shut(tank, vent)) return true;
      }
    }
    return false;
  }

  [[nodiscard]] bool has_valve(const site::Vent& vent) const {
    return vent.valve && !is_without(variation_, DeliveryPart::vent_valve);
  }

  /// Pipe and valve of a vent, both ways.
  void set_vent(const site::Vent& vent, const std::string& name, VentCase& made, SpaceSetup& told) {
    std::vector<Diagnostic> problems;
    PartLaws laws(s_.vapor, s_.defaults, problems);
    std::vector<Element> pipe;
    if (vent.pipe) laws.add_pipe(ElementKind::line, name, name, *vent.pipe, pipe);
    if (!problems.empty()) return fail(problems.front());
    const double bore = vent.pipe ? PartLaws::known_bore(*vent.pipe) : 0.0;
    if (!has_valve(vent)) {
      made.out = made.in = path_of(pipe, s_.vapor.density, bore);
      return;
    }
    const auto out = side(vent.valve->opens_at, vent.valve->points, name);
    const auto in = side(vent.valve->vacuum_opens_at, vent.valve->vacuum_points, name);
    if (!s_.problem.empty()) return;
    if (out) made.out = path_behind(*out, pipe, bore);
    if (in) made.in = path_behind(*in, pipe, bore);
    told.at_least = told.at_least || (out && !out->curve);
    if (!out) s_.warnings.push_back("where " + name + " opens is not entered: it is counted as shut outward");
  }

  std::optional<parts::VentValveSide> side(const site::Maybe<PressureDifference>& opens_at,
                                           const std::vector<site::VentPoint>& entered, const std::string& name) {
    if (!opens_at && entered.empty()) return std::nullopt;
    std::vector<parts::CurvePoint> points;
    points.reserve(entered.size());
    for (const site::VentPoint& p : entered) points.push_back({p.flow.si(), p.pressure.si()});
    auto made = parts::vent_valve_side(opens_at ? std::optional(opens_at->likely.si()) : std::nullopt, points);
    if (const auto* fault = std::get_if<parts::CurveFault>(&made)) {
      s_.problem = "points of the valve of " + name + ": " + std::string(parts::text(fault->kind));
      return std::nullopt;
    }
    return std::get<parts::VentValveSide>(std::move(made));
  }

  /// A valve behind a pipe. Without a curve and without a pipe the valve holds its setting: a velocity head of a wide
  /// bore stands for what is not known.
  [[nodiscard]] parts::PathFlow path_behind(const parts::VentValveSide& valve, const std::vector<Element>& pipe,
                                            double bore) const {
    constexpr double wide = 0.1;  // [m]
    const double end = pipe.empty() && !valve.curve ? wide : valve.curve ? 0.0 : bore;
    const double exit = end > 0.0 ? parts::from_loss_coefficient(1.0, end, s_.vapor.density).quadratic : 0.0;
    return parts::PathFlow(
        [&](double flow) {
          parts::Loss sum = loss(valve, flow);
          const parts::Loss out = loss(parts::QuadraticLaw{0.0, exit}, flow);
          sum.pressure_loss += out.pressure_loss;
          sum.slope += out.slope;
          for (const Element& element : pipe) {
            const parts::Loss one = network::loss(element, flow);
            sum.pressure_loss += one.pressure_loss;
            sum.slope += one.slope;
          }
          return sum;
        },
        most);
  }

  // ---- the truck -----------------------------------------------------------------------------------

  void set_truck() {
    const site::Delivery& d = *s_.delivery;
    bool returns = false;
    for (const TankSetup& t : s_.tanks) returns = returns || t.tank->vapor_return.has_value();
    const bool to_ullage =
        d.truck_open_to ? d.truck_open_to->value == site::TruckVent::ullage : d.vapor_hose && returns;
    if (d.truck_open_to && to_ullage && !d.vapor_hose) {
      s_.problem = "the truck breathes to the ullage, but no vapor_hose is entered: add vapor_hose = { length, bore }";
      return;
    }
    c_.truck_closed = to_ullage && !is_without(variation_, DeliveryPart::vapor_return);
    if (c_.truck_closed) c_.truck_room = truck_room();
  }

  double truck_room() {
    double room = 0.0;
    bool all = true;
    std::size_t i = 0;
    for (const site::TruckCompartment& from : s_.delivery->compartments) {
      const bool here = i < s_.drops.size() && (from.id.empty() || from.id.text == s_.drops[i].compartment);
      if (!here) continue;
      const double brought = c_.drops[i++].volume;
      all = all && from.capacity;
      room += from.capacity ? std::max(0.0, from.capacity->likely.si() - brought) : usual_outage * brought;
    }
    if (!all)
      note("vapor space of the truck, share of what is loaded", usual_outage, "",
           "enter the capacity of each compartment");
    return std::max(room, 1e-3);
  }

  void set_return(std::size_t t) {
    const site::Tank& tank = *s_.tanks[t].tank;
    const int index = c_.tanks[t].space;
    if (!c_.truck_closed || index < 0) return;
    SpaceCase& space = c_.spaces[static_cast<std::size_t>(index)];
    if (!space.to_truck.shut() || !tank.vapor_return) return;
    std::vector<Diagnostic> problems;
    PartLaws laws(s_.vapor, s_.defaults, problems);
    ReturnWay way;
    double bore = 0.0;
    const auto add = [&](const std::string& what, const std::optional<site::Pipe>& pipe, std::vector<Element>& to) {
      if (!pipe) return;
      laws.add_pipe(ElementKind::line, what, what, *pipe, to);
      if (const double known = PartLaws::known_bore(*pipe); known > 0.0) bore = known;
    };
    add("vapor pipe of " + tank.id.text, tank.vapor_return->pipe, way.riser);
    if (tank.vapor_return->loss) {
      const double own = bore > 0.0 ? bore : PartLaws::known_bore(*s_.delivery->vapor_hose);
      laws.add_loss(ElementKind::connection, "dry break", "dry break of " + tank.id.text, *tank.vapor_return->loss, own,
                    way.dry_break);
    }
    add("vapor hose", s_.delivery->vapor_hose, way.hose);
    if (!problems.empty()) return fail(problems.front());
    std::vector<Element> path = way.riser;
    path.insert(path.end(), way.dry_break.begin(), way.dry_break.end());
    path.insert(path.end(), way.hose.begin(), way.hose.end());
    space.to_truck = path_of(path, s_.vapor.density, bore);
    s_.spaces[static_cast<std::size_t>(index)].to_truck = std::move(way);
  }

  void fail(const Diagnostic& why) { s_.problem = why.message + ": " + why.hint; }

  const site::Site& site_;
  const Variation& variation_;
  Setup& s_;
  Case& c_;
  std::vector<std::string> outlets_;  ///< shared vents, in the order of the file
  std::vector<std::size_t> group_;
  std::vector<Placed> placed_;
};

}  // namespace

void set_vapor(const site::Site& site, const Variation& variation, Setup& setup) {
  Vapor(site, variation, setup).set();
}

}  // namespace forecourse::studies::delivering
