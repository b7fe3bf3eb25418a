#pragma once

#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// What is reported, replaced, inspected and tested before fuel flows again, and by whom. Only steps for what stands at
/// the place; each with the clause it is from and how that was read, or "common practice, no source". How a sump is
/// entered or hot work is done is left to their permits.
[[nodiscard]] std::vector<ReturnStep> return_to_service(const Scene& scene);

}  // namespace forecourse::studies
