#include "solvers/network_file.h"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <utility>

#include "forecourse/base/constants.h"
#include "solvers/measured.h"

namespace forecourse::test {
namespace {

using Json = nlohmann::json;
using Kind = FileElement::Kind;

// Heads are computed as pressures of a liquid of this density; any other gives the same flows.
constexpr double density = 740.0;
constexpr double pascal_per_meter = density * standard_gravity;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// ---- reading -----------------------------------------------------------------------------------------

Kind kind_of(const std::string& word) {
  if (word == "pump") return Kind::pump;
  if (word == "pipe") return Kind::pipe;
  if (word == "component") return Kind::component;
  if (word == "nozzle") return Kind::nozzle;
  throw std::invalid_argument("unknown kind of element: " + word);
}

FileElement read_element(const Json& from, const std::map<std::string, int>& nodes) {
  FileElement element;
  element.id = from.at("id");
  element.kind = kind_of(from.at("kind"));
  element.from = nodes.at(from.at("from"));
  element.to = nodes.at(from.at("to"));
  if (element.kind == Kind::pipe) {
    element.pipe = {from.at("L"), from.at("D"), from.at("roughness"), from.value("K", 0.0)};
  }
  element.linear = from.value("c1", 0.0);
  element.quadratic = from.value("c2", 0.0);
  if (from.contains("points")) {
    for (const Json& point : from.at("points")) element.pump.push_back({point.at(0), point.at(1)});
  }
  if (from.contains("qlim") && !from.at("qlim").is_null()) element.limit = from.at("qlim").get<double>();
  element.hose = from.value("hose", -1);
  return element;
}

/// The library's constants as a file gives them, or as they stand in the library's source.
LibraryConstants read_constants(const Json& constants, double kinematic_viscosity) {
  if (!constants.contains("reference_library_constants")) {
    constexpr double foot = 0.3048;
    return {.gravity = 32.2,
            .minor_loss_factor = 0.02517,
            .litre_per_cubic_foot = 28.317,
            .meter_per_foot = foot,
            .viscosity = kinematic_viscosity / (foot * foot),
            .closed_conductance = 1e-8};
  }
  const Json& from = constants.at("reference_library_constants");
  return {.gravity = from.at("g_ft_s2"),
          .minor_loss_factor = from.at("minor_loss_factor_ft"),
          .litre_per_cubic_foot = from.at("litre_per_cubic_foot"),
          .meter_per_foot = from.at("ft_m"),
          .viscosity = from.at("viscosity_multiplier").get<double>() * from.at("viscosity_unit_ft2_s").get<double>(),
          .closed_conductance = from.at("closed_link_conductance_cfs_per_ft")};
}

// ---- building ------------------------------------------------------------------------------------------

/// The law's own `loss`, which the member of `ReferenceLaws` would hide.
parts::Loss loss_of(const auto& law, double flow) { return loss(law, flow); }

struct ReferenceLaws {
  std::vector<std::vector<ReferenceLaw>> terms;
  [[nodiscard]] solvers::EdgeLoss loss(int edge, double flow) const {
    parts::Loss sum;
    for (const ReferenceLaw& law : terms[at(edge)]) {
      sum = sum + std::visit([flow](const auto& one) { return loss_of(one, flow); }, law);
    }
    return {sum.pressure_loss, sum.slope};
  }
};

/// One case as a network of edges: elements in series between the same two points are one edge.
class CaseNetwork {
 public:
  CaseNetwork(const NetworkFile& file, const FileCase& wanted, Method method, const std::vector<char>& shut_pumps)
      : file_(file), wanted_(wanted), method_(method), shut_pumps_(shut_pumps) {
    number_nodes();
    for (std::size_t e = 0; e < file.elements.size(); ++e) start_chain(e);
  }

  [[nodiscard]] CaseFlows solve() const {
    const solvers::SteadyGraph graph(unknowns_, fixed_, edges_);
    solvers::SteadySolver solver(graph, laws_);
    const solvers::SteadyCase given{open_, {}, {}};
    solvers::SteadyState state;
    CaseFlows flows;
    flows.report = solver.solve(given, state);
    flows.worst_residual = measured(unknowns_, edges_, laws_, given, state).pressure / pascal_per_meter;
    flows.hose.assign(at(file_.hoses), 0.0);
    for (std::size_t e = 0; e < edges_.size(); ++e) {
      for (const int hose : hoses_of_[e]) flows.hose[at(hose)] = state.flow[e];
    }
    for (const std::size_t edge : pump_edges_) flows.pump.push_back(state.flow[edge]);
    return flows;
  }

 private:
  [[nodiscard]] bool leaking() const { return method_ == Method::library_leaking; }
  [[nodiscard]] bool is_open(int hose) const {
    return std::find(wanted_.open_hoses.begin(), wanted_.open_hoses.end(), hose) != wanted_.open_hoses.end();
  }

  /// A node inside a chain: no fixed head, one element in, one out.
  [[nodiscard]] bool is_inner(int node) const {
    return !file_.fixed_head[at(node)] && into_[at(node)] == 1 && out_[at(node)].size() == 1;
  }

  void number_nodes() {
    into_.assign(file_.fixed_head.size(), 0);
    out_.resize(file_.fixed_head.size());
    for (std::size_t e = 0; e < file_.elements.size(); ++e) {
      ++into_[at(file_.elements[e].to)];
      out_[at(file_.elements[e].from)].push_back(e);
    }
    number_.assign(file_.fixed_head.size(), -1);
    for (std::size_t n = 0; n < number_.size(); ++n) {
      if (!file_.fixed_head[n] && !is_inner(static_cast<int>(n))) number_[n] = unknowns_++;
    }
    for (std::size_t n = 0; n < number_.size(); ++n) {
      if (!file_.fixed_head[n]) continue;
      number_[n] = unknowns_ + static_cast<int>(fixed_.size());
      fixed_.push_back(*file_.fixed_head[n] * pascal_per_meter);
    }
  }

  void start_chain(std::size_t first) {
    if (is_inner(file_.elements[first].from)) return;
    edges_.push_back({number_[at(file_.elements[first].from)], 0, -solvers::unbounded, solvers::unbounded});
    laws_.terms.emplace_back();
    hoses_of_.emplace_back();
    open_.push_back(1);
    std::size_t e = first;
    add(file_.elements[e]);
    while (is_inner(file_.elements[e].to)) {
      e = out_[at(file_.elements[e].to)].front();
      add(file_.elements[e]);
    }
    edges_.back().to = number_[at(file_.elements[e].to)];
  }

  void add(const FileElement& element) {
    switch (element.kind) {
      case Kind::pump:
        return add_pump(element);
      case Kind::pipe:
        return add_pipe(element.pipe);
      case Kind::component:
        return add_component(element);
      case Kind::nozzle:
        return add_nozzle(element);
    }
  }

  void add_law(ReferenceLaw law) { laws_.terms.back().push_back(std::move(law)); }

  void add_closed() { add_law(LibraryClosed{pascal_per_meter / file_.library.closed_conductance_si()}); }

  void add_pump(const FileElement& element) {
    const std::size_t pump = pump_edges_.size();
    pump_edges_.push_back(edges_.size() - 1);
    if (leaking() && !shut_pumps_.empty() && shut_pumps_[pump] != 0) return add_closed();
    auto curve = std::get<parts::PowerCurve>(parts::pump_from_three_points(element.pump));
    curve.shutoff *= pascal_per_meter;
    curve.factor *= pascal_per_meter;
    add_law(parts::PumpLaw{curve, 1.0, {}});
    edges_.back().lowest = 0.0;
  }

  void add_pipe(const PipeData& pipe) {
    if (method_ != Method::own) return add_law(library_pipe(pipe, file_.library, pascal_per_meter));
    const double viscosity = density * file_.kinematic_viscosity;
    add_law(parts::pipe_law({pipe.length, pipe.bore, pipe.roughness, density, viscosity},
                            parts::from_loss_coefficient(pipe.minor_loss, pipe.bore, density)));
  }

  void add_component(const FileElement& element) {
    add_law(parts::QuadraticLaw{pascal_per_meter * element.linear, pascal_per_meter * element.quadratic});
  }

  void add_nozzle(const FileElement& element) {
    hoses_of_.back().push_back(element.hose);
    if (!is_open(element.hose)) {
      if (leaking()) return add_closed();
      open_.back() = 0;
      return;
    }
    add_component(element);
    if (!wanted_.limiter || !element.limit) return;
    if (leaking()) {
      add_law(LibraryLimiter{*element.limit, pascal_per_meter / file_.library.closed_conductance_si()});
    } else {
      edges_.back().highest = *element.limit;
    }
  }

  const NetworkFile& file_;
  const FileCase& wanted_;
  Method method_;
  const std::vector<char>& shut_pumps_;
  std::vector<int> into_, number_;
  std::vector<std::vector<std::size_t>> out_;
  int unknowns_ = 0;
  std::vector<double> fixed_;
  std::vector<solvers::SteadyEdge> edges_;
  ReferenceLaws laws_;
  std::vector<char> open_;
  std::vector<std::vector<int>> hoses_of_;  ///< per edge
  std::vector<std::size_t> pump_edges_;
};

}  // namespace

NetworkFile read_network(const Json& from) {
  NetworkFile file;
  std::map<std::string, int> nodes;
  for (const Json& node : from.at("nodes")) {
    nodes[node.at("id")] = static_cast<int>(file.fixed_head.size());
    const bool fixed = node.contains("fixed_head_m");
    file.fixed_head.push_back(fixed ? std::optional(node.at("fixed_head_m").get<double>()) : std::nullopt);
  }
  for (const Json& element : from.at("elements")) {
    file.elements.push_back(read_element(element, nodes));
    file.hoses = std::max(file.hoses, file.elements.back().hose + 1);
  }
  for (const Json& one : from.at("cases")) file.cases.push_back({one.at("limiter"), one.at("open_hoses")});
  file.kinematic_viscosity = from.at("constants").at("kinematic_viscosity_m2_s");
  file.library = read_constants(from.at("constants"), file.kinematic_viscosity);
  return file;
}

CaseFlows solve_case(const NetworkFile& file, const FileCase& wanted, Method method) {
  CaseFlows flows = CaseNetwork(file, wanted, method, {}).solve();
  if (method != Method::library_leaking) return flows;
  // A pump that gives nothing is a closed link to the library, and leaks backward like one.
  std::vector<char> shut;
  for (const double flow : flows.pump) shut.push_back(flow <= 0.0 ? 1 : 0);
  flows = CaseNetwork(file, wanted, method, shut).solve();
  for (std::size_t i = 0; i < shut.size(); ++i) {
    if (shut[i] != 0) flows.pump[i] = 0.0;  // as the library reports it
  }
  return flows;
}

}  // namespace forecourse::test
