#include "forecourse/checks/rules/check_rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/clause.h"

namespace forecourse::checks {
namespace {

Clause clause_of(const BoundRequirement& rule) {
  return {rule.entered->clause.text,
          rule.entered->edition.empty() ? rule.set->edition.text : rule.entered->edition.text,
          rule.entered->seen ? rule.entered->seen->value : site::ClauseSeen::memory};
}

enum class Applies { yes, no, unknown };

struct Application {
  Applies applies = Applies::yes;
  std::string why;
  std::string enter;
};

/// Figures of a station, each read once.
class Readings {
 public:
  explicit Readings(const Facts& facts) : facts_(facts) {}

  const std::vector<FigureAt>& of(const Figure& figure) {
    const auto [found, fresh] = read_.try_emplace(&figure);
    if (fresh) found->second = figure.read(facts_);
    return found->second;
  }

  /// Of a part, else of the station.
  /// \param number where it is looked for first: figures tell parts of one kind in the same order
  const FigureAt* of(const Figure& figure, const std::string& subject, std::size_t number) {
    const std::vector<FigureAt>& all = of(figure);
    if (number < all.size() && all[number].subject == subject) return &all[number];
    const auto at = [&](std::string_view id) {
      return std::find_if(all.begin(), all.end(), [&](const FigureAt& one) { return one.subject == id; });
    };
    auto found = at(subject);
    if (found == all.end()) found = at("station");
    return found == all.end() ? nullptr : &*found;
  }

 private:
  const Facts& facts_;
  std::map<const Figure*, std::vector<FigureAt>> read_;
};

Application does_not(const BoundCondition& condition, const std::string& is) {
  return {Applies::no, std::string(condition.figure->words) + is, {}};
}

Application not_known(const BoundCondition& condition, std::string enter) {
  return {Applies::unknown, std::string(condition.figure->words), std::move(enter)};
}

Application fact_holds(const BoundCondition& condition, const FigureAt& at) {
  if (!at.fact) return not_known(condition, at.enter);
  return *at.fact == *condition.is ? Application{} : does_not(condition, *at.fact ? ": yes" : ": no");
}

Application day_holds(const BoundCondition& condition, const FigureAt& at) {
  if (!at.day) return not_known(condition, at.enter);
  const bool too_early = condition.after && !is_before(*condition.after, *at.day);
  const bool too_late = condition.by && is_before(*condition.by, *at.day);
  return too_early || too_late ? does_not(condition, ": " + text(*at.day)) : Application{};
}

/// Whether a border lies within what is uncertain of a value.
bool is_blurred(const std::optional<double>& border, const FigureAt& at) {
  return border && at.deviation && std::abs(*at.value - *border) < *at.deviation;
}

Application amount_holds(const BoundCondition& condition, const FigureAt& at) {
  if (!at.value) return not_known(condition, at.enter);
  if (is_blurred(condition.above, at) || is_blurred(condition.up_to, at))
    return not_known(condition, "make the value more certain: it may lie on either side of the rule's border");
  if (condition.above && !(*at.value > *condition.above))
    return does_not(condition, " is no larger than the rule's border");
  if (condition.up_to && *at.value > *condition.up_to) return does_not(condition, " is larger than the rule's border");
  return {};
}

/// Whether one condition holds; the reason names its figure.
Application holds(const BoundCondition& condition, const FigureAt* at) {
  if (at == nullptr) return not_known(condition, {});
  if (!at->rests_on.empty()) return not_known(condition, at->enter);
  switch (condition.figure->kind) {
    case FigureKind::fact:
      return fact_holds(condition, *at);
    case FigureKind::day:
      return day_holds(condition, *at);
    default:
      return amount_holds(condition, *at);
  }
}

/// What the findings of a requirement have in common.
Finding begin(const BoundRequirement& rule) {
  Finding out;
  out.rule = rule.entered->route.empty() ? rule.entered->id.text : rule.entered->route.text;
  out.requirement = rule.entered->words.text;
  cite(clause_of(rule), out);
  out.of = rule.figure->of;
  return out;
}

void not_known(Finding& out, std::string reason, const std::string& enter) {
  out.state = FindingState::not_determined;
  out.reason = std::move(reason);
  out.change = enter;
}

/// \param is_strict the limit itself does not meet
FindingState state_of(const FigureAt& at, double margin, double limit, bool is_strict) {
  const double rounding = 1e-9 * std::abs(limit);
  if (is_strict ? margin <= rounding : margin < -rounding) return FindingState::falls_short;
  if (at.deviation) return margin < *at.deviation ? FindingState::close : FindingState::meets;
  return checks::state_of(margin, limit);
}

void judge_amount(const BoundRequirement& rule, const FigureAt& at, Finding& out) {
  const std::optional<double> least = rule.at_least ? rule.at_least : at.at_least;
  const std::optional<double> most = rule.at_most ? rule.at_most : at.at_most;
  out.unit = rule.figure->unit;
  out.value = at.value;
  if (!least && !most) {
    const bool of_part = !at.enter.empty();
    return not_known(out, "its limit is not known", of_part ? at.enter : "give it at_least or at_most in the rule set");
  }
  const bool by_least = least && (!most || *at.value - *least < *most - *at.value);
  out.limit = by_least ? least : most;
  out.margin = by_least ? *at.value - *least : *most - *at.value;
  out.state = state_of(at, *out.margin, *out.limit, by_least ? rule.is_above : rule.is_below);
}

void judge_day(const BoundRequirement& rule, const FigureAt& at, const site::Date& today, Finding& out) {
  const auto seconds = [](int days) { return to_si(days, "d"); };
  if (days_between(*at.day, today) < 0) {
    return not_known(out, "it is dated " + text(*at.day) + ", which is yet to come", "correct the date");
  }
  const site::Date due = later(*at.day, *rule.every);
  out.of = Measured::age;
  out.unit = "s";
  out.value = seconds(days_between(*at.day, today));
  out.limit = seconds(days_between(*at.day, due));
  out.margin = *out.limit - *out.value;
  out.state = checks::state_of(*out.margin, *out.limit);
  out.reason = "last on " + text(*at.day) + ", due by " + text(due);
}

void judge(const BoundRequirement& rule, const FigureAt& at, const site::Date& today, Finding& out) {
  const bool known = rule.figure->kind == FigureKind::fact  ? at.fact.has_value()
                     : rule.figure->kind == FigureKind::day ? at.day.has_value()
                                                            : at.value.has_value();
  if (!known) return not_known(out, "not known: " + std::string(rule.figure->words), at.enter);
  if (rule.figure->kind == FigureKind::fact) {
    out.state = *at.fact == *rule.entered->is ? FindingState::meets : FindingState::falls_short;
  } else if (rule.figure->kind == FigureKind::day) {
    judge_day(rule, at, today, out);
  } else {
    judge_amount(rule, at, out);
  }
  const bool met = out.state == FindingState::meets || out.state == FindingState::close;
  if (met && !at.rests_on.empty()) return not_known(out, "it rests on " + at.rests_on, at.enter);
  if (out.state == FindingState::falls_short) out.change = rule.entered->change.text;
}

Recurrence recurrence_of(const BoundRequirement& rule, const FigureAt& at, const Application& open) {
  Recurrence out;
  out.what = rule.entered->words.text;
  out.every = *rule.every;
  out.last = at.day;
  out.failed = at.failed;
  if (at.day) out.due = later(*at.day, *rule.every);
  out.who = rule.entered->who.text;
  out.sheet = rule.entered->sheet.text;
  out.figure = rule.figure->id;
  cite(clause_of(rule), out);
  const bool is_open = open.applies == Applies::unknown;
  out.enter = is_open ? open.enter : at.enter;
  if (is_open) out.open = open.why;
  return out;
}

/// Judges a finding that was begun.
/// \param number of the part among those that have the figure
Finding finding_of(const BoundRequirement& rule, Finding out, const FigureAt& at, std::size_t number,
                   Readings& readings, const site::Date& today) {
  out.subject = at.subject;
  out.where = at.where;
  if (!at.exempt.empty()) {
    out.state = FindingState::does_not_apply;
    out.reason = at.exempt;
    return out;
  }
  Application open;
  for (const BoundCondition& condition : rule.when) {
    Application one = holds(condition, readings.of(*condition.figure, at.subject, number));
    if (one.applies == Applies::no) {
      out.state = FindingState::does_not_apply;
      out.reason = one.why;
      return out;
    }
    if (one.applies == Applies::unknown && open.applies == Applies::yes) open = std::move(one);
  }
  judge(rule, at, today, out);
  if (rule.every) out.recurrence = recurrence_of(rule, at, open);
  if (open.applies == Applies::unknown)
    not_known(out, "whether it applies rests on what is not known: " + open.why, open.enter);
  return out;
}

int rank(FindingState state) {
  switch (state) {
    case FindingState::meets:
      return 0;
    case FindingState::close:
      return 1;
    case FindingState::not_determined:
      return 2;
    case FindingState::falls_short:
      return 3;
    case FindingState::does_not_apply:
      return 4;
  }
  return 4;
}

bool is_done(const Finding& one) { return one.state == FindingState::meets || one.state == FindingState::close; }

bool has_failed(const Finding& one) { return one.recurrence && one.recurrence->failed; }

bool is_open(const Finding& one) { return !one.recurrence->open.empty(); }

/// Whether of two alternatives the second is the one to go by: that of which the last test failed, as no other undoes
/// that; else that which is done, else of which it is known that it
/// applies, else which is due later.
bool goes_by_second(const Finding& a, const Finding& b) {
  if (has_failed(a) != has_failed(b)) return has_failed(b);
  if (is_done(a) != is_done(b)) return is_done(b);
  if (!a.recurrence || !b.recurrence) return is_done(a) == !b.recurrence.has_value();
  if (is_open(a) != is_open(b)) return is_open(a);
  if (a.recurrence->due && b.recurrence->due) return is_before(*a.recurrence->due, *b.recurrence->due);
  return !a.recurrence->due && b.recurrence->due;
}

/// What comes back of two alternatives: nothing where the one that is done does not.
std::optional<Recurrence> recurrence_of_both(const Finding& a, const Finding& b) {
  const bool second = goes_by_second(a, b);
  const Finding& other = second ? a : b;
  std::optional<Recurrence> out = second ? b.recurrence : a.recurrence;
  if (!out) return out;
  if (a.recurrence && second) out->instead = a.recurrence->instead;
  if (other.state != FindingState::does_not_apply)
    out->instead.push_back(other.recurrence ? other.recurrence->what : other.requirement);
  return out;
}

/// Adds a finding, or lets the best of its route and part stand.
void add(Finding found, const std::string& route, std::map<std::string, std::size_t>& of_route,
         std::vector<Finding>& out) {
  if (route.empty()) return out.push_back(std::move(found));
  const auto [at, fresh] = of_route.try_emplace(route + "|" + found.subject, out.size());
  if (fresh) return out.push_back(std::move(found));
  Finding& best = out[at->second];
  std::optional<Recurrence> both = recurrence_of_both(best, found);
  if (rank(found.state) < rank(best.state)) best = std::move(found);
  best.recurrence = std::move(both);
}

}  // namespace

std::vector<Finding> check_rules(const Facts& facts, std::span<const BoundRequirement> rules) {
  std::vector<Finding> out;
  Readings readings(facts);
  std::map<std::string, std::size_t> of_route;
  for (const BoundRequirement& rule : rules) {
    const Finding begun = begin(rule);
    const std::vector<FigureAt>& all = readings.of(*rule.figure);
    for (std::size_t i = 0; i < all.size(); ++i) {
      add(finding_of(rule, begun, all[i], i, readings, facts.today), rule.entered->route.text, of_route, out);
    }
  }
  return out;
}

}  // namespace forecourse::checks
