#include "solvers/random_network.h"

#include <cmath>

namespace forecourse::test {
namespace {

constexpr double density = 740.0;

class Builder {
 public:
  Builder(Draws& draws, double spread) : draws_(draws), spread_(spread) {
    viscosity_ = spread > 0.0 ? density * draws.between(3e-7, 8e-6) : 5e-4;
  }

  RandomNetwork build() {
    places_ = 2 + draws_.below(7);
    net_.unknowns = 1 + 2 * places_;  // header, then trunk place and inlet of each dispenser
    add_pumps(1 + draws_.below(4));
    add_trunk(draws_.below(3));
    for (int i = 0; i < places_; ++i) add_dispenser(i);
    return std::move(net_);
  }

 private:
  double about(double value, double decades = 1.0) {
    return value * std::pow(10.0, spread_ * decades * draws_.between(-1.0, 1.0));
  }
  parts::Law pipe(double length, double bore) {
    return parts::pipe_law({about(length), about(bore, 0.15), about(5e-6), density, viscosity_});
  }
  static parts::Law quadratic(double linear, double square) { return parts::QuadraticLaw{linear, square}; }

  int add_edge(int from, int to, std::vector<parts::Law> terms, double lowest, double highest) {
    net_.edges.push_back({from, to, lowest, highest});
    net_.laws.terms.push_back(std::move(terms));
    return static_cast<int>(net_.edges.size()) - 1;
  }
  int add_fixed(double pressure) {
    net_.fixed.push_back(pressure);
    return net_.unknowns + static_cast<int>(net_.fixed.size()) - 1;
  }
  int trunk(int i) const { return 1 + i; }
  int inlet(int i) const { return 1 + places_ + i; }

  void add_pumps(int count) {
    for (int i = 0; i < count; ++i) {
      const int tank = add_fixed(about(1.0) * -7000.0 * draws_.between(1.0, 3.0));
      const double shutoff = draws_.between(1.2e5, 3.2e5);
      const double runout = draws_.between(3e-3, 1.2e-2);
      net_.pumps.push_back(
          add_edge(tank, 0,
                   {parts::PumpLaw{parts::pump_from_shutoff(shutoff, shutoff / (runout * runout)), 1.0, {}},
                    quadratic(about(1e6), about(5e8)), pipe(6.0, 0.0525)},
                   0.0, solvers::unbounded));
    }
  }

  void add_trunk(int layout) {
    for (int i = 0; i < places_; ++i) {
      const int from = layout == 0 ? draws_.below(i + 1) : i;  // a random tree, or one after the other
      const bool checked = spread_ > 0.0 && draws_.coin(0.05);
      add_edge(from, trunk(i), {pipe(10.0, 0.0525), quadratic(0.0, about(1e8))}, checked ? 0.0 : -solvers::unbounded,
               solvers::unbounded);
    }
    if (layout == 2) add_edge(0, trunk(places_ - 1), {pipe(30.0, 0.0525)}, -solvers::unbounded, solvers::unbounded);
  }

  void add_dispenser(int i) {
    const int from = draws_.coin(0.2) ? trunk(i) : inlet(i);
    add_edge(trunk(i), inlet(i), {pipe(1.3, 0.0409), quadratic(0.0, about(1.2e9))}, -solvers::unbounded,
             solvers::unbounded);
    for (int h = 0; h < 2; ++h) {
      const int outlet = add_fixed(7000.0 * (spread_ > 0.0 ? draws_.between(-4.0, 25.0) : draws_.between(0.7, 1.2)));
      const double limit = draws_.coin(0.5) ? about(6.3e-4) : solvers::unbounded;
      net_.hoses.push_back(
          add_edge(from, outlet, {quadratic(about(8e6), about(1.2e11)), pipe(3.6, 0.019)}, 0.0, limit));
    }
  }

  Draws& draws_;
  double spread_;
  double viscosity_ = 5e-4;
  int places_ = 0;
  RandomNetwork net_;
};

}  // namespace

RandomNetwork random_network(Draws& draws, double spread) { return Builder(draws, spread).build(); }

solvers::SteadyCase with_open(const RandomNetwork& network, std::uint64_t open_hoses) {
  solvers::SteadyCase given{std::vector<char>(network.edges.size(), 1), {}, {}};
  for (std::size_t h = 0; h < network.hoses.size(); ++h) {
    given.open[static_cast<std::size_t>(network.hoses[h])] = static_cast<char>((open_hoses >> h) & 1U);
  }
  return given;
}

}  // namespace forecourse::test
