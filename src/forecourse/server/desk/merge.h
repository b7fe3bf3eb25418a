#pragma once

#include <string>
#include <vector>

#include "forecourse/server/answers/answers.h"

namespace forecourse::server {

/// What edits meet that were meant for a text that has changed since.
struct Meeting {
  bool apart = true;                 ///< they touch other values than the ones that changed
  std::vector<std::string> changed;  ///< paths of the values that changed since
};

/// Holds edits meant for `then` against what became of it. Where one of the texts cannot be read, they are never apart.
[[nodiscard]] Meeting meet(const std::string& then, const std::string& now, const std::vector<Edit>& edits);

/// Paths of the values that two texts have differently.
[[nodiscard]] std::vector<std::string> changed_paths(const std::string& then, const std::string& now);

}  // namespace forecourse::server
