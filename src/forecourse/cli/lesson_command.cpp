#include <filesystem>
#include <optional>

#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/lesson/failure_part.h"
#include "forecourse/cli/lesson/questions_part.h"
#include "forecourse/cli/lesson/take_away_part.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/lesson/lesson_report.h"

namespace forecourse::cli {
namespace {

/// The lesson asked for, with its text behind that of the site; empty, with the reason on standard error, if it cannot
/// be read.
std::optional<lesson::LessonFile> read_lesson_file(const std::string& path, std::vector<report::SourceText>& texts) {
  if (path.empty()) return lesson::built_in_lesson();
  std::string text;
  if (!read_site_file(path, text)) return std::nullopt;
  texts.push_back({path, text});
  Parsed<lesson::LessonFile> read = lesson::read_lesson(text, static_cast<std::uint32_t>(texts.size() - 1));
  if (read.ok()) return std::move(read.value);
  print_error(report::to_text(read.diagnostics, texts));
  return std::nullopt;
}

bool write_report(const LessonArguments& arguments, const SiteSource& source, const lesson::Lesson& lesson,
                  const checks::Studied& studied, report::ReportFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "lesson.html").string();
  const std::string data = (folder / "lesson.json").string();
  facts.written = {page, data};
  const std::string html = report::lesson_report(lesson, source.site, studied, facts);
  if (!write_file(page, html) || !write_file(data, report::to_text(report::lesson_document(lesson, facts)))) {
    return false;
  }
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "lesson.pdf").string());
  return write_pdf(facts.written.back(), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit lesson_command(const LessonArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  if (!arguments.failure.empty()) return failure_part(arguments.site, arguments.failure, arguments.at);
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const std::optional<site::Date> on = day_of(arguments.on);
  const std::optional<lesson::LessonFile> file = read_lesson_file(arguments.lesson, source.texts);
  if (!on || !file) return Exit::bad_input;
  const lesson::Studies studies = lesson::make_studies(source.site, *on);
  const lesson::Ground ground = lesson::ground_of(source.site, studies);
  if (arguments.questions.count) {
    return questions_part(arguments.questions, arguments.site, source, ground,
                          {arguments.pdf, arguments.paper, arguments.command});
  }
  std::vector<Diagnostic> wrong;  // the built-in lesson is our own
  if (!arguments.lesson.empty()) wrong = lesson::check_lesson(*file, ground);
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  if (!arguments.take_away.empty()) {
    return take_away_part(source, arguments.lesson.empty() ? "" : source.texts.back().text, arguments.take_away);
  }
  lesson::Lesson lesson = lesson::make_lesson(*file, ground);
  lesson.version = FORECOURSE_VERSION;
  lesson.warnings = source.warnings;
  report::ReportFacts facts{today(), arguments.command, source.texts};
  if (!arguments.site.out.empty() && !write_report(arguments, source, lesson, studies.studied, facts)) {
    return Exit::bad_input;
  }
  if (arguments.site.json) {
    print(report::to_text(report::lesson_document(lesson, facts)));
  } else {
    const Console console = this_console();
    print(report::lesson_summary(
        lesson, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return Exit::fine;
}

}  // namespace forecourse::cli
