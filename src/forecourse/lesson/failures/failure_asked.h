#pragma once

#include <string>

#include "forecourse/base/diagnostic.h"
#include "forecourse/lesson/failures/replay.h"

namespace forecourse::lesson {

/// The kind of failure of an id; an error with the nearest one, and all that there are, where there is none.
[[nodiscard]] Parsed<const FailureKind*> asked_failure(const std::string& id);

}  // namespace forecourse::lesson
