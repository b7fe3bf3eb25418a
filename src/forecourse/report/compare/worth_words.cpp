#include <algorithm>
#include <cmath>

#include "forecourse/report/compare/compare_view.h"

namespace forecourse::report {
namespace {

using decide::Verdict;
using decide::Worth;
using decide::WorthStep;

std::string percent(double share, Glyphs glyphs) {
  const std::string blank = glyphs == Glyphs::unicode ? "\u00A0" : " ";
  return (share > 0.0 ? "+" : "") + number(100.0 * share, 1, glyphs) + blank + "%";
}

/// "1 %", "2.5 %"
std::string plain_percent(double share, Glyphs glyphs) {
  const double value = 100.0 * share;
  const bool whole = std::abs(value - std::round(value)) < 1e-9;
  return number(value, whole ? 0 : 1, glyphs) + (glyphs == Glyphs::unicode ? "\u00A0%" : " %");
}

std::string open(int count) { return std::to_string(count) + (count == 1 ? " hose open" : " hoses open"); }

/// Rising numbers as stretches: "1 to 5, 8"
std::string stretches(const std::vector<int>& counts) {
  std::string out;
  for (std::size_t i = 0; i < counts.size();) {
    std::size_t last = i;
    while (last + 1 < counts.size() && counts[last + 1] == counts[last] + 1) ++last;
    out += (out.empty() ? "" : ", ") + std::to_string(counts[i]);
    if (last > i) out += " to " + std::to_string(counts[last]);
    i = last + 1;
  }
  return out;
}

std::string open(const std::vector<int>& counts) {
  return stretches(counts) + (counts == std::vector<int>{1} ? " hose open" : " hoses open");
}

std::vector<int> below(std::vector<int> counts, const std::optional<int>& from) {
  std::erase_if(counts, [&](int count) { return from && count >= *from; });
  return counts;
}

/// Sentences about one piping.
class WorthWords {
 public:
  WorthWords(const Worth& worth, site::Display display, Glyphs glyphs)
      : worth_(worth), display_(display), glyphs_(glyphs), least_(plain_percent(worth.least_gain, glyphs)) {}

  std::vector<std::string> tell() {
    if (worth_.steps.empty()) return {};
    if (worth_.from) {
      tell_gain();
    } else if (worth_.loses_from) {
      tell_loss();
    } else if (worth_.nothing_below) {
      out_.push_back(worth_.system + ": B buys nothing at any number of hoses open" +
                     (worth_.held_below ? held : same) + ".");
    } else {
      out_.push_back(worth_.system + ": there is no number of hoses open from which B is worth it.");
    }
    if (!worth_.nothing_below) tell_below();
    return std::move(out_);
  }

 private:
  static constexpr const char* held = ": limiters hold every open hose in A and in B";
  static constexpr const char* same = ": the slowest hose gives the same";

  [[nodiscard]] const WorthStep& step(int open) const { return worth_.steps[static_cast<std::size_t>(open) - 1]; }
  [[nodiscard]] int most() const { return static_cast<int>(worth_.steps.size()); }
  [[nodiscard]] std::string flow(double si) const { return with_unit(Measure::flow, display_, si, glyphs_); }
  [[nodiscard]] std::string flows(const WorthStep& s) const {
    return flow(s.slowest_b) + " instead of " + flow(s.slowest_a) +
           (std::isfinite(s.gain) ? " (" + percent(s.gain, glyphs_) + ")" : std::string());
  }

  void tell_gain() {
    const int from = *worth_.from;
    const WorthStep& first = step(from);
    std::string text =
        worth_.system + ": B is worth it from " + open(from) + ": the slowest hose gives " + flows(first);
    if (from < most()) text += ", and " + flows(step(most())) + " with all " + std::to_string(most()) + " open";
    out_.push_back(text + ".");
    if (from > 1 && worth_.nothing_below) {
      out_.push_back("Below " + std::to_string(from) + " it buys nothing" + (worth_.held_below ? held : same) + ".");
    }
  }

  void tell_loss() {
    const int from = *worth_.loses_from;
    out_.push_back(worth_.system + ": B is worse from " + open(from) + ": the slowest hose gives " + flows(step(from)) +
                   ".");
  }

  /// Numbers that are not settled by the first sentence.
  void tell_below() {
    const auto gains = below(numbers_with(worth_, Verdict::gains), worth_.from);
    auto losses = numbers_with(worth_, Verdict::loses);
    if (!worth_.from) losses = below(losses, worth_.loses_from);
    if (!gains.empty()) {
      out_.push_back("It gains more than " + least_ + " with " + open(gains) + ", but not at every larger number.");
    }
    if (!losses.empty()) out_.push_back("It loses more than " + least_ + " with " + open(losses) + ".");
    const auto unknown = numbers_with(worth_, Verdict::not_determined);
    if (!unknown.empty()) out_.push_back("With " + open(unknown) + " it is not determined.");
    tell_small();
  }

  /// What changes by no more than the least gain, and what does not change at all.
  void tell_small() {
    std::vector<int> nothing;
    std::vector<int> small;
    const WorthStep* largest = nullptr;
    bool all_held = true;
    for (const WorthStep& s : worth_.steps) {
      if (s.verdict != Verdict::same) continue;
      (s.nothing ? nothing : small).push_back(s.open);
      if (s.nothing) all_held = all_held && s.held;
      if (!s.nothing && (largest == nullptr || std::abs(s.gain) > std::abs(largest->gain))) largest = &s;
    }
    if (largest != nullptr) {
      const bool all_below = worth_.from && static_cast<int>(small.size()) == *worth_.from - 1;
      const std::string where = all_below ? "Below " + std::to_string(*worth_.from) : "With " + open(small);
      const std::string at = small.size() > 1 ? ", with " + std::to_string(largest->open) + " open" : std::string();
      out_.push_back(where + " it changes that flow by no more than " + least_ + ": at most " +
                     percent(largest->gain, glyphs_) + at + ".");
    }
    if (!nothing.empty()) {
      out_.push_back("With " + open(nothing) + " it buys nothing" + (all_held ? held : same) + ".");
    }
  }

  const Worth& worth_;
  site::Display display_;
  Glyphs glyphs_;
  std::string least_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> worth_in_words(const Worth& worth, site::Display display, Glyphs glyphs) {
  return WorthWords(worth, display, glyphs).tell();
}

std::vector<std::string> beside_worth_in_words(const decide::Comparison& c, site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  for (const decide::FedOnce& one : c.fed_once) {
    out.push_back(one.system + ": no answer: it is fed in " + (one.in_a ? "A" : "B") + " only; in " +
                  (one.in_a ? "B" : "A") + ", " + one.reason + ".");
  }
  const std::optional<double> keep =
      c.b.flow.options.keep_flow ? c.b.flow.options.keep_flow : c.a.flow.options.keep_flow;
  if (!keep) return out;
  const auto share = [](const decide::Alternative& one) {
    return std::to_string(one.keeping) + " of " + std::to_string(one.hoses);
  };
  std::string text = "With all hoses open, " + share(c.a) + " keep " +
                     with_unit(Measure::flow, display, *keep, glyphs) + " in A, " + share(c.b) + " in B.";
  for (const Worth& worth : c.worth) {
    if (!worth.keeps_a || !worth.keeps_b) continue;
    text += " Of " + worth.system + " every open hose keeps it with up to " + std::to_string(*worth.keeps_a) +
            " open in A, " + std::to_string(*worth.keeps_b) + " in B.";
  }
  out.push_back(text);
  return out;
}

std::string worth_meaning(const decide::Comparison& comparison) {
  const std::string least = plain_percent(comparison.options.least_gain, Glyphs::ascii);
  bool proved = true;
  for (const Worth& worth : comparison.worth) {
    for (const WorthStep& s : worth.steps) {
      proved = proved && s.proof_a != studies::Proof::best_found && s.proof_b != studies::Proof::best_found;
    }
  }
  return "Worth it: at this and at every larger number of hoses open the slowest hose gives over " + least +
         " more than in A (--gain; common practice, no source), each time in the worst set of that many hoses, in A "
         "and "
         "in B" +
         (proved ? ", which is proved to be the worst." : "; some of these sets are the worst found, not proved.");
}

std::string step_note(const WorthStep& step) {
  if (step.verdict == Verdict::not_determined) return "not determined";
  if (step.held && step.nothing) return "limiters hold every open hose in both";
  if (step.nothing) return "the same";
  return step.verdict == Verdict::gains   ? "gains"
         : step.verdict == Verdict::loses ? "loses"
                                          : "no more than the least gain";
}

}  // namespace forecourse::report
