#include "forecourse/decide/mend/mend.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>
#include <utility>

#include "forecourse/decide/mend/judge.h"
#include "forecourse/decide/mend/levers.h"
#include "forecourse/decide/mend/taken_place.h"
#include "forecourse/decide/mend/try_lever.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"

namespace forecourse::decide {
namespace {

using checks::Finding;
using checks::FindingSet;
using checks::FindingState;

int rank(FindingState state) {
  switch (state) {
    case FindingState::meets:
    case FindingState::does_not_apply:
      return 0;
    case FindingState::close:
      return 1;
    case FindingState::not_determined:
      return 2;
    case FindingState::falls_short:
      return 3;
  }
  return 3;
}

struct Numbered {
  MendSubject of;
  const Finding* finding = nullptr;
};

/// Findings with what tells each apart from all others, in their order.
std::vector<Numbered> numbered(const checks::CheckResult& result) {
  std::vector<Numbered> out;
  std::map<std::tuple<std::string, bool, std::string, std::string>, int> seen;
  for (const FindingSet& set : result.sets) {
    for (const Finding& one : set.findings) {
      const int number = seen[{set.id, set.of_study, one.rule, one.subject}]++;
      out.push_back({{set.id, set.of_study, one.rule, one.subject, number}, &one});
    }
  }
  return out;
}

const Finding* find(const std::vector<Numbered>& all, const MendSubject& of) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Numbered& one) { return one.of == of; });
  return found == all.end() ? nullptr : found->finding;
}

/// Empty where a finding is told in another unit: an overfill device by a share or by a time.
std::optional<double> value_in(const std::string& unit, const Finding& finding) {
  return finding.unit == unit ? finding.value : std::nullopt;
}

/// \param told one of the two
MendEffect effect_of(const MendSubject& of, const Finding& told, const Finding* before, const Finding* after) {
  MendEffect out{of, told.requirement, told.unit, told.of, {}, {}, {}, {}};
  if (before != nullptr) {
    out.before = before->state;
    out.value_before = value_in(told.unit, *before);
  }
  if (after != nullptr) {
    out.after = after->state;
    out.value_after = value_in(told.unit, *after);
  }
  return out;
}

/// Findings whose state is another, without the one that is mended.
std::vector<MendEffect> effects_of(const checks::CheckResult& before, const checks::CheckResult& after,
                                   const MendSubject& but) {
  std::vector<MendEffect> out;
  const std::vector<Numbered> then = numbered(before);
  const std::vector<Numbered> now = numbered(after);
  for (const Numbered& one : then) {
    const Finding* changed = find(now, one.of);
    if (one.of == but || (changed != nullptr && changed->state == one.finding->state)) continue;
    out.push_back(effect_of(one.of, *one.finding, one.finding, changed));
  }
  for (const Numbered& one : now) {
    if (one.of != but && find(then, one.of) == nullptr)
      out.push_back(effect_of(one.of, *one.finding, nullptr, one.finding));
  }
  return out;
}

/// Of all hoses, with all open [m3/s]; empty where one of them is not determined.
std::optional<double> least_flow(const checks::Studied& studied) {
  std::optional<double> out;
  if (!studied.flow) return out;
  for (const studies::HoseSummary& hose : studied.flow->hoses) {
    if (!hose.all_open) return std::nullopt;
    out = std::min(out.value_or(hose.all_open->flow), hose.all_open->flow);
  }
  return out;
}

struct Checked {
  site::Site site;
  checks::Studied studied;
  checks::CheckResult result;
};

/// `study` gives the studies of a site; empty where the text cannot be read.
template <class Study>
std::optional<Checked> check(const MendStation& station, std::string_view text, Study study) {
  std::optional<site::Site> site = read_changed(station, text);
  if (!site) return std::nullopt;
  Checked out{std::move(*site), {}, {}};
  out.studied = study(out.site);
  out.result = checks::check_station(checks::facts_of(out.site, out.studied, station.today, station.records),
                                     out.studied, station.own);
  return out;
}

std::optional<Checked> check_all(const MendStation& station, std::string_view text, const Context& context) {
  return check(station, text, [&](const site::Site& site) { return study_all(site, station, context); });
}

/// Whether a change makes fall short what did not, or the site file warn of what it did not.
bool makes_worse(const Mend& mend) {
  return !mend.warnings.empty() || std::any_of(mend.effects.begin(), mend.effects.end(), [](const MendEffect& one) {
    return one.after == FindingState::falls_short;
  });
}

class Mender {
 public:
  Mender(const MendStation& station, const Checked& before, const Context& context)
      : station_(station), before_(before), context_(context) {}

  [[nodiscard]] Mend mend(const Numbered& one) const {
    Mend out;
    begin(one, out);
    const Judge judge(station_, one.of, context_);
    const std::vector<Lever> levers = levers_at(one, judge, out);
    const Bench bench{station_.text, before_.site.display, *one.finding,
                      [&](const std::string& text) { return judge.judge(text); },
                      [&](const std::string& text) { return taken_by(before_.site, site::read_site(text).value); }};
    for (const Lever& lever : levers) {
      if (auto tried = try_lever(bench, lever)) add(std::move(*tried), out);
    }
    choose(one, out);
    if (out.edits.empty() && out.way == MendWay::none) tell_work(judge, out);
    return out;
  }

 private:
  static void begin(const Numbered& one, Mend& out) {
    out.of = one.of;
    out.requirement = one.finding->requirement;
    out.unit = one.finding->unit;
    out.measured = one.finding->of;
    out.before = one.finding->state;
    out.value_before = one.finding->value;
    out.limit = one.finding->limit;
    out.words = one.finding->change;
  }

  /// Of each requirement of a route: any of them mends it.
  std::vector<Lever> levers_at(const Numbered& one, const Judge& judge, Mend& out) const {
    if (one.of.of_study) {
      return take(levers_of({before_.site, before_.studied, *one.finding, one.of.set + "|" + one.of.rule, false,
                             one.finding->change}),
                  out);
    }
    std::vector<Lever> all;
    for (const checks::BoundRequirement& rule : judge.rules()) {
      const bool is_day = rule.figure->kind == checks::FigureKind::day;
      for (Lever& lever : take(levers_of({before_.site, before_.studied, *one.finding, std::string(rule.figure->id),
                                          is_day, rule.entered->change.text, rule.entered->who.text}),
                               out)) {
        all.push_back(std::move(lever));
      }
    }
    return all;
  }

  /// What can be tried goes before what cannot; of the latter the last to say it.
  static std::vector<Lever> take(Levers levers, Mend& out) {
    const bool tries = out.way == MendWay::change || out.way == MendWay::work;
    if (!tries || !levers.levers.empty()) {
      out.way = levers.way;
      out.reason = levers.reason;
      if (!levers.words.empty()) out.words = levers.words;
    }
    return std::move(levers.levers);
  }

  /// Moves along an axis that do not help are not told: another way along it does.
  static void add(MendTry tried, Mend& out) {
    const auto same = std::find_if(out.tried.begin(), out.tried.end(),
                                   [&](const MendTry& one) { return one.edit.path == tried.edit.path; });
    if (same == out.tried.end()) return out.tried.push_back(std::move(tried));
    const bool is_smaller = tried.mends && (!same->mends || share(tried) < share(*same));
    if (is_smaller) *same = std::move(tried);
  }

  static double share(const MendTry& tried) { return tried.share.value_or(std::numeric_limits<double>::infinity()); }

  /// What is done at the station where no value that was tried mends it.
  static void tell_work(const Judge& judge, Mend& out) {
    for (const checks::BoundRequirement& rule : judge.rules()) {
      if (way_without_lever(rule.figure->id) != MendWay::work) continue;
      out.way = MendWay::work;
      out.reason = reason_of(MendWay::work);
    }
  }

  /// The smallest that mends it; the first of them that makes nothing else fall short.
  void choose(const Numbered& one, Mend& out) const {
    std::vector<const MendTry*> good;
    for (const MendTry& tried : out.tried) {
      if (tried.mends) good.push_back(&tried);
    }
    std::stable_sort(good.begin(), good.end(), [](const auto* a, const auto* b) {
      return std::pair(a->is_last, share(*a)) < std::pair(b->is_last, share(*b));
    });
    std::optional<Mend> first;
    for (const MendTry* tried : good) {
      Mend made = out;
      apply(one, *tried, made);
      const bool worse = makes_worse(made);
      if (!worse || !first) first = std::move(made);
      if (!worse) break;
    }
    if (first) {
      out = std::move(*first);
    } else if (out.reason.empty()) {
      out.way = MendWay::none;
      out.reason = out.tried.empty() ? "no value that it rests on is entered by itself"
                                     : fmt::format("no one value alone mends it, of {} that {} tried", out.tried.size(),
                                                   out.tried.size() == 1 ? "was" : "were");
    }
  }

  void apply(const Numbered& one, const MendTry& tried, Mend& out) const {
    out.edits = {tried.edit};
    out.way = tried.is_work ? MendWay::work : MendWay::change;
    out.share = tried.share;
    out.words = words_of(tried, out);
    out.reason.clear();
    const Parsed<std::string> text = site::set_value(station_.text, tried.edit.path, tried.edit.after);
    const std::optional<Checked> after = check(station_, text.value, [&](const site::Site& site) {
      return study_changed(site, station_, before_.studied, tried.edit.path, context_);
    });
    if (!after) return;
    const Finding* finding = find(numbered(after->result), one.of);
    out.after = finding != nullptr ? std::optional(finding->state) : tried.state;
    if (finding != nullptr) out.value_after = value_in(out.unit, *finding);
    out.warnings = new_warnings(station_, text.value);
    out.effects = effects_of(before_.result, after->result, one.of);
    out.least_flow_before = least_flow(before_.studied);
    out.least_flow_after = least_flow(after->studied);
  }

  static std::string words_of(const MendTry& tried, const Mend& mend) {
    const std::string value = tried.edit.path + " = " + tried.edit.after;
    if (mend.way == MendWay::work) return tried.words + "; after that is done, enter " + value;
    if (!tried.edit.before) return tried.words + ": enter " + value;
    return tried.words + ": " + tried.edit.path + " from " + *tried.edit.before + " to " + tried.edit.after;
  }

  const MendStation& station_;
  const Checked& before_;
  const Context& context_;
};

bool is_wanted(const Numbered& one, const MendWanted& wanted) {
  return one.finding->state == FindingState::falls_short && (wanted.rule.empty() || wanted.rule == one.of.rule) &&
         (wanted.subject.empty() || wanted.subject == one.of.subject);
}

}  // namespace

const char* word(MendWay way) {
  switch (way) {
    case MendWay::change:
      return "change";
    case MendWay::work:
      return "work";
    case MendWay::duty:
      return "duty";
    case MendWay::replace:
      return "replace";
    case MendWay::retest:
      return "retest";
    case MendWay::none:
      return "none";
  }
  return "none";
}

bool is_better(const MendEffect& effect) {
  if (!effect.before || !effect.after) return effect.before == FindingState::falls_short;
  return rank(*effect.after) < rank(*effect.before);
}

bool is_worse(const MendEffect& effect) {
  if (!effect.after) return false;
  return rank(*effect.after) > (effect.before ? rank(*effect.before) : rank(FindingState::meets));
}

MendResult mend_station(const MendStation& station, const MendWanted& wanted, const Context& context) {
  MendResult out;
  const std::optional<Checked> before = check_all(station, station.text, context);
  if (!before) return out;
  out.before = before->result;
  const Mender mender(station, *before, context);
  for (const Numbered& one : numbered(before->result)) {
    if (is_wanted(one, wanted)) out.mends.push_back(mender.mend(one));
  }
  return out;
}

}  // namespace forecourse::decide
