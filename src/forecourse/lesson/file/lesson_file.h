#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/entered.h"

namespace forecourse::lesson {

/// A page of a lesson as its file has it. What is left out is taken from the page of that id in the built-in lesson.
struct PageEntry {
  SourceSpan where{};
  site::Name page;  ///< id: "shear-groove"
  site::Name stop;  ///< word of the stop: "shear valve"
  site::Name title;
  site::Name at;        ///< id of the part that it is shown at; empty: the first of the station
  site::Name prevents;  ///< what the part prevents, in a sentence
  site::Name without;   ///< what fails without it
  site::Name notes;     ///< for the trainer alone
  std::optional<std::vector<site::Name>> synonyms;   ///< of the trade
  std::optional<std::vector<site::Name>> numbers;    ///< ids of number kinds, in their order
  std::optional<std::vector<site::Name>> failures;   ///< ids of failure kinds
  std::optional<std::vector<site::Name>> questions;  ///< ids of question kinds
  std::optional<std::vector<site::Name>> clauses;    ///< ids of requirements: "us-federal.spill-container"
};

/// A lesson: pages in the order they are shown.
struct LessonFile {
  SourceSpan where{};
  site::Name title;
  std::vector<PageEntry> pages;
};

/// Reads the text of a lesson; all that is wrong with it is told in one go, with its place.
[[nodiscard]] Parsed<LessonFile> read_lesson(std::string_view text, std::uint32_t text_index = 0);

/// The built-in lesson, whose pages have everything.
[[nodiscard]] const LessonFile& built_in_lesson();

/// Its text.
[[nodiscard]] std::string_view built_in_lesson_text();

/// The files of the folder lessons/, as compiled in (see cmake/embed.cmake).
[[nodiscard]] std::span<const std::string_view> lesson_texts();

}  // namespace forecourse::lesson
