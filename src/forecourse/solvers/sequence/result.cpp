#include "forecourse/solvers/sequence/result.h"

namespace forecourse::solvers::sequence {

double SequenceResult::passed(int link) const {
  double sum = 0.0;
  for (const LedgerRow& row : ledger) {
    if (row.link == link) sum += row.net;
  }
  return sum;
}

double SequenceResult::passed(int link, int cause) const {
  double sum = 0.0;
  for (const LedgerRow& row : ledger) {
    if (row.link == link && row.cause == cause) sum += row.net;
  }
  return sum;
}

}  // namespace forecourse::solvers::sequence
