#include <fmt/format.h>

#include <algorithm>

#include "forecourse/report/checks/mends_report.h"
#include "forecourse/report/html/parts.h"

namespace forecourse::report {
namespace {

using checks::Finding;
using checks::FindingState;
using decide::Mend;
using decide::MendEffect;
using decide::MendTry;

/// "T1: a vent ends at least 12 ft above the ground (meets, was close)"
std::string in_words(const MendEffect& effect) {
  const std::string of = effect.of.subject + ": " + effect.requirement;
  if (!effect.after) return of + " (no longer asked)";
  if (!effect.before) return fmt::format("{} ({}, new)", of, checks::word(*effect.after));
  return fmt::format("{} ({}, was {})", of, checks::word(*effect.after), checks::word(*effect.before));
}

template <class Is>
std::string effects_in_words(const Mend& mend, Is is) {
  std::string out;
  for (const MendEffect& effect : mend.effects) {
    if (is(effect)) out += (out.empty() ? "" : "; ") + in_words(effect);
  }
  return out;
}

/// A finding with the unit of a mend.
Finding like(const Mend& mend) {
  Finding out;
  out.unit = mend.unit;
  out.of = mend.measured;
  out.limit = mend.limit;
  return out;
}

std::string value_in_words(const std::optional<double>& si, const Mend& mend, const MendWords& words) {
  return si ? report::value_in_words(*si, like(mend), words.display, words.glyphs) : std::string();
}

/// "Then 5 600.00 gal: meets."
std::string then(const Mend& mend, const MendWords& words) {
  if (!mend.after) return {};
  const std::string value = value_in_words(mend.value_after, mend, words);
  return "Then " + (value.empty() ? "" : value + ", ") + checks::word(*mend.after) + ".";
}

std::string least_flow(const Mend& mend, const MendWords& words) {
  if (!mend.least_flow_before || !mend.least_flow_after) return {};
  const std::string before = with_unit(Measure::flow, words.display, *mend.least_flow_before, words.glyphs);
  const std::string after = with_unit(Measure::flow, words.display, *mend.least_flow_after, words.glyphs);
  return before == after ? "" : fmt::format("Least flow with all hoses open: {}, was {}.", after, before);
}

std::string try_in_words(const MendTry& tried) {
  const std::string edit = tried.words + " (" + tried.edit.path + " = " + tried.edit.after + ")";
  return tried.mends ? edit + ": mends it" : edit + ": " + tried.reason;
}

/// What follows the change itself.
std::string consequences(const Mend& mend, const MendWords& words) {
  std::string out = then(mend, words);
  const auto add = [&](const std::string& text) { out += (out.empty() || text.empty() ? "" : " ") + text; };
  const std::string worse = effects_in_words(mend, decide::is_worse);
  const std::string better = effects_in_words(mend, decide::is_better);
  const std::string other =
      effects_in_words(mend, [](const MendEffect& one) { return !decide::is_worse(one) && !decide::is_better(one); });
  if (!worse.empty()) add("It changes for the worse " + worse + ".");
  if (!better.empty()) add("It mends too " + better + ".");
  if (!other.empty()) add("It changes too " + other + ".");
  for (const std::string& warning : mend.warnings) add("For the worse, the site file then warns: " + warning + ".");
  if (mend.after && mend.effects.empty() && mend.warnings.empty()) add("No other finding changes.");
  add(least_flow(mend, words));
  return out;
}

bool is_same(const Mend& a, const Mend& b) {
  if (a.edits.empty() || b.edits.empty()) return a.edits.empty() && b.edits.empty() && a.words == b.words;
  return a.edits.front().before == b.edits.front().before && a.edits.front().after == b.edits.front().after &&
         a.effects.size() == b.effects.size();
}

std::string tell(const Mend& mend, const MendWords& words) {
  std::string out = mend.words;
  if (!mend.reason.empty()) out += (out.empty() ? "" : "; ") + mend.reason;
  const std::string rest = consequences(mend, words);
  return "Mend " + mend.of.subject + ": " + out + "." + (rest.empty() ? "" : " " + rest);
}

std::vector<const Mend*> mends_of(const std::vector<Mend>& mends, const checks::FindingSet& set,
                                  const FindingGroup& group) {
  std::vector<const Mend*> out;
  for (const Mend& mend : mends) {
    const bool here = mend.of.set == set.id && mend.of.of_study == set.of_study &&
                      std::any_of(group.findings.begin(), group.findings.end(), [&](const Finding* one) {
                        return one->rule == mend.of.rule && one->subject == mend.of.subject;
                      });
    if (here) out.push_back(&mend);
  }
  return out;
}

void add_tried(const Mend& mend, std::vector<std::string>& out) {
  for (const MendTry& tried : mend.tried) {
    const bool chosen = !mend.edits.empty() && mend.edits.front().path == tried.edit.path;
    if (!chosen) out.push_back("Tried too: " + try_in_words(tried) + ".");
  }
}

}  // namespace

std::vector<std::string> mend_lines(const std::vector<Mend>& mends, const checks::FindingSet& set,
                                    const FindingGroup& group, const MendWords& words) {
  std::vector<std::string> out;
  std::vector<const Mend*> told;
  std::vector<std::string> likewise;
  for (const Mend* mend : mends_of(mends, set, group)) {
    const auto same = std::find_if(told.begin(), told.end(), [&](const Mend* one) { return is_same(*one, *mend); });
    if (same != told.end() && !words.all) {
      std::string& others = likewise[static_cast<std::size_t>(same - told.begin())];
      others += (others.empty() ? " Likewise " : ", ") + mend->of.subject;
      continue;
    }
    told.push_back(mend);
    out.push_back(tell(*mend, words));
    likewise.emplace_back();
  }
  for (std::size_t i = 0; i < out.size(); ++i) {
    if (!likewise[i].empty()) out[i] += likewise[i] + ".";
  }
  if (!words.all) return out;
  for (const Mend* mend : told) add_tried(*mend, out);
  return out;
}

std::string mends_section(const std::vector<Mend>& mends, site::Display display) {
  if (mends.empty()) return {};
  html::Table table{"What would mend it",
                    mends_caution,
                    {{"Of", "", false, true},
                     {"Requirement", "", false, true},
                     {"What to change", "", false, true},
                     {"Then", "", false, true},
                     {"Effect on other findings", "", false, true},
                     {"Tried too", "", false, true}},
                    {},
                    {}};
  const MendWords words{display, Glyphs::unicode, true};
  for (const Mend& mend : mends) {
    std::vector<std::string> tried;
    add_tried(mend, tried);
    std::string all;
    for (const std::string& one : tried) all += (all.empty() ? "" : " ") + one.substr(one.find(": ") + 2);
    const std::string change = mend.words + (mend.words.empty() || mend.reason.empty() ? "" : "; ") + mend.reason;
    std::string effects = consequences(mend, words);
    const std::string after = then(mend, words);
    effects.erase(0, std::min(effects.size(), after.size() + (after.empty() ? 0 : 1)));
    table.rows.push_back({{mend.of.subject, mend.requirement, change, after, effects, all}, mend.edits.empty()});
  }
  return html::table(table);
}

}  // namespace forecourse::report
