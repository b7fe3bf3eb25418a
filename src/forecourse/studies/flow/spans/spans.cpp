#include "forecourse/studies/flow/spans/spans.h"

#include <algorithm>

#include "forecourse/studies/flow/open_sets.h"
#include "forecourse/studies/flow/spans/place_spans.h"
#include "forecourse/studies/flow/spans/value_spans.h"
#include "forecourse/studies/flow/spans/vapor_margin.h"

namespace forecourse::studies {
namespace {

/// Open sets, each once, with the asked ones first.
class Sets {
 public:
  explicit Sets(const std::vector<OpenSet>& asked) {
    for (const OpenSet& set : asked) hoses_.push_back(set.hoses);
  }
  std::size_t add(const std::vector<std::string>& hoses) {
    const auto known = std::find(hoses_.begin(), hoses_.end(), hoses);
    if (known != hoses_.end()) return static_cast<std::size_t>(known - hoses_.begin());
    hoses_.push_back(hoses);
    return hoses_.size() - 1;
  }
  [[nodiscard]] const HoseSets& hoses() const { return hoses_; }

 private:
  HoseSets hoses_;
};

void put(const Ranges& ranges, std::size_t set, const std::string& hose, std::optional<double>& low,
         std::optional<double>& high) {
  const auto found = ranges.sets[set].find(hose);
  if (found == ranges.sets[set].end()) return;
  low = found->second.low;
  high = found->second.high;
}

void put_summaries(const site::Site& site, const Ranges& ranges, Sets& sets, FlowResult& result) {
  const std::size_t all = sets.add(all_hoses(site).hoses);
  const std::size_t each = sets.add(one_hose_each(site).hoses);
  for (HoseSummary& hose : result.hoses) {
    const auto put_flow = [&](std::optional<SummaryFlow>& flow, std::size_t set) {
      if (flow) put(ranges, set, hose.id, flow->low, flow->high);
    };
    put_flow(hose.alone, sets.add({hose.id}));
    put_flow(hose.one_each, each);
    put_flow(hose.all_open, all);
  }
}

void put_states(const Ranges& ranges, FlowResult& result) {
  for (std::size_t i = 0; i < result.states.size(); ++i) {
    for (SystemFlow& system : result.states[i].systems) {
      for (HoseFlow& hose : system.hoses) {
        if (hose.open) put(ranges, i, hose.id, hose.low, hose.high);
      }
    }
  }
}

/// Rows of the uncertain values, and the range of every flow.
void add_values(const site::Site& site, const network::StationNetwork& network, FlowResult& result,
                const Context& context) {
  const std::vector<site::UncertainValue> values = site::uncertain_values(site);
  std::vector<bool> used;
  used.reserve(values.size());
  for (const site::UncertainValue& value : values) used.push_back(can_move_flow(value));
  if (std::find(used.begin(), used.end(), true) == used.end()) return;
  Sets sets(result.options.open_sets);
  sets.add(all_hoses(site).hoses);
  sets.add(one_hose_each(site).hoses);
  for (const HoseSummary& hose : result.hoses) sets.add({hose.id});
  const OneAtATime singles = one_at_a_time(site, used, sets.hoses(), context);
  std::vector<bool> moves(values.size(), false);
  for (std::size_t i = 0; i < result.spans.sets.size(); ++i) {
    result.spans.sets[i].flows = value_spans(values, singles, i, network, moves);
  }
  for (std::size_t v = 0; v < values.size(); ++v) {
    if (used[v] && !moves[v]) result.spans.without_effect.push_back(values[v].path);
  }
  const Ranges ranges = hose_ranges(site, singles, sets.hoses(), context);
  result.spans.corners = ranges.corners;
  result.spans.monotone = ranges.monotone;
  put_states(ranges, result);
  put_summaries(site, ranges, sets, result);
}

}  // namespace

void add_spans(const site::Site& site, const network::StationNetwork& network, network::StationSolver& solver,
               FlowResult& result, const Context& context) {
  result.spans = {};
  if (result.options.open_sets.empty()) return;
  HoseSets asked;
  for (const OpenSet& set : result.options.open_sets) {
    result.spans.sets.push_back({set.name, {}});
    asked.push_back(set.hoses);
  }
  add_values(site, network, result, context);
  const std::vector<SetFlows> likely = solve_sets(network, solver, asked);
  const PlaceSpans solved = solve_place_spans(site, network, asked);
  for (std::size_t i = 0; i < asked.size(); ++i) {
    std::vector<FlowSpan> rows = place_spans(site, network, likely[i], solved, i);
    auto& flows = result.spans.sets[i].flows;
    flows.insert(flows.end(), std::make_move_iterator(rows.begin()), std::make_move_iterator(rows.end()));
  }
  result.spans.margins = vapor_margins(site, network, solver.solve(asked.front()));
}

}  // namespace forecourse::studies
