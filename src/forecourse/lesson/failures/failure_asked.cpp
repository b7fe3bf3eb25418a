#include "forecourse/lesson/failures/failure_asked.h"

#include <span>
#include <vector>

#include "forecourse/base/nearest_word.h"

namespace forecourse::lesson {

Parsed<const FailureKind*> asked_failure(const std::string& id) {
  Parsed<const FailureKind*> out;
  out.value = find_failure(id);
  if (out.value != nullptr) return out;
  std::vector<std::string> known;
  std::string all;
  for (const FailureKind& kind : failure_kinds()) {
    known.emplace_back(kind.id);
    all += (all.empty() ? "" : ", ") + known.back();
  }
  const auto near = nearest_word(id, std::span<const std::string>(known));
  out.diagnostics.push_back({Severity::error,
                             "there is no failure '" + id + "'",
                             std::nullopt,
                             (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all,
                             {}});
  return out;
}

}  // namespace forecourse::lesson
