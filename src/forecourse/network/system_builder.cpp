#include "forecourse/network/system_builder.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "forecourse/base/constants.h"
#include "forecourse/network/control_builder.h"
#include "forecourse/site/drawn_length.h"
#include "forecourse/site/liquid_level.h"
#include "forecourse/site/places.h"

namespace forecourse::network {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

double share_of(const site::Hose& hose, const std::string& product) {
  if (hose.blend.empty()) return hose.product.text == product ? 1.0 : 0.0;
  for (const site::BlendShare& share : hose.blend) {
    if (share.product.text == product) return share.share.likely.si();
  }
  return 0.0;
}

bool is_entered(const std::optional<site::Pipe>& pipe) { return pipe && pipe->loss; }

}  // namespace

double PipingSystem::weight_of(double elevation) const { return fluid.density * standard_gravity * elevation; }

SystemBuilder::SystemBuilder(const site::Site& site, const PlaceGroup& group, std::vector<DefaultUsed>& defaults,
                             std::vector<Diagnostic>& warnings)
    : site_(site), group_(group), defaults_(defaults), warnings_(warnings) {
  system_.product = group.product;
}

PipingSystem SystemBuilder::build(std::string id) {
  system_.id = std::move(id);
  const auto fluid = flowing_fluid(site_, system_.product, defaults_, system_.problems);
  if (!fluid) return std::move(system_);
  system_.fluid = *fluid;
  find_datum();
  add_places();
  for (const site::Pump* pump : group_.pumps) add_pump(*pump);
  for (const site::Line* line : group_.lines) add_line(*line);
  for (const InletAt& at : group_.inlets) add_inlet(at);
  if (system_.problems.empty()) {
    make_graph();
    add_control(site_, system_, defaults_, warnings_);
  }
  return std::move(system_);
}

// ---- elevations ---------------------------------------------------------------------------------------

std::vector<const site::Hose*> SystemBuilder::all_hoses() const {
  std::vector<const site::Hose*> hoses;
  for (const InletAt& at : group_.inlets) {
    for (const site::Hose& hose : at.dispenser->hoses) {
      if (share_of(hose, at.inlet->product.text) > 0.0) hoses.push_back(&hose);
    }
  }
  return hoses;
}

/// Where no liquid level is known but every hose has its lift, heights are counted from the liquid.
void SystemBuilder::find_datum() {
  bool any_surface = false;
  lowest_surface_ = infinite;
  for (const site::Pump* pump : group_.pumps) {
    if (const auto level = site::liquid_level(site_, pump->tank.text)) {
      any_surface = true;
      lowest_surface_ = std::min(lowest_surface_, *level);
    }
  }
  const std::vector<const site::Hose*> hoses = all_hoses();
  const bool all_lifts =
      std::all_of(hoses.begin(), hoses.end(), [](const site::Hose* h) { return h->lift.has_value(); });
  lifts_only_ = !any_surface && all_lifts;
  system_.elevations_known = !lifts_only_;
  if (lifts_only_) lowest_surface_ = 0.0;
}

std::optional<double> SystemBuilder::outlet_elevation(const site::Hose& hose) {
  if (hose.outlet_elevation && !lifts_only_) return hose.outlet_elevation->likely.si();
  if (hose.lift && std::isfinite(lowest_surface_)) return lowest_surface_ + hose.lift->likely.si();
  return std::nullopt;
}

// ---- places and runs ------------------------------------------------------------------------------------

int SystemBuilder::add_place(const std::string& id, const site::Maybe<Length>& elevation) {
  const int node = static_cast<int>(system_.places.size());
  system_.places.push_back({id, elevation ? elevation->likely.si() : 0.0, elevation.has_value()});
  node_of_place_[id] = node;
  return node;
}

int SystemBuilder::add_opening(const std::string& id, double elevation) {
  system_.openings.push_back({id, elevation});
  return -static_cast<int>(system_.openings.size());  // -1 - index: made a node once all places are known
}

void SystemBuilder::add_run(RunKind kind, const std::string& id, int from, int to, std::vector<Element> elements,
                            parts::FlowBounds bounds) {
  system_.runs.push_back({kind, id, from, to, std::move(elements), bounds});
}

void SystemBuilder::add_places() {
  for (const site::Pump* pump : group_.pumps) add_place(pump->id.text, pump->discharge_elevation);
  for (const site::Branch* branch : group_.branches) add_place(branch->id.text, branch->elevation);
  for (const InletAt& at : group_.inlets)
    add_place(site::place_name(*at.dispenser, *at.inlet), at.inlet->line_elevation);
}

void SystemBuilder::add_pump(const site::Pump& pump) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  const std::optional<double> level =
      lifts_only_ ? std::optional<double>(0.0) : site::liquid_level(site_, pump.tank.text);
  if (!level) {
    laws.problem("the liquid level in tank '" + pump.tank.text + "' is not known", pump.tank.where,
                 "enter bottom_elevation and reading in [[tank]], or surface_elevation, or a lift for every hose of "
                 "this product");
    for (const site::Tank& tank : site_.tanks) {
      if (!(tank.id == pump.tank)) continue;
      system_.problems.back().related.push_back(
          {Severity::note, "tank '" + tank.id.text + "' is described here", tank.where, {}, {}});
    }
    return;
  }
  auto [known, fresh] = opening_of_tank_.emplace(pump.tank.text, 0);
  if (fresh) known->second = add_opening(pump.tank.text, *level);
  std::vector<Element> elements;
  laws.add_pump(pump, elements);
  if (pump.check_valve_loss) {
    laws.add_loss(ElementKind::check_valve, pump.id.text, "check valve of " + pump.id.text, *pump.check_valve_loss, 0.0,
                  elements);
  }
  if (pump.leak_detector && pump.leak_detector->loss) {
    laws.add_loss(ElementKind::leak_detector, pump.id.text, "leak detector of " + pump.id.text,
                  *pump.leak_detector->loss, 0.0, elements);
  } else if (pump.leak_detector) {
    laws.add_shelf_loss(ElementKind::leak_detector, pump.id.text, "illustrative-leak-detector", 0.0, elements);
  }
  if (pump.leg) laws.add_pipe(ElementKind::leg, pump.id.text, "leg of pump " + pump.id.text, *pump.leg, elements);
  const bool checked = pump.check_valve.value_or(false);
  if (!checked && group_.pumps.size() > 1) {
    warnings_.push_back({Severity::warning,
                         "pump '" + pump.id.text +
                             "' shares its line with another and has no check valve: fuel may "
                             "run back through it",
                         pump.where,
                         "enter check_valve = true if there is one",
                         {}});
  }
  const bool running = pump.running.value_or(true) && !is_held_off(site_, pump, system_.product);
  PumpPoint point{pump.id.text, pump.tank.text, static_cast<int>(system_.runs.size()), running, 0.0, {}};
  if (pump.discharge_elevation) point.discharge_elevation = pump.discharge_elevation->likely.si();
  if (pump.standing_loss) {
    laws.add_loss(ElementKind::pump, pump.id.text, "loss of pump " + pump.id.text + " while it stands",
                  *pump.standing_loss, 0.0, point.standing);
  }
  system_.pumps.push_back(point);
  add_run(RunKind::pump, pump.id.text, known->second, node_of_place_[pump.id.text], std::move(elements),
          checked ? parts::one_way() : parts::open_both_ways());
}

void SystemBuilder::add_line(const site::Line& line) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  site::Pipe pipe = line.pipe;
  if (pipe.where == SourceSpan{}) pipe.where = line.where;
  if (const auto drawn = site::drawn_length(site_, line)) {
    const Length length = Length::from_si(drawn->value);
    pipe.length = site::Entered<Length>{length, length, length, line.where};
    defaults_.push_back(*drawn);
  }
  std::vector<Element> elements;
  laws.add_pipe(ElementKind::line, line.id.text, "line " + line.id.text, pipe, elements);
  if (!pipe.loss) add_tee_run(line, elements);
  add_run(RunKind::line, line.id.text, node_of_place_[line.from.text], node_of_place_[line.to.text],
          std::move(elements), line.check_valve.value_or(false) ? parts::one_way() : parts::open_both_ways());
}

/// A line that leaves a tee passes the run of that tee; an entered loss of the line covers it.
void SystemBuilder::add_tee_run(const site::Line& line, std::vector<Element>& elements) {
  for (const InletAt& at : group_.inlets) {
    if (site::place_name(*at.dispenser, *at.inlet) != line.from.text) continue;
    if (!at.inlet->connection || at.inlet->connection->value != site::Connection::tee || elements.empty()) continue;
    PartLaws(system_.fluid, defaults_, system_.problems)
        .add_shelf_loss(ElementKind::connection, line.id.text, "tee-run", elements.front().bore, elements);
  }
}

void SystemBuilder::add_connection(const std::string& owner, const site::Inlet& inlet, std::vector<Element>& elements) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  const double bore = inlet.riser ? PartLaws::known_bore(*inlet.riser) : 0.0;
  if (inlet.connection_loss) {
    laws.add_loss(ElementKind::connection, owner, "connection of " + owner, *inlet.connection_loss, bore, elements);
  } else if (inlet.connection && inlet.connection->value == site::Connection::tee && !is_entered(inlet.riser) &&
             bore > 0.0) {
    laws.add_shelf_loss(ElementKind::connection, owner, "tee-branch", bore, elements);
  }
}

void SystemBuilder::add_shear_valve(const std::string& owner, const site::Inlet& inlet,
                                    std::vector<Element>& elements) {
  if (!inlet.shear_valve) return;
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  if (inlet.shear_valve->loss) {
    laws.add_loss(ElementKind::shear_valve, owner, "shear valve of " + owner, *inlet.shear_valve->loss,
                  inlet.riser ? PartLaws::known_bore(*inlet.riser) : 0.0, elements);
  } else if (!is_entered(inlet.riser)) {
    laws.add_shelf_loss(ElementKind::shear_valve, owner, "illustrative-shear-valve", 0.0, elements);
  }
}

void SystemBuilder::add_inlet(const InletAt& at) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  const std::string id = site::place_name(*at.dispenser, *at.inlet);
  std::vector<Element> elements;
  add_connection(id, *at.inlet, elements);
  if (at.inlet->riser) laws.add_pipe(ElementKind::riser, id, "riser of " + id, *at.inlet->riser, elements);
  add_shear_valve(id, *at.inlet, elements);
  if (at.inlet->filter) laws.add_part(ElementKind::filter, id, *at.inlet->filter, elements);
  if (at.inlet->meter) laws.add_part(ElementKind::meter, id, *at.inlet->meter, elements);
  int from = node_of_place_[id];
  if (!elements.empty()) {
    const int dispenser =
        add_place(id + " at the dispenser", at.inlet->elevation ? at.inlet->elevation : at.dispenser->elevation);
    add_run(RunKind::riser, id, from, dispenser, std::move(elements), parts::open_both_ways());
    from = dispenser;
  }
  for (const site::Hose& hose : at.dispenser->hoses) {
    const double share = share_of(hose, at.inlet->product.text);
    if (share > 0.0) add_hose(at, hose, from, share);
  }
}

void SystemBuilder::add_hose_parts(const site::Hose& hose, std::vector<Element>& elements) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  const std::string& id = hose.id.text;
  if (hose.loss) return laws.add_loss(ElementKind::hose_set, id, "hose " + id, *hose.loss, 0.0, elements);
  if (hose.filter) laws.add_part(ElementKind::filter, id, *hose.filter, elements);
  if (hose.meter) laws.add_part(ElementKind::meter, id, *hose.meter, elements);
  if (hose.control_valve) laws.add_part(ElementKind::control_valve, id, *hose.control_valve, elements);
  if (hose.whip) laws.add_pipe(ElementKind::whip_hose, id, "whip hose of " + id, *hose.whip, elements);
  if (hose.breakaway) laws.add_part(ElementKind::breakaway, id, *hose.breakaway, elements);
  if (hose.curb) laws.add_pipe(ElementKind::curb_hose, id, "curb hose of " + id, *hose.curb, elements);
  if (hose.swivel) laws.add_part(ElementKind::swivel, id, *hose.swivel, elements);
  if (hose.nozzle) laws.add_part(ElementKind::nozzle, id, *hose.nozzle, elements);
}

void SystemBuilder::add_hose(const InletAt& at, const site::Hose& hose, int from, double share) {
  PartLaws laws(system_.fluid, defaults_, system_.problems);
  const std::optional<double> outlet = outlet_elevation(hose);
  if (!outlet) {
    return laws.problem("how high the nozzle of hose '" + hose.id.text + "' stands is not known", hose.where,
                        "enter lift = \"12 ft\" above the liquid, or outlet_elevation");
  }
  std::vector<Element> elements;
  add_hose_parts(hose, elements);
  if (hose.loss && (at.inlet->filter || at.inlet->meter)) {
    warnings_.push_back({Severity::warning,
                         "the loss of hose '" + hose.id.text +
                             "' counts from the dispenser's inlet, and the inlet has "
                             "a filter or meter of its own: both are counted",
                         hose.where,
                         "leave out one of the two if they are the same",
                         {}});
  }
  if (elements.empty() && system_.problems.empty()) {
    warnings_.push_back({Severity::warning,
                         "hose '" + hose.id.text + "' has no part that loses pressure",
                         hose.where,
                         "enter its loss, or its filter, meter, hoses and nozzle",
                         {}});
  }
  for (Element& element : elements) element.flow_factor = 1.0 / share;
  const double limit = hose.limiter ? hose.limiter->likely.si() : infinite;
  system_.hoses.push_back({hose.id.text, at.dispenser->id.text, static_cast<int>(system_.runs.size()), share, limit});
  add_run(RunKind::hose, hose.id.text, from, add_opening(hose.id.text, *outlet), std::move(elements),
          parts::one_way() & parts::limited_to(limit * share));
}

void SystemBuilder::make_graph() {
  const int places = static_cast<int>(system_.places.size());
  const auto node = [&](int end) { return end >= 0 ? end : places - 1 - end; };
  std::vector<double> fixed;
  for (const Opening& opening : system_.openings) fixed.push_back(system_.weight_of(opening.elevation));
  std::vector<solvers::SteadyEdge> edges;
  for (Run& run : system_.runs) {
    run.from = node(run.from);
    run.to = node(run.to);
    edges.push_back({run.from, run.to, run.bounds.lowest, run.bounds.highest});
  }
  system_.graph = std::make_shared<solvers::SteadyGraph>(places, std::move(fixed), std::move(edges));
}

}  // namespace forecourse::network
