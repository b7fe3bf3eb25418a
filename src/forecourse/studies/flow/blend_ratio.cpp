#include "forecourse/studies/flow/blend_ratio.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace forecourse::studies {
namespace {

constexpr double agreement = 1e-6;  // of a share [1]; the rounds of a blend agree to 1e-9
constexpr double least = 1e-9;      // [m3/s] above the solver's residual, below what anyone measures

struct Part {
  std::string product;
  HoseFlow* hose;
};

/// The parts of each open blended hose, by the hose's id.
std::map<std::string, std::vector<Part>> open_blends(FlowState& state) {
  std::map<std::string, std::vector<Part>> blends;
  for (SystemFlow& system : state.systems) {
    for (HoseFlow& hose : system.hoses) {
      if (hose.open && hose.share < 1.0) blends[hose.id].push_back({system.product, &hose});
    }
  }
  return blends;
}

std::string percent(double share) {
  const int tenths = static_cast<int>(std::lround(share * 1000.0));
  return std::to_string(tenths / 10) + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10)) + " %";
}

std::string joined(const std::vector<std::string>& words, const char* between) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
  return out;
}

/// "regular 60 % + premium 40 %"
std::string ratio(const std::vector<Part>& parts, bool reached) {
  std::vector<std::string> words;
  words.reserve(parts.size());
  for (const Part& part : parts) {
    words.push_back(part.product + " " + percent(reached ? part.hose->share_reached.value_or(0.0) : part.hose->share));
  }
  return joined(words, " + ");
}

const site::Hose* find_hose(const site::Site& site, const std::string& id) {
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Hose& hose : d.hoses) {
      if (hose.id.text == id) return &hose;
    }
  }
  return nullptr;
}

/// What holds of a hose that misses its ratio, without its name.
std::string why(const FlowState& state, const std::vector<Part>& parts) {
  const auto flows = [](const Part& part) { return part.hose->share_reached.value_or(0.0) > 0.0; };
  if (std::any_of(parts.begin(), parts.end(), flows)) {
    return "the rounds between its products do not settle: " + ratio(parts, true) + " is reached";
  }
  std::vector<std::string> reasons;
  std::vector<std::string> missing;
  for (const SystemFlow& system : state.systems) {
    const bool still = system.status == FlowStatus::no_supply || system.status == FlowStatus::at_rest;
    const bool is_part =
        std::any_of(parts.begin(), parts.end(), [&](const Part& part) { return part.product == system.product; });
    if (still && is_part) missing.push_back(system.product);
    if (is_part && !system.reason.empty()) reasons.push_back(system.reason);
  }
  if (!reasons.empty()) {
    return joined(reasons, ", and ") + "; valves that keep the ratio let nothing else pass: 0 % of each is reached";
  }
  const std::string who = missing.empty() ? "one of its products" : joined(missing, " and ");
  return who + " cannot flow, and valves that keep the ratio let nothing else pass: 0 % of each is reached";
}

}  // namespace

void tell_ratios(FlowState& state) {
  for (auto& [id, parts] : open_blends(state)) {
    double sum = 0.0;
    double shares = 0.0;
    for (const Part& part : parts) {
      sum += part.hose->flow;
      shares += part.hose->share;
    }
    const bool whole = std::abs(shares - 1.0) < agreement;  // each of its products could be computed
    for (const Part& part : parts) {
      if (whole) part.hose->share_reached = sum > least ? part.hose->flow / sum : 0.0;
      part.hose->ratio_met =
          !whole || (part.hose->share_reached && std::abs(*part.hose->share_reached - part.hose->share) < agreement);
      if (whole) part.hose->hose_flow = sum;
    }
  }
}

std::vector<Diagnostic> unmet_ratios(const site::Site& site, const std::vector<FlowState>& states) {
  std::map<std::string, std::vector<std::string>> hoses;  // by what holds of them
  std::map<std::string, std::string> why_of;              // the first state of each hose counts
  std::vector<std::string> order;
  for (FlowState state : states) {
    for (const auto& [id, parts] : open_blends(state)) {
      const bool met = std::all_of(parts.begin(), parts.end(), [](const Part& part) { return part.hose->ratio_met; });
      if (met || why_of.count(id) != 0) continue;
      const std::string words = ratio(parts, false) + ": " + why(state, parts);
      why_of[id] = words;
      if (hoses[words].empty()) order.push_back(words);
      hoses[words].push_back(id);
    }
  }
  std::vector<Diagnostic> out;
  for (const std::string& words : order) {
    const site::Hose* first = find_hose(site, hoses[words].front());
    out.push_back({Severity::warning,
                   joined(hoses[words], ", ") + " cannot keep the ratio " + words,
                   first != nullptr ? std::optional(first->where) : std::nullopt,
                   "let a pump of each product run, or leave the blended hoses shut",
                   {}});
  }
  return out;
}

}  // namespace forecourse::studies
