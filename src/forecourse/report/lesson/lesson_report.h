#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/lesson/lesson.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What every lesson ends with, the first of it above every number.
[[nodiscard]] std::vector<std::string> lesson_cautions();

/// The whole document: what the page of the lesson is drawn from. Values in SI, and as shown in both systems of units.
[[nodiscard]] Json lesson_document(const lesson::Lesson& lesson, const ReportFacts& facts = {});

/// The pages with their numbers; with --verbose what each part prevents, and the trainer's notes.
[[nodiscard]] std::string lesson_summary(const lesson::Lesson& lesson, const site::Site& site,
                                         const terminal::Style& style, const ReportFacts& facts = {});

/// The handout: the course drawn, each page with its numbers, what the part prevents and the clauses behind it, and the
/// words that it uses.
///
/// \param studied of the station, for the drawing
[[nodiscard]] std::string lesson_report(const lesson::Lesson& lesson, const site::Site& site,
                                        const checks::Studied& studied, const ReportFacts& facts = {});

/// The stop of a page with its number: "7 Shear valve"; without one "Across the course".
[[nodiscard]] std::string stop_words(const lesson::Page& page);

/// A number's value, or why there is none.
[[nodiscard]] std::string value_words(const lesson::Number& number, site::Display display, Glyphs glyphs);

}  // namespace forecourse::report
