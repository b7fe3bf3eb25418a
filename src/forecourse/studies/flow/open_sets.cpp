#include "forecourse/studies/flow/open_sets.h"

#include <fmt/format.h>

#include <set>

namespace forecourse::studies {
namespace {

/// What a hose draws, as one word: two hoses of one dispenser with the same word are alternatives.
std::string drawn(const site::Hose& hose) {
  std::string out = hose.product.text;
  for (const site::BlendShare& share : hose.blend) out += "+" + share.product.text;
  return out;
}

}  // namespace

OpenSet all_hoses(const site::Site& site) {
  OpenSet set{"all hoses open", {}};
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) set.hoses.push_back(hose.id.text);
  }
  return set;
}

OpenSet one_hose_each(const site::Site& site) {
  OpenSet set{"one hose of each product at each dispenser", {}};
  for (const site::Dispenser& d : site.dispensers) {
    std::set<std::string> seen;
    for (const site::Hose& hose : d.hoses) {
      if (seen.insert(drawn(hose)).second) set.hoses.push_back(hose.id.text);
    }
  }
  return set;
}

std::vector<OpenSet> asked_sets(const site::Site& site, const FlowOptions& options) {
  if (!options.open_sets.empty()) return options.open_sets;
  std::vector<OpenSet> sets;
  for (const auto& hoses : site.flow.open) {
    OpenSet set;
    for (const site::Name& hose : hoses) {
      set.name += (set.name.empty() ? "" : ", ") + hose.text;
      set.hoses.push_back(hose.text);
    }
    sets.push_back(std::move(set));
  }
  if (!sets.empty()) return sets;
  sets.push_back(all_hoses(site));
  OpenSet each = one_hose_each(site);
  if (each.hoses.size() < sets.front().hoses.size()) sets.push_back(std::move(each));
  return sets;
}

std::string hoses_offered(const site::Site& site, const std::string& id) {
  for (const site::Dispenser& d : site.dispensers) {
    if (d.id.text != id || d.hoses.empty()) continue;
    std::string out;
    for (const site::Hose& hose : d.hoses) out.append(out.empty() ? "" : ", ").append(hose.id.text);
    return fmt::format("'{}' is a dispenser; its hoses are {}", id, out);
  }
  return {};
}

}  // namespace forecourse::studies
