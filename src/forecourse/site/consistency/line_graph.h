#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::site {

/// The lines of a station as a graph of its places. Lines whose ends are not known are left out.
class LineGraph {
 public:
  explicit LineGraph(const Site& site);

  struct Edge {
    const Line* line;
    int from;
    int to;
    bool one_way;
  };

  /// Number of a place; -1 for an unknown one.
  [[nodiscard]] int place(const std::string& id) const;
  [[nodiscard]] std::size_t size() const { return names_.size(); }
  [[nodiscard]] const std::string& name(int place) const { return names_[static_cast<std::size_t>(place)]; }
  [[nodiscard]] const std::vector<Edge>& edges() const { return edges_; }
  [[nodiscard]] bool has_line(int place) const;
  /// Which places fuel can get to from `starts`, through check valves only the right way.
  [[nodiscard]] std::vector<bool> reached_from(const std::vector<int>& starts) const;
  /// From which places fuel can get to `ends`.
  [[nodiscard]] std::vector<bool> reaching(const std::vector<int>& ends) const;

 private:
  void add_place(const std::string& id);
  [[nodiscard]] std::vector<bool> walk(const std::vector<int>& starts, bool backward) const;

  std::map<std::string, int> index_;
  std::vector<std::string> names_;
  std::vector<Edge> edges_;
  std::vector<std::vector<std::size_t>> edges_at_;
};

}  // namespace forecourse::site
