#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// What is replaced, inspected and tested before fuel flows again, and by whom.
[[nodiscard]] std::vector<ReturnStep> return_to_service(const Scene& scene);

}  // namespace forecourse::studies
