#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/lesson/file/lesson_file.h"
#include "forecourse/lesson/ground.h"
#include "forecourse/lesson/questions/question.h"
#include "forecourse/lesson/told.h"
#include "forecourse/site/stop.h"

namespace forecourse::lesson {

/// How the picture of a page stands in one state of the station.
struct PictureState {
  std::string state;  ///< "at rest", "running"
  std::string words;
  std::map<std::string, double> values;  ///< what the picture is drawn from
};

/// A clause behind a page.
struct PageClause {
  std::string clause;
  std::string edition;
  std::string words;
  bool text_seen = false;
};

/// A failure that a page offers.
struct PageFailure {
  std::string failure;
  std::string title;
  std::string reason;  ///< why it cannot be shown here; empty: it can
};

/// A page, of this station.
struct Page {
  std::string page;
  site::Stop stop = site::Stop::station;
  std::string title;
  std::string subject;  ///< id of the part it is shown at
  std::string caution;  ///< that stands above its numbers; empty: none is of something that escapes, or of a drop
  std::vector<PictureState> states;
  std::vector<Number> numbers;
  std::string prevents;
  std::string without;
  std::vector<std::string> synonyms;
  std::vector<PageClause> clauses;
  std::vector<PageFailure> failures;
  std::vector<std::string> questions;  ///< kinds that this station can be asked
  std::vector<LeftOut> questions_left_out;
  std::string notes;
};

/// A page that the station has nothing for.
struct PageLeftOut {
  std::string page;
  std::string reason;
};

struct Lesson {
  std::string version;
  std::string title;
  std::vector<Page> pages;
  std::vector<PageLeftOut> pages_left_out;
  std::vector<Diagnostic> warnings;
};

/// What is wrong with a lesson for this station: a page, number, failure or question of no such name, a part that the
/// station lacks; with the place in the lesson's text.
[[nodiscard]] std::vector<Diagnostic> check_lesson(const LessonFile& file, const Ground& ground);

/// The lesson of a station. What check_lesson tells of is left out; `version` and `warnings` are the caller's.
[[nodiscard]] Lesson make_lesson(const LessonFile& file, const Ground& ground, const Context& context = {});

}  // namespace forecourse::lesson
