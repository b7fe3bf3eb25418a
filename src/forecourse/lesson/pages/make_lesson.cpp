#include <algorithm>
#include <iterator>

#include "forecourse/lesson/failures/cautions.h"
#include "forecourse/lesson/failures/replay.h"
#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/numbers/number.h"
#include "forecourse/lesson/pages/merged_page.h"
#include "forecourse/lesson/pages/page_kind.h"
#include "forecourse/lesson/pages/picture_states.h"
#include "forecourse/lesson/questions/ask.h"

namespace forecourse::lesson {
namespace {

constexpr std::uint64_t first_seed = 1;  ///< with which it is tried whether a question can be asked

std::vector<std::string> texts_of(const std::optional<std::vector<site::Name>>& names) {
  std::vector<std::string> out;
  if (!names) return out;
  std::transform(names->begin(), names->end(), std::back_inserter(out), [](const site::Name& one) { return one.text; });
  return out;
}

void add_clauses(const PageEntry& entry, Page& page) {
  for (const std::string& id : texts_of(entry.clauses)) {
    const KnownRequirement known = requirement_of(id);
    if (known.requirement == nullptr) continue;
    const site::Requirement& one = *known.requirement;
    const bool text_seen = one.seen && one.seen->value == site::ClauseSeen::text;
    const site::Name& edition = one.edition.empty() ? known.set->edition : one.edition;
    page.clauses.push_back({one.clause.text, edition.text, one.words.text, text_seen});
  }
}

void add_failures(const PageEntry& entry, const site::Site& site, Page& page) {
  for (const std::string& id : texts_of(entry.failures)) {
    const FailureKind* kind = find_failure(id);
    if (kind == nullptr) continue;
    page.failures.push_back({id, std::string(kind->title), kind->lacks(site, page.subject)});
  }
}

/// Whether a page has a kind of question: those that it names, or all that belong to it.
bool is_asked(const PageEntry& entry, const QuestionKind& kind) {
  if (!entry.questions) return kind.page == entry.page.text;
  return std::any_of(entry.questions->begin(), entry.questions->end(),
                     [&](const site::Name& one) { return one.text == kind.id; });
}

void add_questions(const PageEntry& entry, const Ground& ground, Page& page) {
  for (const QuestionKind& kind : question_kinds()) {
    if (!is_asked(entry, kind)) continue;
    const Asked asked = ask_kind(kind, ground, first_seed);
    if (const auto* left_out = std::get_if<LeftOut>(&asked)) {
      page.questions_left_out.push_back(*left_out);
    } else {
      page.questions.emplace_back(kind.id);
    }
  }
}

/// What stands above numbers of an incident, and above those of a delivery.
std::string caution_of(const std::vector<Number>& numbers) {
  const auto any_of = [&](const std::string& command) {
    return std::any_of(numbers.begin(), numbers.end(), [&](const Number& one) {
      return !one.proof.command.empty() && one.proof.command.front() == command;
    });
  };
  if (any_of("incident")) return caution_of_escapes;
  return any_of("delivery") ? caution_of_drops : "";
}

Page page_of(const PageEntry& entry, const std::string& subject, const Ground& ground, WorkedIncidents& incidents) {
  Page page;
  page.page = entry.page.text;
  page.stop = stop_of(entry.stop.text).value_or(site::Stop::station);
  page.title = entry.title.text;
  page.subject = subject;
  const From from{ground, subject, incidents};
  page.states = picture_states(page.page, from);
  for (const std::string& id : texts_of(entry.numbers)) {
    if (const NumberKind* kind = find_number(id)) page.numbers.push_back(number_of(*kind, from));
  }
  page.caution = caution_of(page.numbers);
  page.prevents = entry.prevents.text;
  page.without = entry.without.text;
  page.synonyms = texts_of(entry.synonyms);
  page.notes = entry.notes.text;
  add_clauses(entry, page);
  add_failures(entry, ground.site, page);
  add_questions(entry, ground, page);
  return page;
}

}  // namespace

Lesson make_lesson(const LessonFile& file, const Ground& ground, const Context& context) {
  Lesson out;
  out.title = file.title.empty() ? built_in_lesson().title.text : file.title.text;
  WorkedIncidents incidents(ground.site, context);
  for (const PageEntry& given : file.pages) {
    const PageKind* kind = find_page(given.page.text);
    if (kind == nullptr) continue;
    const PageEntry entry = merged_page(given);
    const std::vector<std::string> parts = kind->parts(ground.site);
    if (parts.empty()) {
      out.pages_left_out.push_back(
          {entry.page.text, "the station lists no " + std::string(kind->part) + ": " + std::string(kind->enter)});
      continue;
    }
    out.pages.push_back(page_of(entry, entry.at.empty() ? parts.front() : entry.at.text, ground, incidents));
  }
  return out;
}

}  // namespace forecourse::lesson
