#include "forecourse/server/answers/wants/lesson_questions.h"

#include "forecourse/report/lesson/questions/questions_report.h"

namespace forecourse::server {

report::Json lesson_questions(WantReader& want, const lesson::Ground& ground) {
  lesson::AskOptions options;
  options.count = want.count("questions").value_or(options.count);
  options.level = static_cast<int>(want.number("level", 0.0, 3.0).value_or(0.0));
  options.seed = want.count("seed").value_or(options.seed);
  options.page = want.text("page");
  if (!want.good()) return want.problem();
  const std::vector<Diagnostic> wrong = lesson::check_options(options);
  if (!wrong.empty()) return refused(wrong);
  return {{"document", report::questions_document(lesson::ask(ground, options), FORECOURSE_VERSION)}};
}

}  // namespace forecourse::server
