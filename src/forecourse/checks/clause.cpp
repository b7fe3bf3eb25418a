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

template <class Cited>
void write(const Clause& clause, Cited& cited) {
  const std::string seen = how_far(clause.seen);
  cited.clause = clause.text;
  cited.edition = clause.edition + (clause.edition.empty() || seen.empty() ? "" : "; ") + seen;
  cited.clause_verified = clause.seen == site::ClauseSeen::text;
}

}  // namespace

void cite(const Clause& clause, Finding& finding) { write(clause, finding); }
void cite(const Clause& clause, Recurrence& recurrence) { write(clause, recurrence); }

}  // namespace forecourse::checks
