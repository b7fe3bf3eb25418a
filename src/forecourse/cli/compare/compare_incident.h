#pragma once

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// The command `compare` with `--incident`: one incident at A and at B.
[[nodiscard]] Exit compare_incident(const CompareArguments& arguments);

}  // namespace forecourse::cli
