#include "forecourse/cli/lesson/questions_part.h"

#include <filesystem>

#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/lesson/questions/questions_report.h"

namespace forecourse::cli {
namespace {

bool write_questions(const lesson::AskResult& asked, const SiteArguments& site, const SiteSource& source,
                     const QuestionsFacts& facts, report::ReportFacts& told) {
  if (!make_folder(site.out)) return false;
  const std::filesystem::path folder(site.out);
  const auto write = [&](const std::string& name, const std::string& html) {
    told.written.push_back((folder / (name + ".html")).string());
    if (!write_file(told.written.back(), html)) return false;
    if (!facts.pdf) return true;
    told.written.push_back((folder / (name + ".pdf")).string());
    return write_pdf(told.written.back(), html, paper_of(facts.paper, source.site.display));
  };
  const report::ReportFacts asked_for = told;
  told.written.push_back((folder / "questions.json").string());
  return write_file(told.written.back(),
                    report::to_text(report::questions_document(asked, FORECOURSE_VERSION, asked_for))) &&
         write("questions", report::questions_paper(asked, FORECOURSE_VERSION, source.site, asked_for)) &&
         write("key", report::questions_key(asked, FORECOURSE_VERSION, source.site, asked_for));
}

}  // namespace

Exit questions_part(const QuestionsArguments& arguments, const SiteArguments& site, const SiteSource& source,
                    const lesson::Ground& ground, const QuestionsFacts& facts) {
  lesson::AskOptions options;
  options.count = arguments.count.value_or(options.count);
  options.level = arguments.level;
  options.seed = arguments.seed;
  options.page = arguments.page;
  const std::vector<Diagnostic> wrong = lesson::check_options(options);
  if (!wrong.empty()) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  const lesson::AskResult asked = lesson::ask(ground, options);
  report::ReportFacts told{today(), facts.command, source.texts};
  told.display = source.site.display;
  if (!site.out.empty() && !write_questions(asked, site, source, facts, told)) return Exit::bad_input;
  if (site.json) {
    print(report::to_text(report::questions_document(asked, FORECOURSE_VERSION, told)));
    return Exit::fine;
  }
  const Console console = this_console();
  print(report::questions_summary(asked, FORECOURSE_VERSION, source.site,
                                  {static_cast<std::size_t>(console.width), console.color, console.utf8, site.verbose},
                                  told));
  return Exit::fine;
}

}  // namespace forecourse::cli
