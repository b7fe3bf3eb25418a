#include "forecourse/studies/line_test/line_inputs.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/network/pack/stretches.h"

namespace forecourse::studies {
namespace {

/// Ground to try with. \source illustrative, no source
struct GroundKind {
  std::string_view name;
  double conductivity;  ///< [W/(m K)]
  double heat;          ///< [J/(m3 K)]
};
constexpr std::array<GroundKind, 2> grounds{{{"damp-sand", 1.5, 2.0e6}, {"dry-sand", 0.3, 1.4e6}}};

/// Specific heat of gasoline and diesel [J/(kg K)]. \source common practice, no source
constexpr double usual_specific_heat = 2090.0;

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

const site::Product* product_of(const LineInputs& in) {
  const auto& all = in.site.products;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const auto& p) { return p.id.text == in.system.product; });
  return found == all.end() ? nullptr : &*found;
}

void add_default(const LineInputs& in, std::string what, double value, const char* unit, DefaultStatus status,
                 std::string source) {
  in.defaults.push_back({std::move(what), value, unit, status, std::move(source), in.system.id, false});
}

bool find_warmer(const LineInputs& in, const site::Product* product, ThermalTold& told) {
  if (in.options.warmer) {
    told.warmer = *in.options.warmer;
    told.warmer_by = "as asked";
    return true;
  }
  auto fuel = in.options.fuel_temperature;
  if (!fuel && product != nullptr) fuel = si(product->temperature);
  auto ground = in.options.ground_temperature;
  if (!ground) ground = si(in.site.ground_temperature);
  if (!fuel || !ground) {
    told.problem =
        std::string("how much warmer the fuel is than the ground is not known: enter temperature of product ") +
        in.system.product + " and ground_temperature of the site, or give --warmer";
    return false;
  }
  told.warmer = {*fuel - *ground, *fuel - *ground};
  told.warmer_by = "temperatures of fuel and ground";
  return true;
}

bool find_expansion(const LineInputs& in, const site::Product* product, ThermalTold& told) {
  told.line_expansion = in.options.line_expansion.value_or(0.0);
  if (!in.options.line_expansion) {
    add_default(in, "expansion of the line's volume", 0.0, "1/K", DefaultStatus::common_practice,
                "left out: the fuel's is some thirty times that of steel; give --line-expansion");
  }
  if (in.options.expansion) {
    told.fuel_expansion = *in.options.expansion;
    return true;
  }
  if (product != nullptr && product->expansion) {
    told.fuel_expansion = product->expansion->likely.si();
    return true;
  }
  if (product == nullptr || std::isnan(in.system.fluid.temperature)) {
    told.problem = "the expansion of the fuel is not known: enter expansion of the product, or give --expansion";
    return false;
  }
  fuel::EnteredProperties entered;
  entered.density = in.system.fluid.density;
  const fuel::Kind kind = fuel::kind_from_name(product->kind.text).value_or(fuel::Kind::other);
  const fuel::Property found = fuel::properties_of(kind, entered, in.system.fluid.temperature, 0.0).thermal_expansion;
  if (!found.determined()) {
    told.problem = "the expansion of the fuel is not known: enter expansion of product " + in.system.product;
    return false;
  }
  told.fuel_expansion = found.value;
  const bool firm = found.status <= fuel::PropertyStatus::approximation;
  add_default(in, "expansion of " + in.system.product, found.value, "1/K",
              firm ? DefaultStatus::computed : DefaultStatus::illustrative, found.source);
  return true;
}

/// Conductivity and heat of the ground; a pair that was not entered is of a kind of ground.
GroundKind ground_of(const LineInputs& in) {
  const std::string_view name = in.options.ground.empty() ? "dry-sand" : std::string_view(in.options.ground);
  GroundKind kind = *std::find_if(grounds.begin(), grounds.end(), [&](const GroundKind& g) { return g.name == name; });
  const std::string source = std::string(name) + ": give --ground-conductivity and --ground-heat, or --time-constant" +
                             (in.options.ground.empty() ? "; the slower of two kinds" : "");
  if (!in.options.ground_conductivity) {
    add_default(in, "conductivity of the ground", kind.conductivity, "W/m.K", DefaultStatus::illustrative, source);
  }
  if (!in.options.ground_heat) {
    add_default(in, "heat of the ground", kind.heat, "J/m3.K", DefaultStatus::illustrative, source);
  }
  kind.conductivity = in.options.ground_conductivity.value_or(kind.conductivity);
  kind.heat = in.options.ground_heat.value_or(kind.heat);
  return kind;
}

/// Radius of the line, its stretches taken by their volume [m].
double mean_radius(const network::PipingSystem& system) {
  double volume = 0.0;
  double weighted = 0.0;
  for (const network::Run& run : system.runs) {
    if (run.kind == network::RunKind::hose) continue;
    for (const network::Element& element : run.elements) {
      const double part = element.bore * element.bore * element.length;
      volume += part;
      weighted += part * 0.5 * element.bore;
    }
  }
  return weighted / volume;
}

}  // namespace

std::optional<parts::CoolingLaw> cooling_law(const LineInputs& in, ThermalTold& told) {
  const site::Product* product = product_of(in);
  if (!find_warmer(in, product, told) || !find_expansion(in, product, told)) return std::nullopt;
  told.firm = true;
  if (in.options.time_constant) {
    told.by_time_constant = true;
    told.time_constant = *in.options.time_constant;
    return parts::SteadyCooling{told.time_constant};
  }
  const GroundKind ground = ground_of(in);
  told.firm = in.options.ground_conductivity && in.options.ground_heat;
  double specific_heat = usual_specific_heat;
  if (product != nullptr && product->specific_heat) {
    specific_heat = product->specific_heat->likely.si();
  } else {
    add_default(in, "specific heat of " + in.system.product, specific_heat, "J/kg.K", DefaultStatus::common_practice,
                "enter specific_heat of the product");
  }
  const parts::CoolingLaw law = parts::SoilCooling{mean_radius(in.system), ground.conductivity, ground.heat,
                                                   in.system.fluid.density * specific_heat};
  told.time_constant = parts::time_until_remaining(law, std::exp(-1.0));
  return law;
}

void tell_conduit(const LineInputs& in, LineTest& line) {
  double compliance = 0.0;
  for (const network::Stretch& stretch : network::stretches_of(in.site, in.system)) {
    if (stretch.behind_dispenser) continue;
    line.volume += stretch.volume;
    compliance += stretch.compliance.value_or(0.0);
    if (!stretch.compliance && line.compliance_reason.empty()) {
      line.compliance_reason = stretch.part + " " + stretch.id + ": " + stretch.reason;
    }
  }
  if (line.compliance_reason.empty()) line.compliance = compliance;
  if (in.options.volume) {
    if (line.compliance && line.volume > 0.0) *line.compliance *= *in.options.volume / line.volume;
    line.volume = *in.options.volume;
  }
  if (in.options.compliance) {
    line.compliance = in.options.compliance;
    line.compliance_reason.clear();
  }
}

double thermal_rate(const LineTest& line, double warmer, const parts::CoolingLaw& law, double time) {
  const double shrinks = line.thermal.fuel_expansion - line.thermal.line_expansion;
  const double most = line.volume * shrinks * warmer;
  return most == 0.0 ? 0.0 : most * parts::fading(law, time);
}

double thermal_wait(const LineTest& line, double warmer, const parts::CoolingLaw& law, double rate) {
  const double shrinks = line.thermal.fuel_expansion - line.thermal.line_expansion;
  const double most = std::abs(line.volume * shrinks * warmer);
  return most > 0.0 ? parts::time_until_fading(law, rate / most) : 0.0;
}

}  // namespace forecourse::studies
