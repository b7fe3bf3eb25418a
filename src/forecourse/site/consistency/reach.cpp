#include "forecourse/site/consistency/reach.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/site/places.h"

namespace forecourse::site {

namespace {

bool runs(const Pump& pump) { return pump.running.value_or(true); }

std::vector<int> pumps_of(const Site& site, const LineGraph& graph, const std::string& product) {
  std::vector<int> places;
  for (const Pump& pump : site.pumps) {
    if (runs(pump) && product_of(site, pump) == product) places.push_back(graph.place(pump.id.text));
  }
  return places;
}

bool is_known_product(const Site& site, const std::string& id) {
  return std::any_of(site.products.begin(), site.products.end(), [&](const Product& p) { return p.id.text == id; });
}

/// Whether every line has two known ends and every pump a known product. Where one does not, that was told of, and
/// what follows from it is not told as well.
bool is_whole(const Site& site, const LineGraph& graph) {
  const bool lines = std::all_of(site.lines.begin(), site.lines.end(), [&](const Line& line) {
    return graph.place(line.from.text) >= 0 && graph.place(line.to.text) >= 0;
  });
  const bool pumps = std::all_of(site.pumps.begin(), site.pumps.end(),
                                 [&](const Pump& pump) { return is_known_product(site, product_of(site, pump)); });
  return lines && pumps;
}

class ReachCheck {
 public:
  ReachCheck(const Site& site, const LineGraph& graph, Findings& findings)
      : site_(site), graph_(graph), findings_(findings) {}

  void check_inlets() {
    for (const Dispenser& dispenser : site_.dispensers) {
      for (const Inlet& inlet : dispenser.inlets) {
        const std::string name = place_name(dispenser, inlet);
        if (!first_of_its_name(name, inlet)) continue;
        if (name.empty() || graph_.has_line(graph_.place(name)) || has_broken_line(name)) continue;
        findings_.error(inlet.where, fmt::format("no line goes to the inlet '{}'", name),
                        fmt::format("add a [[line]] with to = \"{}\"", name));
      }
    }
  }

  void check_hose(const Dispenser& dispenser, const Hose& hose, const std::string& product) {
    if (!is_known_product(site_, product)) return;
    const std::vector<int> inlets = inlets_of(dispenser, product);
    if (inlets.empty()) return tell_no_inlet(dispenser, hose, product);
    const bool lined = std::any_of(inlets.begin(), inlets.end(), [&](int place) { return graph_.has_line(place); });
    if (!lined) return;  // told of at the inlet
    const std::vector<bool> reached = graph_.reached_from(pumps_of(site_, graph_, product));
    const bool reachable =
        std::any_of(inlets.begin(), inlets.end(), [&](int place) { return reached[static_cast<std::size_t>(place)]; });
    if (!reachable && is_whole(site_, graph_)) tell_unreached(hose, product);
  }

  void check_pump(const Pump& pump) {
    const std::string product = product_of(site_, pump);
    const int place = graph_.place(pump.id.text);
    if (place < 0 || product.empty()) return;
    const std::vector<bool> reached = graph_.reached_from({place});
    for (const Dispenser& dispenser : site_.dispensers) {
      for (const Inlet& inlet : dispenser.inlets) {
        const int at = graph_.place(place_name(dispenser, inlet));
        const bool foreign = at >= 0 && reached[static_cast<std::size_t>(at)] && inlet.product.text != product;
        if (!foreign || !is_known_product(site_, inlet.product.text)) continue;
        Diagnostic& d = findings_.error(
            pump.tank.where,
            fmt::format("pump '{}' draws '{}' from tank '{}', but its line leads to the inlet '{}' of '{}'",
                        pump.id.text, product, pump.tank.text, graph_.name(at), inlet.product.text),
            "name another tank, or another inlet in the line");
        relate(d, inlet.where, fmt::format("the inlet '{}'", graph_.name(at)));
        return;
      }
    }
  }

 private:
  [[nodiscard]] bool first_of_its_name(const std::string& name, const Inlet& inlet) const {
    for (const Dispenser& dispenser : site_.dispensers) {
      for (const Inlet& other : dispenser.inlets) {
        if (place_name(dispenser, other) == name) return &other == &inlet;
      }
    }
    return true;
  }

  /// An end of a line names this place, though its other end is not known: told of there.
  [[nodiscard]] bool has_broken_line(const std::string& name) const {
    return std::any_of(site_.lines.begin(), site_.lines.end(),
                       [&](const Line& line) { return line.from.text == name || line.to.text == name; });
  }

  [[nodiscard]] std::vector<int> inlets_of(const Dispenser& dispenser, const std::string& product) const {
    std::vector<int> places;
    for (const Inlet& inlet : dispenser.inlets) {
      const int place = inlet.product.text == product ? graph_.place(place_name(dispenser, inlet)) : -1;
      if (place >= 0) places.push_back(place);
    }
    return places;
  }

  void tell_no_inlet(const Dispenser& dispenser, const Hose& hose, const std::string& product) {
    if (dispenser.id.empty()) return;
    findings_.error(hose.where,
                    fmt::format("hose '{}' takes '{}', but dispenser '{}' has no inlet for it", hose.id.text, product,
                                dispenser.id.text),
                    fmt::format("add a [[dispenser.inlet]] with product = \"{}\"", product));
  }

  void tell_unreached(const Hose& hose, const std::string& product) {
    std::vector<const Pump*> pumps;
    for (const Pump& pump : site_.pumps) {
      if (product_of(site_, pump) == product) pumps.push_back(&pump);
    }
    Diagnostic& d = findings_.error(
        hose.where, fmt::format("no pump of '{}' reaches hose '{}'", product, hose.id.text),
        pumps.empty() ? fmt::format("no pump draws from a tank of '{}'", product)
                      : "join the lines from the pump to the dispenser, and look at the way their check valves point");
    for (const Pump* pump : pumps) {
      relate(d, pump->where,
             fmt::format("pump '{}' draws '{}'{}", pump->id.text, product, runs(*pump) ? "" : ", but it is off"));
    }
  }

  const Site& site_;
  const LineGraph& graph_;
  Findings& findings_;
};

/// Lines with check valves that point around in a loop, each loop once.
class LoopSearch {
 public:
  explicit LoopSearch(const LineGraph& graph) : graph_(graph), state_(graph.size(), State::fresh) {}

  std::vector<std::vector<const Line*>> loops() {
    for (int place = 0; place < static_cast<int>(graph_.size()); ++place) visit(place);
    return std::move(loops_);
  }

 private:
  enum class State { fresh, open, done };
  struct Step {
    int place;
    std::size_t next_edge;
  };

  State& state(int place) { return state_[static_cast<std::size_t>(place)]; }

  void visit(int start) {
    if (state(start) != State::fresh) return;
    std::vector<Step> path{{start, 0}};
    std::vector<const Line*> lines;
    state(start) = State::open;
    while (!path.empty()) {
      if (!advance(path, lines)) {
        state(path.back().place) = State::done;
        path.pop_back();
        if (!lines.empty()) lines.pop_back();
      }
    }
  }

  /// One edge further; false when the last place of the path has no more edges.
  bool advance(std::vector<Step>& path, std::vector<const Line*>& lines) {
    Step& here = path.back();
    while (here.next_edge < graph_.edges().size()) {
      const LineGraph::Edge& edge = graph_.edges()[here.next_edge++];
      if (!edge.one_way || edge.from != here.place || state(edge.to) == State::done) continue;
      if (state(edge.to) == State::open) {
        close_loop(path, lines, edge);
        continue;
      }
      state(edge.to) = State::open;
      lines.push_back(edge.line);
      path.push_back({edge.to, 0});
      return true;
    }
    return false;
  }

  void close_loop(const std::vector<Step>& path, const std::vector<const Line*>& lines, const LineGraph::Edge& edge) {
    std::size_t begin = 0;
    while (path[begin].place != edge.to) ++begin;
    std::vector<const Line*> loop(lines.begin() + static_cast<std::ptrdiff_t>(begin), lines.end());
    loop.push_back(edge.line);
    loops_.push_back(std::move(loop));
  }

  const LineGraph& graph_;
  std::vector<State> state_;
  std::vector<std::vector<const Line*>> loops_;
};

std::vector<int> places_with_hoses(const Site& site, const LineGraph& graph) {
  std::vector<int> places;
  for (const Dispenser& dispenser : site.dispensers) {
    if (dispenser.hoses.empty()) continue;
    for (const Inlet& inlet : dispenser.inlets) places.push_back(graph.place(place_name(dispenser, inlet)));
  }
  return places;
}

/// \return the lines of all loops
std::vector<const Line*> check_loops(const LineGraph& graph, Findings& findings) {
  std::vector<const Line*> all;
  for (const auto& loop : LoopSearch(graph).loops()) {
    all.insert(all.end(), loop.begin(), loop.end());
    std::vector<std::string> ids;
    for (const Line* line : loop) ids.push_back("'" + line->id.text + "'");
    Diagnostic& d =
        findings.error(loop.front()->where,
                       fmt::format("the check valves of the lines {} point around in a loop", fmt::join(ids, ", ")),
                       "fuel can flow around in no such loop: turn a line around, or leave out a check valve");
    for (std::size_t i = 1; i < loop.size(); ++i) {
      relate(d, loop[i]->where, fmt::format("from '{}' to '{}'", loop[i]->from.text, loop[i]->to.text));
    }
  }
  return all;
}

void check_dead_lines(const Site& site, const LineGraph& graph, const std::vector<const Line*>& looped,
                      Findings& findings) {
  std::vector<int> pumps;
  for (const Pump& pump : site.pumps) pumps.push_back(graph.place(pump.id.text));
  const std::vector<bool> fed = graph.reached_from(pumps);
  const std::vector<bool> used = graph.reaching(places_with_hoses(site, graph));
  const auto flows = [&](int from, int to) {
    return fed[static_cast<std::size_t>(from)] && used[static_cast<std::size_t>(to)];
  };
  for (const LineGraph::Edge& edge : graph.edges()) {
    if (std::find(looped.begin(), looped.end(), edge.line) != looped.end()) continue;
    if (flows(edge.from, edge.to) || (!edge.one_way && flows(edge.to, edge.from))) continue;
    const bool backward = edge.one_way && flows(edge.to, edge.from);
    findings.warn(
        edge.line->where,
        fmt::format("line '{}' can never flow: {}", edge.line->id.text,
                    backward ? "its check valve points from the hoses to the pumps" : "it joins no pump to a hose"),
        backward ? "exchange 'from' and 'to'" : "");
  }
}

}  // namespace

void check_reach(const Site& site, const LineGraph& graph, Findings& findings) {
  ReachCheck check(site, graph, findings);
  check.check_inlets();
  for (const Pump& pump : site.pumps) check.check_pump(pump);
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Hose& hose : dispenser.hoses) {
      for (const std::string& product : products_of(hose)) check.check_hose(dispenser, hose, product);
    }
  }
}

void check_lines(const Site& site, const LineGraph& graph, Findings& findings) {
  for (const Line& line : site.lines) {
    if (line.from.empty() || !(line.from == line.to)) continue;
    findings.error(line.to.where, fmt::format("line '{}' goes from '{}' to itself", line.id.text, line.from.text),
                   "name the place at its other end");
  }
  const std::vector<const Line*> looped = check_loops(graph, findings);
  if (is_whole(site, graph)) check_dead_lines(site, graph, looped, findings);
}

}  // namespace forecourse::site
