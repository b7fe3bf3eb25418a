#include "forecourse/lesson/questions/make/law.h"

namespace forecourse::lesson {

Phrase balance_at(const studies::HoseFlow& hose) {
  double pump = 0.0;
  double height = 0.0;
  double lines = 0.0;
  double limiter = 0.0;
  double others = 0.0;
  for (const studies::BudgetRow& row : hose.budget) {
    if (row.part == "pump") {
      pump -= row.loss;
    } else if (row.part == "lift") {
      height += row.loss;
    } else if (row.part == "line") {
      lines += row.loss;
    } else if (row.part == "limiter") {
      limiter += row.loss;
    } else {
      others += row.loss;
    }
  }
  if (!(pump > 0.0)) return {};
  Phrase out{"Height, lines and the other parts take what the pump adds: {} + {} + {} = {}",
             {{height, Quantity::pressure}, {lines, Quantity::pressure}, {others, Quantity::pressure}}};
  if (limiter > 0.0) {
    out.words = "Height, lines, the other parts and the limiter take what the pump adds: {} + {} + {} + {} = {}";
    out.values.push_back({limiter, Quantity::pressure});
  }
  out.values.push_back({pump, Quantity::pressure});
  return out;
}

}  // namespace forecourse::lesson
