#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/lesson/failures/replay.h"

namespace forecourse::lesson {

/// The kind of failure of an id; an error with the nearest one, and all that there are, where there is none.
[[nodiscard]] Parsed<const FailureKind*> asked_failure(const std::string& id);

/// An error where no part of the station has the id; none for an empty one.
[[nodiscard]] std::vector<Diagnostic> check_part(const site::Site& site, const std::string& at);

}  // namespace forecourse::lesson
