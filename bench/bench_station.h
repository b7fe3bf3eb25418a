#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/network/piping_system.h"
#include "forecourse/parts/pump_curve.h"

namespace forecourse::bench {

/// An invented station in memory: pumps on a header, a trunk from dispenser to dispenser, two hoses at each, a filter,
/// a meter, a whip hose, a breakaway, a curb hose and a nozzle in every hose. Every figure is illustrative.
/// \param linear  of the linear loss of filter, meter and check valve [1]; 0 for a library that knows none
inline network::PipingSystem station(int hoses, int pumps, bool limited, double linear = 1.0) {
  using parts::Law, parts::QuadraticLaw;
  constexpr double density = 740.0, viscosity = 4.5e-4, limit = 6.30902e-4;
  const int dispensers = hoses / 2, header = 0;
  const int unknowns = 1 + 2 * dispensers;
  network::PipingSystem out;
  out.fluid = {density, viscosity, 288.15};
  out.places.resize(static_cast<std::size_t>(unknowns));
  std::vector<double> fixed;
  std::vector<solvers::SteadyEdge> edges;
  const auto add_opening = [&](double elevation) {
    out.openings.push_back({"", elevation});
    fixed.push_back(out.weight_of(elevation));
    return out.node_of_opening(out.openings.size() - 1);
  };
  const auto add_run = [&](network::RunKind kind, int from, int to, std::vector<network::Element> elements,
                           parts::FlowBounds bounds) {
    network::Run run;
    run.kind = kind;
    run.from = from;
    run.to = to;
    run.elements = std::move(elements);
    run.bounds = bounds;
    out.runs.push_back(std::move(run));
    edges.push_back({from, to, bounds.lowest, bounds.highest});
    return static_cast<int>(out.runs.size()) - 1;
  };
  const auto element = [](Law law, double bore = 0.0, double length = 0.0) {
    network::Element one;
    one.law = std::move(law);
    one.bore = bore;
    one.length = length;
    return one;
  };
  const auto pipe = [&](double length, double bore, double loss_coefficient = 0.0) {
    const QuadraticLaw fittings = parts::from_loss_coefficient(loss_coefficient, bore, density);
    return element(parts::pipe_law({length, bore, 5e-6, density, viscosity}, fittings), bore, length);
  };
  for (int p = 0; p < pumps; ++p) {
    const double shutoff = 2.3e5 + 4e3 * p, runout = 9e-3;
    const parts::PumpLaw pump{parts::pump_from_runout(shutoff, runout), 1.0, {}};
    out.pumps.emplace_back().run = add_run(
        network::RunKind::pump, add_opening(-2.5), header,
        {element(pump), element(QuadraticLaw{1e6 * linear, 4e8}, 0.0525), pipe(5.0, 0.0525, 2.0)}, {.lowest = 0.0});
  }
  for (int d = 0; d < dispensers; ++d) {
    const int trunk = 1 + d, inlet = 1 + dispensers + d;
    add_run(network::RunKind::line, d == 0 ? header : trunk - 1, trunk, {pipe(d == 0 ? 25.0 : 9.0, 0.0779, 0.5)}, {});
    add_run(network::RunKind::riser, trunk, inlet, {pipe(1.5, 0.0409, 1.5), element(QuadraticLaw{0.0, 3e8}, 0.0409)},
            {});
    for (int h = 0; h < 2; ++h) {
      const double share = 1.0 + 0.01 * d + 0.005 * h;  // no two hoses alike
      parts::FlowBounds bounds{.lowest = 0.0};
      if (limited) bounds.highest = limit;
      out.hoses.emplace_back().run =
          add_run(network::RunKind::hose, inlet, add_opening(1.0),
                  {element(QuadraticLaw{6e6 * linear, 1.5e10 * share}), element(QuadraticLaw{4e6 * linear, 2.5e10}),
                   pipe(2.0, 0.019), element(QuadraticLaw{0.0, 1.2e10}), pipe(3.6 * share, 0.019),
                   element(QuadraticLaw{0.0, 1e10}), element(QuadraticLaw{0.0, 5e10})},
                  bounds);
    }
  }
  out.graph = std::make_shared<solvers::SteadyGraph>(unknowns, std::move(fixed), std::move(edges));
  return out;
}

/// Two, three or four pumps for up to 16, 32 and more hoses.
inline int pumps_of(int hoses) { return hoses <= 16 ? 2 : hoses <= 32 ? 3 : 4; }

/// Open sets at random, equal on every machine. SOURCE: [steele_splitmix, splitmix64].
inline std::uint64_t random_bits(std::uint64_t& state) {
  state += 0x9E3779B97F4A7C15ULL;
  std::uint64_t z = state;
  z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
  return z ^ (z >> 31U);
}

}  // namespace forecourse::bench
