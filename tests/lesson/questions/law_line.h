#pragma once

#include <string>

#include "forecourse/lesson/questions/question.h"

namespace forecourse::test {

/// What is wrong with the line of law of a question, worked out as it stands, its values in SI: sides that are not
/// equal, an order that does not rise or fall. Empty: nothing, or it has no sides.
[[nodiscard]] std::string faults_of_law(const lesson::Question& question);

}  // namespace forecourse::test
