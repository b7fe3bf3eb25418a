#pragma once

#include <vector>

#include "forecourse/lesson/questions/question.h"

namespace forecourse::lesson {

/// The kinds of each stop, in the order they are listed. A new kind is a function and a line in the table of its stop.
[[nodiscard]] std::vector<QuestionKind> drop_questions();    ///< tanker, fill, overfill valve
[[nodiscard]] std::vector<QuestionKind> tank_questions();    ///< walls, water, breathing
[[nodiscard]] std::vector<QuestionKind> pump_questions();    ///< pump, tank sump, leak detector
[[nodiscard]] std::vector<QuestionKind> line_questions();    ///< double wall, line
[[nodiscard]] std::vector<QuestionKind> sump_questions();    ///< dispenser sump
[[nodiscard]] std::vector<QuestionKind> shear_questions();   ///< shear valve
[[nodiscard]] std::vector<QuestionKind> meter_questions();   ///< filter, meter, price
[[nodiscard]] std::vector<QuestionKind> hose_questions();    ///< whip hose, breakaway, curb hose, swivel
[[nodiscard]] std::vector<QuestionKind> nozzle_questions();  ///< nozzle, vehicle
[[nodiscard]] std::vector<QuestionKind> vapor_questions();   ///< vapor return, vent
[[nodiscard]] std::vector<QuestionKind> across_questions();  ///< emergency stop, interlocks

}  // namespace forecourse::lesson
