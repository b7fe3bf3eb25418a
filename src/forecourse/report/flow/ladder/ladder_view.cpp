#include "forecourse/report/flow/ladder/ladder_view.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report {
namespace {

using studies::Extreme;
using studies::Ladder;
using studies::LadderOrder;
using studies::Proof;
using studies::WorstStates;

constexpr std::size_t longest_list = 6;  // of hoses told by name

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

/// "all 6 open", "none open", "D1.a, D1.b", "all but D1.a", "24 of 36".
std::string open_in_words(const std::vector<std::string>& open, const WorstStates& states) {
  const auto count = static_cast<std::size_t>(states.hose_count);
  if (open.empty()) return "none open";
  if (open.size() == count) return count == 1 ? open.front() : "all " + std::to_string(count) + " open";
  if (open.size() == 1) return open.front() + " alone";
  if (open.size() <= longest_list) return joined(open);
  std::vector<std::string> shut;
  for (const studies::HoseExtremes& hose : states.hoses) {
    if (std::find(open.begin(), open.end(), hose.hose) == open.end()) shut.push_back(hose.hose);
  }
  if (shut.size() <= longest_list) return "all but " + joined(shut);
  return std::to_string(open.size()) + " of " + std::to_string(count);
}

std::string count_words(int count) { return count == 1 ? "1 hose" : std::to_string(count) + " hoses"; }

std::string keeps_in_words(const Ladder& ladder, const std::string& flow, const char* who) {
  const auto all = static_cast<int>(ladder.steps.size());
  const int keeps = ladder.keeps.value_or(0);
  const std::string begin = std::string(who) + ": ";
  if (keeps == 0) return begin + "not one hose alone keeps " + flow + ".";
  if (keeps == all && all == 1) return begin + "the one hose keeps " + flow + ".";
  if (keeps == all)
    return begin + "every open hose keeps " + flow + ", also with all " + std::to_string(all) + " open.";
  const studies::LadderStep& next = ladder.steps[static_cast<std::size_t>(keeps)];
  return begin + "every open hose keeps " + flow + " with up to " + std::to_string(keeps) + " of " +
         std::to_string(all) + " open; with " + std::to_string(keeps + 1) + ", " +
         (next.tied > 1 ? slowest_in_words(next) + " do not." : next.slowest_hose + " does not.");
}

/// Whether every number of the worst order was proved.
bool is_proved(const Ladder& worst) {
  return std::none_of(worst.steps.begin(), worst.steps.end(),
                      [](const studies::LadderStep& step) { return step.proof == Proof::best_found; });
}

class Rows {
 public:
  Rows(const WorstStates& states, site::Display display, Glyphs glyphs)
      : states_(states), display_(display), glyphs_(glyphs) {}

  void add(const std::string& what, Measure measure, const Extreme& extreme, const std::string& beside = {}) {
    if (std::isnan(extreme.value)) return;
    const std::string gauge = measure == Measure::pressure ? " gauge" : "";
    rows.push_back({what, with_unit(measure, display_, extreme.value, glyphs_) + gauge + beside,
                    open_in_words(extreme.open, states_), word(extreme.proof)});
  }

  void add_run(const studies::RunExtreme& run) {
    const std::string beside =
        run.velocity > 0.0 ? ", " + with_unit(Measure::velocity, display_, run.velocity, glyphs_) : "";
    add((run.is_pump ? "most through pump " : "most through line ") + run.id, Measure::flow, run.flow, beside);
  }

  std::vector<WorstRow> rows;

 private:
  const WorstStates& states_;
  site::Display display_;
  Glyphs glyphs_;
};

/// The hose that gives least in any set, with how many others give as little.
std::string least_in_words(const WorstStates& states) {
  const auto tied = std::count_if(states.hoses.begin(), states.hoses.end(), [&](const studies::HoseExtremes& hose) {
    return hose.least.value <= states.slowest.value * (1.0 + 1e-6);
  });
  if (tied < 2) return states.slowest_hose;
  if (tied == static_cast<std::ptrdiff_t>(states.hoses.size())) return "all alike";
  return states.slowest_hose + " and " + std::to_string(tied - 1) + " alike";
}

/// The line or the pump with the most flow.
const studies::RunExtreme* worst_run(const WorstStates& states, bool pumps) {
  const studies::RunExtreme* worst = nullptr;
  for (const studies::RunExtreme& run : states.runs) {
    if (run.is_pump != pumps || std::isnan(run.flow.value)) continue;
    if (worst == nullptr || run.flow.value > worst->flow.value * (1.0 + 1e-9)) worst = &run;
  }
  return worst;
}

}  // namespace

std::vector<LadderGroup> ladder_groups(const studies::FlowResult& result) {
  std::vector<LadderGroup> groups;
  for (const Ladder& ladder : result.ladders) {
    auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& g) { return g.system == ladder.system; });
    if (group == groups.end()) group = groups.insert(groups.end(), {ladder.system, nullptr, nullptr, nullptr, nullptr});
    (ladder.order == LadderOrder::worst    ? group->worst
     : ladder.order == LadderOrder::spread ? group->spread
                                           : group->given) = &ladder;
  }
  for (const WorstStates& states : result.worst_states) {
    for (LadderGroup& group : groups) {
      if (group.system == states.system) group.states = &states;
    }
  }
  std::erase_if(groups, [](const LadderGroup& group) { return group.worst == nullptr || group.spread == nullptr; });
  return groups;
}

const char* word(LadderOrder order) {
  switch (order) {
    case LadderOrder::worst:
      return "worst";
    case LadderOrder::spread:
      return "typical";
    case LadderOrder::given:
      return "asked for";
  }
  return "worst";
}

const char* word(Proof proof) {
  switch (proof) {
    case Proof::argument:
      return "proved by argument";
    case Proof::enumeration:
      return "proved: every set solved";
    case Proof::best_found:
      return "best found";
  }
  return "best found";
}

std::string slowest_in_words(const studies::LadderStep& step) {
  if (all_alike(step)) return "all alike";
  return step.tied > 1 ? step.slowest_hose + " and " + std::to_string(step.tied - 1) + " alike" : step.slowest_hose;
}

std::vector<std::string> ladder_in_words(const LadderGroup& group, std::optional<double> keep_flow,
                                         site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  if (keep_flow) {
    const std::string flow = with_unit(Measure::flow, display, *keep_flow, glyphs);
    const bool proved = is_proved(*group.worst);
    out.push_back(keeps_in_words(*group.worst, flow, proved ? "Whichever open" : "In the worst sets found"));
    out.push_back(keeps_in_words(*group.spread, flow, "In the typical order"));
    if (group.given != nullptr) out.push_back(keeps_in_words(*group.given, flow, "In the order asked for"));
  }
  const studies::LadderStep& all = group.worst->steps.back();
  if (std::isnan(all.slowest)) {
    out.push_back("With all open: not determined.");
  } else if (all.hoses.size() > 1) {
    const std::string who = all_alike(all) ? "each"
                            : all.tied > 1 ? "the slowest, " + slowest_in_words(all) + ", each"
                                           : "the slowest, " + all.slowest_hose + ",";
    out.push_back("With all " + count_words(static_cast<int>(all.hoses.size())) + " open " + who + " gives " +
                  with_unit(Measure::flow, display, all.slowest, glyphs) + ".");
  }
  return out;
}

std::string ladder_terms() {
  return "Worst: of all sets of so many open hoses the one whose slowest hose is slowest. Typical: first one hose at "
         "each dispenser, in the order of the site file, then the second.";
}

std::vector<WorstRow> worst_rows(const LadderGroup& group, bool whole, site::Display display, Glyphs glyphs) {
  if (group.states == nullptr) return {};
  const WorstStates& states = *group.states;
  Rows rows(states, display, glyphs);
  rows.add("least of all hoses, " + least_in_words(states), Measure::flow, states.slowest);
  rows.add("highest pressure at an inlet, " + states.inlet.place, Measure::pressure, states.inlet.gauge);
  rows.add("highest pressure at a pump, " + states.pump.place, Measure::pressure, states.pump.gauge);
  if (!whole) {
    for (const bool pumps : {false, true}) {
      if (const auto* run = worst_run(states, pumps)) rows.add_run(*run);
    }
    return std::move(rows.rows);
  }
  for (const studies::RunExtreme& run : states.runs) rows.add_run(run);
  if (states.opening_never_raises) return std::move(rows.rows);  // least with all open, most alone: told elsewhere
  for (const studies::HoseExtremes& hose : states.hoses) {
    rows.add("least at hose " + hose.hose, Measure::flow, hose.least);
    rows.add("most at hose " + hose.hose, Measure::flow, hose.greatest);
  }
  return std::move(rows.rows);
}

std::string search_in_words(const WorstStates& states) {
  std::string out = std::to_string(states.sets_solved) + " states of " + count_words(states.hose_count) + " solved";
  if (states.sets_failed > 0) out += ", " + std::to_string(states.sets_failed) + " of them without a solution";
  out += states.opening_never_raises
             ? "; here opening a hose can never raise the flow of another nor a pressure, which is the argument"
             : "; blended hoses or a pump control are at work, so opening a hose can raise the flow of another";
  out += states.opening_never_raises ? ": a hose gives least with all open and most alone." : ".";
  const bool any_found = std::any_of(states.runs.begin(), states.runs.end(),
                                     [](const auto& run) { return run.flow.proof == Proof::best_found; });
  return any_found || states.slowest.proof == Proof::best_found ? out + " Best found: a worse set may exist." : out;
}

}  // namespace forecourse::report
