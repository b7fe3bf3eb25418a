#include "forecourse/site/consistency/line_graph.h"

#include "forecourse/site/places.h"

namespace forecourse::site {

LineGraph::LineGraph(const Site& site) {
  for (const Pump& pump : site.pumps) add_place(pump.id.text);
  for (const Branch& branch : site.branches) add_place(branch.id.text);
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) add_place(place_name(dispenser, inlet));
  }
  edges_at_.resize(names_.size());
  for (const Line& line : site.lines) {
    const int from = place(line.from.text);
    const int to = place(line.to.text);
    if (from < 0 || to < 0 || from == to) continue;
    edges_at_[static_cast<std::size_t>(from)].push_back(edges_.size());
    edges_at_[static_cast<std::size_t>(to)].push_back(edges_.size());
    edges_.push_back({&line, from, to, line.check_valve.value_or(false)});
  }
}

void LineGraph::add_place(const std::string& id) {
  if (id.empty()) return;
  if (index_.emplace(id, static_cast<int>(names_.size())).second) names_.push_back(id);
}

int LineGraph::place(const std::string& id) const {
  const auto found = index_.find(id);
  return found == index_.end() ? -1 : found->second;
}

bool LineGraph::has_line(int place) const { return place >= 0 && !edges_at_[static_cast<std::size_t>(place)].empty(); }

std::vector<bool> LineGraph::reached_from(const std::vector<int>& starts) const { return walk(starts, false); }
std::vector<bool> LineGraph::reaching(const std::vector<int>& ends) const { return walk(ends, true); }

std::vector<bool> LineGraph::walk(const std::vector<int>& starts, bool backward) const {
  std::vector<bool> seen(names_.size(), false);
  std::vector<int> open;
  const auto visit = [&](int place) {
    if (place < 0 || seen[static_cast<std::size_t>(place)]) return;
    seen[static_cast<std::size_t>(place)] = true;
    open.push_back(place);
  };
  for (const int start : starts) visit(start);
  while (!open.empty()) {
    const int here = open.back();
    open.pop_back();
    for (const std::size_t i : edges_at_[static_cast<std::size_t>(here)]) {
      const Edge& edge = edges_[i];
      const int entry = backward ? edge.to : edge.from;
      if (edge.one_way && here != entry) continue;
      visit(here == edge.from ? edge.to : edge.from);
    }
  }
  return seen;
}

}  // namespace forecourse::site
