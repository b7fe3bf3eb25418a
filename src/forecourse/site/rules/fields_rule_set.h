#pragma once

#include "forecourse/site/fields/rules.h"
#include "forecourse/site/rules/rule_set.h"

namespace forecourse::site {

inline constexpr std::array<WordFor<ClauseSeen>, 4> clause_seen_words{{{"text", ClauseSeen::text},
                                                                       {"older-text", ClauseSeen::older_text},
                                                                       {"told", ClauseSeen::told},
                                                                       {"memory", ClauseSeen::memory}}};

inline constexpr std::array<std::string_view, 6> sheet_words{"commissioning",     "thirty-day",    "annual",
                                                             "return-to-service", "delivery-card", "emergency-card"};

template <class Visitor>
void fields(Visitor& v, Condition& condition) {
  v.about("condition", "A figure that decides whether a requirement applies to a part.");
  v.name("figure", condition.figure, "Figure of the same part, or of the station.");
  v.fact("is", condition.is, "Of a fact: yes or no.");
  v.name("above", condition.above, "Of an amount: it applies above this.");
  v.name("up_to", condition.up_to, "Of an amount: it applies up to this.");
  v.date("after", condition.after, "Of a day: it applies to later ones.");
  v.date("by", condition.by, "Of a day: it applies to this and earlier ones.");
}

template <class Visitor>
void fields(Visitor& v, Requirement& requirement) {
  v.about("requirement", "A figure of the station and what it must be.");
  v.id("id", requirement.id, IdRule::plain, "Name of the requirement, which stays the same.");
  v.name("words", requirement.words, "What is asked, in a sentence without a full stop.");
  v.name("clause", requirement.clause, "Clause that asks it.");
  v.name("edition", requirement.edition, "Edition of the clause, where it is not that of the set.");
  v.choice("seen", requirement.seen, clause_seen_words, "How far the text of the clause was seen.");
  v.name("figure", requirement.figure, "Figure that is held against it.");
  v.name("at_least", requirement.at_least, "Of an amount: no less than this, with its unit.");
  v.name("at_most", requirement.at_most, "Of an amount: no more than this, with its unit.");
  v.name("above", requirement.above, "Of an amount: more than this, with its unit.");
  v.name("below", requirement.below, "Of an amount: less than this, with its unit.");
  v.fact("is", requirement.is, "Of a fact: what it must be.");
  v.name("every", requirement.every, "Of a day: it lies no further back than this, as in \"3 years\".");
  v.list("when", requirement.when, "What decides whether it applies; all must hold.");
  v.name("change", requirement.change, "What to change where it falls short.");
  v.name("route", requirement.route, "Requirements with the same route are alternatives.");
  v.name("who", requirement.who, "Of a recurring duty: who does it.");
  v.word("sheet", requirement.sheet, sheet_words, "Of a recurring duty: the procedure sheet that leads through it.");
}

template <class Visitor>
void fields(Visitor& v, RuleSet& set) {
  v.about("rule_set", "Requirements that a station can live under.");
  v.format("format", "Version of the rule set; 1.");
  v.id("id", set.id, IdRule::plain, "Name of the set, as a site file lists it under rules.");
  v.name("title", set.title, "What it is, in words.");
  v.name("edition", set.edition, "Edition of its clauses.");
  v.list("requirement", set.requirements, "The requirements.");
}

}  // namespace forecourse::site
