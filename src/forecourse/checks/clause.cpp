#include "forecourse/checks/clause.h"

namespace forecourse::checks {
namespace {

const char* how_far(site::ClauseSeen seen) {
  switch (seen) {
    case site::ClauseSeen::text:
      return "";
    case site::ClauseSeen::older_text:
      return "later text not seen";
    case site::ClauseSeen::told:
      return "as other texts tell it";
    case site::ClauseSeen::memory:
      return "from memory";
  }
  return "from memory";
}

}  // namespace

void cite(const Clause& clause, Finding& finding) {
  const std::string seen = how_far(clause.seen);
  finding.clause = clause.text;
  finding.edition = clause.edition + (clause.edition.empty() || seen.empty() ? "" : "; ") + seen;
  finding.clause_verified = clause.seen == site::ClauseSeen::text;
}

}  // namespace forecourse::checks
