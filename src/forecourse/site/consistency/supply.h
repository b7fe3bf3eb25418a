#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/site/consistency/line_graph.h"

namespace forecourse::site {

/// A pump as a source of its product.
struct Source {
  const Pump* pump = nullptr;
  const Tank* tank = nullptr;  ///< null when it is not known, or a compartment
  std::string product;         ///< empty when it is not known
  int place = -1;
  std::vector<bool> reaches;  ///< by place
};

/// A dispenser inlet as a place.
struct InletPlace {
  const Dispenser* dispenser = nullptr;
  const Inlet* inlet = nullptr;
  std::string name;  ///< empty when it is not known
  int place = -1;
};

/// Who can feed what: every pump with the places it reaches, every inlet with its place.
class Supply {
 public:
  Supply(const Site& site, const LineGraph& graph);

  [[nodiscard]] const std::vector<Source>& sources() const { return sources_; }
  [[nodiscard]] const std::vector<InletPlace>& inlets() const { return inlets_; }
  /// The inlets of one dispenser.
  [[nodiscard]] std::vector<const InletPlace*> inlets_of(const Dispenser& dispenser) const;

  [[nodiscard]] static bool reaches(const Source& source, const InletPlace& inlet) {
    return inlet.place >= 0 && !source.reaches.empty() && source.reaches[static_cast<std::size_t>(inlet.place)];
  }

 private:
  std::vector<Source> sources_;
  std::vector<InletPlace> inlets_;
  std::map<const Dispenser*, std::vector<std::size_t>> inlets_of_;
};

/// The products that a hose takes.
[[nodiscard]] std::vector<std::string> products_of(const Hose& hose);

}  // namespace forecourse::site
