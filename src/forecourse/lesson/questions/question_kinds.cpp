#include <algorithm>

#include "forecourse/lesson/questions/kinds/all.h"

namespace forecourse::lesson {

const char* word(Form form) {
  switch (form) {
    case Form::choice:
      return "choice";
    case Form::estimate:
      return "estimate";
    case Form::order:
      return "order";
    case Form::fault:
      return "fault";
  }
  return "";
}

const std::vector<QuestionKind>& question_kinds() {
  static const std::vector<QuestionKind> all = [] {
    std::vector<QuestionKind> out;
    for (const auto& some :
         {drop_questions(), tank_questions(), pump_questions(), line_questions(), sump_questions(), shear_questions(),
          meter_questions(), hose_questions(), nozzle_questions(), vapor_questions(), across_questions()}) {
      out.insert(out.end(), some.begin(), some.end());
    }
    return out;
  }();
  return all;
}

const QuestionKind* find_question(std::string_view id) {
  const std::vector<QuestionKind>& all = question_kinds();
  const auto found = std::find_if(all.begin(), all.end(), [&](const QuestionKind& kind) { return kind.id == id; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace forecourse::lesson
