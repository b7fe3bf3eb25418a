#include "forecourse/handover/sheets/source.h"

#include <algorithm>

#include "forecourse/checks/rules/bound_rules.h"

namespace forecourse::handover {
namespace {

constexpr std::string_view practices = "recommended-practices";

bool tells(const checks::BoundRequirement& one, std::string_view figure) {
  return one.figure != nullptr && one.figure->id == figure && one.when.empty();
}

/// The rule set that a clause of a study belongs to; empty: none that is known.
std::string_view set_of(std::string_view clause) {
  if (clause.starts_with("40 CFR")) return "us-federal";
  if (clause.starts_with("29 CFR")) return "us-osha";
  if (clause.starts_with("IFC")) return "us-fire-code";
  return {};
}

/// The clauses of a list: "29 CFR 1910.106(b)(3)(iv)(a), IFC 5704.2.7.3.3".
std::vector<std::string_view> clauses_of(std::string_view list) {
  constexpr std::string_view comma = ", ";
  std::vector<std::string_view> out;
  for (std::size_t end = list.find(comma); end != std::string_view::npos; end = list.find(comma)) {
    out.push_back(list.substr(0, end));
    list.remove_prefix(end + comma.size());
  }
  out.push_back(list);
  return out;
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

SheetSource::Found SheetSource::found(std::string_view rule, std::string_view subject) const {
  for (const checks::FindingSet& set : checked_.sets) {
    for (const checks::Finding& one : set.findings) {
      const bool applies = one.state != checks::FindingState::does_not_apply;
      if (applies && one.rule == rule && one.subject == subject) return {&set, &one};
    }
  }
  return {};
}

RowLimit SheetSource::clause(std::string_view rule, std::string_view subject) const {
  const auto [set, one] = found(rule, subject);
  if (one == nullptr) return {};
  RowLimit out;
  out.words = one->requirement;
  out.clause = one->clause;
  out.edition = one->edition;
  out.verified = one->clause_verified;
  out.binds = binds(set->id, one->clause);
  return out;
}

bool SheetSource::binds(const std::string& clause) const {
  const std::vector<std::string_view> all = clauses_of(clause);
  return std::any_of(all.begin(), all.end(), [&](std::string_view one) { return lives_under(set_of(one)); });
}

bool SheetSource::binds(std::string_view set, const std::string& clause) const {
  const auto is_rules = [&](const checks::FindingSet& one) { return one.id == set && !one.of_study; };
  return std::any_of(checked_.sets.begin(), checked_.sets.end(), is_rules) || binds(clause);
}

RowLimit SheetSource::at_least(std::string_view rule, std::string_view subject) const {
  RowLimit out = clause(rule, subject);
  if (const checks::Finding* one = found(rule, subject).finding) out.at_least = one->limit;
  return out;
}

RowLimit SheetSource::at_most(std::string_view rule, std::string_view subject) const {
  RowLimit out = clause(rule, subject);
  if (const checks::Finding* one = found(rule, subject).finding) out.at_most = one->limit;
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

SheetSection section(const char* id, const char* title, const char* note) {
  SheetSection out;
  out.id = id;
  out.title = title;
  out.notes.emplace_back(note);
  return out;
}

Tolerance around(const std::optional<double>& value, const std::optional<double>& agreed) {
  if (value && agreed) return {*value - *agreed, *value + *agreed, "agreed"};
  return {std::nullopt, std::nullopt, to_be_agreed};
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
