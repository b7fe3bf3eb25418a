#include "forecourse/network/part_laws.h"

#include <utility>

#include "forecourse/base/flow_coefficient.h"
#include "forecourse/network/pump_laws.h"
#include "forecourse/parts/entered_loss.h"
#include "forecourse/site/shelf.h"

namespace forecourse::network {
namespace {

DefaultStatus status_of(site::ShelfStatus status) {
  switch (status) {
    case site::ShelfStatus::published:
      return DefaultStatus::published;
    case site::ShelfStatus::common_practice:
      return DefaultStatus::common_practice;
    case site::ShelfStatus::illustrative:
      return DefaultStatus::illustrative;
  }
  return DefaultStatus::illustrative;
}

bool is_hose(ElementKind kind) { return kind == ElementKind::whip_hose || kind == ElementKind::curb_hose; }

/// The shelf entry that serves a pipe of which nobody said what it is made of.
const char* usual_pipe(ElementKind kind) { return is_hose(kind) ? "illustrative-hose" : "illustrative-line"; }

std::optional<parts::EnteredLoss> as_parts(const site::EnteredLoss& entered, double own_bore) {
  if (entered.k) {
    const double bore = entered.bore ? entered.bore->likely.si() : own_bore;
    if (bore <= 0.0) return std::nullopt;
    return parts::LossCoefficient{entered.k->likely, bore};
  }
  if (entered.cv) return parts::FlowArea{flow_area_from_cv(entered.cv->likely)};
  if (entered.kv) return parts::FlowArea{flow_area_from_kv(entered.kv->likely)};
  if (!entered.points.empty()) {
    parts::LossPoints points;
    for (const site::LossPoint& p : entered.points) points.points.push_back({p.flow.si(), p.loss.si()});
    return points;
  }
  return parts::QuadraticLaw{entered.per_flow ? entered.per_flow->likely.si() : 0.0,
                             entered.per_flow_squared ? entered.per_flow_squared->likely.si() : 0.0};
}

}  // namespace

void PartLaws::note(DefaultUsed used) {
  for (const DefaultUsed& other : defaults_) {
    if (other.what == used.what) return;
  }
  defaults_.push_back(std::move(used));
}

void PartLaws::problem(std::string message, SourceSpan where, std::string hint) {
  problems_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
}

std::optional<parts::Law> PartLaws::law(const std::string& what, const site::EnteredLoss& entered, double own_bore) {
  const std::optional<parts::EnteredLoss> given = as_parts(entered, own_bore);
  if (!given) {
    problem("loss of " + what + " is a k without a bore", entered.where,
            "write loss = { k = ..., bore = \"...\" }, or enter another kind of loss");
    return std::nullopt;
  }
  auto made = parts::entered_law(*given, fluid_.density);
  if (const auto* fault = std::get_if<parts::CurveFault>(&made)) {
    problem("loss points of " + what + ": " + std::string(parts::text(fault->kind)), entered.where,
            "write points in rising flow and loss");
    return std::nullopt;
  }
  return std::get<parts::Law>(std::move(made));
}

void PartLaws::add_loss(ElementKind kind, const std::string& owner, const std::string& what,
                        const site::EnteredLoss& entered, double own_bore, std::vector<Element>& elements) {
  if (auto made = law(what, entered, own_bore)) {
    elements.push_back({kind, owner, std::move(*made), 1.0, own_bore, 0.0, entered.where});
  }
}

void PartLaws::add_shelf_loss(ElementKind kind, const std::string& owner, const std::string& shelf_id, double own_bore,
                              std::vector<Element>& elements) {
  const site::ShelfPart* part = site::find_part(shelf_id);
  if (part == nullptr) return;
  const std::string what = std::string(word(kind)) + " of " + owner;
  note(
      {"loss of " + what + " (" + shelf_id + ")", part->figure, part->unit, status_of(part->status), part->source, {}});
  add_loss(kind, owner, what, part->loss, own_bore, elements);
}

void PartLaws::add_part(ElementKind kind, const std::string& owner, const site::Part& part,
                        std::vector<Element>& elements) {
  const std::string what = std::string(word(kind)) + " of " + owner;
  if (part.loss) return add_loss(kind, owner, what, *part.loss, 0.0, elements);
  if (site::find_part(part.shelf.text) == nullptr) {
    return problem("the shelf has no part '" + part.shelf.text + "' for the " + what, part.where,
                   "name a part that `forecourse shelf` lists, or enter its loss");
  }
  add_shelf_loss(kind, owner, part.shelf.text, 0.0, elements);
}

double PartLaws::known_bore(const site::Pipe& pipe) {
  if (pipe.bore) return pipe.bore->likely.si();
  const site::ShelfPipe* on_shelf = site::find_pipe(pipe.nominal.text);
  return on_shelf != nullptr ? on_shelf->bore : 0.0;
}

std::optional<double> PartLaws::bore_of(const std::string& what, const site::Pipe& pipe, ElementKind kind) {
  if (pipe.bore) return pipe.bore->likely.si();
  if (const site::ShelfPipe* on_shelf = site::find_pipe(pipe.nominal.text)) {
    note({"bore of " + what + " (" + on_shelf->id + ")",
          on_shelf->bore,
          "m",
          status_of(on_shelf->status),
          on_shelf->source,
          {}});
    return on_shelf->bore;
  }
  if (is_hose(kind)) {
    const site::ShelfPipe* usual = site::find_pipe(usual_pipe(kind));
    note({"bore of " + what, usual->bore, "m", DefaultStatus::illustrative, usual->source, {}});
    return usual->bore;
  }
  problem(what + " has no bore", pipe.where, "enter bore = \"2.00 in\", its inside diameter, or nominal");
  return std::nullopt;
}

double PartLaws::roughness_of(const std::string& what, const site::Pipe& pipe, ElementKind kind) {
  if (pipe.roughness) return pipe.roughness->likely.si();
  const site::ShelfPipe* on_shelf = site::find_pipe(pipe.nominal.text);
  const site::ShelfPipe* used = on_shelf != nullptr ? on_shelf : site::find_pipe(usual_pipe(kind));
  note({"roughness of " + what, used->roughness, "m", status_of(used->status), used->source, {}});
  return used->roughness;
}

void PartLaws::add_pipe(ElementKind kind, const std::string& owner, const std::string& what, const site::Pipe& pipe,
                        std::vector<Element>& elements) {
  const std::optional<double> bore = bore_of(what, pipe, kind);
  if (!pipe.length) problem(what + " has no length", pipe.where, "enter length = \"20 ft\"");
  if (!bore || !pipe.length) return;
  const double length = pipe.length->likely.si();
  const parts::Pipe conduit{length, *bore, roughness_of(what, pipe, kind), fluid_.density, fluid_.dynamic_viscosity};
  parts::QuadraticLaw fittings;
  std::optional<parts::Law> own;
  if (pipe.loss) own = law(what, *pipe.loss, *bore);
  const bool joined = own && std::holds_alternative<parts::QuadraticLaw>(*own);
  if (joined) fittings = std::get<parts::QuadraticLaw>(*own);
  elements.push_back({kind, owner, parts::pipe_law(conduit, fittings), 1.0, *bore, length, pipe.where});
  if (own && !joined) elements.push_back({kind, owner, std::move(*own), 1.0, *bore, 0.0, pipe.loss->where});
}

void PartLaws::add_pump(const site::Pump& pump, std::vector<Element>& elements) {
  if (!pump.curve) {
    return problem("pump '" + pump.id.text + "' has no curve", pump.where,
                   "enter curve = { shutoff = \"30 psi\", per_flow_squared = \"0.002 psi/gpm^2\" }");
  }
  auto made = pump_law(*pump.curve, pump.speed ? pump.speed->likely.si() : 1.0);
  if (const auto* fault = std::get_if<std::string>(&made)) {
    return problem("curve of pump '" + pump.id.text + "': " + *fault, pump.curve->where,
                   "enter a curve that falls with flow");
  }
  elements.push_back(
      {ElementKind::pump, pump.id.text, std::get<parts::PumpLaw>(std::move(made)), 1.0, 0.0, 0.0, pump.curve->where});
}

}  // namespace forecourse::network
