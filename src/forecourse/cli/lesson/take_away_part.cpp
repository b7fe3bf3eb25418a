#include "forecourse/cli/lesson/take_away_part.h"

#include <filesystem>

#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/lesson/take_away.h"

namespace forecourse::cli {

Exit take_away_part(const SiteSource& source, const std::string& lesson, const std::string& path) {
  const std::string page_path = beside_program("lesson-page/lesson.html");
  const std::string engine_path = beside_program("engine.packed");
  if (!std::filesystem::exists(page_path) || !std::filesystem::exists(engine_path)) {
    print_error("error: the page of the lesson and its engine have not been built beside the program\n" +
                std::string("  run it with ./run, which builds them: ./run lesson SITE --take-away FILE\n"));
    return Exit::our_fault;
  }
  report::TakeAway carried{source.site.name.text, source.texts.front().text, lesson, source.site.display, {}};
  std::string page;
  if (!read_file(page_path, page) || !read_file(engine_path, carried.engine)) return Exit::our_fault;
  const std::string whole = report::take_away_page(page, carried);
  if (whole.empty()) {
    print_error("error: " + page_path + " is not the page of the lesson\n  build it anew with ./run\n");
    return Exit::our_fault;
  }
  if (!write_file(path, whole)) return Exit::bad_input;
  print("written: " + path + "\n");
  return Exit::fine;
}

}  // namespace forecourse::cli
