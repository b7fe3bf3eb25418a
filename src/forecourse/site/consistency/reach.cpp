#include "forecourse/site/consistency/reach.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace forecourse::site {

namespace {

bool is_known_product(const Site& site, const std::string& id) {
  return std::any_of(site.products.begin(), site.products.end(), [&](const Product& p) { return p.id.text == id; });
}

/// Whether every line has two known ends and every pump a known product. Where one does not, that was told of, and
/// what follows from it is not told as well.
bool is_whole(const Site& site, const LineGraph& graph, const Supply& supply) {
  const bool lines = std::all_of(site.lines.begin(), site.lines.end(), [&](const Line& line) {
    return graph.place(line.from.text) >= 0 && graph.place(line.to.text) >= 0;
  });
  const auto& sources = supply.sources();
  return lines && std::all_of(sources.begin(), sources.end(),
                              [&](const Source& source) { return is_known_product(site, source.product); });
}

class ReachCheck {
 public:
  ReachCheck(const Site& site, const LineGraph& graph, const Supply& supply, Findings& findings)
      : site_(site), graph_(graph), supply_(supply), findings_(findings), whole_(is_whole(site, graph, supply)) {
    for (const Line& line : site.lines) {
      named_by_lines_.insert(line.from.text);
      named_by_lines_.insert(line.to.text);
    }
  }

  void check_inlets() {
    std::set<std::string> seen;
    std::vector<const InletPlace*> unlined;
    for (const InletPlace& at : supply_.inlets()) {
      // A line that names it but has no other end was told of there.
      if (at.name.empty() || !seen.insert(at.name).second || named_by_lines_.count(at.name) != 0) continue;
      unlined.push_back(&at);
    }
    if (unlined.size() <= astray_ends()) return;  // the lines that go astray were told of: they may be meant for these
    for (const InletPlace* at : unlined) {
      findings_.error(at->inlet->where, fmt::format("no line goes to the inlet '{}'", at->name),
                      fmt::format("add a [[line]] with to = \"{}\"", at->name));
    }
  }

  void check_hose(const Dispenser& dispenser, const Hose& hose, const std::string& product) {
    if (!is_known_product(site_, product)) return;
    std::vector<const InletPlace*> inlets = supply_.inlets_of(dispenser);
    const auto unsaid = [](const InletPlace* at) { return at->inlet->product.empty(); };
    if (std::any_of(inlets.begin(), inlets.end(), unsaid)) return;  // it was told of, and may be the one
    std::erase_if(inlets, [&](const InletPlace* at) { return at->inlet->product.text != product; });
    if (inlets.empty()) return tell_no_inlet(dispenser, hose, product);
    const auto lined = [&](const InletPlace* at) { return graph_.has_line(at->place); };
    if (!whole_ || std::none_of(inlets.begin(), inlets.end(), lined)) return;  // told of there
    const bool fed = std::any_of(inlets.begin(), inlets.end(), [&](const InletPlace* at) { return is_reached(*at); });
    if (!fed) tell_unreached(hose, product);
  }

  void check_source(const Source& source) {
    if (!is_known_product(site_, source.product)) return;
    for (const InletPlace& at : supply_.inlets()) {
      const std::string& product = at.inlet->product.text;
      if (!Supply::reaches(source, at) || product == source.product || !is_known_product(site_, product)) continue;
      Diagnostic& d = findings_.error(
          source.pump->tank.where,
          fmt::format("pump '{}' draws '{}' from tank '{}', but its line leads to the inlet '{}' of '{}'",
                      source.pump->id.text, source.product, source.pump->tank.text, at.name, product),
          "name another tank, or another inlet in the line");
      relate(d, at.inlet->where, fmt::format("the inlet '{}'", at.name));
      return;
    }
  }

 private:
  /// By a pump of its product; a pump of another product was told of there.
  [[nodiscard]] bool is_reached(const InletPlace& at) const {
    const auto& sources = supply_.sources();
    return std::any_of(sources.begin(), sources.end(),
                       [&](const Source& source) { return Supply::reaches(source, at); });
  }

  /// Ends of lines that are at no place of the station, or at the place of the other end.
  [[nodiscard]] std::size_t astray_ends() const {
    std::size_t count = 0;
    for (const Line& line : site_.lines) {
      count += graph_.place(line.from.text) < 0 ? 1 : 0;
      count += graph_.place(line.to.text) < 0 || line.from == line.to ? 1 : 0;
    }
    return count;
  }

  void tell_no_inlet(const Dispenser& dispenser, const Hose& hose, const std::string& product) {
    if (dispenser.id.empty()) return;
    findings_.error(hose.where,
                    fmt::format("hose '{}' takes '{}', but dispenser '{}' has no inlet for it", hose.id.text, product,
                                dispenser.id.text),
                    fmt::format("add a [[dispenser.inlet]] with product = \"{}\"", product));
  }

  void tell_unreached(const Hose& hose, const std::string& product) {
    Diagnostic& d =
        findings_.error(hose.where, fmt::format("no pump of '{}' reaches hose '{}'", product, hose.id.text),
                        "join the lines from the pump to the dispenser, and look at the way their check valves point");
    for (const Source& source : supply_.sources()) {
      if (source.product != product) continue;
      relate(d, source.pump->where, fmt::format("pump '{}' draws '{}'", source.pump->id.text, product));
    }
    if (d.related.empty()) d.hint = fmt::format("no pump draws from a tank of '{}'", product);
  }

  const Site& site_;
  const LineGraph& graph_;
  const Supply& supply_;
  Findings& findings_;
  bool whole_;
  std::set<std::string> named_by_lines_;
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

std::vector<int> places_with_hoses(const Supply& supply) {
  std::vector<int> places;
  for (const InletPlace& at : supply.inlets()) {
    if (!at.dispenser->hoses.empty()) places.push_back(at.place);
  }
  return places;
}

/// \return the lines of all loops
std::vector<const Line*> check_loops(const LineGraph& graph, Findings& findings) {
  std::vector<const Line*> all;
  for (const auto& loop : LoopSearch(graph).loops()) {
    all.insert(all.end(), loop.begin(), loop.end());
    std::vector<std::string> ids;
    ids.reserve(loop.size());
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

void check_dead_lines(const LineGraph& graph, const Supply& supply, const std::vector<const Line*>& looped,
                      Findings& findings) {
  const bool told = std::any_of(findings.all.begin(), findings.all.end(),
                                [](const Diagnostic& d) { return d.severity == Severity::error; });
  std::vector<int> pumps;
  for (const Source& source : supply.sources()) pumps.push_back(source.place);
  const std::vector<bool> fed = graph.reached_from(pumps);
  const std::vector<bool> used = graph.reaching(places_with_hoses(supply));
  const auto flows = [&](int from, int to) {
    return fed[static_cast<std::size_t>(from)] && used[static_cast<std::size_t>(to)];
  };
  for (const LineGraph::Edge& edge : graph.edges()) {
    if (std::find(looped.begin(), looped.end(), edge.line) != looped.end()) continue;
    if (flows(edge.from, edge.to) || (!edge.one_way && flows(edge.to, edge.from))) continue;
    const bool backward = edge.one_way && flows(edge.to, edge.from);
    if (told && !backward) continue;
    findings.warn(
        edge.line->where,
        fmt::format("line '{}' can never flow: {}", edge.line->id.text,
                    backward ? "its check valve points from the hoses to the pumps" : "it joins no pump to a hose"),
        backward ? "exchange 'from' and 'to'" : "");
  }
}

}  // namespace

void check_reach(const Site& site, const LineGraph& graph, const Supply& supply, Findings& findings) {
  ReachCheck check(site, graph, supply, findings);
  check.check_inlets();
  for (const Source& source : supply.sources()) check.check_source(source);
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Hose& hose : dispenser.hoses) {
      for (const std::string& product : products_of(hose)) check.check_hose(dispenser, hose, product);
    }
  }
}

void check_lines(const Site& site, const LineGraph& graph, const Supply& supply, Findings& findings) {
  for (const Line& line : site.lines) {
    if (line.from.empty() || !(line.from == line.to)) continue;
    findings.error(line.to.where, fmt::format("line '{}' goes from '{}' to itself", line.id.text, line.from.text),
                   "name the place at its other end");
  }
  const std::vector<const Line*> looped = check_loops(graph, findings);
  if (is_whole(site, graph, supply)) check_dead_lines(graph, supply, looped, findings);
}

}  // namespace forecourse::site
