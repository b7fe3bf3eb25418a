#pragma once

#include <vector>

#include "forecourse/report/json_document.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// How an extreme is known, as a value of the JSON: "argument", "enumeration", "best found".
[[nodiscard]] const char* proof_key(studies::Proof proof);

/// Flow against the number of hoses open, under `ladders`.
[[nodiscard]] Json ladders_json(const std::vector<studies::Ladder>& ladders);

/// The worst states of each group of hoses, under `worst_states`.
[[nodiscard]] Json worst_states_json(const std::vector<studies::WorstStates>& states);

}  // namespace forecourse::report
