#include "forecourse/lesson/file/lesson_file.h"

#include <algorithm>
#include <array>
#include <stdexcept>

#include "forecourse/lesson/file/fields_lesson.h"
#include "forecourse/site/text/document.h"
#include "forecourse/site/text/table_reader.h"

namespace forecourse::lesson {
namespace {

using Names = std::optional<std::vector<site::Name>>;

/// The lists of a page by their keys.
constexpr std::array<std::pair<std::string_view, Names PageEntry::*>, 5> lists{{{"synonyms", &PageEntry::synonyms},
                                                                                {"numbers", &PageEntry::numbers},
                                                                                {"failures", &PageEntry::failures},
                                                                                {"questions", &PageEntry::questions},
                                                                                {"clauses", &PageEntry::clauses}}};

/// Lists that the text does not have are none, as against empty ones.
void forget_lists_not_given(const site::Node& root, LessonFile& lesson) {
  const site::Entry* pages = find_entry(root, "page");
  if (pages == nullptr) return;
  for (PageEntry& page : lesson.pages) {
    const auto same = [&](const site::Node& node) { return node.where == page.where; };
    const auto node = std::find_if(pages->node.items.begin(), pages->node.items.end(), same);
    for (const auto& list : lists) {
      if (node == pages->node.items.end() || find_entry(*node, list.first) == nullptr) (page.*list.second).reset();
    }
  }
}

void tell_missing(const site::ReadRun& run, const LessonFile& lesson) {
  if (lesson.pages.empty() && run.diagnostics.empty())
    run.error(lesson.where, "the lesson has no page", "add a [[page]] with the name of one: page = \"shear-groove\"");
  for (const PageEntry& page : lesson.pages) {
    if (page.page.empty())
      run.error(page.where, "the page has no name", "write the name of one: page = \"shear-groove\"");
  }
}

}  // namespace

Parsed<LessonFile> read_lesson(std::string_view text, std::uint32_t text_index) {
  Parsed<site::Document> document = site::read_document(text, text_index);
  Parsed<LessonFile> result;
  result.diagnostics = std::move(document.diagnostics);
  result.value.where = {text_index, 0, 0};
  if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
    result.diagnostics.push_back({Severity::error,
                                  "the file holds no lesson",
                                  result.value.where,
                                  "begin with format = 1, then title and [[page]]",
                                  {}});
    return result;
  }
  std::vector<SourceSpan> half_read = std::move(document.value.half_read);
  std::vector<SourceSpan> uncertain;
  const site::ReadRun run{text, result.diagnostics, half_read, uncertain, document.value.complete};
  site::TableReader reader(document.value.root, run);
  fields(reader, result.value);
  reader.finish();
  forget_lists_not_given(document.value.root, result.value);
  tell_missing(run, result.value);
  return result;
}

std::string_view built_in_lesson_text() { return lesson_texts().front(); }

const LessonFile& built_in_lesson() {
  static const LessonFile lesson = [] {
    Parsed<LessonFile> read = read_lesson(built_in_lesson_text());
    if (!read.ok()) throw std::logic_error("the lesson of our own: " + read.diagnostics.front().message);
    return std::move(read.value);
  }();
  return lesson;
}

}  // namespace forecourse::lesson
