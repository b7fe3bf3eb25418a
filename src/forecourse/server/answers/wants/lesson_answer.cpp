#include "forecourse/lesson/lesson.h"
#include "forecourse/report/lesson/lesson_report.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/lesson_failure.h"
#include "forecourse/server/answers/wants/lesson_questions.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {

report::Json lesson_answer(const Asked& asked) {
  WantReader want(asked.want, lesson_members);
  const site::Date on = read_day(want);
  const std::string text = want.text("lesson");
  const std::string failure = want.text("failure");
  const std::string at = want.text("at");
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return want.problem();
  if (!opened.problem.is_null()) return opened.problem;
  if (!failure.empty()) return lesson_failure(opened, failure, at, asked.context);
  std::vector<report::SourceText> texts = opened.texts;
  Parsed<lesson::LessonFile> file{lesson::built_in_lesson(), {}};
  if (!text.empty()) {
    file = lesson::read_lesson(text, static_cast<std::uint32_t>(texts.size()));
    texts.push_back({"lesson", text});
  }
  if (!file.ok()) return refused(file.diagnostics);
  const lesson::Studies studies = lesson::make_studies(opened.site, on, asked.context);
  const lesson::Ground ground = lesson::ground_of(opened.site, studies);
  if (asked.want.contains("questions")) return lesson_questions(want, ground);
  std::vector<Diagnostic> wrong;  // the built-in lesson is our own
  if (!text.empty()) wrong = lesson::check_lesson(file.value, ground);
  if (!wrong.empty()) return refused(wrong);
  lesson::Lesson lesson = lesson::make_lesson(file.value, ground, asked.context);
  lesson.version = FORECOURSE_VERSION;
  lesson.warnings = opened.warnings;
  return {{"document", report::lesson_document(lesson, {{}, {}, texts})}};
}

}  // namespace forecourse::server
