#include "forecourse/studies/flow/spans/ranges.h"

#include <algorithm>

namespace forecourse::studies {
namespace {

using site::End;

/// Where each value stands; empty: it does not matter.
using Corner = std::vector<std::optional<End>>;

/// A hose in a set whose low or high a corner gives.
struct Asked {
  std::size_t set;
  std::string hose;
};

struct CornerTask {
  Corner corner;
  std::vector<Asked> asked;
};

/// Both corners of one hose.
struct HoseCorners {
  Corner lower, upper;
  bool monotone = true;
};

/// The hose as one value alone leaves it; as likely where that is not determined.
Give give_of(const SetFlows& flows, const std::string& hose, const Give& likely) {
  const auto found = flows.hoses.find(hose);
  return found == flows.hoses.end() ? likely : found->second;
}

void judge(const Give& low, const Give& likely, const Give& high, HoseCorners& out) {
  const bool low_less = gives_less(low, likely);
  const bool high_less = gives_less(high, likely);
  const bool low_more = gives_less(likely, low);
  const bool high_more = gives_less(likely, high);
  if (!low_less && !high_less && !low_more && !high_more) {
    out.lower.emplace_back();
    out.upper.emplace_back();
    return;
  }
  if ((low_less && high_less) || (low_more && high_more)) out.monotone = false;
  const End least = gives_less(low, high) ? (low_less ? End::low : End::likely) : (high_less ? End::high : End::likely);
  const End most = gives_less(low, high) ? (high_more ? End::high : End::likely) : (low_more ? End::low : End::likely);
  out.lower.emplace_back(least);
  out.upper.emplace_back(most);
}

HoseCorners corners_of(const OneAtATime& singles, std::size_t set, const std::string& hose) {
  HoseCorners out;
  const Give& likely = singles.likely[set].hoses.at(hose);
  for (std::size_t v = 0; v < singles.low.size(); ++v) {
    judge(give_of(singles.low[v][set], hose, likely), likely, give_of(singles.high[v][set], hose, likely), out);
  }
  return out;
}

bool agree(const Corner& a, const Corner& b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] && b[i] && *a[i] != *b[i]) return false;
  }
  return true;
}

/// Puts a hose to a corner that says nothing else, or to a new one.
void add(std::vector<CornerTask>& tasks, const Corner& corner, Asked asked) {
  auto task = std::find_if(tasks.begin(), tasks.end(), [&](const CornerTask& t) { return agree(t.corner, corner); });
  if (task == tasks.end()) {
    tasks.push_back({corner, {std::move(asked)}});
    return;
  }
  for (std::size_t i = 0; i < corner.size(); ++i) {
    if (!task->corner[i]) task->corner[i] = corner[i];
  }
  task->asked.push_back(std::move(asked));
}

std::vector<End> ends_of(const Corner& corner) {
  std::vector<End> ends;
  for (const auto& end : corner) ends.push_back(end.value_or(End::likely));
  return ends;
}

/// The sets that a corner is asked for, each once, with where its flows are.
std::vector<std::size_t> sets_of(const CornerTask& task) {
  std::vector<std::size_t> sets;
  for (const Asked& asked : task.asked) {
    if (std::find(sets.begin(), sets.end(), asked.set) == sets.end()) sets.push_back(asked.set);
  }
  return sets;
}

/// Widens ranges by what the corners give; a hose that a corner does not determine has none.
void widen(const CornerTask& task, const std::vector<std::size_t>& sets, const std::vector<SetFlows>& flows,
           Ranges& out) {
  for (const Asked& asked : task.asked) {
    const auto index = std::find(sets.begin(), sets.end(), asked.set) - sets.begin();
    const SetFlows& given = flows[static_cast<std::size_t>(index)];
    const auto range = out.sets[asked.set].find(asked.hose);
    if (range == out.sets[asked.set].end()) continue;
    const auto hose = given.hoses.find(asked.hose);
    if (hose == given.hoses.end()) {
      out.sets[asked.set].erase(range);
      continue;
    }
    range->second.low = std::min(range->second.low, hose->second.flow);
    range->second.high = std::max(range->second.high, hose->second.flow);
  }
}

/// The range that the values give alone.
FlowRange alone(const OneAtATime& singles, std::size_t set, const std::string& hose) {
  const Give& likely = singles.likely[set].hoses.at(hose);
  FlowRange range{likely.flow, likely.flow};
  for (const auto* side : {&singles.low, &singles.high}) {
    for (const auto& value : *side) {
      const Give give = give_of(value[set], hose, likely);
      range.low = std::min(range.low, give.flow);
      range.high = std::max(range.high, give.flow);
    }
  }
  return range;
}

/// True if a value alone leaves the hose undetermined.
bool is_lost(const OneAtATime& singles, std::size_t set, const std::string& hose) {
  const auto lacks = [&](const auto& value) { return value[set].hoses.count(hose) == 0; };
  return std::any_of(singles.low.begin(), singles.low.end(), lacks) ||
         std::any_of(singles.high.begin(), singles.high.end(), lacks);
}

}  // namespace

OneAtATime one_at_a_time(const site::Site& site, const std::vector<bool>& used, const HoseSets& sets,
                         const Context& context) {
  OneAtATime out;
  out.likely = solve_sets(site, sets);
  out.low.assign(used.size(), out.likely);
  out.high.assign(used.size(), out.likely);
  context.each(2 * used.size(), [&](std::size_t piece) {
    const std::size_t value = piece / 2;
    if (!used[value]) return;
    std::vector<End> ends(used.size(), End::likely);
    ends[value] = piece % 2 == 0 ? End::low : End::high;
    (piece % 2 == 0 ? out.low : out.high)[value] = solve_sets(site::at_ends(site, ends), sets);
  });
  return out;
}

Ranges hose_ranges(const site::Site& site, const OneAtATime& singles, const HoseSets& sets, const Context& context) {
  Ranges out;
  std::vector<CornerTask> tasks;
  for (std::size_t set = 0; set < sets.size(); ++set) {
    out.sets.emplace_back();
    for (const auto& [hose, likely] : singles.likely[set].hoses) {
      if (is_lost(singles, set, hose)) continue;
      const HoseCorners corners = corners_of(singles, set, hose);
      out.monotone = out.monotone && corners.monotone;
      out.sets[set].emplace(hose, alone(singles, set, hose));
      add(tasks, corners.lower, {set, hose});
      add(tasks, corners.upper, {set, hose});
    }
  }
  std::vector<std::vector<SetFlows>> solved(tasks.size());
  context.each(tasks.size(), [&](std::size_t t) {
    HoseSets asked;
    for (const std::size_t set : sets_of(tasks[t])) asked.push_back(sets[set]);
    solved[t] = solve_sets(site::at_ends(site, ends_of(tasks[t].corner)), asked);
  });
  for (std::size_t t = 0; t < tasks.size(); ++t) widen(tasks[t], sets_of(tasks[t]), solved[t], out);
  out.corners = static_cast<int>(tasks.size());
  return out;
}

}  // namespace forecourse::studies
