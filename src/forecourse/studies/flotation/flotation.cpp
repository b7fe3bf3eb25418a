#include "forecourse/studies/flotation/flotation.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "forecourse/base/nearest_word.h"
#include "forecourse/studies/flotation/buried_tank.h"

namespace forecourse::studies {
namespace {

constexpr std::size_t steps = 48;  // of the curves

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

/// All that is told of one tank whose sizes are known.
class Teller {
 public:
  Teller(const BuriedTank& tank, const FlotationOptions& options, const site::Flotation& entered, TankFlotation& out)
      : tank_(tank), options_(options), out_(out) {
    if (entered.strap) {
      out_.has_strap = true;
      out_.strap_load = si(entered.strap->working_load);
      if (entered.strap->count) out_.straps = static_cast<int>(std::lround(entered.strap->count->likely));
    }
    out_.water = tank.water;
    out_.outside_volume = tank.shells.outside.capacity();
    out_.capacity = tank.shells.inside ? tank.shells.inside->capacity() : out_.outside_volume;
    out_.section.crown = tank.crown;
    out_.section.diameter = tank.shells.diameter;
  }

  void tell() {
    const double filled = options_.filled.value_or(0.0);
    out_.worst = state(0.0, 0.0);
    if (out_.water_level) {
      out_.empty = state(*out_.water_level, 0.0);
      if (options_.filled) out_.filled = state(*out_.water_level, filled);
    }
    for (std::size_t i = 0; i <= steps; ++i) {
      const double level = tank_.bottom() * share(i);
      out_.by_level.push_back({level, hold_down_factor(tank_, level, 0.0),
                               options_.filled ? hold_down_factor(tank_, level, filled) : std::nullopt});
    }
    tell_fills();
    out_.lifts_at = level_of(1.0);
    if (out_.factor_wanted) out_.keeps_to = level_of(*out_.factor_wanted);
    tell_open_hole();
  }

 private:
  static double share(std::size_t i) { return static_cast<double>(i) / static_cast<double>(steps); }

  [[nodiscard]] FlotationState state(double level, double filled) const {
    FlotationState out;
    out.water_level = level;
    out.filled = filled;
    out.bodies = bodies_at(tank_, level, filled);
    const std::vector<parts::Body> bodies = laws_of(out.bodies);
    out.buoyant_force = parts::buoyant_force(bodies, tank_.water);
    out.hold_down_force = parts::hold_down_force(bodies, tank_.water);
    out.factors.hold_down = parts::flotation_factor(bodies, tank_.water, parts::FactorKind::hold_down);
    out.factors.total = parts::flotation_factor(bodies, tank_.water, parts::FactorKind::total);
    if (tank_.shells.inside) {
      out.factors.submerged = parts::flotation_factor(bodies, tank_.water, parts::FactorKind::submerged);
    }
    if (!tank_.deadmen.empty()) tell_deadmen(out);
    if (out_.factor_wanted) tell_missing(bodies, out);
    return out;
  }

  void tell_missing(const std::vector<parts::Body>& bodies, FlotationState& out) const {
    out.missing_weight = parts::missing_weight(bodies, tank_.water, *out_.factor_wanted);
    if (!(tank_.contents > 0.0)) return;
    out.missing_contents = std::max(0.0, *out.missing_weight) / tank_.contents;
    out.contents_fit = out.filled + *out.missing_contents <= out_.capacity;
  }

  /// What the deadmen, with the soil over them, must take: what is left by all the rest.
  void tell_deadmen(FlotationState& out) const {
    const std::vector<parts::Body> rest = laws_of(bodies_at(tank_, out.water_level, out.filled, false));
    out.without_deadmen = parts::flotation_factor(rest, tank_.water, parts::FactorKind::hold_down);
    out.deadman_pull = std::max(0.0, parts::missing_weight(rest, tank_.water, out_.factor_wanted.value_or(1.0)));
    if (out_.straps) out.strap_pull = *out.deadman_pull / static_cast<double>(*out_.straps);
  }

  void tell_fills() {
    if (!(tank_.contents > 0.0)) return;
    out_.by_fill_level = out_.water_level.value_or(0.0);
    for (std::size_t i = 0; i <= steps; ++i) {
      const double filled = out_.capacity * share(i);
      const auto factor = hold_down_factor(tank_, out_.by_fill_level, filled);
      if (factor) out_.by_fill.push_back({filled, *factor});
    }
  }

  /// Highest level of the water at which the empty tank still has the factor: it falls as the water rises, up to the
  /// crown at least; empty where it keeps it with water at grade.
  [[nodiscard]] std::optional<double> level_of(double factor) const {
    const auto has = [&](double level) {
      const auto at = hold_down_factor(tank_, level, 0.0);
      return !at || *at >= factor;
    };
    double wet = -1.0, dry = tank_.bottom();  // the deepest level without the factor, and one below it
    for (std::size_t i = 0; i <= steps && wet < 0.0; ++i) {
      const double level = tank_.bottom() * (1.0 - share(i));
      if (!has(level)) wet = level;
      if (wet < 0.0) dry = level;
    }
    if (wet < 0.0) return std::nullopt;
    constexpr int halvings = 50;
    for (int i = 0; i < halvings; ++i) {
      const double middle = 0.5 * (wet + dry);
      (has(middle) ? dry : wet) = middle;
    }
    return dry;
  }

  /// The tank by itself in water.
  void tell_open_hole() {
    const double lift = tank_.water * out_.outside_volume;
    if (tank_.weight < lift) out_.open_hole.lifts_at = tank_.shells.outside.level(tank_.weight / tank_.water);
    out_.open_hole.ballast_weight = std::max(0.0, lift - tank_.weight);
    if (!(tank_.contents > 0.0)) return;
    out_.open_hole.ballast = out_.open_hole.ballast_weight / tank_.contents;
    out_.open_hole.ballast_fit = *out_.open_hole.ballast <= out_.capacity;
  }

  const BuriedTank& tank_;
  const FlotationOptions& options_;
  TankFlotation& out_;
};

std::vector<std::string> always_assumed() {
  return {"The water stands still, at the level entered, all around the tank: hydrostatic lift, no flow.",
          "No friction and no cohesion of the soil, no weight of pavement, vehicles or piping that is not entered.",
          "The backfill is placed and drained as its unit weight says, and is not washed out.",
          "The tank lies level; the planes of the soil stand over its length, the ends are upright.",
          "Straps, their fittings and the deadmen act together, and are sound.",
          "Of a level of the water with a spread the highest counts, of other spreads what is likely."};
}

TankFlotation tell(const site::Site& site, const site::Tank& tank, const FlotationOptions& options,
                   FlotationResult& result) {
  const site::Flotation& entered = *tank.flotation;
  TankFlotation out;
  out.tank = tank.id.text;
  out.where = entered.where;
  if (entered.water_level) out.water_level = entered.water_level->low.si();
  if (options.water_level) out.water_level = options.water_level;
  out.factor_wanted = options.factor ? options.factor : si(entered.factor);
  if (!options.factor && entered.factor) out.factor_where = entered.factor->where;
  out.assumed = always_assumed();
  const auto buried = buried_tank(site, tank, out, result.defaults);
  if (!buried) return out;
  Teller(*buried, options, entered, out).tell();
  if (options.filled && *options.filled > out.capacity) {
    result.errors.push_back({Severity::error,
                             "tank '" + tank.id.text + "' does not hold what it is to be filled with",
                             entered.where,
                             "give less with --filled",
                             {}});
  }
  return out;
}

const site::Tank* tank_of(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.tanks.begin(), site.tanks.end(), [&](const site::Tank& tank) { return tank.id.text == id; });
  return found == site.tanks.end() ? nullptr : &*found;
}

/// What is wrong with the tank that is asked for.
std::optional<Diagnostic> wrong_tank(const site::Site& site, const std::string& id) {
  if (id.empty()) return std::nullopt;
  const site::Tank* tank = tank_of(site, id);
  if (tank != nullptr && tank->flotation) return std::nullopt;
  if (tank != nullptr) {
    return Diagnostic{Severity::error,
                      "of tank '" + id + "' nothing is entered under flotation",
                      tank->where,
                      "add [tank.flotation] with empty_mass, cover, backfill and water_level",
                      {}};
  }
  std::vector<std::string> known;
  for (const site::Tank& one : site.tanks) known.push_back(one.id.text);
  const auto near = nearest_word(id, std::span<const std::string>(known));
  return Diagnostic{Severity::error,
                    "there is no tank '" + id + "'",
                    std::nullopt,
                    near ? "did you mean '" + std::string(*near) + "'?" : "name a tank of the site file",
                    {}};
}

}  // namespace

FlotationResult study_flotation(const site::Site& site, const FlotationOptions& options, const Context& context) {
  static_cast<void>(context);
  FlotationResult result;
  result.options = options;
  result.version = FORECOURSE_VERSION;
  if (auto wrong = wrong_tank(site, options.tank)) {
    result.errors.push_back(std::move(*wrong));
    return result;
  }
  for (const site::Tank& tank : site.tanks) {
    if (!tank.flotation || (!options.tank.empty() && tank.id.text != options.tank)) continue;
    result.tanks.push_back(tell(site, tank, options, result));
  }
  return result;
}

}  // namespace forecourse::studies
