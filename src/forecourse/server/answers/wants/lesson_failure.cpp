#include "forecourse/server/answers/wants/lesson_failure.h"

#include "forecourse/lesson/failures/failure_asked.h"
#include "forecourse/report/lesson/replay_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/want_reader.h"

namespace forecourse::server {

report::Json lesson_failure(const OpenedSite& opened, const std::string& failure, const std::string& at,
                            const Context& context) {
  const Parsed<const lesson::FailureKind*> kind = lesson::asked_failure(failure);
  if (!kind.ok()) return refused(kind.diagnostics);
  if (const std::vector<Diagnostic> wrong = lesson::check_part(opened.site, at); !wrong.empty()) return refused(wrong);
  const lesson::Replay replay = lesson::run_failure(*kind.value, opened.site, at, context);
  return {{"document", report::replay_document(replay, opened.warnings, {{}, {}, opened.texts})}};
}

}  // namespace forecourse::server
