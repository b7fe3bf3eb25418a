#include "forecourse/network/pack/stretches.h"

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/fuel/properties.h"
#include "forecourse/network/pack/line_pack.h"
#include "forecourse/site/places.h"
#include "forecourse/site/shelf.h"

namespace forecourse::network {
namespace {

const site::Pipe* given(const std::optional<site::Pipe>& pipe) { return pipe ? &*pipe : nullptr; }

const site::Pipe* hose_pipe(const site::Site& site, const Element& element) {
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) {
      if (hose.id.text == element.owner) return given(element.kind == ElementKind::whip_hose ? hose.whip : hose.curb);
    }
  }
  return nullptr;
}

const site::Pipe* riser_pipe(const site::Site& site, const Element& element) {
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Inlet& inlet : d.inlets) {
      if (site::place_name(d, inlet) == element.owner) return given(inlet.riser);
    }
  }
  return nullptr;
}

/// The pipe of the site that an element was made from.
const site::Pipe* pipe_of(const site::Site& site, const Element& element) {
  if (element.kind == ElementKind::line) {
    for (const site::Line& line : site.lines) {
      if (line.id.text == element.owner) return &line.pipe;
    }
  }
  if (element.kind == ElementKind::leg) {
    for (const site::Pump& pump : site.pumps) {
      if (pump.id.text == element.owner) return given(pump.leg);
    }
  }
  if (element.kind == ElementKind::riser) return riser_pipe(site, element);
  return hose_pipe(site, element);
}

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

Conduit conduit_of(const Element& element, const site::Pipe* pipe) {
  Conduit out{element.length, element.bore, {}, {}, {}};
  if (pipe == nullptr) return out;
  const site::ShelfPipe* shelf = site::find_pipe(pipe->nominal.text);
  out.wall = si(pipe->wall);
  if (!out.wall && shelf != nullptr && shelf->status == site::ShelfStatus::published) out.wall = shelf->wall;
  out.modulus = si(pipe->modulus);
  out.wave_speed = si(pipe->wave_speed);
  return out;
}

/// Isothermal, entered or by a published method from entered values; empty if neither.
std::optional<double> bulk_modulus_of(const site::Site& site, const PipingSystem& system) {
  const auto product = std::find_if(site.products.begin(), site.products.end(),
                                    [&](const site::Product& p) { return p.id.text == system.product; });
  if (product == site.products.end()) return std::nullopt;
  if (product->isothermal_bulk_modulus) return si(product->isothermal_bulk_modulus);
  if (std::isnan(system.fluid.temperature)) return std::nullopt;
  fuel::EnteredProperties entered;
  entered.density = si(product->density);
  entered.density_temperature = si(product->density_at);
  if (product->gravity) {
    entered.density = si(product->gravity);
    entered.density_temperature = kelvin_from_fahrenheit(60.0);
  }
  const fuel::Kind kind = fuel::kind_from_name(product->kind.text).value_or(fuel::Kind::other);
  const fuel::Property found =
      fuel::properties_of(kind, entered, system.fluid.temperature, 0.0).isothermal_bulk_modulus;
  const bool firm = found.determined() && found.status <= fuel::PropertyStatus::approximation;
  return firm ? std::optional(found.value) : std::nullopt;
}

std::string missing(const Conduit& conduit, bool has_bulk_modulus) {
  std::string keys;
  const auto add = [&](bool known, const char* key) {
    if (!known) keys += (keys.empty() ? "" : ", ") + std::string(key);
  };
  add(has_bulk_modulus, "isothermal_bulk_modulus of the product");
  add(conduit.wall.has_value(), "wall");
  add(conduit.modulus.has_value(), "modulus");
  return "enter " + keys + ", or wave_speed";
}

}  // namespace

std::vector<Stretch> stretches_of(const site::Site& site, const PipingSystem& system) {
  std::vector<Stretch> out;
  const std::optional<double> bulk_modulus = bulk_modulus_of(site, system);
  for (const Run& run : system.runs) {
    for (const Element& element : run.elements) {
      if (element.length <= 0.0 || element.bore <= 0.0) continue;
      const Conduit conduit = conduit_of(element, pipe_of(site, element));
      Stretch stretch{element.owner, word(element.kind), volume_of(conduit), {}, {}, false};
      stretch.compliance = compliance_of(conduit, system.fluid.density, bulk_modulus);
      if (!stretch.compliance) stretch.reason = missing(conduit, bulk_modulus.has_value());
      stretch.behind_dispenser = run.kind == RunKind::hose;
      out.push_back(std::move(stretch));
    }
  }
  return out;
}

}  // namespace forecourse::network
