#include "forecourse/handover/sheets/source.h"

#include <algorithm>

#include "forecourse/checks/rules/bound_rules.h"

namespace forecourse::handover {
namespace {

constexpr std::string_view practices = "recommended-practices";

bool tells(const checks::BoundRequirement& one, std::string_view figure) {
  return one.figure != nullptr && one.figure->id == figure && one.when.empty();
}

/// The rule set that a clause of a study belongs to; empty: none of its own.
std::string_view set_of(const std::string& clause) {
  if (clause.starts_with("40 CFR")) return "us-federal";
  if (clause.starts_with("29 CFR")) return "us-osha";
  if (clause.starts_with("IFC")) return "us-fire-code";
  return {};
}

bool of_set(const checks::BoundRequirement& one, std::string_view set) { return one.set->id.text == set; }

}  // namespace

SheetSource::SheetSource(const checks::Facts& f, const checks::Studied& s, const AgreedTolerances& a)
    : facts(f), studied(s), agreed(a), site(f.site), checked_(checks::check_station(f, s)) {}

bool SheetSource::lives_under(std::string_view rule_set) const {
  return std::any_of(site.rules.begin(), site.rules.end(),
                     [&](const site::Name& name) { return name.text == rule_set; });
}

const checks::BoundRequirement* SheetSource::requirement(std::string_view figure) const {
  const checks::BoundRequirement* practice = nullptr;
  for (const auto& rules : checks::built_in_rules()) {
    for (const checks::BoundRequirement& one : rules) {
      if (!tells(one, figure)) continue;
      if (lives_under(one.set->id.text)) return &one;
      if (of_set(one, practices)) practice = &one;
    }
  }
  return practice;
}

RowLimit SheetSource::limit(std::string_view figure) const {
  const checks::BoundRequirement* one = requirement(figure);
  if (one == nullptr) return {};
  RowLimit out;
  out.words = one->entered->words.text;
  out.at_least = one->at_least;
  out.at_most = one->at_most;
  out.strict = one->is_above || one->is_below;
  out.clause = one->entered->clause.text;
  out.edition = one->entered->edition.empty() ? one->set->edition.text : one->entered->edition.text;
  out.verified = one->entered->seen && one->entered->seen->value == site::ClauseSeen::text;
  out.binds = lives_under(one->set->id.text);
  return out;
}

std::string SheetSource::who(std::string_view figure) const {
  const checks::BoundRequirement* one = requirement(figure);
  return one == nullptr ? std::string() : one->entered->who.text;
}

const checks::Finding* SheetSource::finding(std::string_view rule, std::string_view subject) const {
  for (const checks::FindingSet& set : checked_.sets) {
    for (const checks::Finding& one : set.findings) {
      if (one.rule == rule && one.subject == subject && one.state != checks::FindingState::does_not_apply) return &one;
    }
  }
  return nullptr;
}

RowLimit SheetSource::clause(std::string_view rule, std::string_view subject) const {
  const checks::Finding* one = finding(rule, subject);
  if (one == nullptr) return {};
  RowLimit out;
  out.words = one->requirement;
  out.clause = one->clause;
  out.edition = one->edition;
  out.verified = one->clause_verified;
  out.binds = binds(one->clause);
  return out;
}

bool SheetSource::binds(const std::string& clause) const {
  const std::string_view set = set_of(clause);
  return set.empty() || lives_under(set);
}

RowLimit SheetSource::at_least(std::string_view rule, std::string_view subject) const {
  RowLimit out = clause(rule, subject);
  if (const checks::Finding* one = finding(rule, subject)) out.at_least = one->limit;
  return out;
}

RowLimit SheetSource::at_most(std::string_view rule, std::string_view subject) const {
  RowLimit out = clause(rule, subject);
  if (const checks::Finding* one = finding(rule, subject)) out.at_most = one->limit;
  return out;
}

std::string SheetSource::unfirm_of(std::string_view system, bool with_heights) const {
  if (!studied.flow) return {};
  for (const DefaultUsed& used : studied.flow->defaults) {
    if (is_firm(used) || (!used.system.empty() && used.system != system)) continue;
    if (used.moves_flow || with_heights) return used.what + ", " + word(used.status);
  }
  return {};
}

SheetRow amount_row(std::string id, std::string what, std::string part, std::string path, Amount amount) {
  SheetRow out = told_row(std::move(id), std::move(what), std::move(part), std::move(path));
  out.blank = Blank::amount;
  out.amount = amount;
  return out;
}

SheetRow yes_no_row(std::string id, std::string what, std::string part, std::string path, bool expected) {
  SheetRow out = told_row(std::move(id), std::move(what), std::move(part), std::move(path));
  out.blank = Blank::yes_no;
  out.expected = expected;
  return out;
}

SheetRow text_row(std::string id, std::string what, std::string part, std::string path) {
  SheetRow out = told_row(std::move(id), std::move(what), std::move(part), std::move(path));
  out.blank = Blank::text;
  return out;
}

SheetRow told_row(std::string id, std::string what, std::string part, std::string path) {
  SheetRow out;
  out.id = std::move(id);
  out.what = std::move(what);
  out.part = std::move(part);
  out.path = std::move(path);
  return out;
}

SheetRow signature_row(std::string what) {
  SheetRow out = told_row("signature", std::move(what));
  out.blank = Blank::signature;
  return out;
}

void set_value(SheetRow& row, const std::optional<double>& value, std::string by, std::string missing) {
  row.value = value;
  if (value)
    row.value_by = std::move(by);
  else
    row.missing = std::move(missing);
}

std::string fact_words(const site::Fact& fact) {
  return !fact ? "not entered" : *fact ? "entered: yes" : "entered: no";
}

}  // namespace forecourse::handover
