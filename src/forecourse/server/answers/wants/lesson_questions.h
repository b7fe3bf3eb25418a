#pragma once

#include "forecourse/lesson/ground.h"
#include "forecourse/server/answers/wants/want_reader.h"

namespace forecourse::server {

/// The questions of a want of the lesson that has the member `questions`: how many; with `level`, `seed`, `page`.
[[nodiscard]] report::Json lesson_questions(WantReader& want, const lesson::Ground& ground);

}  // namespace forecourse::server
