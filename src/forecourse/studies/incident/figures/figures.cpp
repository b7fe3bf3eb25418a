#include "forecourse/studies/incident/figures/figures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "forecourse/parts/escape/orifice.h"
#include "forecourse/solvers/sequence/stepper.h"
#include "forecourse/studies/incident/release/told_run.h"

namespace forecourse::studies {
namespace {

using release::Model;

std::vector<HoseElsewhere> elsewhere(const network::Feed& feed, double escaping) {
  std::vector<HoseElsewhere> out;
  for (std::size_t i = 0; i < feed.hose.size(); ++i) {
    out.push_back({feed.open[i], feed.hose[i].at(0.0).value, std::max(0.0, feed.hose[i].at(escaping).value)});
  }
  return out;
}

/// What escapes until the valve is shut.
double escapes(const release::Case& given, double spring_share, double column_share) {
  release::Case one = given;
  for (release::Broken& b : one.broken) {
    b.compliance *= spring_share;
    b.inertance *= column_share;
    b.opening.inertance *= column_share;
    b.above = {};
  }
  const Model model(one);
  const auto result = solvers::sequence::run_sequence(model, model.start(), release::told_options());
  return release::outcome_of(one, result).escaped;
}

}  // namespace

std::vector<OpenEnd> open_ends(const Scene& scene, const release::Case& given) {
  std::vector<OpenEnd> out;
  for (std::size_t i = 0; i < scene.ground.ends.size(); ++i) {
    const EndGround& ground = scene.ground.ends[i];
    const release::Broken& b = given.broken[i];
    OpenEnd end;
    end.product = ground.product;
    end.system = scene.ground.network.systems[ground.system].id;
    end.height_above_liquid = ground.end.height;
    const release::Flows flows = release::balance(b, b.running, 1.0);
    end.steady_flow = flows.out;
    end.pump_flow = flows.in + flows.hoses;
    end.pump_runs = &release::feeding(b) == &b.running;
    if (b.stopped.supplied) end.gravity_flow = release::balance(b, b.stopped, 1.0).out;
    end.stock = ground.stock;
    end.above_opening = ground.above_opening;
    if (b.running.supplied) end.shutoff_at_opening = b.running.pressure.at(0.0).value - b.opening.weight;
    const bool valve = b.shutting.triggers_at < release::never;
    if (valve) end.steady_figure = flows.out * parts::equivalent_time(b.shutting.law);
    constexpr double shown = 45.0;  // [s]
    if (b.opening.leak_coefficient == 0.0) end.in_45_seconds = flows.out * shown;
    end.line_compliance = ground.compliance;
    end.compliance_reason = ground.compliance_reason;
    end.trunk_inertance = ground.trunk_inertance;
    end.riser_inertance = ground.end.inertance;
    end.elsewhere = elsewhere(b.running, flows.out);
    out.push_back(std::move(end));
  }
  return out;
}

std::vector<JetRow> jets(const Scene& scene, const release::Case& given) {
  constexpr std::array<double, 6> shares{1.0, 0.5, 0.2, 0.1, 0.05, 0.01};
  constexpr double minute = 60.0;
  std::vector<JetRow> out;
  if (given.broken.empty() || scene.ground.ends.front().end.bore <= 0.0) return out;
  const EndGround& ground = scene.ground.ends.front();
  const double density = scene.ground.network.systems[ground.system].fluid.density;
  const double bore = ground.end.bore;
  const auto& entered = scene.request.open_area;
  const double bores = ground.split ? 2.0 : 1.0;
  const double full = entered ? entered->likely.si() : bores * 0.25 * std::numbers::pi * bore * bore;
  const auto& cd = scene.request.discharge_coefficient;
  const double coefficient = entered && cd ? cd->likely : usual_discharge;
  for (const double share : shares) {
    const bool whole_bore = share == 1.0 && !entered;
    release::Broken b = given.broken.front();
    b.opening.leak_coefficient = 0.0;
    if (!whole_bore) b.opening.discharge = network::opening_loss(density, share * full, coefficient);
    JetRow row;
    row.area_share = share;
    row.flow = release::balance(b, release::feeding(b), 1.0).out;
    row.velocity = row.flow / (full * share * (whole_bore ? 1.0 : coefficient));
    const parts::Estimate height = parts::jet_height(row.velocity);
    row.height_low = height.low;
    row.height_high = height.high;
    row.in_60_seconds = row.flow * minute;
    out.push_back(row);
  }
  return out;
}

std::optional<PackAndColumn> pack_and_column(release::Case given) {
  constexpr double first_seconds = 10.0;
  double until = 0.0;
  for (const release::Broken& b : given.broken) {
    const bool valve = b.shutting.triggers_at < release::never;
    if (b.opening.leak_coefficient > 0.0 || !release::feeding(b).supplied) return std::nullopt;
    until = std::max(until, valve ? b.shutting.triggers_at + parts::shut_time(b.shutting.law) : first_seconds);
  }
  if (!(until > 0.0)) return std::nullopt;
  given.end = until;
  return PackAndColumn{escapes(given, 0.0, 0.0), escapes(given, 1.0, 0.0), escapes(given, 0.0, 1.0),
                       escapes(given, 1.0, 1.0)};
}

std::optional<PoolTold> pool_of(const Scene& scene, const IncidentRun& run) {
  const auto slab = std::find(run.holders.begin(), run.holders.end(), Holder::slab) - run.holders.begin();
  PoolTold pool;
  for (const TimelineRow& row : run.timeline)
    pool.volume = std::max(pool.volume, row.held[static_cast<std::size_t>(slab)]);
  if (!(pool.volume > 0.0)) return std::nullopt;
  const auto& forecourt = scene.site.forecourt;
  Inputs none;
  pool.film = {0.7e-3, 1e-3, 5e-3};
  if (forecourt && forecourt->film) pool.film = Inputs::spread_of(*forecourt->film);
  const auto area = [&](double film) { return pool.volume / film; };
  const auto radius = [&](double film) { return std::sqrt(area(film) / std::numbers::pi); };
  pool.area = {area(pool.film.high), area(pool.film.likely), area(pool.film.low)};
  pool.radius = {radius(pool.film.high), radius(pool.film.likely), radius(pool.film.low)};
  if (forecourt && forecourt->slope) pool.slope = forecourt->slope->likely.si();
  return pool;
}

}  // namespace forecourse::studies
