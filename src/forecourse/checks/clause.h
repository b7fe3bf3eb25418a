#pragma once

#include <string>

#include "forecourse/checks/finding.h"
#include "forecourse/site/rules/rule_set.h"

namespace forecourse::checks {

/// Where a requirement stands, in which edition, and how far its text was seen.
struct Clause {
  std::string text;  ///< "40 CFR 280.44(a)"
  std::string edition;
  site::ClauseSeen seen = site::ClauseSeen::memory;
};

/// Editions that several studies hold a station against.
inline constexpr const char* tank_rule = "40 CFR 280 as read in copies of the current text";
inline constexpr const char* older_tank_rule = "40 CFR 280, annual edition of 1 July 2015";
inline constexpr const char* vapor_rule = "40 CFR 63 Subpart CCCCCC, copy of August 2020";
inline constexpr const char* older_vapor_rule = "40 CFR 63 Subpart CCCCCC, edition of 2015";
inline constexpr const char* fire_code =
    "2018 International Fire Code as adopted in the 2020 Minnesota State Fire Code";

/// Writes it into a finding, or into what comes back. Only a clause whose own text was read, in the edition named,
/// counts as verified; of any other the edition says how far it was seen.
void cite(const Clause& clause, Finding& finding);
void cite(const Clause& clause, Recurrence& recurrence);

}  // namespace forecourse::checks
