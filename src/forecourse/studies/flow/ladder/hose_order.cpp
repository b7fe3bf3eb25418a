#include "forecourse/studies/flow/ladder/hose_order.h"

#include <algorithm>
#include <optional>
#include <set>

#include "forecourse/base/nearest_word.h"
#include "forecourse/network/build.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::studies {
namespace {

/// A hose of an order, with its place where that is in the file.
struct Asked {
  std::string id;
  std::optional<SourceSpan> where;
};

bool holds(const std::vector<std::string>& ids, const std::string& id) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string joined(const std::vector<std::string>& ids) {
  std::string out;
  for (const std::string& id : ids) out += (out.empty() ? "" : ", ") + id;
  return out;
}

/// The pumps of a system that feeds the hose and runs none; empty if each of its systems has one that runs.
std::optional<std::string> why_unfed(const network::StationNetwork& network, const std::string& hose) {
  for (const network::PipingSystem& system : network.systems) {
    if (!system.graph) continue;
    const bool is_of =
        std::any_of(system.hoses.begin(), system.hoses.end(), [&](const auto& h) { return h.id == hose; });
    const bool runs = std::any_of(system.pumps.begin(), system.pumps.end(), [](const auto& p) { return p.running; });
    if (!is_of || runs) continue;
    std::vector<std::string> pumps;
    for (const network::PumpPoint& pump : system.pumps) pumps.push_back(pump.id);
    return "no pump of '" + system.product + "' runs" + (pumps.empty() ? "" : ": off is " + joined(pumps));
  }
  return std::nullopt;
}

class OrderCheck {
 public:
  OrderCheck(const site::Site& site, const FlowOptions& options)
      : network_(network::build_network(site)), known_(all_hoses(site).hoses) {
    for (const std::string& id : options.order) asked_.push_back({id, std::nullopt});
    for (const OpenSet& set : options.open_sets) open_.insert(set.hoses.begin(), set.hoses.end());
    any_set_ = !options.open_sets.empty();
    if (!asked_.empty()) return;
    for (const site::Name& name : site.flow.order) asked_.push_back({name.text, name.where});
    open_.clear();
    for (const auto& set : site.flow.open) {
      for (const site::Name& name : set) open_.insert(name.text);
    }
    any_set_ = !site.flow.open.empty();
  }

  std::vector<Diagnostic> check() {
    std::set<std::string> seen;
    for (const Asked& one : asked_) {
      if (!seen.insert(one.id).second) {
        tell(one, "the order names hose '" + one.id + "' twice", "a hose opens once: leave one of them out");
      } else if (!holds(known_, one.id)) {
        const auto near = nearest_word(one.id, known_);
        tell(one, "the order names hose '" + one.id + "', but there is no such hose",
             near ? "did you mean '" + std::string(*near) + "'?" : "name a hose of the site");
      } else if (any_set_ && open_.count(one.id) == 0) {
        tell(one, "the order names hose '" + one.id + "', which is closed in every set of open hoses that is asked for",
             "add it to a set of open hoses, or leave it out of the order");
      } else if (const auto why = why_unfed(network_, one.id)) {
        tell(one, "the order names hose '" + one.id + "', which cannot deliver: " + *why,
             "let a pump run, or leave the hose out of the order");
      }
    }
    return std::move(problems_);
  }

 private:
  void tell(const Asked& one, std::string message, std::string hint) {
    problems_.push_back({Severity::error, std::move(message), one.where, std::move(hint), {}});
  }

  network::StationNetwork network_;
  std::vector<std::string> known_;
  std::vector<Asked> asked_;
  std::set<std::string> open_;
  bool any_set_ = false;
  std::vector<Diagnostic> problems_;
};

}  // namespace

std::vector<std::string> asked_order(const site::Site& site, const FlowOptions& options) {
  if (!options.order.empty()) return options.order;
  std::vector<std::string> order;
  for (const site::Name& name : site.flow.order) order.push_back(name.text);
  return order;
}

std::vector<Diagnostic> check_order(const site::Site& site, const FlowOptions& options) {
  if (asked_order(site, options).empty()) return {};
  return OrderCheck(site, options).check();
}

}  // namespace forecourse::studies
