#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

#include "forecourse/solvers/steady_graph.h"

namespace forecourse::solvers {

/// Solves one state of a steady network: node balances and edge laws with bounds on the flows.
///
/// The unknowns are found by Newton steps on all flows and pressures at once, reduced to the pressures
/// (global gradient), with each bound as the pair condition "flow at its bound, or law holds"
/// (min function). Where that does not settle, the equal convex problem in the pressures alone is
/// solved by Newton with an exact line search, which cannot cycle; a last full step ends both.
/// `Laws` has `EdgeLoss loss(int edge, double flow) const`, rising in the flow and continuous.
///
/// \source [todini_pilati, gradient algorithm]; [facchinei_pang, natural map] for the bounds;
///         [collins_1978, content and co-content models] for the convexity.
/// \error residuals as the report says, by the options' tolerances.
/// \fails status `not_converged`, with the worst edge and node; the state is then not usable.
template <class Laws>
class SteadySolver {
 public:
  SteadySolver(const SteadyGraph& graph, const Laws& laws, SteadyOptions options = {})
      : graph_(graph), laws_(laws), options_(options) {
    const auto unknowns = static_cast<std::size_t>(graph.unknowns());
    const std::size_t edges = graph.edges().size();
    diagonal_.resize(unknowns);
    right_.resize(unknowns);
    below_.resize(graph.elimination().slots());
    conductance_.resize(edges);
    offset_.resize(edges);
    law_.resize(edges);
  }

  SteadyReport solve(const SteadyCase& given, SteadyState& state) {
    given_ = &given;
    prepare(state);
    SteadyReport report;
    if (set_at_rest(state, report)) return report;
    newton(state, report, options_.newton_iterations);
    if (report.status != SteadyStatus::converged) {
      report.fallback_used = true;
      descend(state, report);
      newton(state, report, options_.newton_iterations);
    }
    return report;
  }

 private:
  [[nodiscard]] const SteadyEdge& edge(std::size_t e) const { return graph_.edges()[e]; }
  [[nodiscard]] bool is_open(std::size_t e) const { return given_->open[e] != 0; }
  [[nodiscard]] double lowest(std::size_t e) const { return edge(e).lowest; }
  [[nodiscard]] double highest(std::size_t e) const {
    return given_->highest.empty() ? edge(e).highest : given_->highest[e];
  }
  [[nodiscard]] static std::size_t at(int i) { return static_cast<std::size_t>(i); }
  [[nodiscard]] double drop(const SteadyState& state, std::size_t e) const {
    return state.pressure[at(edge(e).from)] - state.pressure[at(edge(e).to)];
  }

  void prepare(SteadyState& state) const {
    started_ = state.flow.size() == graph_.edges().size() && state.pressure.size() == at(graph_.nodes());
    if (!started_) {
      state.flow.assign(graph_.edges().size(), options_.first_flow);
      state.pressure.assign(at(graph_.nodes()), 0.0);
    }
    for (double& p : state.pressure) p = std::isfinite(p) ? p : 0.0;
    std::copy(graph_.fixed_pressures().begin(), graph_.fixed_pressures().end(),
              state.pressure.begin() + graph_.unknowns());
    for (std::size_t e = 0; e < state.flow.size(); ++e) {
      if (!is_open(e)) {
        state.flow[e] = 0.0;
      } else if (!std::isfinite(state.flow[e])) {
        state.flow[e] = options_.first_flow;
      }
    }
  }

  // ---- at rest -------------------------------------------------------------------------------------

  /// Pressures between which nothing flows: [reached by the strongest pump, needed by the lowest outlet].
  struct RestBand {
    double reached = -unbounded;
    double needed = unbounded;
  };

  /// An edge that lets flow both ways holds the pressure from both sides. Empty where a law inside the network
  /// drives flow by itself, or fixed nodes are joined.
  [[nodiscard]] std::optional<RestBand> rest_band() const {
    RestBand band;
    for (std::size_t e = 0; e < graph_.edges().size(); ++e) {
      if (!is_open(e)) continue;
      const SteadyEdge& x = edge(e);
      const double loss = laws_.loss(static_cast<int>(e), 0.0).loss;
      const bool from_unknown = graph_.is_unknown(x.from);
      const bool to_unknown = graph_.is_unknown(x.to);
      if (from_unknown && to_unknown) {
        if (loss != 0.0) return std::nullopt;
        continue;
      }
      if (!from_unknown && !to_unknown) return std::nullopt;
      const double level = to_unknown ? fixed(x.from) - loss : fixed(x.to) + loss;
      const bool both_ways = lowest(e) < 0.0;
      if (to_unknown || both_ways) band.reached = std::max(band.reached, level);
      if (from_unknown || both_ways) band.needed = std::min(band.needed, level);
    }
    return band;
  }

  [[nodiscard]] double fixed(int node) const { return graph_.fixed_pressures()[at(node - graph_.unknowns())]; }

  bool set_at_rest(SteadyState& state, SteadyReport& report) const {
    for (const double d : given_->demand) {
      if (d != 0.0) return false;
    }
    const std::optional<RestBand> band = rest_band();
    if (!band || band->reached > band->needed) return false;
    const bool held = band->reached > -unbounded;
    report.status = held ? SteadyStatus::at_rest : SteadyStatus::no_supply;
    const double level = held ? band->reached : std::numeric_limits<double>::quiet_NaN();
    std::fill(state.flow.begin(), state.flow.end(), 0.0);
    std::fill(state.pressure.begin(), state.pressure.begin() + graph_.unknowns(), level);
    return true;
  }

  // ---- Newton on flows and pressures -----------------------------------------------------------------

  void newton(SteadyState& state, SteadyReport& report, int most) {
    bool with_bounds = started_ || report.fallback_used;
    for (int i = 0; i <= most; ++i) {
      evaluate(state);
      if (with_bounds) {
        measure(state, report);
        if (report.status == SteadyStatus::converged) return put_within_bounds(state, report);
        if (i == most) return;
      }
      linearize(state, with_bounds);
      step(state);
      ++report.iterations;
      with_bounds = true;
    }
  }

  void evaluate(const SteadyState& state) {
    for (std::size_t e = 0; e < law_.size(); ++e) {
      if (is_open(e)) law_[e] = laws_.loss(static_cast<int>(e), state.flow[e]);
    }
  }

  /// [Pa s/m3] A steep law is measured by its own slope, so that a step too far is no reason to shut it.
  [[nodiscard]] double scale(std::size_t e) const { return std::max(options_.complementarity_slope, law_[e].slope); }

  /// Where the pair condition would move the flow: outside [lowest, highest] means the bound is active.
  [[nodiscard]] double trial(const SteadyState& state, std::size_t e) const {
    return state.flow[e] + (drop(state, e) - law_[e].loss) / scale(e);
  }

  void linearize(const SteadyState& state, bool with_bounds) {
    for (std::size_t e = 0; e < law_.size(); ++e) {
      conductance_[e] = 0.0;
      offset_[e] = 0.0;
      if (!is_open(e)) continue;
      const double wanted = with_bounds ? trial(state, e) : state.flow[e];
      if (wanted <= lowest(e) || wanted >= highest(e)) {
        offset_[e] = wanted <= lowest(e) ? lowest(e) : highest(e);
      } else {
        conductance_[e] = 1.0 / std::max(law_[e].slope, options_.slope_floor);
        offset_[e] = state.flow[e] + conductance_[e] * (drop(state, e) - law_[e].loss);
      }
    }
  }

  /// Changes of pressure from the node balances of `offset + conductance * change of drop`; then the flows.
  /// As changes, so that the flows balance to the rounding of a change and not to that of a pressure, which an edge
  /// of next to no loss would pass on at full size.
  void step(SteadyState& state) {
    assemble();
    graph_.elimination().solve(diagonal_.data(), below_.data(), right_.data());
    for (std::size_t e = 0; e < law_.size(); ++e) {
      if (is_open(e)) state.flow[e] = offset_[e] + conductance_[e] * (change(edge(e).from) - change(edge(e).to));
    }
    for (std::size_t n = 0; n < right_.size(); ++n) state.pressure[n] += right_[n];
  }

  /// Change of a node's pressure that `step` solved for [Pa].
  [[nodiscard]] double change(int node) const { return graph_.is_unknown(node) ? right_[at(node)] : 0.0; }

  /// A node that every bound has cut off keeps its last pressure: the hold adds nothing once settled.
  static constexpr double hold = 1e-16;  // [m3/(s Pa)], a ten-millionth of a hose's conductance

  void assemble() {
    std::fill(below_.begin(), below_.end(), 0.0);
    for (std::size_t n = 0; n < diagonal_.size(); ++n) {
      diagonal_[n] = hold;
      right_[n] = given_->demand.empty() ? 0.0 : -given_->demand[n];
    }
    for (std::size_t e = 0; e < law_.size(); ++e) {
      if (!is_open(e)) continue;
      add_end(edge(e).from, conductance_[e], -offset_[e]);
      add_end(edge(e).to, conductance_[e], offset_[e]);
      if (graph_.slots()[e] >= 0) below_[at(graph_.slots()[e])] -= conductance_[e];
    }
  }

  void add_end(int node, double conductance, double inflow) {
    if (!graph_.is_unknown(node)) return;
    diagonal_[at(node)] += conductance;
    right_[at(node)] += inflow;
  }

  // ---- residuals -------------------------------------------------------------------------------------

  void measure(const SteadyState& state, SteadyReport& report) {
    report.pressure_residual = 0.0;
    for (std::size_t e = 0; e < law_.size(); ++e) {
      if (!is_open(e)) continue;
      const double off = state.flow[e] - std::clamp(trial(state, e), lowest(e), highest(e));
      const double residual = std::abs(off) * scale(e);
      if (!(residual <= report.pressure_residual)) {
        report.pressure_residual = residual;
        report.worst_edge = static_cast<int>(e);
      }
    }
    measure_balance(state, report);
    const bool good =
        report.pressure_residual <= options_.pressure_tolerance && report.flow_residual <= options_.flow_tolerance;
    report.status = good ? SteadyStatus::converged : SteadyStatus::not_converged;
  }

  void measure_balance(const SteadyState& state, SteadyReport& report) {
    balance(state.flow);
    report.flow_residual = 0.0;
    for (std::size_t n = 0; n < right_.size(); ++n) {
      if (!(std::abs(right_[n]) <= report.flow_residual)) {
        report.flow_residual = std::abs(right_[n]);
        report.worst_node = static_cast<int>(n);
      }
    }
  }

  /// Takes away what the tolerance left beyond a bound, at most pressure_tolerance / complementarity_slope [m3/s].
  /// No law gets worse by it: each stays within its residual, or the bound holds the rest.
  void put_within_bounds(SteadyState& state, SteadyReport& report) {
    for (std::size_t e = 0; e < law_.size(); ++e) {
      if (is_open(e)) state.flow[e] = std::clamp(state.flow[e], lowest(e), highest(e));
    }
    measure_balance(state, report);
  }

  /// Net flow out of each unknown node, into `right_` [m3/s].
  void balance(const std::vector<double>& flow) {
    for (std::size_t n = 0; n < right_.size(); ++n) right_[n] = given_->demand.empty() ? 0.0 : given_->demand[n];
    for (std::size_t e = 0; e < flow.size(); ++e) {
      if (!is_open(e)) continue;
      if (graph_.is_unknown(edge(e).from)) right_[at(edge(e).from)] += flow[e];
      if (graph_.is_unknown(edge(e).to)) right_[at(edge(e).to)] -= flow[e];
    }
  }

  // ---- descent in the pressures alone ------------------------------------------------------------------

  /// The flow at which the edge's law meets a pressure drop, within its bounds.
  [[nodiscard]] double flow_at(std::size_t e, double drop) const {
    const auto off = [&](double q) { return laws_.loss(static_cast<int>(e), q).loss - drop; };
    double low = lowest(e);
    double high = highest(e);
    if (low > -unbounded && off(low) >= 0.0) return low;
    if (high < unbounded && off(high) <= 0.0) return high;
    double reach = options_.first_flow;
    if (low == -unbounded) {
      for (low = -reach; off(low) > 0.0 && reach < 1e6; low = -reach) reach *= 4.0;
    }
    reach = std::max(options_.first_flow, low + options_.first_flow);
    if (high == unbounded) {
      for (high = reach; off(high) < 0.0 && reach < 1e6; high = reach) reach *= 4.0;
    }
    return root(e, drop, low, high);
  }

  /// Newton kept inside a shrinking bracket.
  [[nodiscard]] double root(std::size_t e, double drop, double low, double high) const {
    double q = std::clamp(0.0, low, high);
    const auto is_near = [&](double next) {
      return std::abs(next - q) <= 1e-15 * std::max(std::abs(q), 1e-9) || next == q;
    };
    for (int i = 0; i < 200; ++i) {
      const EdgeLoss law = laws_.loss(static_cast<int>(e), q);
      const double off = law.loss - drop;
      (off > 0.0 ? high : low) = q;
      double next = q - off / std::max(law.slope, 1e-300);
      if (is_near(next)) return next;  // before the bracket is asked: rounding may put the last step beyond its end
      if (!(next > low && next < high)) next = 0.5 * (low + high);
      if (is_near(next)) return next;
      q = next;
    }
    return q;
  }

  void flows_of(SteadyState& state) const {
    for (std::size_t e = 0; e < state.flow.size(); ++e) {
      if (is_open(e)) state.flow[e] = flow_at(e, drop(state, e));
    }
  }

  /// Newton on the convex function whose gradient is the node imbalance; each step goes to where that
  /// function is lowest along it, or near.
  void descend(SteadyState& state, SteadyReport& report) {
    const double span = pressure_span();
    for (double& p : state.pressure) {
      if (!std::isfinite(p) || std::abs(p) > span) p = std::clamp(std::isfinite(p) ? p : 0.0, -span, span);
    }
    std::copy(graph_.fixed_pressures().begin(), graph_.fixed_pressures().end(),
              state.pressure.begin() + graph_.unknowns());
    flows_of(state);
    for (int i = 0; i < options_.fallback_iterations; ++i) {
      balance(state.flow);
      const std::vector<double> imbalance = right_;
      if (largest(imbalance) <= 0.01 * options_.flow_tolerance) return;
      const std::vector<double> direction = descent_direction(state, imbalance, span);
      search_along(direction, dot(imbalance, direction), state);
      ++report.iterations;
    }
  }

  [[nodiscard]] double pressure_span() const {
    double span = 1e5;
    for (const double p : graph_.fixed_pressures()) span = std::max(span, 4.0 * std::abs(p));
    for (std::size_t e = 0; e < law_.size(); ++e) {
      span = std::max(span, 4.0 * std::abs(laws_.loss(static_cast<int>(e), 0.0).loss));
    }
    return span;
  }

  [[nodiscard]] static double largest(const std::vector<double>& v) {
    double m = 0.0;
    for (const double x : v) m = std::max(m, std::abs(x));
    return m;
  }

  [[nodiscard]] static double dot(const std::vector<double>& a, const std::vector<double>& b) {
    double sum = 0.0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
    return sum;
  }

  std::vector<double> descent_direction(const SteadyState& state, const std::vector<double>& imbalance, double span) {
    for (std::size_t e = 0; e < law_.size(); ++e) {
      const bool inside = is_open(e) && state.flow[e] > lowest(e) && state.flow[e] < highest(e);
      conductance_[e] =
          inside ? 1.0 / std::max(laws_.loss(static_cast<int>(e), state.flow[e]).slope, options_.slope_floor) : 0.0;
      offset_[e] = 0.0;
    }
    assemble();
    for (std::size_t n = 0; n < right_.size(); ++n) right_[n] = -imbalance[n];
    graph_.elimination().solve(diagonal_.data(), below_.data(), right_.data());
    std::vector<double> direction = right_;
    const double size = largest(direction);
    if (size > span) {
      for (double& d : direction) d *= span / size;
    }
    return direction;
  }

  /// Steps along `direction`; `slope` is the (negative) derivative at its start.
  void search_along(const std::vector<double>& direction, double slope, SteadyState& state) {
    const std::vector<double> start = state.pressure;
    double low = 0.0;
    double high = unbounded;
    double length = 1.0;
    for (int i = 0; i < 40; ++i) {
      for (std::size_t n = 0; n < direction.size(); ++n) state.pressure[n] = start[n] + length * direction[n];
      flows_of(state);
      balance(state.flow);
      const double here = dot(right_, direction);
      if (std::abs(here) <= 0.5 * std::abs(slope)) return;
      (here < 0.0 ? low : high) = length;
      if (here < 0.0 && high == unbounded && length >= 4.0) return;
      length = high == unbounded ? 2.0 * length : 0.5 * (low + high);
    }
  }

  const SteadyGraph& graph_;
  const Laws& laws_;
  SteadyOptions options_;
  const SteadyCase* given_ = nullptr;
  mutable bool started_ = false;
  std::vector<double> diagonal_, below_, right_;
  std::vector<double> conductance_, offset_;
  std::vector<EdgeLoss> law_;
};

}  // namespace forecourse::solvers
