#include "forecourse/decide/compare/worth.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/decide/compare/rows.h"

namespace forecourse::decide {
namespace {

using studies::Ladder;
using studies::LadderStep;

/// [m3/s] The limiter of each hose that has one.
std::map<std::string, double> limiters(const site::Site& site) {
  std::map<std::string, double> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (hose.limiter) out[hose.id.text] = hose.limiter->likely.si();
    }
  }
  return out;
}

bool all_held(const LadderStep& step, const std::map<std::string, double>& limits) {
  for (std::size_t i = 0; i < step.hoses.size(); ++i) {
    const auto limit = limits.find(step.hoses[i]);
    if (limit == limits.end() || i >= step.flow.size()) return false;
    if (step.flow[i] < limit->second && !same_value(Amount::flow, step.flow[i], limit->second)) return false;
  }
  return true;
}

Verdict verdict_of(double gain, double least_gain) {
  if (!std::isfinite(gain)) return Verdict::not_determined;
  return gain > least_gain ? Verdict::gains : gain < -least_gain ? Verdict::loses : Verdict::same;
}

WorthStep step_of(int open, const LadderStep& a, const LadderStep& b, double least_gain) {
  WorthStep step;
  step.open = open;
  step.slowest_a = a.slowest;
  step.slowest_b = b.slowest;
  step.hose_a = a.slowest_hose;
  step.hose_b = b.slowest_hose;
  step.alike_a = all_alike(a);
  step.alike_b = all_alike(b);
  step.proof_a = a.proof;
  step.proof_b = b.proof;
  step.nothing = same_value(Amount::flow, a.slowest, b.slowest);
  step.gain = step.nothing ? 0.0 : (b.slowest - a.slowest) / a.slowest;  // from nothing to something: without end
  step.verdict = verdict_of(step.gain, least_gain);
  if (std::isinf(step.gain)) step.verdict = Verdict::gains;
  return step;
}

/// The first number from which every step to the last has the verdict.
std::optional<int> first_of_all(const std::vector<WorthStep>& steps, Verdict verdict) {
  std::optional<int> from;
  for (auto step = steps.rbegin(); step != steps.rend() && step->verdict == verdict; ++step) from = step->open;
  return from;
}

const Ladder* find_worst(const std::vector<Ladder>& ladders, const std::string& system) {
  const auto found = std::find_if(ladders.begin(), ladders.end(), [&](const Ladder& ladder) {
    return ladder.order == studies::LadderOrder::worst && ladder.system == system;
  });
  return found == ladders.end() ? nullptr : &*found;
}

}  // namespace

std::vector<Worth> worth_of(const site::Site& a, const std::vector<Ladder>& ladders_a, const site::Site& b,
                            const std::vector<Ladder>& ladders_b, double least_gain) {
  const auto limits_a = limiters(a);
  const auto limits_b = limiters(b);
  std::vector<Worth> out;
  for (const Ladder& of_a : ladders_a) {
    const Ladder* of_b = find_worst(ladders_b, of_a.system);
    if (of_a.order != studies::LadderOrder::worst || of_b == nullptr) continue;
    Worth worth;
    worth.system = of_a.system;
    worth.least_gain = least_gain;
    worth.keeps_a = of_a.keeps;
    worth.keeps_b = of_b->keeps;
    for (std::size_t i = 0; i < std::min(of_a.steps.size(), of_b->steps.size()); ++i) {
      worth.steps.push_back(step_of(static_cast<int>(i) + 1, of_a.steps[i], of_b->steps[i], least_gain));
      worth.steps.back().held = all_held(of_a.steps[i], limits_a) && all_held(of_b->steps[i], limits_b);
    }
    worth.from = first_of_all(worth.steps, Verdict::gains);
    worth.loses_from = first_of_all(worth.steps, Verdict::loses);
    const auto below = [&](const WorthStep& step) { return !worth.from || step.open < *worth.from; };
    worth.nothing_below = std::all_of(worth.steps.begin(), worth.steps.end(),
                                      [&](const WorthStep& step) { return !below(step) || step.nothing; });
    worth.held_below = std::all_of(worth.steps.begin(), worth.steps.end(),
                                   [&](const WorthStep& step) { return !below(step) || step.held; });
    out.push_back(std::move(worth));
  }
  return out;
}

std::vector<int> numbers_with(const Worth& worth, Verdict verdict) {
  std::vector<int> out;
  for (const WorthStep& step : worth.steps) {
    if (step.verdict == verdict) out.push_back(step.open);
  }
  return out;
}

}  // namespace forecourse::decide
