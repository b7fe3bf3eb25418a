#include "forecourse/cli/lesson/failure_part.h"

#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/lesson/failures/failure_asked.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/lesson/replay_report.h"

namespace forecourse::cli {

Exit failure_part(const SiteArguments& arguments, const std::string& failure, const std::string& at) {
  SiteSource source;
  if (!load_site(arguments, source)) return Exit::bad_input;
  const Parsed<const lesson::FailureKind*> kind = lesson::asked_failure(failure);
  if (!kind.ok()) {
    print_error(report::to_text(kind.diagnostics, source.texts));
    return Exit::bad_input;
  }
  if (const std::vector<Diagnostic> wrong = lesson::check_part(source.site, at); !wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  const lesson::Replay replay = lesson::run_failure(*kind.value, source.site, at);
  const report::ReportFacts facts{{}, {}, source.texts};
  if (arguments.json) {
    print(report::to_text(report::replay_document(replay, source.warnings, facts)));
  } else {
    const Console console = this_console();
    print(report::replay_summary(
        replay, source.warnings, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.verbose}, facts));
  }
  return replay.problem.empty() ? Exit::fine : Exit::bad_input;
}

}  // namespace forecourse::cli
