#pragma once

#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/answers/wants/shared_studies.h"

namespace forecourse::server {

/// What a want is answered from.
struct Asked {
  const std::string& text;  ///< of the site file
  const std::string& file;
  const report::Json& want;
  const Context& context;
  SharedStudies& shared;
  const RecordsOf& records;  ///< empty: none are given
};

/// The answers to the wants of these names. Each calls what the command of that name calls.
[[nodiscard]] report::Json flow_answer(const Asked& asked);
[[nodiscard]] report::Json containment_answer(const Asked& asked);
[[nodiscard]] report::Json tank_answer(const Asked& asked);
[[nodiscard]] report::Json flotation_answer(const Asked& asked);
[[nodiscard]] report::Json vapor_answer(const Asked& asked);
[[nodiscard]] report::Json delivery_answer(const Asked& asked);
[[nodiscard]] report::Json incident_answer(const Asked& asked);
[[nodiscard]] report::Json line_test_answer(const Asked& asked);
[[nodiscard]] report::Json ledger_answer(const Asked& asked);
[[nodiscard]] report::Json meter_answer(const Asked& asked);
[[nodiscard]] report::Json findings_answer(const Asked& asked);
[[nodiscard]] report::Json mends_answer(const Asked& asked);
[[nodiscard]] report::Json calendar_answer(const Asked& asked);
[[nodiscard]] report::Json kit_answer(const Asked& asked);
[[nodiscard]] report::Json lesson_answer(const Asked& asked);
[[nodiscard]] report::Json compare_answer(const Asked& asked);

/// What a want may be: the names of the studies and of the drawings.
[[nodiscard]] std::vector<std::string> study_words();
[[nodiscard]] const std::vector<std::string>& drawing_words();
/// The members of a flow study's result, each of which can be asked for alone.
[[nodiscard]] const std::vector<std::string>& flow_part_words();

/// Whether a drawing is of line tests, and the answer to such a want.
[[nodiscard]] bool is_line_test_drawing(const report::Json& drawing);
[[nodiscard]] report::Json line_test_drawing(const Asked& asked);

/// The errors of all meters, drawn.
[[nodiscard]] report::Json meter_drawing(const Asked& asked);

/// The answer to a want of a drawing.
[[nodiscard]] report::Json drawing_answer(const Asked& asked);

}  // namespace forecourse::server
