#pragma once

#include "forecourse/lesson/file/lesson_file.h"
#include "forecourse/site/fields/rules.h"

namespace forecourse::lesson {

/// The list that is filled; whether the file gives it is told afterwards.
inline std::vector<site::Name>& list_of(std::optional<std::vector<site::Name>>& member) { return member.emplace(); }

template <class Visitor>
void fields(Visitor& v, PageEntry& page) {
  v.about("page", "A page of the lesson.");
  v.name("page", page.page, "Name of the page; what is left out here is taken from the built-in lesson.");
  v.name("stop", page.stop, "Stop of the course that it belongs to.");
  v.name("title", page.title, "What stands over it.");
  v.name("at", page.at, "Part that it is shown at; left out: the first of the station.");
  v.name("prevents", page.prevents, "What the part prevents, in a sentence.");
  v.name("without", page.without, "What fails without it.");
  v.name("notes", page.notes, "For the trainer alone.");
  v.names("synonyms", list_of(page.synonyms), "Other words of the trade for it.");
  v.names("numbers", list_of(page.numbers), "Numbers that it shows, in their order.");
  v.names("failures", list_of(page.failures), "Failures that it offers.");
  v.names("questions", list_of(page.questions), "Questions that belong to it.");
  v.names("clauses", list_of(page.clauses), "Requirements behind it, each with its rule set.");
}

template <class Visitor>
void fields(Visitor& v, LessonFile& lesson) {
  v.about("lesson", "A lesson: pages in the order they are shown.");
  v.format("format", "Version of the lesson; 1.");
  v.name("title", lesson.title, "What the lesson is called.");
  v.list("page", lesson.pages, "Its pages.");
}

}  // namespace forecourse::lesson
